package surfaces

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

// Hole is an opening in a panel: round, rectangular, or of any straight-sided
// outline. A round or rectangular hole is placed by its centre from the lower
// left corner of the panel (the origin of a panel given by its outline); an
// outline is drawn from that same corner.
type Hole struct {
	DiameterM     *float64     `json:"diameter_m,omitempty" limit:"[0.001,500]" doc:"a round hole"`
	WidthM        *float64     `json:"width_m,omitempty" limit:"[0.001,500]" doc:"a rectangular hole: left to right"`
	HeightM       *float64     `json:"height_m,omitempty" limit:"[0.001,500]" doc:"a rectangular hole: bottom to top"`
	CornerRadiusM *float64     `json:"corner_radius_m,omitempty" limit:"[0,250]" doc:"of a rectangular hole; 0 (the default) for sharp corners"`
	Outline       [][2]float64 `json:"outline,omitempty" unit:"m" doc:"a hole with straight sides: corners [x, y] in order, from the panel's lower left corner"`
	XM            *float64     `json:"x_m,omitempty" limit:"[-500,500]" doc:"centre of a round or rectangular hole, right of the panel's lower left corner; the middle for an only hole without place"`
	YM            *float64     `json:"y_m,omitempty" limit:"[-500,500]" doc:"centre of a round or rectangular hole, above the panel's lower left corner"`
}

// PlacedHoles returns the holes with their places. The only hole of a
// rectangular panel may be given without one: then it lies in the middle, and
// its area and edge are the same anywhere.
func (s *Panel) PlacedHoles() []Hole {
	if len(s.Holes) != 1 || s.WidthM == nil || s.HeightM == nil {
		return s.Holes
	}
	h := s.Holes[0]
	if h.XM != nil || h.YM != nil || len(h.Outline) > 0 {
		return s.Holes
	}
	h.XM, h.YM = pointer(*s.WidthM/2), pointer(*s.HeightM/2)
	return []Hole{h}
}

// figure is the hole's exact form, for a hole that check passed.
func (h Hole) figure() planar.Outline {
	x, y := or(h.XM, 0), or(h.YM, 0)
	switch {
	case h.DiameterM != nil:
		return planar.Circle(planar.Point{X: x, Y: y}, *h.DiameterM/2)
	case len(h.Outline) > 0:
		return straight(corners(h.Outline))
	}
	return roundedRectangle(x, y, or(h.WidthM, 0), or(h.HeightM, 0), or(h.CornerRadiusM, 0))
}

// UnitedHoles are the closed lines round holes that overlap or touch, and the
// numbers of the holes that lie alone. It is meant for a panel that Check
// passed, of which no hole is left out.
func (s *Panel) UnitedHoles() (alone []int, lines []planar.Outline) {
	holes := s.cutouts()
	groups, err := together(holes)
	if err != nil {
		return nil, nil
	}
	for _, g := range groups {
		if len(g) == 1 {
			alone = append(alone, g[0])
			continue
		}
		seen, err := layout(planar.Layer{Colour: cutout, Outline: chosen(holes, g)})
		if err != nil {
			return nil, nil
		}
		for _, l := range seen.Loops() {
			lines = append(lines, l.Outline)
		}
	}
	return alone, lines
}

// check reports the faults of one hole by itself and says whether there is none.
// The limits of single fields are checked with the panel's.
func (h Hole) check(at string, report reporter) bool {
	rectangle := h.WidthM != nil || h.HeightM != nil
	forms := 0
	for _, used := range []bool{h.DiameterM != nil, rectangle, len(h.Outline) > 0} {
		if used {
			forms++
		}
	}
	switch {
	case forms == 0:
		report(at, "required", "the hole has no size; give diameter_m, or width_m and height_m, or outline")
		return false
	case forms > 1:
		report(at, "inconsistent", "the hole has more than one form; give diameter_m, or width_m and height_m, or outline")
		return false
	}
	clean := true
	keep := func(ok bool) { clean = ok && clean }
	if len(h.Outline) > 0 {
		keep(checkOutline(at+"/outline", h.Outline, report))
		keep(notApplicable(at+"/x_m", h.XM, "an outline is already placed by its corners", report))
		keep(notApplicable(at+"/y_m", h.YM, "an outline is already placed by its corners", report))
	} else {
		keep(given(at+"/x_m", h.XM, report))
		keep(given(at+"/y_m", h.YM, report))
	}
	if rectangle {
		keep(checkRectangle(at, h.WidthM, h.HeightM, h.CornerRadiusM, report))
	} else {
		keep(notApplicable(at+"/corner_radius_m", h.CornerRadiusM, "only a rectangle has rounded corners", report))
	}
	return clean
}

// checkRectangle reports a missing side and a corner radius that does not fit.
func checkRectangle(at string, width, height, corner *float64, report reporter) bool {
	clean := given(at+"/width_m", width, report)
	clean = given(at+"/height_m", height, report) && clean
	if clean && *width > 0 && *height > 0 && or(corner, 0) > min(*width, *height)/2 {
		report(at+"/corner_radius_m", "inconsistent", fmt.Sprintf(
			"corner_radius_m is %s, more than half of the smaller side of %s", metres(*corner), metres(min(*width, *height))))
		return false
	}
	return clean
}
