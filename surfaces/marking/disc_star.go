package marking

import (
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// DiscStar is a five-pointed star on the disc through its points, the form of
// 1942 and 1943.
type DiscStar struct {
	SizeM      float64 `json:"size_m" limit:"[0.001,100]" doc:"diameter of the disc, and of the circle through the points"`
	StarColour string  `json:"star_colour" doc:"white unless given"`
	DiscColour string  `json:"disc_colour" doc:"blue unless given"`
	Shared
}

func newDiscStar() *DiscStar {
	return &DiscStar{StarColour: "white", DiscColour: "blue", Shared: usualShared()}
}

// Kind implements Figure.
func (*DiscStar) Kind() string { return "disc_star" }

// Check implements Figure.
func (f *DiscStar) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/star_colour", f.StarColour, report)
	checkColour("/disc_colour", f.DiscColour, report)
}

// Layers implements Figure.
func (f *DiscStar) Layers() []planar.Layer {
	r := f.SizeM / 2
	return []planar.Layer{
		layer(f.DiscColour, planar.Circle(planar.Point{}, r)),
		layer(f.StarColour, starOutline(r)),
	}
}

func (f *DiscStar) dimensions() []quantity.Working {
	return []quantity.Working{notch(f.SizeM / 2)}
}

const sourceStar1919 = "1947 article by an army captain on aircraft markings: red centre tangent to the inner projection of the points, read as inscribed in the inner pentagon"

// Star1919 is the form of 1919 to 1942: a blue disc, a white star with its
// points on the rim, and a red disc in the middle that touches the sides of
// the star's inner pentagon.
//
//	red diameter = size · sin 18°
type Star1919 struct {
	SizeM float64 `json:"size_m" limit:"[0.001,100]" doc:"diameter of the disc, and of the circle through the points"`
	Shared
}

func newStar1919() *Star1919 { return &Star1919{Shared: usualShared()} }

// Kind implements Figure.
func (*Star1919) Kind() string { return "star_1919" }

// Check implements Figure.
func (f *Star1919) Check(report func(pointer, code, detail string)) { inRange(f, report) }

// Layers implements Figure.
func (f *Star1919) Layers() []planar.Layer {
	r := f.SizeM / 2
	return []planar.Layer{
		layer("blue", planar.Circle(planar.Point{}, r)),
		layer("white", starOutline(r)),
		layer("red", planar.Circle(planar.Point{}, r*math.Sin(18*degree))),
	}
}

func (f *Star1919) dimensions() []quantity.Working {
	return []quantity.Working{
		notch(f.SizeM / 2),
		length("red_diameter_m", f.SizeM*math.Sin(18*degree), "D·sin_18", map[string]float64{"D": f.SizeM, "sin_18": math.Sin(18 * degree)}, sourceStar1919),
	}
}
