package marking

import "filmbuild/surfaces/planar"

// Stripe is a straight stripe along x, the same above and below its middle
// line: a rectangle, a trapezium, or with an end width of 0 a pennant.
type Stripe struct {
	LengthM   float64  `json:"length_m" limit:"[0.001,1000]" doc:"along the middle line"`
	WidthM    float64  `json:"width_m" limit:"[0.0005,100]" doc:"at the beginning"`
	EndWidthM *float64 `json:"end_width_m" limit:"[0,100]" doc:"at the other end, 0 for a point; as width_m unless given"`
	Colour    string   `json:"colour" doc:"lower-case words"`
	Stencil
}

func newStripe() *Stripe { return &Stripe{Stencil: usualStencil()} }

// Kind implements Figure.
func (*Stripe) Kind() string { return "stripe" }

// Check implements Figure.
func (f *Stripe) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/colour", f.Colour, report)
}

// Layers implements Figure.
func (f *Stripe) Layers() []planar.Layer {
	half := f.WidthM / 2
	end := half
	if f.EndWidthM != nil {
		end = *f.EndWidthM / 2
	}
	return []planar.Layer{layer(f.Colour, planar.Polygon(
		planar.Point{X: 0, Y: -half}, planar.Point{X: f.LengthM, Y: -end},
		planar.Point{X: f.LengthM, Y: end}, planar.Point{X: 0, Y: half}))}
}
