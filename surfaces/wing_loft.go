package surfaces

import "math"

// wingLoft is what the surface between two sections comes to: those at root and
// tip, or at two places between them.
type wingLoft struct {
	rootChord, tipChord float64 // of the whole wing
	from, to            float64 // shares of the span

	upper, lower, base wingFace
	leading, trailing  float64 // lengths of the edges
	tipArea            float64 // enclosed by the tip section
	mirrored           bool    // the lower side is the upper one's mirror image
}

// wingFace is one face of a wing with the lines where it ends.
type wingFace struct {
	name                    string
	area, rootLine, tipLine float64 // the lines at the inner and the outer end
}

func (w wingLoft) faces() []wingFace { return []wingFace{w.upper, w.lower, w.base} }

// loftWing integrates the ruled surface of each face around the section, in
// the section's smooth parameter: Gauss's rule on each piece, and the exact
// integral along the span. For one thickness ratio this equals
//
//	S·∮√(X'² + Z'² + (Z'·(tan Λ + c'·X) − X'·c'·Z)²) du,  c' = dc/dy
//
// Source: identity; TM-4741 for the sections.
func loftWing(s *Wing, from, to float64) wingLoft {
	w := wingLoft{
		rootChord: s.RootChordM, tipChord: or(s.TipChordM, 0), from: from, to: to,
		upper: wingFace{name: "upper"}, lower: wingFace{name: "lower"}, base: wingFace{name: "trailing_edge"},
	}
	root, tip := s.sections()
	aft := s.SpanM * math.Tan(s.SweepLEDeg*math.Pi/180)
	pieces := root.pieces()
	for i := 1; i < len(pieces); i++ {
		start, width := pieces[i-1], pieces[i]-pieces[i-1]
		for _, n := range gauss() {
			u, weight := start+width*n.at, width*n.weight
			w.both(root, tip, u, weight, aft, s.SpanM)
		}
	}
	if w.mirrored {
		w.tipArea *= 2
	}
	w.closeTail(root, tip, aft, s.SpanM)
	w.leading = s.planLength(aft) * (to - from)
	w.trailing = s.planLength(aft+w.tipChord-w.rootChord) * (to - from)
	return w
}

// between is the point of the line from p at the root to q at the tip, at a
// share of the span.
func between(p, q inPlane, share float64) inPlane {
	return inPlane{p.x + share*(q.x-p.x), p.z + share*(q.z-p.z)}
}

// strip is the area between the parts of two elements of outline that lie in
// the loft.
func (w *wingLoft) strip(p0, d0, p1, d1 inPlane, span float64) (area, inner, outer float64) {
	e0, e1 := between(d0, d1, w.from), between(d0, d1, w.to)
	area = ruledStrip(between(p0, p1, w.from), e0, between(p0, p1, w.to), e1, span*(w.to-w.from))
	return area, e0.length(), e1.length()
}

// both takes in the narrow strips at u on both sides. Where the sections are
// their own mirror images, so is the lower side.
func (w *wingLoft) both(root, tip section, u, weight, aft, span float64) {
	if root.family == "naca" {
		n := root.nacaAt(u) // of the tip too, which has the same camber
		p0, d0 := n.on(root.thickness, 1)
		p1, d1 := n.on(tip.thickness, 1)
		w.upper.add(w, p0, d0, p1, d1, weight, 1, aft, span)
		if root.camber > 0 {
			p0, d0 = n.on(root.thickness, -1)
			p1, d1 = n.on(tip.thickness, -1)
			w.lower.add(w, p0, d0, p1, d1, weight, -1, aft, span)
			return
		}
	} else {
		p0, d0 := root.at(u, 1)
		p1, d1 := tip.at(u, 1)
		w.upper.add(w, p0, d0, p1, d1, weight, 1, aft, span)
	}
	w.lower.area, w.lower.rootLine, w.lower.tipLine = w.upper.area, w.upper.rootLine, w.upper.tipLine
	w.mirrored = true
}

// add takes in one narrow strip from the root's outline to the tip's.
func (f *wingFace) add(w *wingLoft, p0, d0, p1, d1 inPlane, weight, side, aft, span float64) {
	d0, d1 = d0.scaled(weight*w.rootChord), d1.scaled(weight*w.tipChord)
	p0, p1 = p0.scaled(w.rootChord), p1.scaled(w.tipChord)
	w.tipArea += side * (p1.z*d1.x - p1.x*d1.z) / 2
	p1.x += aft
	area, inner, outer := w.strip(p0, d0, p1, d1, span)
	f.area, f.rootLine, f.tipLine = f.area+area, f.rootLine+inner, f.tipLine+outer
}

// closeTail adds the base of an open trailing edge: lines from the lower to
// the upper end of the outline, at root and tip alike.
func (w *wingLoft) closeTail(root, tip section, aft, span float64) {
	if !root.openTail {
		return
	}
	low0, _ := root.at(1, -1)
	high0, _ := root.at(1, 1)
	low1, _ := tip.at(1, -1)
	high1, _ := tip.at(1, 1)
	up0 := inPlane{high0.x - low0.x, high0.z - low0.z}.scaled(w.rootChord)
	up1 := inPlane{high1.x - low1.x, high1.z - low1.z}.scaled(w.tipChord)
	low0, low1 = low0.scaled(w.rootChord), low1.scaled(w.tipChord)
	w.tipArea += (low1.x*up1.z - low1.z*up1.x) / 2
	low1.x += aft
	for _, n := range gauss() {
		p0 := inPlane{low0.x + n.at*up0.x, low0.z + n.at*up0.z}
		p1 := inPlane{low1.x + n.at*up1.x, low1.z + n.at*up1.z}
		area, inner, outer := w.strip(p0, up0.scaled(n.weight), p1, up1.scaled(n.weight), span)
		w.base.area, w.base.rootLine, w.base.tipLine = w.base.area+area, w.base.rootLine+inner, w.base.tipLine+outer
	}
}
