package surfaces

import "math"

// touch is the distance, in m, below which two lines count as touching: far
// below what can be cut and far above what float64 loses on a 1 km part.
const touch = 1e-9

// line is straight from point to point; a closed one returns to its first.
type line [][2]float64

// side returns the ends of side i.
func (l line) side(i int) (a, b [2]float64) { return l[i], l[(i+1)%len(l)] }

// crossing finds two sides that cross, touch or fold back on each other, or
// one side without length. An open line lacks the last side.
func (l line) crossing(closed bool) (i, j int, found bool) {
	sides := len(l)
	if !closed {
		sides--
	}
	for i = range sides {
		a, b := l.side(i)
		if math.Hypot(b[0]-a[0], b[1]-a[1]) <= touch {
			return i, i, true
		}
		for j = i + 1; j < sides; j++ {
			c, d := l.side(j)
			gap := 0.0
			switch {
			case j == i+1: // neighbours share a corner: only their far ends may touch
				gap = min(fromSegment(a, c, d), fromSegment(d, a, b))
			case closed && i == 0 && j == len(l)-1:
				gap = min(fromSegment(b, c, d), fromSegment(c, a, b))
			default:
				gap = segmentGap(a, b, c, d)
			}
			if gap <= touch {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// segmentGap returns the distance between the segments ab and cd, 0 when they cross.
func segmentGap(a, b, c, d [2]float64) float64 {
	if turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0 {
		return 0
	}
	return min(fromSegment(a, c, d), fromSegment(b, c, d), fromSegment(c, a, b), fromSegment(d, a, b))
}

// turn is twice the signed area of the triangle abc, scaled to its sign so
// that products of two turns cannot underflow.
func turn(a, b, c [2]float64) float64 {
	cross := (b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])
	switch {
	case cross > 0:
		return 1
	case cross < 0:
		return -1
	}
	return 0
}

// fromSegment returns the distance of q from the segment ab, which may be a point.
func fromSegment(q, a, b [2]float64) float64 {
	ux, uy := b[0]-a[0], b[1]-a[1]
	vx, vy := q[0]-a[0], q[1]-a[1]
	if square := ux*ux + uy*uy; square > 0 {
		t := min(max((ux*vx+uy*vy)/square, 0), 1)
		vx, vy = vx-t*ux, vy-t*uy
	}
	return math.Hypot(vx, vy)
}
