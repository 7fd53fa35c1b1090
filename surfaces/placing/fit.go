package placing

import (
	"math"

	"filmbuild/surfaces/planar"
)

// starts are the points at which two of the tapes meet. Tapes that stop short
// of each other by no more than their error are lengthened to touch.
func (p *Place) starts() []planar.Point {
	var out []planar.Point
	for i := range p.Tapes {
		a, b := p.Tapes[i], p.Tapes[(i+1)%len(p.Tapes)]
		d := math.Hypot(b.XM-a.XM, b.YM-a.YM)
		slack := disagreeing * p.TapeErrorMM / 1000
		if short := d - a.DistanceM - b.DistanceM; short > 0 && short <= 2*slack {
			a.DistanceM, b.DistanceM = a.DistanceM+short*0.51, b.DistanceM+short*0.51
		}
		if left, right, why := meet(a, b); why == "" {
			out = append(out, left, right)
		}
	}
	return out
}

// fit improves a point by Gauss and Newton, halving a step that makes it worse.
func (p *Place) fit(at planar.Point) planar.Point {
	for range 100 {
		n, grow := p.normal(at)
		if !(n.determinant() > 1e-12) {
			return at
		}
		step := n.solve(grow)
		now, moved := p.residual(at), false
		for k := 1.0; k > 1e-6; k /= 2 {
			next := planar.Point{X: at.X + k*step.X, Y: at.Y + k*step.Y}
			if p.residual(next) < now {
				at, moved = next, true
				break
			}
		}
		if !moved {
			return at
		}
	}
	return at
}

// normal is JᵀJ and Jᵀ·(r − |p − pᵢ|) at a point.
func (p *Place) normal(at planar.Point) (n normal, grow planar.Point) {
	ways := p.ways(at)
	for i, u := range ways {
		off := p.Tapes[i].DistanceM - p.Tapes[i].from(at)
		grow.X, grow.Y = grow.X+u.X*off, grow.Y+u.Y*off
	}
	return normalOf(ways), grow
}

// ways are the directions in which the tapes grow at a point; none is given at
// the very point that a tape is held to.
func (p *Place) ways(at planar.Point) []planar.Point {
	out := make([]planar.Point, len(p.Tapes))
	for i, t := range p.Tapes {
		if away := t.from(at); away > 0 {
			out[i] = planar.Point{X: (at.X - t.XM) / away, Y: (at.Y - t.YM) / away}
		}
	}
	return out
}

// residual is the root mean square by which the tapes disagree at a point.
func (p *Place) residual(at planar.Point) float64 {
	sum := 0.0
	for _, t := range p.Tapes {
		off := t.from(at) - t.DistanceM
		sum += off * off
	}
	return math.Sqrt(sum / float64(len(p.Tapes)))
}

// steepest is the angle of two tapes that comes nearest to 90°.
func (p *Place) steepest(at planar.Point) (angleDeg float64) {
	for i := range p.Tapes {
		angle := angleAt(at, p.Tapes[i], p.Tapes[(i+1)%len(p.Tapes)])
		if i == 0 || math.Abs(angle-90) < math.Abs(angleDeg-90) {
			angleDeg = angle
		}
	}
	return angleDeg
}

// inLine reports whether the known points lie in one line, to a thousandth of
// their distance.
func (p *Place) inLine() bool {
	a, b, c := p.Tapes[0].point(), p.Tapes[1].point(), p.Tapes[2].point()
	area := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	longest := max(p.Tapes[0].from(b), p.Tapes[1].from(c), p.Tapes[2].from(a))
	return math.Abs(area) <= 1e-3*longest*longest
}

// leftOf reports whether a point lies to the left of the way from the first point
// to the second, as drawn through the two points farthest apart: of points in one
// line two may be one, and tell no way.
func (p *Place) leftOf(at planar.Point) bool {
	first, second := p.Tapes[0].point(), p.Tapes[1].point()
	from, to, longest := first, second, p.Tapes[0].from(second)
	for i, a := range p.Tapes {
		for _, b := range p.Tapes[i+1:] {
			if d := a.from(b.point()); d > longest {
				from, to, longest = a.point(), b.point(), d
			}
		}
	}
	if (to.X-from.X)*(second.X-first.X)+(to.Y-from.Y)*(second.Y-first.Y) < 0 {
		from, to = to, from
	}
	return (to.X-from.X)*(at.Y-from.Y)-(to.Y-from.Y)*(at.X-from.X) >= 0
}
