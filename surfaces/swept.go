package surfaces

// Swept is a closed outline carried along a straight line: an extrusion, a
// mast, a hollow section measured round with a tape.
type Swept struct {
	PerimeterM float64 `json:"perimeter_m" limit:"[0.001,500]" doc:"length once round the outline"`
	LengthM    float64 `json:"length_m" limit:"[0.001,500]" doc:"along the part"`
}

// Kind implements Shape.
func (*Swept) Kind() string { return "swept" }

// Check implements Shape.
func (s *Swept) Check(report func(pointer, code, detail string)) { inRange(s, report) }

// Measure implements Shape. The face, side, ends at both ends of the part.
func (s *Swept) Measure() Measurement {
	m := Measurement{Method: "perimeter times length", AccuracyPercent: accuracy(wayTaped)}
	m.face("side", s.PerimeterM*s.LengthM, "P·l", map[string]float64{"P": s.PerimeterM, "l": s.LengthM}, "identity")
	m.edge("side", Open, 2*s.PerimeterM)
	return m
}
