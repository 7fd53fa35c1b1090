package surfaces

import (
	"errors"
	"math"
)

// errTooWide is returned for a strip that the taper folds back on itself.
var errTooWide = errors.New("the strip is so wide that planes square to the edge meet within it; give a narrower one, or a part between stations")

// edgeStrip is what a strip along an edge comes to on one side of a wing.
type edgeStrip struct {
	area, bound  float64
	line         float64 // where the strip ends within the face
	inner, outer float64 // its ends, along the sections there
	whole        [2]float64
	from, to     float64 // shares of the span between which it lies; whole is where it takes the whole chord
}

func (e edgeStrip) full() float64 { return max(0, e.whole[1]-e.whole[0]) }

// fullWith is the share of the span where both sides are taken whole.
func (e edgeStrip) fullWith(o edgeStrip) float64 {
	return max(0, min(e.whole[1], o.whole[1])-max(e.whole[0], o.whole[0]))
}

// edgeSkin is one side of a wing seen from one of its edges.
type edgeSkin struct {
	root, tip section
	rootChord float64
	tipChord  float64
	side, aft float64
	span      float64
	backwards bool // from the trailing edge
	pieces    []float64
	start     inPlane // of the edge, at the root
	along     vector  // the edge's direction, unit length
}

func (s *Wing) skin(along string, side float64) edgeSkin {
	k := edgeSkin{side: side, rootChord: s.RootChordM, tipChord: or(s.TipChordM, 0), span: s.SpanM, backwards: along == "trailing_edge"}
	k.root, k.tip = s.sections()
	k.aft = s.SpanM * math.Tan(s.SweepLEDeg*math.Pi/180)
	k.pieces = k.root.pieces()
	p0, p1, _, _ := k.at(0)
	k.start = p0
	d := vector{p1.x - p0.x, k.span, p1.z - p0.z}
	length := math.Sqrt(d.dot(d))
	k.along = vector{d[0] / length, d[1] / length, d[2] / length}
	return k
}

// at returns matching points of the root and the tip section at v, which runs
// from 0 at the edge to 1 at the edge opposite, and their derivatives by v.
func (k edgeSkin) at(v float64) (p0, p1, d0, d1 inPlane) {
	u, sign := v, 1.0
	if k.backwards {
		u, sign = 1-v, -1
	}
	p0, d0 = k.root.at(u, k.side)
	p1, d1 = k.tip.at(u, k.side)
	p0, d0 = p0.scaled(k.rootChord), d0.scaled(sign*k.rootChord)
	p1, d1 = p1.scaled(k.tipChord), d1.scaled(sign*k.tipChord)
	p1.x += k.aft
	return p0, p1, d0, d1
}

// over integrates f from the edge to v, piece by piece of the section.
func (k edgeSkin) over(v float64, f func(v float64) float64) float64 {
	sum := 0.0
	for i := 1; i < len(k.pieces); i++ {
		a, b := k.pieces[i-1], k.pieces[i]
		if k.backwards {
			a, b = 1-k.pieces[len(k.pieces)-i], 1-k.pieces[len(k.pieces)-1-i]
		}
		if b = min(b, v); b > a {
			sum += integrate(f, a, b)
		}
	}
	return sum
}

// distance returns how far the point at v and a share of the span is from the
// edge, round the skin in the plane through it square to the edge. That plane
// cuts the line at each v' where
//
//	η' = (t − (R₀(v') − E)·e) / ((R₁(v') − R₀(v'))·e)
//
// E is the edge's end at the root, e its direction, t the point's position
// along it. Infinite where the planes meet.
//
// Source: identity.
func (k edgeSkin) distance(v, share float64) float64 {
	p0, p1, _, _ := k.at(v)
	p := between(p0, p1, share)
	t := k.along.dot(vector{p.x - k.start.x, k.span * share, p.z - k.start.z})
	meets := k.along.dot(vector{p1.x - p0.x, k.span, p1.z - p0.z}) <= 1e-9*k.span
	length := k.over(v, func(v float64) float64 {
		p0, p1, d0, d1 := k.at(v)
		line := vector{p1.x - p0.x, k.span, p1.z - p0.z}
		rise := k.along.dot(line)
		if rise <= 1e-9*k.span {
			meets = true
			return 0
		}
		share := (t - k.along.dot(vector{p0.x - k.start.x, 0, p0.z - k.start.z})) / rise
		d := between(d0, d1, share)
		turn := -k.along.dot(vector{d.x, 0, d.z}) / rise // dη'/dv
		c := vector{d.x + turn*line[0], turn * line[1], d.z + turn*line[2]}
		return math.Sqrt(c.dot(c))
	})
	if meets {
		return math.Inf(1)
	}
	return length
}

