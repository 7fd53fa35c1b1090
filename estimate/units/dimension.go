package units

import "strings"

// dimension is what a unit measures: one simple dimension, or one over another
// as in a spreading rate, which is area over volume.
type dimension struct{ over, under string }

func parseDimension(text string) dimension {
	over, under, _ := strings.Cut(text, "/")
	return dimension{over: over, under: under}
}

// String names the dimension in a sentence: "a length", "an area per volume".
func (d dimension) String() string {
	if d.over == "count" && d.under == "" {
		return "a plain number"
	}
	name := d.over
	if d.under != "" {
		name += " per " + d.under
	}
	if strings.ContainsRune("aeiou", rune(name[0])) {
		return "an " + name
	}
	return "a " + name
}

// unit turns a number of its own into the base unit of its dimension, which is
// the coherent SI unit, °C for temperature and the degree for angles:
//
//	base = number · factor + offset
type unit struct {
	name           string
	dimension      dimension
	factor, offset fraction
}

// over returns the compound unit u/v. Only simple units of proportional scales
// can be divided.
func (u unit) over(v unit) (unit, bool) {
	if u.dimension.under != "" || v.dimension.under != "" || u.scaleIsShifted() || v.scaleIsShifted() {
		return unit{}, false
	}
	return unit{
		name:      u.name,
		dimension: dimension{over: u.dimension.over, under: v.dimension.over},
		factor:    u.factor.times(v.factor.inverse()),
		offset:    whole(0),
	}, true
}

// scaleIsShifted is true for every temperature, °C too: "°C/h" is not a unit here.
func (u unit) scaleIsShifted() bool { return u.dimension.over == "temperature" }
