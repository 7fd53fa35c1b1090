package sheet

import (
	"math"
	"strconv"
	"strings"
)

// length writes a length in m as it stands on the sheet: mm, to a tenth and
// below 10 mm to a hundredth, or inches to the nearest 64th.
func (l Look) length(m float64) string {
	if math.Abs(m) < 0.00995 {
		return l.rounded(m, 2)
	}
	return l.rounded(m, 1)
}

// tenth writes a length to a tenth of a mm, however short it is.
func (l Look) tenth(m float64) string { return l.rounded(m, 1) }

func (l Look) rounded(m float64, places int) string {
	if l.US {
		return inches(m / 0.0254)
	}
	text := strconv.FormatFloat(math.Abs(m*metre), 'f', places, 64)
	return signed(strings.TrimSuffix(strings.TrimRight(text, "0"), "."), m)
}

// inches writes whole inches and a fraction, as on a tape.
func inches(value float64) string {
	parts := int(math.Round(math.Abs(value) * 64))
	whole, part, of := parts/64, parts%64, 64
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	text := strconv.Itoa(whole)
	switch fraction := strconv.Itoa(part) + "/" + strconv.Itoa(of); {
	case part > 0 && whole > 0:
		text += " " + fraction
	case part > 0:
		text = fraction
	}
	return signed(text, value) + `"`
}

// signed puts a minus before what is below zero and does not round to it.
func signed(text string, value float64) string {
	if value < 0 && strings.Trim(text, "0.") != "" {
		return "−" + text
	}
	return text
}

// unit says in what lengths are written.
func (l Look) unit() string {
	if l.US {
		return "dimensions in inches"
	}
	return "dimensions in mm"
}

// together is a space at which no row ends.
const together = "\u00a0"

// areas is how areas in m² are written on a sheet of which the greatest is given:
// all in one unit.
func (l Look) areas(most float64) func(m2 float64) string {
	unit, each := "cm²", 1e-4
	switch {
	case l.US && most >= 0.0929:
		unit, each = "sq ft", 0.3048*0.3048
	case l.US:
		unit, each = "sq in", 0.0254*0.0254
	case most >= 0.1:
		unit, each = "m²", 1
	}
	return func(m2 float64) string { return significant(m2/each) + together + unit }
}

// run writes the length of lines together, in m or ft.
func (l Look) run(m float64) string {
	if l.US {
		return significant(m/0.3048) + together + "ft"
	}
	return significant(m) + together + "m"
}

// significant writes a number to four figures, without an exponent.
func significant(x float64) string {
	if x == 0 {
		return "0"
	}
	places := max(0, 3-int(math.Floor(math.Log10(math.Abs(x)))))
	text := strconv.FormatFloat(x, 'f', min(places, 6), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	return text
}
