package marking

import (
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Chevron is two arms that meet on an axis, pointing up, their ends cut
// parallel to the axis.
//
//	area      = 2·w·t / sin θ
//	perimeter = 4·w / sin θ + 2·t / sin θ
//
// w is half the width, t the width of the stripe and θ the angle of an arm to
// the axis. Source: plane geometry.
type Chevron struct {
	WidthM       float64 `json:"width_m" limit:"[0.001,1000]" doc:"across both arms"`
	StripeWidthM float64 `json:"stripe_width_m" limit:"[0.0005,100]" doc:"width of an arm, square to it"`
	AngleDeg     float64 `json:"angle_deg" limit:"[5,85]" doc:"of each arm to the axis; 45 unless given"`
	Colour       string  `json:"colour" doc:"lower-case words"`
	Shared
}

func newChevron() *Chevron { return &Chevron{AngleDeg: 45, Shared: usualShared()} }

// Kind implements Figure.
func (*Chevron) Kind() string { return "chevron" }

// Check implements Figure.
func (f *Chevron) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/colour", f.Colour, report)
}

// Layers implements Figure.
func (f *Chevron) Layers() []planar.Layer {
	half, rise, along := f.WidthM/2, f.WidthM/2/math.Tan(f.AngleDeg*degree), f.along()
	return []planar.Layer{layer(f.Colour, planar.Polygon(
		planar.Point{X: 0, Y: 0}, planar.Point{X: -half, Y: -rise}, planar.Point{X: -half, Y: -rise - along},
		planar.Point{X: 0, Y: -along}, planar.Point{X: half, Y: -rise - along}, planar.Point{X: half, Y: -rise}))}
}

// along is the width of an arm measured along the axis.
func (f *Chevron) along() float64 { return f.StripeWidthM / math.Sin(f.AngleDeg*degree) }

func (f *Chevron) dimensions() []quantity.Working {
	return []quantity.Working{
		length("width_along_axis_m", f.along(), "t/sin_θ", map[string]float64{"t": f.StripeWidthM, "sin_θ": math.Sin(f.AngleDeg * degree)}, identity),
	}
}
