package model

import (
	"fmt"
	"slices"

	"filmbuild/estimate/formula"
)

// Varied is an input that a program takes, with the values it can have.
type Varied struct {
	Vertex    int
	Low, High float64
}

// value is a number while a program is made: a constant, or a column.
type value struct {
	constant bool
	number   float64
	column   int // of the varying: which instruction gives it
	span     interval
}

func fixed(x float64) value { return value{constant: true, number: x, span: point(x)} }

// instruction works out one column.
type instruction struct {
	operator  formula.Operator // "" for an input, "table" for a table
	arguments []operand
	input     int
	table     *table
	register  int
}

type operand struct {
	constant bool
	number   float64
	column   int
}

const lookUp formula.Operator = "table"

type compiler struct {
	model  *Model
	code   []instruction
	values []value // of each vertex
	done   []bool
	inputs map[int]int // vertex -> place among the varied
	varied []Varied
}

// Compile makes the program that works the outputs out for other values of some
// inputs. The others keep the values of the estimate, and what follows from
// them alone is worked out once, here. The error names a vertex that is no
// input, or a table with too many steps between the bounds.
func (m *Model) Compile(varied []Varied, outputs []int) (*Program, error) {
	c := &compiler{model: m, values: make([]value, len(m.Vertices)), done: make([]bool, len(m.Vertices)), inputs: map[int]int{}, varied: varied}
	for k, v := range varied {
		if m.Vertices[v.Vertex].Kind != Input {
			return nil, fmt.Errorf("%v is not an input", m.Vertices[v.Vertex].Node)
		}
		c.inputs[v.Vertex] = k
	}
	p := &Program{inputs: len(varied), outputs: make([]operand, len(outputs))}
	for k, vertex := range outputs {
		v, err := c.vertex(vertex)
		if err != nil {
			return nil, err
		}
		p.outputs[k] = v.operand()
	}
	p.code = c.code
	p.allot()
	return p, nil
}

func (v value) operand() operand {
	return operand{constant: v.constant, number: v.number, column: v.column}
}

// vertex returns the value of a vertex, worked out once.
func (c *compiler) vertex(k int) (value, error) {
	if c.done[k] {
		return c.values[k], nil
	}
	v, err := c.work(k)
	if err == nil {
		c.values[k], c.done[k] = v, true
	}
	return v, err
}

func (c *compiler) work(k int) (value, error) {
	vertex := &c.model.Vertices[k]
	if vertex.Kind == Input {
		place, varies := c.inputs[k]
		if !varies {
			return fixed(vertex.Value), nil
		}
		return c.emit(instruction{input: place}, interval{c.varied[place].Low, c.varied[place].High}.with(vertex.Value)), nil
	}
	terms := make(map[string]value, len(vertex.Terms))
	changed := false
	for _, t := range vertex.Terms {
		v, err := c.term(t)
		if err != nil {
			return value{}, err
		}
		terms[t.Name] = v
		changed = changed || !v.constant
	}
	switch {
	case !changed:
		return fixed(vertex.Value), nil // to the last digit what the estimate says
	case vertex.Kind == Stepped:
		return c.table(vertex, terms)
	case vertex.Formula.Kind == formula.Summed:
		sum := fixed(0)
		for _, t := range vertex.Terms { // in order, so that the sum is the same each time
			sum = c.apply(formula.Add, sum, terms[t.Name])
		}
		return sum, nil
	}
	return c.expression(vertex.Formula.Expression, terms), nil
}

func (c *compiler) term(t TermOf) (value, error) {
	if t.From < 0 {
		return fixed(t.Value), nil
	}
	from, err := c.vertex(t.From)
	switch {
	case err != nil || from.constant:
		return fixed(t.Value), err
	case t.Inverse:
		return c.apply(formula.Div, fixed(t.Times), from), nil
	case t.Times == 1:
		return from, nil
	}
	return c.apply(formula.Mul, from, fixed(t.Times)), nil
}

func (c *compiler) expression(e *formula.Expression, terms map[string]value) value {
	switch e.Operator {
	case formula.Number:
		return fixed(e.Value)
	case formula.Term:
		return terms[e.Name]
	}
	arguments := make([]value, len(e.Arguments))
	for i, a := range e.Arguments {
		arguments[i] = c.expression(a, terms)
	}
	return c.apply(e.Operator, arguments...)
}

// apply adds an operation, or its value where all its arguments are constants.
func (c *compiler) apply(o formula.Operator, arguments ...value) value {
	if !slices.ContainsFunc(arguments, func(a value) bool { return !a.constant }) {
		numbers := make([]float64, len(arguments))
		for i, a := range arguments {
			numbers[i] = a.number
		}
		return fixed(formula.Apply(o, numbers))
	}
	switch {
	case o == formula.Add && arguments[0].constant && arguments[0].number == 0, o == formula.Mul && arguments[0].constant && arguments[0].number == 1:
		return arguments[1]
	case o == formula.Add && arguments[1].constant && arguments[1].number == 0, (o == formula.Mul || o == formula.Div) && arguments[1].constant && arguments[1].number == 1:
		return arguments[0]
	}
	if o == formula.Max && len(arguments) == 2 && arguments[1].constant && arguments[0].span.low >= arguments[1].number {
		return arguments[0] // as of a need less a stock that never covers it
	}
	in := instruction{operator: o, arguments: make([]operand, len(arguments))}
	spans := make([]interval, len(arguments))
	for i, a := range arguments {
		in.arguments[i], spans[i] = a.operand(), a.span
	}
	return c.emit(in, spanOf(o, spans))
}

func (c *compiler) emit(in instruction, span interval) value {
	c.code = append(c.code, in)
	return value{column: len(c.code) - 1, span: span}
}

// table adds the steps of a table between the bounds of what it is looked up by.
func (c *compiler) table(vertex *Vertex, terms map[string]value) (value, error) {
	var by value
	varying := 0
	for _, v := range terms {
		if !v.constant {
			by = v
			varying++
		}
	}
	if varying != 1 {
		return value{}, fmt.Errorf("%v is a table of %d numbers that vary; it must be of one", vertex.Node, varying)
	}
	t, err := newTable(vertex.Steps, by.span)
	if err != nil {
		return value{}, fmt.Errorf("%v: %w", vertex.Node, err)
	}
	return c.emit(instruction{operator: lookUp, arguments: []operand{by.operand()}, table: t}, t.span()), nil
}
