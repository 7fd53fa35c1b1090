package surfaces

import "fmt"

// Extent implements Divisible. A wing has no heights: it may stand or lie.
func (s *Wing) Extent() Extent {
	return Extent{To: s.SpanM, Station: "from the root, along the true span"}
}

// Between implements Divisible.
func (s *Wing) Between(w Window) Measurement {
	loft := loftWing(s, w.From/s.SpanM, w.To/s.SpanM)
	m := partOf(s, "part "+w.String())
	for _, f := range loft.faces() {
		m.add(f.name, f.area)
	}
	m.noteParts("by the area of the ruled surface between the sections at x1 and x2", w.terms(), 0)
	s.lines(&m, loft) // and the tip, where it is a face
	return m
}

// Lines implements Striped.
func (s *Wing) Lines() []StripLine {
	const round = "round the skin, square to the edge"
	const alongSpan = "along the span; on a swept wing that is a little more than square to the line"
	return []StripLine{
		{"leading_edge", round, true}, {"trailing_edge", round, true},
		{"root", alongSpan, false}, {"tip", alongSpan, false},
	}
}

// Strip implements Striped. A strip along an edge lies on upper and lower side
// alike, each of the full width.
func (s *Wing) Strip(along string, width float64, w Window) (Measurement, error) {
	switch along {
	case "root":
		return s.Between(Window{From: 0, To: min(width, s.SpanM)}), nil
	case "tip":
		return s.Between(Window{From: max(0, s.SpanM-width), To: s.SpanM}), nil
	}
	m := partOf(s, fmt.Sprintf("strip %s wide along the %s", metres(width), along))
	from, to := w.From/s.SpanM, w.To/s.SpanM
	upper, err := s.edgeStrip(along, 1, width, from, to)
	if err != nil {
		return Measurement{}, err
	}
	lower, err := s.edgeStrip(along, -1, width, from, to)
	if err != nil {
		return Measurement{}, err
	}
	m.add("upper", upper.area)
	m.add("lower", lower.area)
	s.stripLines(&m, along, upper, lower, from, to)
	m.noteParts("by ∫∫ |∂r/∂u × ∂r/∂η| du dη, as far as the skin in planes square to the edge is within the width",
		map[string]float64{"width": width, "x1": w.From, "x2": w.To}, upper.bound+lower.bound)
	return m, nil
}

// stripLines adds the boundaries of a strip: the edge itself, both ends, the
// inner line, and the edge opposite where the strip reaches it.
func (s *Wing) stripLines(m *Measurement, along string, upper, lower edgeStrip, from, to float64) {
	loft := loftWing(s, from, to)
	own, opposite, thick := loft.leading, loft.trailing/(to-from), "trailing_edge"
	blunt := s.TrailingEdge == "open"
	if along == "trailing_edge" {
		own, opposite, thick = loft.trailing, loft.leading/(to-from), ""
	}
	if blunt && along == "trailing_edge" {
		m.edge("upper", "trailing_edge", own)
		m.edge("lower", "trailing_edge", own)
	} else {
		m.edge("upper", "lower", own)
	}
	if blunt && thick != "" {
		m.edge("upper", thick, opposite*upper.full())
		m.edge("lower", thick, opposite*lower.full())
	} else {
		both := upper.fullWith(lower)
		m.edge("upper", "lower", opposite*both)
		m.edge("upper", Cut, opposite*(upper.full()-both))
		m.edge("lower", Cut, opposite*(lower.full()-both))
	}
	inner, outer := Open, Open
	if from > 0 {
		inner = Cut
	}
	switch {
	case to < 1:
		outer = Cut
	case s.Tip == "capped" && s.Section != "flat" && loft.tipArea > 0:
		outer = "tip"
	}
	m.edge("upper", Cut, upper.line)
	m.edge("lower", Cut, lower.line)
	m.edge("upper", inner, upper.inner)
	m.edge("lower", inner, lower.inner)
	if outer == Open && s.Section == "flat" {
		m.edge("upper", "lower", upper.outer)
		return
	}
	m.edge("upper", outer, upper.outer)
	m.edge("lower", outer, lower.outer)
}
