package surfaces

// lengthwise measures a part of a shape of one section from the measurement
// of the same shape of that length: its cut ends lie in the paint unless they
// are ends of the whole.
func lengthwise(s, part Shape, w Window, length float64) Measurement {
	short := part.Measure()
	m := partOf(s, "part "+w.String())
	inner := 0.0 // ends of the part within the shape
	if w.From > 0 {
		inner++
	}
	if w.To < length {
		inner++
	}
	for _, f := range short.Faces {
		m.add(f.Name, f.AreaM2)
	}
	for _, e := range short.Edges {
		a, b := e.Between[0], e.Between[1]
		end := 0.0 // length of this line at one end of the part
		if b == Open || b == "back" && a == "front" {
			end = short.areaOf(a) / (w.To - w.From)
		}
		m.edge(a, b, e.LengthM-inner*end)
		m.edge(a, Cut, inner*end)
		if b != Open && end > 0 {
			m.edge(b, Cut, inner*end)
		}
	}
	for _, f := range m.Faces {
		m.note(f.Name+"_area_m2", f.AreaM2, "m²", "girth·(x2−x1)", map[string]float64{"girth": f.AreaM2 / (w.To - w.From), "x1": w.From, "x2": w.To}, "identity")
	}
	return m
}

// areaOf is the area of one face, 0 for a face the shape does not have.
func (m Measurement) areaOf(name string) float64 {
	for _, f := range m.Faces {
		if f.Name == name {
			return f.AreaM2
		}
	}
	return 0
}

// Extent implements Divisible.
func (s *Bar) Extent() Extent { return Extent{To: s.LengthM, Station: "from one end"} }

// Between implements Divisible.
func (s *Bar) Between(w Window) Measurement {
	part := *s
	part.LengthM = w.To - w.From
	return lengthwise(s, &part, w, s.LengthM)
}

// Extent implements Divisible.
func (s *Swept) Extent() Extent { return Extent{To: s.LengthM, Station: "from one end"} }

// Between implements Divisible.
func (s *Swept) Between(w Window) Measurement {
	return lengthwise(s, &Swept{s.PerimeterM, w.To - w.From}, w, s.LengthM)
}

// Extent implements Divisible.
func (s *Corrugated) Extent() Extent {
	return Extent{To: s.LengthM, Station: "along the corrugations, from one end"}
}

// Between implements Divisible.
func (s *Corrugated) Between(w Window) Measurement {
	part := *s
	part.LengthM = w.To - w.From
	return lengthwise(s, &part, w, s.LengthM)
}

// Lines implements Striped.
func (s *Corrugated) Lines() []StripLine {
	return []StripLine{{Name: "outline", Measured: "on the skin, as on the sheet unrolled"}}
}

// Strip implements Striped. A corrugated sheet unrolls to a rectangle, and the
// strip to a frame in it.
func (s *Corrugated) Strip(along string, width float64, _ Window) (Measurement, error) {
	m := partOf(s, "strip "+metres(width)+" wide along "+along)
	factor, _, _ := s.factor()
	across := s.WidthM * factor
	inA, inB := max(0, s.LengthM-2*width), max(0, across-2*width)
	behind := Open
	if s.Sides == 2 {
		behind = "back"
	}
	for _, name := range []string{"front", "back"}[:s.Sides] {
		m.add(name, s.LengthM*across-inA*inB)
		if inA > 0 && inB > 0 {
			m.edge(name, Cut, 2*inA+2*inB)
		}
	}
	m.edge("front", behind, 2*(s.LengthM+across))
	m.noteParts("l·w·f − (l−2·width)·(w·f−2·width)", map[string]float64{"l": s.LengthM, "w": s.WidthM, "f": factor, "width": width}, 0)
	return m, nil
}
