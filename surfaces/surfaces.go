// Package surfaces turns the dimensions of a shape into the area of each of
// its faces and the length of the lines between them. It knows no paint.
//
// Standing assumptions, for every kind:
//   - lengths are in m (a field ending in _mm is in mm), areas in m²;
//   - a shape is one part: a wing is one side of the aircraft, root to tip;
//   - an area is exact for the shape described, to 1e-9 of its value or better;
//     how far the real part may differ from that shape is AccuracyPercent;
//   - a line is where a face ends, at another face or in the open; each line is
//     counted once, and the lines of one pair of neighbours are added up.
package surfaces

import (
	"fmt"
	"strings"
)

// Shape is a part that can be measured. There is one type per kind.
type Shape interface {
	// Kind is the name on the wire, such as wing.
	Kind() string
	// Check reports every fault of the dimensions, with JSON pointers below the
	// shape. Rules between fields are checked once the fields are in range.
	Check(report func(pointer, code, detail string))
	// Measure finds the faces and their lines. It is meant for a shape that
	// Check passed without a report; for such a shape it cannot fail.
	Measure() Measurement
}

// Measure checks a shape and measures it. The error is a Faults with all that
// Check reported.
func Measure(s Shape) (Measurement, error) {
	var faults Faults
	s.Check(func(pointer, code, detail string) {
		faults = append(faults, Fault{pointer, code, detail})
	})
	if len(faults) > 0 {
		return Measurement{}, faults
	}
	return s.Measure(), nil
}

// Fault is one thing wrong with a shape's dimensions.
type Fault struct {
	Pointer string // JSON pointer below the shape: /holes/0/diameter_m
	Code    string // stable, snake_case
	Detail  string // one sentence: what is wrong and what to do
}

// Faults are all the faults of one shape.
type Faults []Fault

func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fmt.Sprintf("%s: %s (%s)", fault.Pointer, fault.Detail, fault.Code)
	}
	return strings.Join(lines, "\n")
}
