package marking

import (
	"math"

	"filmbuild/surfaces/planar"
)

// arc draws A: rx ry rotation large sweep x y.
func (r *pathReader) arc(relative bool) error {
	var n [3]float64
	for i := range n {
		x, err := r.number()
		if err != nil {
			return err
		}
		n[i] = x
	}
	large, err := r.flag()
	if err != nil {
		return err
	}
	clockwise, err := r.flag() // as seen with y down
	if err != nil {
		return err
	}
	to, err := r.point(relative)
	if err != nil {
		return err
	}
	rx, ry := math.Abs(n[0]), math.Abs(n[1])
	if r.pen == to {
		return nil
	}
	if rx == 0 || ry == 0 {
		return r.add(to, 0, nil)
	}
	e := ellipseThrough(r.pen, to, rx, ry, n[2]*degree, large, clockwise)
	if e.rx == e.ry {
		return r.round(e, to)
	}
	return r.elliptic(e, to)
}

// ellipse is an arc of an ellipse in centre form.
type ellipse struct {
	centre       planar.Point
	rx, ry       float64
	turn         float64 // of the x axis
	begin, sweep float64 // parameters, sweep positive from x to y
}

// ellipseThrough finds the centre of an arc from its ends.
//
//	(x′, y′) = half the chord, turned back;  λ = x′²/rx² + y′²/ry², radii · √λ if λ > 1
//	centre′ = ± √((1 − λ)/λ) · (rx·y′/ry, −ry·x′/rx)
//
// Source: W3C SVG, implementation notes on elliptical arcs, from memory.
func ellipseThrough(p, q planar.Point, rx, ry, turn float64, large, sweeps bool) ellipse {
	sin, cos := math.Sincos(turn)
	hx, hy := (p.X-q.X)/2, (p.Y-q.Y)/2
	x, y := cos*hx+sin*hy, -sin*hx+cos*hy
	over := x*x/(rx*rx) + y*y/(ry*ry)
	if over > 1 {
		rx, ry, over = rx*math.Sqrt(over), ry*math.Sqrt(over), 1
	}
	k := math.Sqrt(max(0, (1-over)/over))
	if large == sweeps {
		k = -k
	}
	cx, cy := k*rx*y/ry, -k*ry*x/rx
	e := ellipse{
		centre: planar.Point{X: cos*cx - sin*cy + (p.X+q.X)/2, Y: sin*cx + cos*cy + (p.Y+q.Y)/2},
		rx:     rx, ry: ry, turn: turn, begin: math.Atan2((y-cy)/ry, (x-cx)/rx),
	}
	e.sweep = math.Atan2((-y-cy)/ry, (-x-cx)/rx) - e.begin
	switch {
	case sweeps && e.sweep <= 0:
		e.sweep += 2 * math.Pi
	case !sweeps && e.sweep >= 0:
		e.sweep -= 2 * math.Pi
	}
	return e
}

func (e ellipse) at(t float64) planar.Point {
	sin, cos := math.Sincos(t)
	return e.place(e.rx*cos, e.ry*sin, e.centre)
}

func (e ellipse) place(x, y float64, from planar.Point) planar.Point {
	sin, cos := math.Sincos(e.turn)
	return planar.Point{X: from.X + cos*x - sin*y, Y: from.Y + sin*x + cos*y}
}

// round draws a circular arc, in two where it is more than half a turn.
func (r *pathReader) round(e ellipse, to planar.Point) error {
	if math.Abs(e.sweep) > math.Pi {
		if err := r.add(e.at(e.begin+e.sweep/2), e.sweep/2, nil); err != nil {
			return err
		}
		return r.add(to, e.sweep/2, nil)
	}
	return r.add(to, e.sweep, nil)
}

// elliptic draws an arc of an ellipse as cubic curves with the tangents of the
// arc, handles of 4/3·tan(θ/4). The error falls with θ⁶: 2.7e-4 of the radius
// for 90°, 1e-9 for 11.25°.
func (r *pathReader) elliptic(e ellipse, to planar.Point) error {
	const most = math.Pi / 16
	n := int(math.Ceil(math.Abs(e.sweep)/most - 1e-9))
	step := e.sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	for i := range n {
		t := e.begin + float64(i)*step
		end := e.at(t + step)
		if i == n-1 {
			end = to
		}
		sin, cos := math.Sincos(t)
		after, along := math.Sincos(t + step)
		bend := planar.Bend{
			First:  e.place(-k*e.rx*sin, k*e.ry*cos, r.pen),
			Second: e.place(k*e.rx*after, -k*e.ry*along, end),
		}
		if err := r.add(end, 0, &bend); err != nil {
			return err
		}
	}
	return nil
}
