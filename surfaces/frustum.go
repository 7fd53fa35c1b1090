package surfaces

import "math"

// Frustum is a cone with its point cut off, or a whole cone when radius_2_m is 0.
type Frustum struct {
	Radius1M float64  `json:"radius_1_m" limit:"[0.0005,250]" doc:"radius at the first end"`
	Radius2M *float64 `json:"radius_2_m" limit:"[0,250]" doc:"radius at the second end; 0 for a cone"`
	LengthM  float64  `json:"length_m" limit:"[0.001,500]" doc:"along the axis"`
	Ends     int      `json:"ends" limit:"[0,2]" doc:"how many flat ends are painted: 0 (the default), 1 (the first end) or 2"`
}

// Kind implements Shape.
func (*Frustum) Kind() string { return "frustum" }

// Check implements Shape.
func (s *Frustum) Check(report func(pointer, code, detail string)) {
	inRange(s, report)
	given("/radius_2_m", s.Radius2M, report)
}

// Measure implements Shape. The faces are those of a cylinder.
func (s *Frustum) Measure() Measurement {
	r1, r2 := s.Radius1M, or(s.Radius2M, 0)
	slant := math.Hypot(s.LengthM, r1-r2)
	m := Measurement{Method: "cone frustum from its radii and length", AccuracyPercent: accuracy(wayTaped)}
	m.face("side", math.Pi*(r1+r2)*slant, "π·(r1+r2)·√(l²+(r1−r2)²)", map[string]float64{"r1": r1, "r2": r2, "l": s.LengthM}, "identity")
	m.disc("end_1", r1, s.Ends >= 1)
	m.disc("end_2", r2, s.Ends >= 2)
	return m
}
