package surfaces

import (
	"fmt"
	"math"
)

// Cap is the part of a sphere on one side of a plane: a dished cover.
type Cap struct {
	Round
	HeightM float64 `json:"height_m" limit:"[0.001,500]" doc:"from the rim's plane to the top; at most the sphere's diameter"`
}

// Kind implements Shape.
func (*Cap) Kind() string { return "cap" }

// Check implements Shape. The radius is the sphere's, not the rim's.
func (s *Cap) Check(report func(pointer, code, detail string)) {
	clean := inRange(s, report)
	if s.checkRound(report) && clean && s.HeightM > 2*s.radius() {
		report("/height_m", "inconsistent", fmt.Sprintf(
			"height_m is %s, more than the sphere's diameter of %s; the radius is that of the sphere, not of the rim", metres(s.HeightM), metres(2*s.radius())))
	}
}

// Measure implements Shape. The face, outside, ends at its rim.
//
//	area = 2π·R·h,  rim = 2π·√(h·(2R−h))
func (s *Cap) Measure() Measurement {
	r, h := s.radius(), s.HeightM
	m := Measurement{Method: "spherical cap from the sphere's radius and the cap's height", AccuracyPercent: accuracy(wayTaped)}
	m.face("outside", 2*math.Pi*r*h, "2π·R·h", map[string]float64{"R": r, "h": h}, "identity")
	m.edge("outside", Open, 2*math.Pi*math.Sqrt(h*(2*r-h)))
	return m
}
