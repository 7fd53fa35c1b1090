package marking

import (
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Star is a regular five-pointed star, one point up.
type Star struct {
	SizeM  float64 `json:"size_m" limit:"[0.001,100]" doc:"diameter of the circle through the points"`
	Colour string  `json:"colour" doc:"lower-case words"`
	Shared
}

func newStar() *Star { return &Star{Shared: usualShared()} }

// Kind implements Figure.
func (*Star) Kind() string { return "star" }

// Check implements Figure.
func (f *Star) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/colour", f.Colour, report)
}

// Layers implements Figure.
func (f *Star) Layers() []planar.Layer {
	return []planar.Layer{layer(f.Colour, starOutline(f.SizeM/2))}
}

func (f *Star) dimensions() []quantity.Working {
	return []quantity.Working{notch(f.SizeM / 2)}
}

// The angles of a regular star in the plane: neighbouring points and inner
// corners stand 36° apart.
const (
	degree   = math.Pi / 180
	starStep = 36 * degree
)

// notchRatio is the distance of the inner corners from the centre over that of
// the points, so that opposite edges lie on one line.
//
//	sin 18° / sin 54° = 1/φ²
func notchRatio() float64 { return math.Sin(18*degree) / math.Sin(54*degree) }

// starOutline is the star with its points at radius, about the origin.
func starOutline(radius float64) planar.Outline {
	points := make([]planar.Point, 10)
	for i := range points {
		r := radius
		if i%2 == 1 {
			r *= notchRatio()
		}
		points[i] = planar.Polar(planar.Point{}, r, 90*degree+float64(i)*starStep)
	}
	return planar.Polygon(points...)
}

func notch(radius float64) quantity.Working {
	return length("inner_corner_radius_m", radius*notchRatio(), "R·sin_18/sin_54", map[string]float64{"R": radius, "sin_18": math.Sin(18 * degree), "sin_54": math.Sin(54 * degree)}, "identity: regular star")
}
