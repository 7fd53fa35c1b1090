package surfaces

import (
	"fmt"
	"math"
)

// Torus is a round tube bent to a ring: a tyre, a coil, a handwheel.
type Torus struct {
	RingRadiusM float64 `json:"ring_radius_m" limit:"[0.0005,250]" doc:"from the ring's axis to the middle of the tube"`
	TubeRadiusM float64 `json:"tube_radius_m" limit:"[0.0005,250]" doc:"of the tube; at most the ring's"`
}

// Kind implements Shape.
func (*Torus) Kind() string { return "torus" }

// Check implements Shape.
func (s *Torus) Check(report func(pointer, code, detail string)) {
	if inRange(s, report) && s.TubeRadiusM > s.RingRadiusM {
		report("/tube_radius_m", "inconsistent", fmt.Sprintf(
			"tube_radius_m is %s, more than the ring's %s; the tube would run through itself", metres(s.TubeRadiusM), metres(s.RingRadiusM)))
	}
}

// Measure implements Shape. The faces are outer and inner, farther from the
// axis than the tube's middle and nearer; they meet along two circles.
func (s *Torus) Measure() Measurement {
	R, r := s.RingRadiusM, s.TubeRadiusM
	m := Measurement{Method: "torus from the radii of ring and tube", AccuracyPercent: accuracy(wayTaped)}
	terms := map[string]float64{"R": R, "r": r}
	m.face("outer", 2*math.Pi*r*(math.Pi*R+2*r), "2π·r·(π·R+2r)", terms, "identity (Pappus)")
	m.face("inner", 2*math.Pi*r*(math.Pi*R-2*r), "2π·r·(π·R−2r)", terms, "identity (Pappus)")
	m.edge("outer", "inner", 4*math.Pi*R)
	return m
}
