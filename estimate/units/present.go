package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// TemperatureDifference is the suffix for a number of degrees between two
// temperatures, such as a margin above the dew point: 3 °C is 5.4 °F.
const TemperatureDifference = "c_difference"

// System is the units printed for people. The zero value is SI.
type System int

const (
	SI System = iota
	US        // US customary units
)

// ParseSystem reads "si" or "us".
func ParseSystem(text string) (System, error) {
	switch text {
	case "si":
		return SI, nil
	case "us":
		return US, nil
	}
	return SI, fmt.Errorf("units %q are not known; give si or us", text)
}

func (s System) String() string {
	if s == US {
		return "us"
	}
	return "si"
}

// target is what a suffix stands for and how people are shown it.
type target struct {
	suffix     string
	unit       unit
	si, us     string   // as printed
	want       []string // units to suggest
	difference bool     // of temperatures: the zero of the scale plays no part

	multiply, divide, shift float64 // us = si · multiply / divide + shift
}

// printIn prepares the step from the target's own unit to the one for people.
func (t *target) printIn(people unit) {
	ratio := t.unit.factor.times(people.factor.inverse())
	ratio.num, ratio.den = reduced(ratio.num, max(ratio.den, 1))
	t.multiply, t.divide = ratio.float64(), 1
	if ratio.wide == nil && ratio.divides() {
		t.multiply, t.divide = float64(ratio.num), float64(ratio.den)
	}
	if !t.difference {
		t.shift = people.offset.negated().times(people.factor.inverse()).float64()
	}
}

func (t *target) present(value float64, system System) (float64, string) {
	if system == US {
		return value*t.multiply/t.divide + t.shift, t.us
	}
	return value, t.si
}

// Present returns a value of the wire, in the unit that suffix stands for, as
// the system shows it, with the unit to print beside it: 3.048 with m in US is
// 10, "ft". A suffix in no table leaves the value as it is.
func Present(value float64, suffix string, system System) (float64, string) {
	if errTables == nil {
		if t := tables.targets[suffix]; t != nil {
			return t.present(value, system)
		}
	}
	return value, ""
}

// PresentUnit is Present for a value that carries its printed SI unit, as order
// lines and workings do: L, kg, m², h, pcs. A unit in no table is left as it is.
func PresentUnit(value float64, unit string, system System) (float64, string) {
	if errTables == nil {
		if t := tables.printed[unit]; t != nil {
			return t.present(value, system)
		}
	}
	return value, unit
}

// mostDecimals keeps a tiny number from filling a table; below it a film is
// thinner than an atom and a volume less than a drop.
const mostDecimals = 9

// Format prints a value for a table with the given significant digits: no
// exponent, no thousands separators, no trailing zeros after the point. Digits
// before the point are never cut, so 12345.6 with 3 is 12346. A value that is
// no number is printed as "-".
func Format(value float64, digits int) string {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return "-"
	}
	if value == 0 {
		return "0"
	}
	scientific := strconv.FormatFloat(value, 'e', max(digits, 1)-1, 64)
	_, exponentText, _ := strings.Cut(scientific, "e")
	exponent, _ := strconv.Atoi(exponentText) // FormatFloat always writes one
	decimals := min(max(digits-1-exponent, 0), mostDecimals)
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if decimals > 0 {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
