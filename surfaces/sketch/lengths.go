package sketch

import (
	"fmt"
	"math"
	"strconv"
)

// metresPerInch and the like are exact by the international yard of 1959.
const (
	metresPerInch = 0.0254
	metresPerFoot = 12 * metresPerInch
)

// lengths writes lengths in one unit throughout a drawing.
type lengths struct {
	system System
	small  bool // SI: mm instead of m
}

// upTo chooses the unit by the greatest dimension, in m: below 1 m, mm.
func (l *lengths) upTo(greatest float64) { l.small = greatest < 1 }

// unit is what is stated once on the drawing; feet and inches are marked on
// every dimension.
func (l lengths) unit() string {
	switch {
	case l.system == US:
		return "ft and in"
	case l.small:
		return "mm"
	}
	return "m"
}

// length writes a length in m as on the drawing: without unit in SI.
func (l lengths) length(metres float64) string {
	switch {
	case l.system == US:
		return imperial(metres, "' ", `"`, "'")
	case l.small:
		return decimal(metres*1000, 2)
	}
	return decimal(metres, 4)
}

// inWords writes a length in m for a sentence, with its unit.
func (l lengths) inWords(metres float64) string {
	if l.system == US {
		return imperial(metres, " ft ", " in", " ft")
	}
	return l.length(metres) + " " + l.unit()
}

// area writes an area given in m² with its unit.
func (l lengths) area(squareMetres float64) string {
	if l.system == US {
		return decimal(squareMetres/(metresPerFoot*metresPerFoot), 3) + " ft²"
	}
	return decimal(squareMetres, 4) + " m²"
}

// decimal rounds to a number of places, or to three digits if little would be
// left; what is below a thousandth of the last place is 0.
func decimal(value float64, places int) string {
	step := 1.0
	for range places {
		step *= 10
	}
	if size := math.Abs(value) * step; size < 100 && size > 1e-3 {
		value, _ = strconv.ParseFloat(strconv.FormatFloat(value, 'g', 3, 64), 64)
		return strconv.FormatFloat(value, 'f', -1, 64)
	}
	return strconv.FormatFloat(math.Round(value*step)/step+0, 'f', -1, 64)
}

// imperial writes feet, inches and a fraction: to 1/64 in below 1 ft, to 1/16 in
// below 200 ft, to 1 in from there on, and as a decimal below 1/8 in. between stands after feet that
// inches follow, alone after feet that none do.
func imperial(metres float64, between, after, alone string) string {
	if metres < 0 {
		return "-" + imperial(-metres, between, after, alone)
	}
	inches := metres / metresPerInch
	if inches < 0.125 {
		return decimal(inches, 4) + after
	}
	parts := 64
	switch {
	case math.Round(inches) >= 200*12:
		parts = 1
	case math.Round(inches*64) >= 12*64:
		parts = 16
	}
	count := int(math.Round(inches * float64(parts)))
	feet, count := count/(12*parts), count%(12*parts)
	whole, over := count/parts, count%parts
	for over > 0 && over%2 == 0 {
		over, parts = over/2, parts/2
	}
	text := strconv.Itoa(whole) + after
	switch {
	case over > 0 && whole > 0:
		text = fmt.Sprintf("%d %d/%d%s", whole, over, parts, after)
	case over > 0:
		text = fmt.Sprintf("%d/%d%s", over, parts, after)
	case whole == 0 && feet > 0:
		return strconv.Itoa(feet) + alone
	}
	if feet > 0 {
		text = strconv.Itoa(feet) + between + text
	}
	return text
}
