package model

import (
	"math"

	"filmbuild/estimate/formula"
)

// interval holds every value that a vertex can have. It may be wider than it
// need be; it is never narrower.
type interval struct{ low, high float64 }

func point(x float64) interval { return interval{x, x} }

func (i interval) with(x float64) interval {
	return interval{math.Min(i.low, x), math.Max(i.high, x)}
}

func (i interval) fixed() bool { return i.low == i.high }

// spanOf gives the interval of an operator. The operators are monotone in each
// argument, so that the extremes lie at corners; those that are not are given
// their whole range.
func spanOf(o formula.Operator, args []interval) interval {
	all := interval{math.Inf(-1), math.Inf(1)}
	switch o {
	case formula.Sin, formula.Cos:
		return interval{-1, 1}
	case formula.Less, formula.AtMost, formula.Greater, formula.AtLeast, formula.Equal:
		return interval{0, 1}
	case formula.If:
		return interval{math.Min(args[1].low, args[2].low), math.Max(args[1].high, args[2].high)}
	case formula.Div:
		if args[1].low <= 0 && args[1].high >= 0 {
			return all
		}
	case formula.Pow:
		whole := args[1].fixed() && args[1].low == math.Trunc(args[1].low) && args[1].low > 0
		if args[0].low < 0 && !whole {
			return all
		}
		if args[0].low < 0 && args[0].high > 0 && math.Mod(args[1].low, 2) == 0 {
			n := args[1].low
			return interval{0, math.Max(math.Pow(args[0].low, n), math.Pow(args[0].high, n))}
		}
	case formula.Abs:
		if args[0].low < 0 && args[0].high > 0 {
			return interval{0, math.Max(-args[0].low, args[0].high)}
		}
	}
	if len(args) > 10 {
		return all
	}
	found := interval{math.Inf(1), math.Inf(-1)}
	corner := make([]float64, len(args))
	for bits := range 1 << len(args) {
		for k, a := range args {
			corner[k] = a.low
			if bits>>k&1 == 1 {
				corner[k] = a.high
			}
		}
		x := formula.Apply(o, corner)
		if math.IsNaN(x) {
			return all
		}
		found = found.with(x)
	}
	return found
}
