package surfaces

import "math"

// Extent implements Divisible.
func (s *Body) Extent() Extent {
	e := Extent{From: s.Stations[0].XM, To: s.Stations[len(s.Stations)-1].XM, Low: math.Inf(1), High: math.Inf(-1),
		Station: "as x_m of the stations", Height: "as z_m of the stations"}
	for _, st := range s.Stations {
		e.Low, e.High = min(e.Low, st.ZM-st.HeightM/2), max(e.High, st.ZM+st.HeightM/2)
	}
	return e
}

// Between implements Divisible. The ring of a step belongs to the part that
// starts there.
func (s *Body) Between(w Window) Measurement {
	m := partOf(s, "part "+w.String())
	last := len(s.Stations) - 1
	half, bound := 0.0, 0.0
	for i := 1; i <= last; i++ {
		s0, s1 := s.Stations[i-1], s.Stations[i]
		if s1.XM == s0.XM {
			if s0.XM >= w.From && (s0.XM < w.To || s0.XM >= s.Stations[last].XM && s0.XM <= w.To) {
				half += s.step(&m, s0, s1, w)
			}
			continue
		}
		from, to := w.share(w.From, s0, s1), w.share(w.To, s0, s1)
		if to <= from {
			continue
		}
		for _, b := range quarters(s0, s1) {
			area, off := b.area(from, to, w.Low, w.High)
			half, bound = half+area, bound+2*off
			m.edge("left", "right", b.ridgeLine(from, to, w.Low, w.High))
			m.bothSides(Cut, b.heightLine(w.Low, from, to)+b.heightLine(w.High, from, to))
			if w.From > s.Stations[0].XM && s0.XM < w.From && w.From <= s1.XM {
				m.bothSides(Cut, b.sectionLine(from, w.Low, w.High))
			}
			if w.To < s.Stations[last].XM && s0.XM < w.To && w.To <= s1.XM {
				m.bothSides(Cut, b.sectionLine(to, w.Low, w.High))
			}
		}
	}
	s.cutBefore(&m, w)
	m.add("left", half)
	m.add("right", half)
	if w.From <= s.Stations[0].XM {
		m.bodyEndPart("nose", s.Nose, s.Stations[0], w)
	}
	if w.To >= s.Stations[last].XM {
		m.bodyEndPart("tail", s.Tail, s.Stations[last], w)
	}
	m.noteParts("by Σ ∫∫ |∂r/∂θ × ∂r/∂t| dθ dt within the bounds, and the rings of steps", w.terms(), bound)
	return m
}

// cutBefore adds the line where a part starts on a station, which the bay
// before it ends on and no bay within it cuts.
func (s *Body) cutBefore(m *Measurement, w Window) {
	for i := 1; i < len(s.Stations); i++ {
		s0, s1 := s.Stations[i-1], s.Stations[i]
		if s1.XM == w.From && s0.XM < w.From {
			for _, b := range quarters(s0, s1) {
				m.bothSides(Cut, b.sectionLine(1, w.Low, w.High))
			}
		}
	}
}

// share is where a station lies within a bay, from 0 to 1.
func (w Window) share(x float64, s0, s1 Station) float64 {
	return min(1, max(0, (x-s0.XM)/(s1.XM-s0.XM)))
}

// bothSides adds a line that the left and the right half have alike.
func (m *Measurement) bothSides(neighbour string, length float64) {
	m.edge("left", neighbour, length)
	m.edge("right", neighbour, length)
}

// step adds the lines of a step's ring and returns one side's area of it.
func (s *Body) step(m *Measurement, s0, s1 Station, w Window) float64 {
	ring := 0.0
	for _, b := range quarters(s0, s1) {
		ring += b.sectionArea(1, w.Low, w.High) - b.sectionArea(0, w.Low, w.High)
		m.edge("left", "right", b.ridgeLine(0, 1, w.Low, w.High))
	}
	for _, z := range []float64{w.Low, w.High} {
		m.bothSides(Cut, math.Abs(s1.halfWidth(z)-s0.halfWidth(z)))
	}
	return math.Abs(ring)
}

// halfWidth of a section at a height of the body.
func (s Station) halfWidth(z float64) float64 {
	k := math.Abs(z-s.ZM) / (s.HeightM / 2)
	if !(k < 1) {
		return 0
	}
	n := or(s.Exponent, 2)
	return s.WidthM / 2 * math.Pow(1-math.Pow(k, n), 1/n)
}

// bodyEndPart is bodyEnd as far as it lies between the heights.
func (m *Measurement) bodyEndPart(name, form string, s Station, w Window) {
	line, area := 0.0, 0.0
	for _, b := range quarters(s, s) {
		line += b.sectionLine(0, w.Low, w.High)
		area += 2 * b.sectionArea(0, w.Low, w.High)
	}
	switch {
	case s.area() == 0:
		m.edge("left", "right", line)
	case form == "flat":
		m.add(name, area)
		m.bothSides(name, line)
		m.edge(name, Cut, 2*s.halfWidth(w.Low)+2*s.halfWidth(w.High))
	default:
		m.bothSides(Open, line)
	}
}
