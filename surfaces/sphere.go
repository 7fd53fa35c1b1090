package surfaces

import "math"

// Sphere is a whole ball.
type Sphere struct{ Round }

// Kind implements Shape.
func (*Sphere) Kind() string { return "sphere" }

// Check implements Shape.
func (s *Sphere) Check(report func(pointer, code, detail string)) {
	inRange(s, report)
	s.checkRound(report)
}

// Measure implements Shape. The one face, outside, has no boundary.
func (s *Sphere) Measure() Measurement {
	r := s.radius()
	m := Measurement{Method: "sphere from its radius", AccuracyPercent: accuracy(wayTaped)}
	m.face("outside", 4*math.Pi*r*r, "4π·r²", map[string]float64{"r": r}, "identity")
	return m
}
