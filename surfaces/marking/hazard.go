package marking

import (
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Hazard is an upright panel with slanting stripes of two colours and equal
// width that rise to the right. At phase 0 the first dark stripe begins in the
// lower left corner.
//
//	dark where (x − y·cot α − phase·p) mod p < p/2,  p = 2·s / sin α
//
// s is the width of a stripe square to it, α its angle to the horizontal and p
// the period along the bottom. A panel of finite size is seldom half and half:
// the phase matters.
//
// Source: plane geometry; stripes of equal width at 45° are those of the
// object markers and barricades of the traffic control manual (MUTCD).
type Hazard struct {
	WidthM       float64 `json:"width_m" limit:"[0.001,1000]" doc:"of the panel, from side to side"`
	HeightM      float64 `json:"height_m" limit:"[0.001,100]" doc:"of the panel, from bottom to top"`
	StripeWidthM float64 `json:"stripe_width_m" limit:"[0.0005,100]" doc:"of every stripe, square to it"`
	AngleDeg     float64 `json:"angle_deg" limit:"[10,90]" doc:"of the stripes to the horizontal; 45 unless given"`
	PhaseRatio   float64 `json:"phase_ratio" limit:"[0,1)" doc:"shift of the stripes to the right, as a part of one dark and one light stripe; 0 unless given"`
	DarkColour   string  `json:"dark_colour" doc:"black unless given"`
	LightColour  string  `json:"light_colour" doc:"yellow unless given"`
	Shared
}

func newHazard() *Hazard {
	return &Hazard{AngleDeg: 45, DarkColour: "black", LightColour: "yellow", Shared: usualShared()}
}

// Kind implements Figure.
func (*Hazard) Kind() string { return "hazard" }

// mostStripes is the greatest number of dark stripes; it keeps the work
// bounded.
const mostStripes = 500

// Check implements Figure.
func (f *Hazard) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) {
		if n := (f.WidthM + f.slant()) / f.period(); n > mostStripes {
			report("/stripe_width_m", "too_many", fmt.Sprintf("the panel would have %.0f dark stripes; the most is %d: make the stripes wider or measure a part of the panel", n, mostStripes))
		}
	}
	checkColour("/dark_colour", f.DarkColour, report)
	checkColour("/light_colour", f.LightColour, report)
}

// period is the width of a dark and a light stripe along the bottom.
func (f *Hazard) period() float64 { return 2 * f.StripeWidthM / math.Sin(f.AngleDeg*degree) }

// slant is how far a stripe leans over the height of the panel.
func (f *Hazard) slant() float64 {
	if f.AngleDeg == 90 {
		return 0
	}
	return f.HeightM / math.Tan(f.AngleDeg*degree)
}

// Layers implements Figure. Every dark stripe is cut off at the sides of the
// panel.
func (f *Hazard) Layers() []planar.Layer {
	w, h, p, slant := f.WidthM, f.HeightM, f.period(), f.slant()
	point := func(x, y float64) planar.Point { return planar.Point{X: x, Y: y} }
	dark := planar.Layer{Colour: f.DarkColour}
	for k := -math.Ceil(slant/p) - 1; (k+f.PhaseRatio)*p < w; k++ {
		x := (k + f.PhaseRatio) * p
		stripe := []planar.Point{point(x, 0), point(x+p/2, 0), point(x+p/2+slant, h), point(x+slant, h)}
		if stripe = cutAt(cutAt(stripe, 0, 1), w, -1); len(stripe) > 0 {
			dark.Outline = append(dark.Outline, planar.Polygon(stripe...))
		}
	}
	return []planar.Layer{layer(f.LightColour, planar.Rectangle(point(0, 0), point(w, h))), dark}
}

// cutAt keeps the part of a convex polygon to the right of the upright line at
// x where side is 1, to its left where side is -1.
func cutAt(polygon []planar.Point, x, side float64) []planar.Point {
	var kept []planar.Point
	for i, p := range polygon {
		q := polygon[(i+1)%len(polygon)]
		before, after := (p.X-x)*side, (q.X-x)*side
		if before >= 0 {
			kept = append(kept, p)
		}
		if before*after < 0 {
			kept = append(kept, planar.Point{X: x, Y: p.Y + (q.Y-p.Y)*(x-p.X)/(q.X-p.X)})
		}
	}
	return kept
}

func (f *Hazard) dimensions() []quantity.Working {
	return []quantity.Working{
		length("period_m", f.period(), "2·s/sin_α", map[string]float64{"s": f.StripeWidthM, "sin_α": math.Sin(f.AngleDeg * degree)}, identity),
	}
}
