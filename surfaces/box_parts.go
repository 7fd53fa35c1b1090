package surfaces

// Extent implements Divisible.
func (s *Box) Extent() Extent {
	return Extent{To: s.LengthM, High: s.HeightM, Station: "from the front", Height: "from the bottom"}
}

// Between implements Divisible.
func (s *Box) Between(w Window) Measurement {
	m := partOf(s, "part "+w.String())
	low, high := max(w.Low, 0), min(w.High, s.HeightM)
	l, width, h := w.To-w.From, s.WidthM, high-low
	has := map[string]bool{
		"front": w.From <= 0, "back": w.To >= s.LengthM, "bottom": low <= 0, "top": high >= s.HeightM, "left": true, "right": true,
	}
	for _, f := range []struct {
		name string
		area float64
	}{{"top", l * width}, {"bottom", l * width}, {"left", l * h}, {"right", l * h}, {"front", width * h}, {"back", width * h}} {
		if has[f.name] {
			m.add(f.name, f.area)
		}
	}
	for _, e := range []struct {
		a, b   string
		length float64
	}{
		{"left", "top", l}, {"right", "top", l}, {"left", "bottom", l}, {"right", "bottom", l},
		{"left", "front", h}, {"right", "front", h}, {"left", "back", h}, {"right", "back", h},
		{"top", "front", width}, {"top", "back", width}, {"bottom", "front", width}, {"bottom", "back", width},
	} {
		switch {
		case has[e.a] && has[e.b]:
			m.edge(e.a, e.b, e.length)
		case has[e.a]:
			m.edge(e.a, Cut, e.length)
		case has[e.b]:
			m.edge(e.b, Cut, e.length)
		}
	}
	m.noteParts("by length times height of the part of each face", w.terms(), 0)
	return m
}

// Lines implements Striped: the lines round each face.
func (s *Box) Lines() []StripLine {
	var lines []StripLine
	for _, name := range []string{"top", "bottom", "left", "right", "front", "back"} {
		lines = append(lines, StripLine{Name: name, Measured: "away from the line round that face, on it and on the faces beside it"})
	}
	return lines
}

// Strip implements Striped. On the face itself the strip is a frame, on each
// of the four beside it a band.
func (s *Box) Strip(along string, width float64, _ Window) (Measurement, error) {
	m := partOf(s, "strip "+metres(width)+" wide along the line round "+along)
	l, w, h := s.LengthM, s.WidthM, s.HeightM
	var a, b, depth float64
	var beside [4]string // two along a, two along b
	switch along {
	case "top", "bottom":
		a, b, depth, beside = l, w, h, [4]string{"left", "right", "front", "back"}
	case "left", "right":
		a, b, depth, beside = l, h, w, [4]string{"top", "bottom", "front", "back"}
	default:
		a, b, depth, beside = w, h, l, [4]string{"top", "bottom", "left", "right"}
	}
	inA, inB := max(0, a-2*width), max(0, b-2*width)
	reach := min(width, depth)
	m.add(along, a*b-inA*inB)
	if inA > 0 && inB > 0 {
		m.edge(along, Cut, 2*inA+2*inB)
	}
	for i, name := range beside {
		length := a
		if i >= 2 {
			length = b
		}
		m.add(name, length*reach)
		m.edge(along, name, length)
		m.edge(name, Cut, length) // where the strip ends, at the far edge too if it is as deep
	}
	for i, name := range beside {
		for k, other := range beside {
			if i < 2 && k >= 2 {
				m.edge(name, other, reach)
			}
		}
	}
	m.noteParts("by a·b − (a−2·width)·(b−2·width) on the face itself, length times width on those beside it", map[string]float64{"a": a, "b": b, "width": width}, 0)
	return m, nil
}
