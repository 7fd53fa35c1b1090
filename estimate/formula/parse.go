package formula

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// deepest is how far brackets may be nested.
const deepest = 100

// reader goes through the characters of an expression.
//
//	comparison = sum [("<" | "≤" | ">" | "≥" | "=") sum]
//	sum        = product {("+" | "−") product}
//	product    = power {("·" | "*" | "/") power}
//	power      = {"−"} factor ["²" | "³" | "⁴"] ["^" power] | number symbol
//	factor     = number | symbol | function "(" … ")" | "(" sum ")" | "√" factor | "⌈" sum "⌉" | "⌊" sum "⌋"
type reader struct {
	text  []rune
	at    int
	depth int
}

func parse(text string) (*Expression, error) {
	r := &reader{text: []rune(text)}
	e, err := r.sum()
	if err != nil {
		return nil, err
	}
	if r.next() != 0 {
		return nil, r.unexpected()
	}
	return e, nil
}

// next returns the next character that is not a space, 0 at the end.
func (r *reader) next() rune {
	for r.at < len(r.text) && unicode.IsSpace(r.text[r.at]) {
		r.at++
	}
	if r.at == len(r.text) {
		return 0
	}
	return r.text[r.at]
}

func (r *reader) unexpected() error {
	if r.next() == 0 {
		return fmt.Errorf("the formula ends too early")
	}
	return fmt.Errorf("%q at character %d is not understood", r.text[r.at], r.at+1)
}

func (r *reader) take(want rune) error {
	if r.next() != want {
		return r.unexpected()
	}
	r.at++
	return nil
}

// binary reads operands that the operators of one rank join, from the left.
func (r *reader) binary(operand func() (*Expression, error), operators func(rune) Operator) (*Expression, error) {
	left, err := operand()
	for err == nil {
		operator := operators(r.next())
		if operator == "" {
			return left, nil
		}
		r.at++
		var right *Expression
		if right, err = operand(); err == nil {
			left = &Expression{Operator: operator, Arguments: []*Expression{left, right}}
		}
	}
	return nil, err
}

func (r *reader) sum() (*Expression, error) {
	return r.binary(r.product, additive)
}

func additive(c rune) Operator {
	switch c {
	case '+':
		return Add
	case '−', '-':
		return Sub
	}
	return ""
}

func (r *reader) product() (*Expression, error) {
	return r.binary(r.power, multiplicative)
}

func multiplicative(c rune) Operator {
	switch c {
	case '·', '*':
		return Mul
	case '/':
		return Div
	}
	return ""
}

func (r *reader) power() (*Expression, error) {
	if r.depth++; r.depth > deepest {
		return nil, fmt.Errorf("the formula is nested too deeply")
	}
	defer func() { r.depth-- }()
	if c := r.next(); c == '−' || c == '-' {
		r.at++
		e, err := r.power()
		if err != nil {
			return nil, err
		}
		return &Expression{Operator: Neg, Arguments: []*Expression{e}}, nil
	}
	base, err := r.factor()
	if err != nil {
		return nil, err
	}
	if raised := raisedTo(r.next()); raised != 0 {
		r.at++
		base = &Expression{Operator: Pow, Arguments: []*Expression{base, {Operator: Number, Value: raised}}}
	}
	if base.Operator == Number && unicode.IsLetter(r.next()) && unicode.IsDigit(r.text[r.at-1]) {
		factor, err := r.power() // 2π
		if err != nil {
			return nil, err
		}
		return &Expression{Operator: Mul, Arguments: []*Expression{base, factor}}, nil
	}
	if r.next() != '^' {
		return base, nil
	}
	r.at++
	exponent, err := r.power()
	if err != nil {
		return nil, err
	}
	return &Expression{Operator: Pow, Arguments: []*Expression{base, exponent}}, nil
}

// raisedTo is the exponent that a raised digit stands for, 0 for what is none.
func raisedTo(c rune) float64 {
	switch c {
	case '²':
		return 2
	case '³':
		return 3
	case '⁴':
		return 4
	}
	return 0
}

func (r *reader) factor() (*Expression, error) {
	switch c := r.next(); {
	case c == '(':
		return r.bracketed(')', "")
	case c == '⌈':
		return r.bracketed('⌉', Ceil)
	case c == '⌊':
		return r.bracketed('⌋', Floor)
	case c == '√':
		r.at++
		e, err := r.factor()
		if err != nil {
			return nil, err
		}
		return &Expression{Operator: Sqrt, Arguments: []*Expression{e}}, nil
	case c == '½':
		r.at++
		return &Expression{Operator: Number, Value: 0.5}, nil
	case c >= '0' && c <= '9':
		return r.number()
	case unicode.IsLetter(c):
		return r.symbol()
	}
	return nil, r.unexpected()
}

func (r *reader) bracketed(end rune, operator Operator) (*Expression, error) {
	r.at++
	e, err := r.sum()
	if err == nil {
		err = r.take(end)
	}
	if err != nil {
		return nil, err
	}
	if operator == "" {
		return e, nil
	}
	return &Expression{Operator: operator, Arguments: []*Expression{e}}, nil
}

func (r *reader) number() (*Expression, error) {
	from := r.at
	for r.at < len(r.text) && (r.text[r.at] >= '0' && r.text[r.at] <= '9' || r.text[r.at] == '.') {
		r.at++
	}
	text := string(r.text[from:r.at])
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return nil, fmt.Errorf("%q at character %d is not a number", text, from+1)
	}
	return &Expression{Operator: Number, Value: v}, nil
}

func (r *reader) symbol() (*Expression, error) {
	from := r.at
	for r.at < len(r.text) && inSymbol(r.text[r.at]) {
		r.at++
	}
	name := string(r.text[from:r.at])
	if name == "π" {
		return &Expression{Operator: Number, Value: math.Pi}, nil
	}
	least, most, known := takes(Operator(name))
	if !known || r.next() != '(' {
		return &Expression{Operator: Term, Name: name}, nil
	}
	r.at++
	arguments, err := r.arguments(Operator(name))
	if err != nil {
		return nil, err
	}
	if len(arguments) < least || (most > 0 && len(arguments) > most) {
		return nil, fmt.Errorf("%s at character %d has %d arguments", name, from+1, len(arguments))
	}
	return &Expression{Operator: Operator(name), Arguments: arguments}, nil
}

func inSymbol(c rune) bool {
	return unicode.IsLetter(c) || unicode.IsNumber(c) && !strings.ContainsRune("²³⁴½", c) || c == '_' || c == '′'
}

// arguments reads what stands in the brackets of a function; the first argument
// of if is a comparison.
func (r *reader) arguments(of Operator) ([]*Expression, error) {
	var list []*Expression
	for {
		e, err := r.sum()
		if err == nil && of == If && len(list) == 0 {
			e, err = r.comparison(e)
		}
		if err != nil {
			return nil, err
		}
		list = append(list, e)
		if r.next() != ',' {
			return list, r.take(')')
		}
		r.at++
	}
}

func (r *reader) comparison(left *Expression) (*Expression, error) {
	operator := comparing(r.next())
	if operator == "" {
		return nil, r.unexpected()
	}
	r.at++
	right, err := r.sum()
	if err != nil {
		return nil, err
	}
	return &Expression{Operator: operator, Arguments: []*Expression{left, right}}, nil
}

func comparing(c rune) Operator {
	switch c {
	case '<':
		return Less
	case '≤':
		return AtMost
	case '>':
		return Greater
	case '≥':
		return AtLeast
	case '=':
		return Equal
	}
	return ""
}
