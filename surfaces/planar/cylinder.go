package planar

import "math"

// Measures are all sums of an arrangement.
type Measures struct {
	Areas   []Area
	Lengths []Length
	Box     Box
}

// Measures returns areas, lengths and box together.
func (a *Arrangement) Measures() Measures { return Measures{a.Areas(), a.Lengths(), a.Box()} }

// OnCylinder measures a figure that is seen from the side on a cylinder of the
// given radius, the middle of its box facing the viewer: what one sees is
// unrolled. The axis runs along x, or along y if upright. Across the axis
//
//	s = ρ·asin(y/ρ)
//
// so that areas are ∮ s dx and lengths ∫ √(dx² + ds²) along the borders. The
// middle becomes the origin. The figure may reach no farther than the radius
// from its middle; it is meant for figures that stay a little below.
//
// Source: parallel projection of a cylinder, identity.
func (a *Arrangement) OnCylinder(radius float64, upright bool) Measures {
	box := a.Box()
	middle := box.Min.plus(box.Max).times(0.5)
	roll := func(y float64) float64 { return radius * math.Asin(max(-1, min(1, y/radius))) }
	var m Measures
	area, moment, lengths := map[string]float64{}, map[string]Point{}, map[[2]string]float64{}
	for _, p := range a.Pieces() {
		e := p.edge(middle, upright)
		along := func(f func(at, slope Point) float64) float64 {
			return integrate(func(u float64) float64 { return f(e.point(u), e.pace(u)) }, 1e-11)
		}
		part := along(func(at, slope Point) float64 { return -roll(at.Y) * slope.X })
		first := Point{
			along(func(at, slope Point) float64 { return -at.X * roll(at.Y) * slope.X }),
			along(func(at, slope Point) float64 { return -roll(at.Y) * roll(at.Y) / 2 * slope.X }),
		}
		left, right := p.Left, p.Right
		if upright {
			left, right = right, left // the axes change places
			first = Point{first.Y, first.X}
		}
		area[left] += part
		area[right] -= part
		moment[left], moment[right] = moment[left].plus(first), moment[right].minus(first)
		lengths[pairOf(a, left, right)] += along(func(at, slope Point) float64 {
			rate := 1 / math.Sqrt(max(1e-12, 1-at.Y*at.Y/radius/radius))
			return math.Hypot(slope.X, slope.Y*rate)
		})
	}
	for _, seen := range a.Areas() {
		one := Area{Colour: seen.Colour, Area: max(0, area[seen.Colour])}
		if one.Area > 0 {
			one.Centre = moment[seen.Colour].times(1 / one.Area)
		}
		m.Areas = append(m.Areas, one)
	}
	for _, l := range a.Lengths() {
		m.Lengths = append(m.Lengths, Length{l.Between, lengths[l.Between]})
	}
	half := Point{box.Width() / 2, box.Height() / 2}
	if upright {
		half.X = roll(half.X)
	} else {
		half.Y = roll(half.Y)
	}
	m.Box = Box{half.times(-1), half}
	return m
}

// pairOf is the pair of colours as Lengths names it.
func pairOf(a *Arrangement, first, second string) [2]string {
	i, j := a.number(first), a.number(second)
	if i == 0 || (j != 0 && j < i) {
		first, second = second, first
	}
	return [2]string{first, second}
}

// edge is the piece seen from the middle, its axes changed if swap is set.
func (p Piece) edge(middle Point, swap bool) edge {
	turn := func(q Point) Point {
		q = q.minus(middle)
		if swap {
			return Point{q.Y, q.X}
		}
		return q
	}
	e := edge{from: turn(p.From), to: turn(p.To)}
	sweep := p.Sweep
	if swap {
		sweep = -sweep
	}
	switch {
	case p.Bend != nil:
		e.course, e.end = &cubic{e.from, turn(p.Bend.First), turn(p.Bend.Second), e.to}, 1
	case sweep != 0:
		chord := e.to.minus(e.from)
		e.centre = e.from.plus(e.to).times(0.5).plus(chord.left().times(0.5 / math.Tan(sweep/2)))
		e.radius, e.turn = chord.length()/(2*math.Abs(math.Sin(sweep/2))), math.Copysign(1, sweep)
	}
	return e
}

// pace is the derivative of point.
func (e *edge) pace(u float64) Point {
	switch {
	case e.course != nil:
		return e.course.slope(e.begin + u*(e.end-e.begin)).times(e.end - e.begin)
	case e.radius > 0:
		return e.point(u).minus(e.centre).left().times(e.turn * e.sweep())
	}
	return e.to.minus(e.from)
}