// reach is the v up to which the strip goes at a share of the span.
func (k edgeSkin) reach(width, share float64) float64 {
	if k.distance(1, share) <= width {
		return 1
	}
	return inverse(func(v float64) float64 { return k.distance(v, share) }, width)
}

// edgeStrip integrates the strip of a width along an edge, on one side of the
// wing, between two shares of its span.
func (s *Wing) edgeStrip(along string, side, width, from, to float64) (edgeStrip, error) {
	k := s.skin(along, side)
	strip := edgeStrip{from: from, to: to}
	strip.whole = k.wholeChords(width, from, to)
	folded := false
	reach := func(share float64) float64 {
		v := k.reach(width, share)
		if v < 1 && !(math.Abs(k.distance(v, share)-width) <= 1e-6*width) {
			folded = true // the width lies where the planes have met already
		}
		return v
	}
	for i, span := range [][2]float64{{from, strip.whole[0]}, strip.whole, {strip.whole[1], to}} {
		area, off := settled(func(share float64) float64 {
			v := 1.0
			if i != 1 {
				v = reach(share)
			}
			return k.chordArea(v, share)
		}, span[0], span[1], 1e-10, 60)
		strip.area, strip.bound = strip.area+area, strip.bound+off
		if i != 1 {
			line, _ := roughly(func(share float64) float64 { return k.lineElement(width, share) }, span[0], span[1])
			strip.line += line
		}
	}
	strip.inner, strip.outer = k.chordLine(reach(from), from), k.chordLine(reach(to), to)
	if folded {
		return strip, errTooWide
	}
	return strip, nil
}

// wholeChords is where the strip is wider than the face. The chord only grows
// or only shrinks along the span, so that is one stretch at one end, or all.
func (k edgeSkin) wholeChords(width, from, to float64) [2]float64 {
	spare := func(share float64) float64 { return width - k.distance(1, share) }
	first, last := spare(from) >= 0, spare(to) >= 0
	at := func() float64 {
		return from + (to-from)*inverse(func(x float64) float64 { return spare(from + x*(to-from)) }, 0)
	}
	switch {
	case first && last:
		return [2]float64{from, to}
	case first:
		return [2]float64{from, at()}
	case last:
		return [2]float64{at(), to}
	}
	return [2]float64{to, to}
}

// chordArea is the area per share of the span, from the edge to v.
func (k edgeSkin) chordArea(v, share float64) float64 {
	return k.over(v, func(v float64) float64 {
		p0, p1, d0, d1 := k.at(v)
		d := between(d0, d1, share)
		c := vector{d.x, 0, d.z}.cross(vector{p1.x - p0.x, k.span, p1.z - p0.z})
		return math.Sqrt(c.dot(c))
	})
}

// chordLine is the length along the section from the edge to v.
func (k edgeSkin) chordLine(v, share float64) float64 {
	return k.over(v, func(v float64) float64 {
		_, _, d0, d1 := k.at(v)
		return between(d0, d1, share).length()
	})
}

// lineElement is the length of the strip's inner line per share of the span.
// Its direction comes from central differences, good to 1e-9 here.
func (k edgeSkin) lineElement(width, share float64) float64 {
	const h = 1e-5
	v := k.reach(width, share)
	step := h * min(1, v, 1-v)
	byV := (k.distance(v+step, share) - k.distance(v-step, share)) / (2 * step)
	byShare := (k.distance(v, share+h) - k.distance(v, share-h)) / (2 * h)
	if step == 0 || !(byV > 0) || math.IsInf(byShare, 0) {
		return 0
	}
	turn := -byShare / byV // dv/dη
	p0, p1, d0, d1 := k.at(v)
	d := between(d0, d1, share)
	return math.Sqrt(vector{p1.x - p0.x + turn*d.x, k.span, p1.z - p0.z + turn*d.z}.dot(
		vector{p1.x - p0.x + turn*d.x, k.span, p1.z - p0.z + turn*d.z}))
}
