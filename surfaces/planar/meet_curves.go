package planar

import "math"

// stretch is a part of an edge between two parameters from 0 to 1, with its
// ends and the greatest distance from its chord.
type stretch struct {
	u, v     float64
	from, to Point
	sag      float64
}

// whole is the stretch of the whole edge.
func (e *edge) whole() stretch { return e.stretch(0, 1, e.from, e.to) }

// stretch is the part between two parameters and their points. A curve runs
// inside the hull of its control points.
//
//	sag ≤ distance of the control points from the chord;  of an arc r·(1 − cos(sweep/2))
func (e *edge) stretch(u, v float64, from, to Point) stretch {
	s := stretch{u, v, from, to, 0}
	switch {
	case e.course != nil:
		begin, end := e.begin+u*(e.end-e.begin), e.begin+v*(e.end-e.begin)
		chord, third := to.minus(from), math.Abs(end-begin)/3
		at, as := e.course.slope(begin).times(third), e.course.slope(end).times(third)
		if length := chord.length(); length > tolerance {
			s.sag = max(math.Abs(chord.cross(at)), math.Abs(chord.cross(as))) / length
		} else {
			s.sag = max(at.length(), as.length())
		}
	case e.radius > 0:
		quarter := math.Sin(e.sweep() * (v - u) / 4)
		s.sag = 2 * e.radius * quarter * quarter
	}
	return s
}

// sweep is the angle of an arc, without sign.
func (e *edge) sweep() float64 {
	return 2 * math.Asin(min(1, e.to.minus(e.from).length()/(2*e.radius)))
}

// point is the point of the edge at a parameter from 0 to 1.
func (e *edge) point(u float64) Point {
	switch {
	case e.course != nil:
		return e.course.at(e.begin + u*(e.end-e.begin))
	case e.radius > 0:
		out := e.from.minus(e.centre)
		sin, cos := math.Sincos(u * e.turn * e.sweep())
		return e.centre.plus(Point{out.X*cos - out.Y*sin, out.X*sin + out.Y*cos})
	}
	return e.from.plus(e.to.minus(e.from).times(u))
}

func (e *edge) halves(s stretch) [2]stretch {
	u := (s.u + s.v) / 2
	middle := e.point(u)
	return [2]stretch{e.stretch(s.u, u, s.from, middle), e.stretch(u, s.v, middle, s.to)}
}

// fine is the sag under which a stretch is as good as its chord.
const fine = tolerance / 8

// mostStretches bounds the work where two curves run almost together.
const mostStretches = 20_000

// approach is where two stretches cross, or come within the tolerance.
type approach struct {
	at       Point
	u        float64 // along the first edge
	distance float64 // 0 where they cross
}

// meetCurves appends the points where two edges cross or touch, one of them a
// curve: both are halved as long as they may come within the tolerance, until
// their pieces are as good as straight. A shared corner of two edges whose
// boxes meet nowhere else is passed over.
func meetCurves(e, f *edge, out []Point) []Point {
	if e.onlyCorner(f) || e.together(f) {
		return out
	}
	var found []approach
	work := [][2]stretch{{e.whole(), f.whole()}}
	for visits := 0; len(work) > 0 && visits < mostStretches; visits++ {
		a, b := work[len(work)-1][0], work[len(work)-1][1]
		work = work[:len(work)-1]
		distance, u, v := segments(a.from, a.to, b.from, b.to)
		if distance > a.sag+b.sag+tolerance {
			continue
		}
		switch {
		case a.sag <= fine && b.sag <= fine:
			along := a.u + u*(a.v-a.u)
			p, q := a.from.plus(a.to.minus(a.from).times(u)), b.from.plus(b.to.minus(b.from).times(v))
			found = append(found, approach{p.plus(q).times(0.5), along, distance})
		case a.sag >= b.sag:
			for _, half := range e.halves(a) {
				work = append(work, [2]stretch{half, b})
			}
		default:
			for _, half := range f.halves(b) {
				work = append(work, [2]stretch{a, half})
			}
		}
	}
	return distinctApproaches(found, out)
}

// onlyCorner reports whether two edges share an end and can meet nowhere else.
func (e *edge) onlyCorner(f *edge) bool {
	b := Box{
		Point{max(e.box.Min.X, f.box.Min.X), max(e.box.Min.Y, f.box.Min.Y)},
		Point{min(e.box.Max.X, f.box.Max.X), min(e.box.Max.Y, f.box.Max.Y)},
	}
	if b.Width() > tolerance || b.Height() > tolerance {
		return false
	}
	return e.from == f.from || e.from == f.to || e.to == f.from || e.to == f.to
}

// together reports whether two edges lie on each other for some way: two of
// their ends lie on the other edge, and so do points of both in between.
func (e *edge) together(f *edge) bool {
	var ends []Point
	for _, p := range []Point{e.from, e.to} {
		if f.near(p, reach) {
			ends = append(ends, p)
		}
	}
	for _, p := range []Point{f.from, f.to} {
		if e.near(p, reach) {
			ends = append(ends, p)
		}
	}
	for i := 1; i < len(ends); i++ {
		p, q := ends[0], ends[i]
		if p.within(q, 4*tolerance) {
			continue
		}
		m := e.middle(p, q)
		return f.near(m, 4*tolerance) && f.near(e.middle(p, m), 4*tolerance) && f.near(e.middle(m, q), 4*tolerance)
	}
	return false
}

// distinctApproaches appends one point for each place: of stretches that follow
// each other along the first edge, where they are nearest.
func distinctApproaches(found []approach, out []Point) []Point {
	// The work was taken from the end of the list, so that the places need sorting.
	sortApproaches(found)
	for i := 0; i < len(found); {
		best, last := found[i], found[i].u
		for i++; i < len(found) && found[i].u-last < 1e-4; i++ {
			last = found[i].u
			if found[i].distance == 0 && best.distance == 0 && !found[i].at.within(best.at, joining) {
				break // two crossings near each other
			}
			if found[i].distance < best.distance {
				best = found[i]
			}
		}
		out = append(out, best.at)
	}
	return out
}
