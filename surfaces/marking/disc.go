package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

// Disc is a filled circle.
type Disc struct {
	SizeM  float64 `json:"size_m" limit:"[0.001,100]" doc:"diameter"`
	Colour string  `json:"colour" doc:"lower-case words"`
	Shared
}

func newDisc() *Disc { return &Disc{Shared: usualShared()} }

// Kind implements Figure.
func (*Disc) Kind() string { return "disc" }

// Check implements Figure.
func (f *Disc) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/colour", f.Colour, report)
}

// Layers implements Figure.
func (f *Disc) Layers() []planar.Layer {
	return []planar.Layer{layer(f.Colour, planar.Circle(planar.Point{}, f.SizeM/2))}
}

// Ring is the band between two circles of one centre; the base shows inside.
type Ring struct {
	SizeM      float64 `json:"size_m" limit:"[0.001,100]" doc:"outer diameter"`
	InnerSizeM float64 `json:"inner_size_m" limit:"[0.0005,100]" doc:"diameter of the hole, below size_m"`
	Colour     string  `json:"colour" doc:"lower-case words"`
	Shared
}

func newRing() *Ring { return &Ring{Shared: usualShared()} }

// Kind implements Figure.
func (*Ring) Kind() string { return "ring" }

// Check implements Figure. A ring narrower than a millionth of its diameter is
// refused: no brush follows it.
func (f *Ring) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) && f.InnerSizeM > f.SizeM*(1-1e-6) {
		report("/inner_size_m", "inconsistent", fmt.Sprintf("inner_size_m is %s; it must be below size_m, %s", metres(f.InnerSizeM), metres(f.SizeM)))
	}
	checkColour("/colour", f.Colour, report)
}

// Layers implements Figure.
func (f *Ring) Layers() []planar.Layer {
	return []planar.Layer{layer(f.Colour,
		planar.Circle(planar.Point{}, f.SizeM/2), planar.Circle(planar.Point{}, f.InnerSizeM/2).Reversed())}
}
