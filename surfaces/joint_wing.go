package surfaces

import "math"

// wingRoot finds the footprint of a wing: the area that the root section
// encloses, or on a round body what the wing covers when it is carried on
// inwards to the body's side.
func (j Joint) wingRoot(part Shape) Footprint {
	w := j.rootWing(part)
	loft := loftWing(w, 0, 1)
	root := *w
	root.TipChordM, root.TipThicknessRatio, root.SweepLEDeg = &w.RootChordM, w.RootThicknessRatio, 0
	flat := loftWing(&root, 0, 1).tipArea
	line := 0.0
	for _, f := range loft.faces() {
		line += f.rootLine
	}
	fp := Footprint{
		BodyM2: flat, OwnM2: flat, EdgeM: line, OwnEdgeM: line, AccuracyPercent: accuracy(waySection),
		Formula: "a·c²", Source: "identity (a is the area of the section of unit chord); NASA TM-4741 (naca sections)",
		Terms: map[string]float64{"a": flat / (w.RootChordM * w.RootChordM), "c": w.RootChordM, "t": or(w.RootThicknessRatio, 0)},
	}
	if j.BodyRadiusM != nil {
		if curved, ok := rootOnRound(w, *j.BodyRadiusM); ok {
			fp.BodyM2, fp.EdgeM = curved.area, curved.line
			fp.Formula = "by ∮ R·φ dx along the line where the wing, carried on inwards, meets the body's side"
			fp.Terms["R"] = *j.BodyRadiusM
		}
	}
	return fp
}

// rootWing is the wing that is set on: the part itself, with the root chord and
// thickness of the joint; or one of a single naca section where the part is no
// wing.
func (j Joint) rootWing(part Shape) *Wing {
	own, ok := part.(*Wing)
	if !ok {
		w := newWing()
		w.RootChordM, w.TipChordM, w.SpanM, w.RootThicknessRatio = *j.ChordM, j.ChordM, *j.ChordM, j.ThicknessRatio
		return w
	}
	w := *own
	if w.TipThicknessRatio == nil {
		w.TipThicknessRatio = w.RootThicknessRatio
	}
	if w.Section == "flat" { // it has no thickness of its own: the joint's is a naca section's
		w.Section, w.TipThicknessRatio = "naca", j.ThicknessRatio
	}
	w.RootChordM, w.RootThicknessRatio = *j.ChordM, j.ThicknessRatio
	return &w
}

// rootLine is where a wing meets the side of a round body.
type rootLine struct{ area, line float64 }

// rootOnRound carries a wing on inwards from its root plane, which touches the
// body's side at the height of its axis, to the body: the wing stands square to
// that axis and level with it. On the body unrolled, with x along it and R·φ
// round it,
//
//	A = ∮ R·φ dx,  line = ∮ √(dx² + R²·dφ²),  z(u, η) = R·sin φ,  η = −R·(1−cos φ)/span
//
// The second value is false where the wing is thicker than the body.
//
// Source: identity.
func rootOnRound(w *Wing, radius float64) (rootLine, bool) {
	var sum rootLine
	root, tip := w.sections()
	m := rootMap{radius: radius, span: w.SpanM, ok: true}
	aft := w.SpanM * math.Tan(w.SweepLEDeg*math.Pi/180)
	ends := [2]inPlane{} // the lower and the upper end of the outline, root then tip
	tips := [2]inPlane{}
	pieces := root.pieces()
	for k, side := range []float64{-1, 1} {
		at := func(u float64) (p0, p1, d0, d1 inPlane) {
			p0, d0 = root.at(u, side)
			p1, d1 = tip.at(u, side)
			p0, d0 = p0.scaled(w.RootChordM), d0.scaled(w.RootChordM)
			p1, d1 = p1.scaled(or(w.TipChordM, 0)), d1.scaled(or(w.TipChordM, 0))
			p1.x += aft
			return p0, p1, d0, d1
		}
		for i := 1; i < len(pieces); i++ {
			for _, n := range gauss() {
				width := pieces[i] - pieces[i-1]
				p0, p1, d0, d1 := at(pieces[i-1] + width*n.at)
				m.element(&sum, p0, p1, d0.scaled(width*n.weight), d1.scaled(width*n.weight), side)
			}
		}
		ends[k], tips[k], _, _ = at(1)
	}
	if root.openTail { // up the base, from the lower end to the upper one
		d0 := inPlane{ends[0].x - ends[1].x, ends[0].z - ends[1].z}
		d1 := inPlane{tips[0].x - tips[1].x, tips[0].z - tips[1].z}
		for _, n := range gauss() {
			m.element(&sum, between(ends[1], ends[0], n.at), between(tips[1], tips[0], n.at), d0.scaled(n.weight), d1.scaled(n.weight), 1)
		}
	}
	return sum, m.ok
}

// rootMap takes points of a wing to the side of a body.
type rootMap struct {
	radius, span float64
	ok           bool
}

// element adds one element of outline, given by matching points and elements of
// the root and the tip section.
func (m *rootMap) element(sum *rootLine, p0, p1, d0, d1 inPlane, side float64) {
	R := m.radius
	if math.Abs(p0.z) >= R {
		m.ok = false
		return
	}
	rise := (p1.z - p0.z) / m.span // of the line towards the tip
	phi := math.Asin(p0.z / R)
	for range 50 { // Newton; the start is exact for a wing of one section
		sin, cos := math.Sincos(phi)
		step := (R*sin - p0.z + rise*R*(1-cos)) / (R*cos + rise*R*sin)
		phi -= step
		if math.Abs(step) < 1e-16 {
			break
		}
	}
	sin, cos := math.Sincos(phi)
	if !(math.Abs(R*sin-p0.z+rise*R*(1-cos)) <= 1e-9*R) || cos <= 0 {
		m.ok = false
		return
	}
	share := -R * (1 - cos) / m.span
	turn := between(d0, d1, share).z / (R*cos + rise*R*sin) // dφ
	dx := between(d0, d1, share).x - R*sin*turn/m.span*(p1.x-p0.x)
	sum.area += side * R * phi * dx
	sum.line += math.Hypot(dx, R*turn)
}
