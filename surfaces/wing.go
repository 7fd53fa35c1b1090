package surfaces

import "math"

// Wing is one side of a wing, tailplane or fin, or a pylon, strut or blade:
// straight lines from each point of the root section to the same point of the
// tip section. Both sections are of one family.
type Wing struct {
	RootChordM          float64  `json:"root_chord_m" limit:"[0.001,100]" doc:"chord where the wing leaves the body"`
	TipChordM           *float64 `json:"tip_chord_m" limit:"[0,100]" doc:"chord at the tip; 0 for a pointed one"`
	SpanM               float64  `json:"span_m" limit:"[0.001,200]" doc:"root to tip, along the true span (not its projection on the ground)"`
	SweepLEDeg          float64  `json:"sweep_le_deg" limit:"(-85,85)" doc:"sweep of the leading edge, positive aft; 0 by default"`
	RootThicknessRatio  *float64 `json:"root_thickness_ratio,omitempty" limit:"[0.001,0.5]" doc:"greatest thickness over chord at the root; not for a flat section"`
	TipThicknessRatio   *float64 `json:"tip_thickness_ratio,omitempty" limit:"[0.001,0.5]" doc:"the same at the tip; that of the root by default"`
	Section             string   `json:"section" doc:"naca (four-digit, the default), biconvex (circular arcs), double_wedge, elliptic or flat"`
	CamberRatio         float64  `json:"camber_ratio" limit:"[0,0.15]" doc:"of a naca section: greatest camber over chord; 0 by default"`
	CamberPositionRatio *float64 `json:"camber_position_ratio,omitempty" limit:"[0.1,0.9]" doc:"of a cambered naca section: where along the chord the camber is greatest"`
	Tip                 string   `json:"tip" doc:"open (the default: the two faces end there) or capped (the tip section is a face)"`
	TrailingEdge        string   `json:"trailing_edge" doc:"closed (sharp, the default) or open (the tabulated naca section with its thick trailing edge)"`
}

func newWing() *Wing {
	return &Wing{Section: "naca", Tip: "open", TrailingEdge: "closed"}
}

// Kind implements Shape.
func (*Wing) Kind() string { return "wing" }

// Check implements Shape.
func (s *Wing) Check(report func(pointer, code, detail string)) {
	inRange(s, report)
	given("/tip_chord_m", s.TipChordM, report)
	oneOf("/tip", s.Tip, report, "capped", "open")
	edge := oneOf("/trailing_edge", s.TrailingEdge, report, "closed", "open")
	if !oneOf("/section", s.Section, report, "naca", "biconvex", "double_wedge", "elliptic", "flat") {
		return
	}
	if s.Section == "flat" {
		notApplicable("/root_thickness_ratio", s.RootThicknessRatio, "a flat section has no thickness", report)
		notApplicable("/tip_thickness_ratio", s.TipThicknessRatio, "a flat section has no thickness", report)
	} else {
		given("/root_thickness_ratio", s.RootThicknessRatio, report)
	}
	s.checkNACA(edge, report)
}

// checkNACA reports what only a naca section has on another one, and a camber
// without its place.
func (s *Wing) checkNACA(edge bool, report reporter) {
	if s.Section == "naca" {
		if s.CamberRatio > 0 {
			given("/camber_position_ratio", s.CamberPositionRatio, report)
		}
		return
	}
	if s.CamberRatio > 0 {
		report("/camber_ratio", "not_applicable", "camber_ratio is given, but only a naca section is cambered here; leave it out")
	}
	notApplicable("/camber_position_ratio", s.CamberPositionRatio, "only a naca section is cambered here", report)
	if edge && s.TrailingEdge == "open" {
		report("/trailing_edge", "not_applicable", "trailing_edge is open, but only a naca section has a thick trailing edge; leave it out")
	}
}

// sections returns the sections at root and tip.
func (s *Wing) sections() (root, tip section) {
	root = section{
		family: s.Section, thickness: or(s.RootThicknessRatio, 0),
		camber: s.CamberRatio, position: or(s.CamberPositionRatio, 0.4),
		openTail: s.TrailingEdge == "open",
	}
	if s.Section == "flat" {
		root.thickness = 0
	}
	tip = root
	tip.thickness = or(s.TipThicknessRatio, root.thickness)
	return root, tip
}

// Measure implements Shape. The faces are:
//   - upper and lower, from leading to trailing edge;
//   - trailing_edge, the narrow base of an open trailing edge;
//   - tip, the tip section of a capped wing, when it has an area.
//
// At the root, and at an open tip, they meet Open.
func (s *Wing) Measure() Measurement {
	w := loftWing(s, 0, 1)
	m := Measurement{Method: "straight lines between root and tip sections; " + s.Tip + " tip", AccuracyPercent: accuracy(waySection)}
	planform := (w.rootChord + w.tipChord) / 2 * s.SpanM
	const formula, source = "S·k", "NASA TM-4741 (naca sections); identity (k is the area of the ruled surface per planform area S)"
	m.face("upper", w.upper.area, formula, map[string]float64{"S": planform, "k": w.upper.area / planform}, source)
	m.face("lower", w.lower.area, formula, map[string]float64{"S": planform, "k": w.lower.area / planform}, source)
	m.face("trailing_edge", w.base.area, "h·l",
		map[string]float64{"h": w.base.area / w.trailing, "l": w.trailing}, source+"; h is the mean thickness, l the length of the trailing edge")

	s.lines(&m, w)
	return m
}

// lines adds the boundaries of the faces between two places of the span.
func (s *Wing) lines(m *Measurement, w wingLoft) {
	m.edge("upper", "lower", w.leading)
	if s.TrailingEdge == "open" {
		m.edge("upper", "trailing_edge", w.trailing)
		m.edge("lower", "trailing_edge", w.trailing)
	} else {
		m.edge("upper", "lower", w.trailing)
	}
	inner := Open
	if w.from > 0 {
		inner = Cut
	}
	for _, f := range w.faces() {
		m.edge(f.name, inner, f.rootLine)
	}
	if w.to == 1 {
		s.closeTip(m, w)
		return
	}
	for _, f := range w.faces() {
		m.edge(f.name, Cut, f.tipLine)
	}
}

// closeTip adds the tip face and the lines around it. A flat section has no
// tip face: its two faces meet there.
func (s *Wing) closeTip(m *Measurement, w wingLoft) {
	if s.Section == "flat" {
		m.edge("upper", "lower", w.tipChord)
		return
	}
	beyond := Open
	if s.Tip == "capped" && w.tipArea > 0 {
		beyond = "tip"
		m.face("tip", w.tipArea, "a·c²",
			map[string]float64{"a": w.tipArea / (w.tipChord * w.tipChord), "c": w.tipChord}, "identity; a is the area of the section of unit chord")
	}
	for _, f := range w.faces() {
		m.edge(f.name, beyond, f.tipLine)
	}
}

// planLength is the length of a straight edge that runs dx aft over the span.
func (s *Wing) planLength(dx float64) float64 { return math.Hypot(s.SpanM, dx) }
