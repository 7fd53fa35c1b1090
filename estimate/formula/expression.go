package formula

import (
	"fmt"
	"math"
	"slices"
)

// Operator is what a node of an expression does with its arguments.
type Operator string

// The operators. Number and Term have no arguments; the comparisons stand only
// as the first argument of If.
const (
	Number  Operator = "number"
	Term    Operator = "term"
	Add     Operator = "+"
	Sub     Operator = "−"
	Mul     Operator = "·"
	Div     Operator = "/"
	Pow     Operator = "^"
	Neg     Operator = "neg"
	Less    Operator = "<"
	AtMost  Operator = "≤"
	Greater Operator = ">"
	AtLeast Operator = "≥"
	Equal   Operator = "="
	If      Operator = "if"
	Min     Operator = "min"
	Max     Operator = "max"
	Ln      Operator = "ln"
	Log10   Operator = "log10"
	Exp     Operator = "exp"
	Abs     Operator = "abs"
	Sqrt    Operator = "sqrt"
	Ceil    Operator = "ceil"
	Floor   Operator = "floor"
	Round   Operator = "round"
	Sin     Operator = "sin"
	Cos     Operator = "cos"
	Asin    Operator = "asin"
)

// Expression is a formula taken apart.
type Expression struct {
	Operator  Operator
	Value     float64 // of a Number
	Name      string  // of a Term
	Arguments []*Expression
}

// takes is how many arguments a function has; most is 0 without a limit. known
// is false for what is no function that an expression may call.
func takes(name Operator) (least, most int, known bool) {
	switch name {
	case Min, Max:
		return 2, 0, true
	case Ln, Log10, Exp, Abs, Sqrt, Ceil, Floor, Sin, Cos, Asin:
		return 1, 1, true
	case Round:
		return 2, 2, true
	case If:
		return 3, 3, true
	}
	return 0, 0, false
}

// Functions lists the names that an expression may call, sorted.
func Functions() []string {
	var names []string
	for _, name := range []Operator{Abs, Asin, Ceil, Cos, Exp, Floor, If, Ln, Log10, Max, Min, Round, Sin, Sqrt} {
		names = append(names, string(name))
	}
	return names
}

// Names adds the symbols of an expression to a list, each once.
func (e *Expression) Names(names []string) []string {
	if e.Operator == Term && !slices.Contains(names, e.Name) {
		names = append(names, e.Name)
	}
	for _, a := range e.Arguments {
		names = a.Names(names)
	}
	return names
}

// Work works an expression out. The error names a symbol without a value.
func (e *Expression) Work(terms map[string]float64) (float64, error) {
	return e.WorkOf(func(name string) (float64, bool) {
		v, known := terms[name]
		return v, known
	})
}

// WorkOf is Work where the terms are asked for one by one.
func (e *Expression) WorkOf(term func(name string) (value float64, known bool)) (float64, error) {
	switch e.Operator {
	case Number:
		return e.Value, nil
	case Term:
		v, known := term(e.Name)
		if !known {
			return 0, fmt.Errorf("no value for %s", e.Name)
		}
		return v, nil
	case If:
		holds, err := e.Arguments[0].WorkOf(term)
		if err != nil {
			return 0, err
		}
		if holds != 0 {
			return e.Arguments[1].WorkOf(term)
		}
		return e.Arguments[2].WorkOf(term)
	}
	var few [4]float64 // as many as nearly all have, without an allocation
	values := few[:0]
	for _, a := range e.Arguments {
		v, err := a.WorkOf(term)
		if err != nil {
			return 0, err
		}
		values = append(values, v)
	}
	return Apply(e.Operator, values), nil
}

// Apply gives the value of an operator for its arguments. A comparison gives 1
// where it holds, and If takes one as its first argument.
func Apply(o Operator, v []float64) float64 {
	switch o {
	case Add:
		return v[0] + v[1]
	case Sub:
		return v[0] - v[1]
	case Mul:
		return v[0] * v[1]
	case Div:
		return v[0] / v[1]
	case Pow:
		return math.Pow(v[0], v[1])
	case Neg:
		return -v[0]
	case Less:
		return truth(v[0] < v[1])
	case AtMost:
		return truth(v[0] <= v[1])
	case Greater:
		return truth(v[0] > v[1])
	case AtLeast:
		return truth(v[0] >= v[1])
	case Equal:
		return truth(v[0] == v[1])
	case If:
		if v[0] != 0 {
			return v[1]
		}
		return v[2]
	case Min:
		return slices.Min(v)
	case Max:
		return slices.Max(v)
	case Ln:
		return math.Log(v[0])
	case Log10:
		return math.Log10(v[0])
	case Exp:
		return math.Exp(v[0])
	case Abs:
		return math.Abs(v[0])
	case Sqrt:
		return math.Sqrt(v[0])
	case Ceil:
		return math.Ceil(v[0] - slack(v[0]))
	case Floor:
		return math.Floor(v[0] + slack(v[0]))
	case Sin:
		return math.Sin(v[0])
	case Cos:
		return math.Cos(v[0])
	case Asin:
		return math.Asin(v[0])
	case Round:
		return RoundHalfAway(v[0], v[1])
	}
	return math.NaN()
}

func truth(holds bool) float64 {
	if holds {
		return 1
	}
	return 0
}

// slack lets a whole number stay whole that rounding has moved by a few units
// in its last place, as a spreadsheet does.
func slack(x float64) float64 { return math.Abs(x) * 1e-12 }

// RoundHalfAway rounds to decimal places, halves away from zero, as money is
// rounded: a value below a half by no more than 1e-14 of itself, and a millionth of
// the last place, counts as the half.
func RoundHalfAway(x, places float64) float64 { return RoundToUnit(x, math.Pow(10, places)) }

// RoundToUnit is RoundHalfAway to one part in unit.
func RoundToUnit(x, unit float64) float64 {
	scaled := math.Abs(x) * unit
	return math.Copysign(math.Floor(scaled+0.5+min(scaled*1e-14, 1e-6))/unit, x)
}
