package surfaces

import "math"

// touch is the distance, in m, below which two lines count as touching: far
// below what can be cut and far above what float64 loses on a 1 km part.
const touch = 1e-9

// polygon is a closed line through its corners; the last side returns to the
// first corner. One corner is a point, two are a line there and back.
type polygon [][2]float64

// side returns the ends of side i.
func (p polygon) side(i int) (a, b [2]float64) { return p[i], p[(i+1)%len(p)] }

// signedArea returns the enclosed area, positive when the corners run
// anticlockwise. Corners are taken from the first one, so that a small figure
// far from the origin keeps its digits.
//
//	A = ½·Σ (xᵢ·yᵢ₊₁ − xᵢ₊₁·yᵢ)
//
// Source: identity (Gauss's area formula).
func (p polygon) signedArea() float64 {
	sum := 0.0
	for i := range p {
		a, b := p.side(i)
		sum += (a[0]-p[0][0])*(b[1]-p[0][1]) - (b[0]-p[0][0])*(a[1]-p[0][1])
	}
	return sum / 2
}

func (p polygon) perimeter() float64 {
	sum := 0.0
	for i := range p {
		a, b := p.side(i)
		sum += math.Hypot(b[0]-a[0], b[1]-a[1])
	}
	return sum
}

// contains says whether a point lies inside, by counting the sides that a ray
// to the right crosses. Points within touch of a side may go either way.
func (p polygon) contains(q [2]float64) bool {
	inside := false
	for i := range p {
		a, b := p.side(i)
		if (a[1] > q[1]) != (b[1] > q[1]) && q[0] < a[0]+(b[0]-a[0])*(q[1]-a[1])/(b[1]-a[1]) {
			inside = !inside
		}
	}
	return inside
}

// crossing finds two sides that cross, touch or fold back on each other, or
// one side without length. An open line lacks the last side.
func (p polygon) crossing(closed bool) (i, j int, found bool) {
	sides := len(p)
	if !closed {
		sides--
	}
	for i = range sides {
		a, b := p.side(i)
		if math.Hypot(b[0]-a[0], b[1]-a[1]) <= touch {
			return i, i, true
		}
		for j = i + 1; j < sides; j++ {
			c, d := p.side(j)
			gap := 0.0
			switch {
			case j == i+1: // neighbours share a corner: only their far ends may touch
				gap = min(fromSegment(a, c, d), fromSegment(d, a, b))
			case closed && i == 0 && j == len(p)-1:
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

// gap returns the least distance between the outlines of two polygons.
func (p polygon) gap(q polygon) float64 {
	least := math.Inf(1)
	for i := range p {
		a, b := p.side(i)
		for j := range q {
			c, d := q.side(j)
			least = min(least, segmentGap(a, b, c, d))
		}
	}
	return least
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
