package surfaces

// Measured is a surface whose area is known: from drawings, from a manual, from
// paper laid on it.
type Measured struct {
	AreaM2 float64 `json:"area_m2" limit:"[0.000001,100000]" doc:"area of the whole surface"`
	EdgeM  float64 `json:"edge_m" limit:"[0,100000]" doc:"length of its boundary, to be masked when it is painted; 0 (the default) for none"`
}

// Kind implements Shape.
func (*Measured) Kind() string { return "measured" }

// Check implements Shape.
func (s *Measured) Check(report func(pointer, code, detail string)) { inRange(s, report) }

// Measure implements Shape. The one face is called surface.
func (s *Measured) Measure() Measurement {
	m := Measurement{Method: "area as given", AccuracyPercent: accuracy(wayGiven)}
	m.face("surface", s.AreaM2, "A", map[string]float64{"A": s.AreaM2}, "given by the user")
	m.edge("surface", Open, s.EdgeM)
	return m
}
