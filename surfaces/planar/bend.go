package planar

import "math"

// Bend makes an edge a cubic Bézier curve: the two control points between its
// ends, the one near the corner first.
type Bend struct{ First, Second Point }

// Quadratic is the bend of the quadratic Bézier curve from p to q with the one
// control point. It is the same curve, not one like it.
//
//	first = p + 2/3·(control − p),  second = q + 2/3·(control − q)
//
// Source: degree elevation, identity.
func Quadratic(p, control, q Point) *Bend {
	return &Bend{p.plus(control.minus(p).times(2.0 / 3)), q.plus(control.minus(q).times(2.0 / 3))}
}

// reversed is the bend of the same curve run the other way.
func (b *Bend) reversed() *Bend {
	if b == nil {
		return nil
	}
	return &Bend{b.Second, b.First}
}

// moved is the bend after each point has gone where move says.
func (b *Bend) moved(move func(Point) Point) *Bend {
	if b == nil {
		return nil
	}
	return &Bend{move(b.First), move(b.Second)}
}

func (b *Bend) finite() bool {
	return b == nil || (inReach(b.First) && inReach(b.Second))
}

func inReach(p Point) bool {
	return math.Abs(p.X) <= maxCoordinate && math.Abs(p.Y) <= maxCoordinate
}

// sharp is the radius of a turn under which it counts as a corner, as at a cusp
// or where a curve folds back on itself.
const sharp = 1e5 * tolerance

// bends appends the edges of a curve to out: cut where it turns back along x or
// y, so that its pieces rise and fall like arcs within a quadrant. Pieces
// without rise become straight lines, which end in corners.
func bends(e edge, course *cubic, out []edge) []edge {
	first, end := len(out), e.to
	e.course, e.end = course, 0
	add := func(to Point, t float64) {
		e.begin, e.end, e.to = e.end, t, to
		out = append(out, e.boxed())
		e.from = to
	}
	for _, t := range course.extremes() {
		if at := course.at(t); !at.within(e.from, tolerance) && !at.within(end, tolerance) {
			add(at, t)
		}
	}
	add(end, 1)
	for i := first; i < len(out); i++ {
		if p := &out[i]; course.part(p.begin, p.end, p.from, p.to).straight(tolerance) {
			p.course = nil
		}
	}
	for i := first + 1; i < len(out); i++ {
		if p, q := &out[i-1], &out[i]; p.course != nil && q.course != nil && p.roundness() > sharp {
			p.cutTo, q.cutFrom = true, true
		}
	}
	return out
}

// parameter is that of the edge's point with the same way along the chord as p,
// then of the nearest one.
func (e *edge) parameter(p Point) float64 {
	along := e.to.minus(e.from)
	return e.course.nearest(p, e.begin, e.end, e.course.level(along, along.dot(p), e.begin, e.end))
}

// roundness is the radius of the edge where it was cut.
func (e *edge) roundness() float64 {
	if e.course == nil {
		return e.radius
	}
	slope := e.course.slope(e.end)
	speed := slope.length()
	return min(1, speed*speed*speed/math.Abs(slope.cross(e.course.bow(e.end))))
}

// along is the course of the piece from p to q, run forward or against the edge.
func (e *edge) along(forward bool, p, q Point) *cubic {
	if !forward {
		back := e.reversed()
		return back.between(p, q).course
	}
	return e.between(p, q).course
}
