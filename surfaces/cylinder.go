package surfaces

import "math"

// Cylinder is a round tube or tank with 0, 1 or 2 flat ends.
type Cylinder struct {
	Round
	LengthM float64 `json:"length_m" limit:"[0.001,500]" doc:"along the axis"`
	Ends    int     `json:"ends" limit:"[0,2]" doc:"how many flat ends are painted: 0 (the default), 1 or 2"`
}

// Kind implements Shape.
func (*Cylinder) Kind() string { return "cylinder" }

// Check implements Shape.
func (s *Cylinder) Check(report func(pointer, code, detail string)) {
	inRange(s, report)
	s.checkRound(report)
}

// Measure implements Shape. The faces are side, and end_1 and end_2 as far as
// there are ends; at an end that is not painted the side meets Open.
func (s *Cylinder) Measure() Measurement {
	r, l := s.radius(), s.LengthM
	m := Measurement{Method: "cylinder from its radius and length", AccuracyPercent: accuracy(wayTaped)}
	m.face("side", 2*math.Pi*r*l, "2π·r·l", map[string]float64{"r": r, "l": l}, "identity")
	m.disc("end_1", r, s.Ends >= 1)
	m.disc("end_2", r, s.Ends >= 2)
	return m
}

// disc closes an end of a side by a flat disc, or leaves it open.
func (m *Measurement) disc(name string, r float64, closed bool) {
	if !closed {
		m.edge("side", Open, 2*math.Pi*r)
		return
	}
	m.face(name, math.Pi*r*r, "π·r²", map[string]float64{"r": r}, "identity")
	m.edge("side", name, 2*math.Pi*r)
}
