package wire

import (
	"encoding"
	"errors"
	"math"
	"reflect"
	"strconv"

	"filmbuild/estimate/money"
	"filmbuild/estimate/units"
	"filmbuild/surfaces/quantity"
)

// Range is a number that is not known exactly, in SI as its field wants it.
type Range struct {
	Low, Likely, High float64
	Distribution      string // pert or triangular
}

// number reads a number as the field's suffix wants it.
func (d *Decoder) number(n *Node, at string, f field) (float64, bool) {
	switch n.Type {
	case Number:
		x, err := strconv.ParseFloat(n.text, 64)
		if err != nil || math.IsInf(x, 0) {
			d.Faults.Addf(at, "not_a_number", "%s is %s, which is too large for any number here", f.name, shorten(n.text))
			return 0, false
		}
		return x, true
	case Text:
		return d.measured(n, at, f)
	case Object:
		return d.ranged(n, at, f, false)
	}
	d.wrongType(at, f.name, "a number", n)
	return 0, false
}

// measured reads a number that is text with its own unit.
func (d *Decoder) measured(n *Node, at string, f field) (float64, bool) {
	parse := units.Parse
	if n.bare {
		parse = units.ParseBare
	} else if f.suffix == "" {
		d.wrongType(at, f.name, "a number", n)
		return 0, false
	}
	x, err := parse(n.text, f.suffix)
	if err == nil {
		return x, true
	}
	var wrong *units.WrongUnitError
	switch {
	case errors.Is(err, units.ErrNoUnit):
		d.Faults.Addf(at, "wrong_type", "%s is the text %q; write a number without quotes, or a number with its unit", f.name, shorten(n.text))
	case errors.As(err, &wrong):
		d.Faults.Addf(at, "wrong_unit", "%s: %s", f.name, err)
	default:
		d.Faults.Addf(at, "not_a_number", "%s: %s", f.name, err)
	}
	return 0, false
}

// ranged reads {"low", "likely", "high"} and returns the likely value. The
// parts of a range of money may be text without a unit.
func (d *Decoder) ranged(n *Node, at string, f field, money bool) (float64, bool) {
	r := Range{Distribution: "pert"}
	good := true
	for _, part := range []struct {
		name string
		into *float64
	}{{"low", &r.Low}, {"likely", &r.Likely}, {"high", &r.High}} {
		m, given := n.Member(part.name)
		if !given || m.Type == Object || m.Type == Null {
			d.Faults.Addf(at+"/"+part.name, "required", "a range needs numbers for low, likely and high; %s has no %s", f.name, part.name)
			good = false
			continue
		}
		if money && m.Type == Text { // money is text, in a range too
			m = &Node{Type: Text, text: m.text, bare: true}
		}
		x, ok := d.number(m, at+"/"+part.name, f)
		if err := f.within(x); ok && err != nil && part.name != "likely" { // the likely value is the field's own and checked with it
			d.Faults.Add(at+"/"+part.name, "out_of_range", err.Error())
			ok = false
		}
		*part.into, good = x, good && ok
	}
	for i := range n.members {
		switch m := &n.members[i]; {
		case m.name == "low" || m.name == "likely" || m.name == "high":
		case m.name != "distribution":
			d.Faults.Addf(at+"/"+escape(m.name), "unknown_field", "a range has low, likely, high and distribution, and no %q", shorten(m.name))
			good = false
		case m.value.Type != Text || (m.value.text != "pert" && m.value.text != "triangular"):
			d.Faults.Add(at+"/distribution", "unknown_kind", "distribution must be pert or triangular")
			good = false
		default:
			r.Distribution = m.value.text
		}
	}
	if good && !(r.Low <= r.Likely && r.Likely <= r.High) {
		d.Faults.Addf(at, "inconsistent", "%s must have low ≤ likely ≤ high; it has %g, %g, %g", f.name, r.Low, r.Likely, r.High)
		good = false
	}
	if !good {
		return 0, false
	}
	if d.Ranges == nil {
		d.Ranges = map[string]Range{}
	}
	d.Ranges[at] = r
	return r.Likely, true
}

// within returns a *quantity.RangeError where a number lies outside the limits
// of its field.
func (f field) within(x float64) error {
	if f.limits == nil {
		return nil
	}
	return quantity.Within(f.name, x, quantity.UnitOf(f.name), *f.limits)
}

// whole reads a count.
func (d *Decoder) whole(n *Node, v reflect.Value, at string, f field) {
	x, ok := d.number(n, at, f)
	if !ok {
		return
	}
	if x != math.Trunc(x) || math.Abs(x) > 1e9 {
		d.Faults.Addf(at, "wrong_type", "%s must be a whole number; it is %g", f.name, x)
		return
	}
	switch {
	case v.CanInt():
		v.SetInt(int64(x))
	case x < 0:
		d.Faults.Addf(at, "out_of_range", "%s is %g; it must be at least 0", f.name, x)
	default:
		v.SetUint(uint64(x))
	}
}

// money reads an amount of money: a decimal text such as "140.00", a number,
// or (as any number) a range.
func (d *Decoder) money(n *Node, v reflect.Value, at string, f field) {
	literal := n.text
	switch n.Type {
	case Object:
		likely, ok := d.ranged(n, at, f, true)
		if !ok {
			return
		}
		literal = strconv.FormatFloat(likely, 'f', -1, 64)
	case Text, Number:
	default:
		d.wrongType(at, f.name, `an amount of money such as "140.00"`, n)
		return
	}
	_, err := money.ParsePrice(literal) // bounds the digits: decimal would take any number of them
	if err == nil {
		err = v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(literal))
	}
	if err != nil {
		d.Faults.Addf(at, "not_a_number", "%s: %s", f.name, err)
	}
}
