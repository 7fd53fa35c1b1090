package mesh

import (
	"bytes"
	"math"
	"strconv"
)

// coordinate reads one coordinate of a corner.
func coordinate(word []byte, at Place) (float64, error) {
	v, ok := decimal(word)
	if !ok {
		if len(word) == 0 {
			return 0, fault("syntax", at, "a coordinate is missing; a corner has three")
		}
		if v, err := strconv.ParseFloat(string(word), 64); err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			return 0, fault("not_a_number", at, "the coordinate %q is not a finite number", clip(word))
		}
		return 0, fault("syntax", at, "%q stands where a coordinate is expected; write it as 12.5 or 1.25e1", clip(word))
	}
	return v, checkCoordinate(v, at)
}

// checkCoordinate refuses what no part has: NaN, infinities and sizes beyond
// MaxCoordinate.
func checkCoordinate(v float64, at Place) error {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return fault("not_a_number", at, "a coordinate of a corner is %v, not a finite number", v)
	case math.Abs(v) > MaxCoordinate:
		return fault("out_of_range", at, "the coordinate %g is beyond %g; no part is that large in any unit", v, MaxCoordinate)
	}
	return nil
}

// decimal reads a number in decimal notation, and nothing else that
// strconv would take (hexadecimal, underscores, words).
func decimal(word []byte) (float64, bool) {
	for _, c := range word {
		if (c < '0' || c > '9') && c != '.' && c != '-' && c != '+' && c != 'e' && c != 'E' {
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(string(word), 64)
	if err != nil && math.IsInf(v, 0) {
		return v, true
	}
	return v, err == nil
}

// whole reads a whole number.
func whole(word []byte) (int64, bool) {
	v, err := strconv.ParseInt(string(bytes.TrimPrefix(word, []byte("+"))), 10, 64)
	return v, err == nil
}

// corner reads three coordinates from a line and returns what follows them.
func corner(line []byte, at Place) (p Point, rest []byte, err error) {
	for k := range p {
		var word []byte
		word, line = cutWord(line)
		if p[k], err = coordinate(word, at); err != nil {
			return p, nil, err
		}
	}
	return p, line, nil
}
