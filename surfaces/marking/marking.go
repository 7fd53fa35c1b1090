// Package marking knows the figures painted over a base coat (insignia,
// stripes, letters) and works out, from one governing dimension, the area of
// each colour and the length of every edge to be masked.
//
// Standing assumptions, for every kind:
//   - lengths are in m (a field ending in _mm is in mm), areas in m²;
//   - the figure is flat, or wrapped on a cylinder or cone, which changes no
//     area and no edge; sizes are measured along the skin unless they are said
//     to be projected;
//   - an upper colour hides the lower one and is not counted twice; what one
//     sees is exact for the figure described, to 1e-9 of its value or better;
//   - colours are free lower-case words; "base" stands for the ground.
package marking

import (
	"filmbuild/surfaces"
	"filmbuild/surfaces/planar"
)

// Figure is a marking that can be measured. There is one type per kind.
type Figure interface {
	// Kind is the name on the wire, such as roundel.
	Kind() string
	// Check reports every fault of the figure, with JSON pointers below it.
	// Rules between fields are checked once the fields are in range.
	Check(report func(pointer, code, detail string))
	// Layers returns the figure in m, about a point of its own, the lowest
	// colour first. It is meant for a figure that Check passed.
	Layers() []planar.Layer
	// StencilMargin is the film left on every side of the figure's box, in m.
	StencilMargin() float64

	shared() *Shared
}

// Measure checks a figure and measures it. The error is a surfaces.Faults with
// all that Check reported.
func Measure(f Figure) (Measurement, error) {
	var faults surfaces.Faults
	f.Check(func(pointer, code, detail string) {
		faults = append(faults, surfaces.Fault{Pointer: pointer, Code: code, Detail: detail})
	})
	if len(faults) > 0 {
		return Measurement{}, faults
	}
	a, err := Arrange(f)
	if err != nil {
		return Measurement{}, err
	}
	return measured(f, a)
}
