package surfaces

// Box is a rectangular block: six faces, seen from behind it looking forward.
type Box struct {
	LengthM float64 `json:"length_m" limit:"[0.001,500]" doc:"front to back"`
	WidthM  float64 `json:"width_m" limit:"[0.001,500]" doc:"left to right"`
	HeightM float64 `json:"height_m" limit:"[0.001,500]" doc:"bottom to top"`
}

// Kind implements Shape.
func (*Box) Kind() string { return "box" }

// Check implements Shape.
func (s *Box) Check(report func(pointer, code, detail string)) { inRange(s, report) }

// Measure implements Shape. Every face meets four others along the twelve edges.
func (s *Box) Measure() Measurement {
	l, w, h := s.LengthM, s.WidthM, s.HeightM
	m := Measurement{Method: "rectangular block from its length, width and height", AccuracyPercent: accuracy(wayTaped)}
	for _, f := range []struct {
		name, formula string
		across, along float64
		symbols       [2]string
	}{
		{"top", "l·w", l, w, [2]string{"l", "w"}}, {"bottom", "l·w", l, w, [2]string{"l", "w"}},
		{"left", "l·h", l, h, [2]string{"l", "h"}}, {"right", "l·h", l, h, [2]string{"l", "h"}},
		{"front", "w·h", w, h, [2]string{"w", "h"}}, {"back", "w·h", w, h, [2]string{"w", "h"}},
	} {
		m.face(f.name, f.across*f.along, f.formula, map[string]float64{f.symbols[0]: f.across, f.symbols[1]: f.along}, "identity")
	}
	for _, level := range []string{"top", "bottom"} {
		m.edge(level, "left", l)
		m.edge(level, "right", l)
		m.edge(level, "front", w)
		m.edge(level, "back", w)
	}
	for _, side := range []string{"left", "right"} {
		m.edge(side, "front", h)
		m.edge(side, "back", h)
	}
	return m
}
