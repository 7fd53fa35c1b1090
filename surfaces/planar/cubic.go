package planar

import (
	"math"
	"slices"
)

// cubic is a cubic Bézier curve by its four control points.
//
//	B(t) = (1−t)³·p0 + 3·(1−t)²·t·p1 + 3·(1−t)·t²·p2 + t³·p3,  0 ≤ t ≤ 1
//
// Source: the Bernstein form, identity.
type cubic [4]Point

func (c *cubic) at(t float64) Point {
	s := 1 - t
	a, b, d, e := s*s*s, 3*s*s*t, 3*s*t*t, t*t*t
	return Point{
		a*c[0].X + b*c[1].X + d*c[2].X + e*c[3].X,
		a*c[0].Y + b*c[1].Y + d*c[2].Y + e*c[3].Y,
	}
}

// slope is the derivative by t, bow the second one.
func (c *cubic) slope(t float64) Point {
	s := 1 - t
	a, b, d := c[1].minus(c[0]), c[2].minus(c[1]), c[3].minus(c[2])
	return a.times(3 * s * s).plus(b.times(6 * s * t)).plus(d.times(3 * t * t))
}

func (c *cubic) bow(t float64) Point {
	a := c[0].minus(c[1].times(2)).plus(c[2])
	b := c[1].minus(c[2].times(2)).plus(c[3])
	return a.times(6 * (1 - t)).plus(b.times(6 * t))
}

// part is the curve from parameter u to v, whichever is greater, with its ends
// moved to p and q: what lies between moves in proportion.
func (c *cubic) part(u, v float64, p, q Point) *cubic {
	third := (v - u) / 3
	a, b := c.at(u), c.at(v)
	first, second := a.plus(c.slope(u).times(third)), b.minus(c.slope(v).times(third))
	atP, atQ := p.minus(a), q.minus(b)
	return &cubic{
		p,
		first.plus(atP.times(2.0 / 3)).plus(atQ.times(1.0 / 3)),
		second.plus(atP.times(1.0 / 3)).plus(atQ.times(2.0 / 3)),
		q,
	}
}

// extremes are the parameters inside (0, 1) at which the curve turns back along
// x or y, in order.
func (c *cubic) extremes() []float64 {
	a, b, d := c[1].minus(c[0]), c[2].minus(c[1]), c[3].minus(c[2])
	var out []float64
	for _, axis := range [][3]float64{{a.X, b.X, d.X}, {a.Y, b.Y, d.Y}} {
		out = append(out, roots(axis[0]-2*axis[1]+axis[2], 2*(axis[1]-axis[0]), axis[0])...)
	}
	slices.Sort(out)
	return out
}

// roots are the solutions of a·t² + b·t + c = 0 inside (0, 1).
func roots(a, b, c float64) []float64 {
	var out []float64
	keep := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	under := b*b - 4*a*c
	if under < 0 {
		return nil
	}
	// The form without the difference of nearly equal numbers; a or c may be 0.
	q := -(b + math.Copysign(math.Sqrt(under), b)) / 2
	if q != 0 {
		keep(c / q)
	}
	if a != 0 {
		keep(q / a)
	}
	return out
}

// level is the parameter between u and v at which direction · B(t) has the
// value, where that product only rises or only falls from u to v; the nearer of
// u and v if it has the value nowhere between.
func (c *cubic) level(direction Point, value, u, v float64) float64 {
	f := func(t float64) float64 { return direction.dot(c.at(t)) - value }
	low, high := u, v
	atLow, atHigh := f(low), f(high)
	if atLow > atHigh {
		low, high, atLow, atHigh = high, low, atHigh, atLow
	}
	if atLow >= 0 || atHigh <= 0 {
		if math.Abs(f(low)) < math.Abs(f(high)) {
			return low
		}
		return high
	}
	t := low + (high-low)*atLow/(atLow-atHigh)
	for range 80 {
		here := f(t)
		if here < 0 {
			low = t
		} else {
			high = t
		}
		next := t - here/direction.dot(c.slope(t))
		if here == 0 || math.Abs(next-t) <= 1e-15 {
			return t
		}
		if !(next > min(low, high) && next < max(low, high)) {
			next = (low + high) / 2
		}
		if next == low || next == high {
			return next
		}
		t = next
	}
	return t
}

// nearest is the parameter between u and v, near the guess, of the point
// nearest to p.
func (c *cubic) nearest(p Point, u, v, guess float64) float64 {
	low, high := min(u, v), max(u, v)
	t := guess
	for range 8 {
		out, slope := c.at(t).minus(p), c.slope(t)
		curve := slope.dot(slope) + out.dot(c.bow(t))
		if !(curve > 0) {
			break
		}
		next := min(high, max(low, t-out.dot(slope)/curve))
		if next == t {
			break
		}
		t = next
	}
	if c.at(t).minus(p).length() > c.at(guess).minus(p).length() {
		return guess
	}
	return t
}

// straight reports whether the curve departs from its chord by no more than d,
// sideways or beyond its ends.
func (c *cubic) straight(d float64) bool {
	chord := c[3].minus(c[0])
	length := chord.length()
	for _, p := range []Point{c[1], c[2]} {
		out := p.minus(c[0])
		if length <= d {
			if out.length() > d {
				return false
			}
			continue
		}
		along := chord.dot(out) / length
		if math.Abs(chord.cross(out))/length > d || along < -d || along > length+d {
			return false
		}
	}
	return true
}
