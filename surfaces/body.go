package surfaces

import (
	"fmt"
	"math"
)

// Body is a fuselage, hull, pod or tank known by sections along its length:
// superellipses joined by straight lines from each point of one section to the
// same point of the next.
type Body struct {
	Stations []Station `json:"stations" doc:"sections from nose to tail, at least two, closed all round: of an open hull take a region with share_ratio; the same x_m twice is a step"`
	Nose     string    `json:"nose" doc:"the first station: open (the default), point (its width and height are 0) or flat (closed by a flat face)"`
	Tail     string    `json:"tail" doc:"the last station: open (the default), point or flat"`
}

// Station is one section of a body:
//
//	|y/(width/2)|ⁿ + |(z−z_m)/(height/2)|ⁿ = 1
//
// n = 2 is an ellipse, 1 a diamond, large n nears a rectangle.
type Station struct {
	XM       float64  `json:"x_m" limit:"[-500,500]" doc:"position along the body"`
	WidthM   float64  `json:"width_m" limit:"[0,100]" doc:"greatest width of the section"`
	HeightM  float64  `json:"height_m" limit:"[0,100]" doc:"greatest height of the section"`
	Exponent *float64 `json:"exponent,omitempty" limit:"[1,20]" doc:"2 (the default) for an ellipse, more for a boxier section"`
	ZM       float64  `json:"z_m" limit:"[-100,100]" doc:"height of the section's centre; 0 by default"`
}

// maxStations bounds a body; 20 stations already miss less than 0.3 % of a
// smooth hull (computed).
const maxStations = 500

// leastBay is the least distance of two stations, in m, that is not a step.
const leastBay = 1e-6

func newBody() *Body { return &Body{Nose: "open", Tail: "open"} }

// Kind implements Shape.
func (*Body) Kind() string { return "body" }

// Check implements Shape.
func (s *Body) Check(report func(pointer, code, detail string)) {
	if len(s.Stations) > maxStations {
		report("/stations", "too_many", fmt.Sprintf("the body has %d stations; at most %d are taken", len(s.Stations), maxStations))
		return
	}
	clean := inRange(s, report)
	ends := []string{"open", "point", "flat"}
	nose := oneOf("/nose", s.Nose, report, ends...)
	tail := oneOf("/tail", s.Tail, report, ends...)
	if len(s.Stations) < 2 {
		report("/stations", "required", fmt.Sprintf("the body has %d stations; give two or more", len(s.Stations)))
		return
	}
	if !clean {
		return
	}
	s.checkOrder(report)
	last := len(s.Stations) - 1
	if nose {
		s.checkPoint("nose", s.Nose, 0, report)
	}
	if tail {
		s.checkPoint("tail", s.Tail, last, report)
	}
}

// checkOrder reports stations that run backwards, steps that are none, and a
// body without any surface.
func (s *Body) checkOrder(report reporter) {
	ordered, extent := true, 0.0
	for i, station := range s.Stations {
		at := fmt.Sprintf("/stations/%d", i)
		extent = max(extent, station.WidthM, station.HeightM)
		if i == 0 {
			continue
		}
		before := s.Stations[i-1]
		switch {
		case station.XM < before.XM:
			ordered = false
			report(at+"/x_m", "not_increasing", fmt.Sprintf("x_m is %s after %s; list the stations from nose to tail", metres(station.XM), metres(before.XM)))
		case station.XM > before.XM && station.XM-before.XM < leastBay:
			report(at+"/x_m", "not_increasing", fmt.Sprintf("x_m is less than %s after the station before; repeat it exactly for a step", metres(leastBay)))
		case station.XM == before.XM && i > 1 && s.Stations[i-2].XM == before.XM:
			report(at+"/x_m", "not_increasing", fmt.Sprintf("x_m is %s three times; a step has two stations", metres(station.XM)))
		case station.XM == before.XM && !station.within(before) && !before.within(station):
			report(at, "inconsistent", fmt.Sprintf("the two sections of the step at %s cross each other; one must lie inside the other", metres(station.XM)))
		}
	}
	if ordered && (extent == 0 || s.Stations[0].XM == s.Stations[len(s.Stations)-1].XM) {
		report("/stations", "inconsistent", "the body has no length or no width and height; give stations with a size, apart from each other")
	}
}

// checkPoint reports an end said to be a point whose station has a size.
func (s *Body) checkPoint(end, form string, i int, report reporter) {
	if at := s.Stations[i]; form == "point" && max(at.WidthM, at.HeightM) > 0 {
		report("/"+end, "inconsistent", fmt.Sprintf(
			"%s is point, but station %d is %s wide and %s high; give it the width and height 0, or say flat or open", end, i, metres(at.WidthM), metres(at.HeightM)))
	}
}

// power is what the cosine of the parameter is raised to.
func (s Station) power() float64 { return 2 / or(s.Exponent, 2) }

// area returns the area enclosed by a section.
//
//	A = w·h·Γ(1+1/n)² / Γ(1+2/n)
//
// Source: identity (area of a superellipse).
func (s Station) area() float64 {
	n := or(s.Exponent, 2)
	return s.WidthM * s.HeightM * math.Gamma(1+1/n) * math.Gamma(1+1/n) / math.Gamma(1+2/n)
}

// within says whether a section lies inside another one of the same place,
// touching it at most, as seen at the nodes of its outline.
func (s Station) within(outer Station) bool {
	a, b, n := outer.WidthM/2, outer.HeightM/2, or(outer.Exponent, 2)
	const slack = 1e-9 // of the outer section's size
	inside := func(y, z float64) bool {
		if y > a+touch || math.Abs(z) > b+touch {
			return false
		}
		if a == 0 || b == 0 {
			return true
		}
		return math.Pow(y/a, n)+math.Pow(math.Abs(z)/b, n) <= 1+slack*n
	}
	for _, q := range newSectionArc(s, arcNodes(s)) {
		if !inside(q.y, s.ZM+q.z-outer.ZM) || !inside(q.y, s.ZM-q.z-outer.ZM) {
			return false
		}
	}
	return true
}
