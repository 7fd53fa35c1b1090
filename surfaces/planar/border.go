package planar

import "math"

// border is a line, an arc of at most a quarter turn or a piece of curve with
// one colour on its left and another on its right, by their numbers in the
// arrangement.
type border struct {
	from, to    Point
	radius      float64
	turn        float64
	course      *cubic // of a curve, from one end to the other
	left, right int
}

// sweep is the angle of the arc, without sign.
func (b border) sweep() float64 {
	return 2 * math.Asin(min(1, b.to.minus(b.from).length()/(2*b.radius)))
}

func (b border) length() float64 {
	switch {
	case b.course != nil:
		return b.course.length()
	case b.radius == 0:
		return b.to.minus(b.from).length()
	}
	return b.radius * b.sweep()
}

// area is the border's part of the area to its left.
//
//	½ ∫ (x·dy − y·dx) = ½ · from × to + the area between border and chord
//
// which of an arc is ± ½·r²·(sweep − sin sweep).
func (b border) area() float64 {
	chord := b.from.cross(b.to) / 2
	switch {
	case b.course != nil:
		return chord + b.course.enclosed()
	case b.radius == 0:
		return chord
	}
	return chord + b.turn*b.radius*b.radius/2*lessSine(b.sweep())
}

// moment is the border's part of the first moments of the area to its left.
//
//	(∫ x dA, ∫ y dA) = ½ · from × to · (from + to)/3 + that between border and chord
//
// which of an arc is ± (½·r²·(sweep − sin sweep)·centre + ⅔·r³·sin³(sweep/2)·w),
// w the unit vector from the centre to the middle of the arc.
func (b border) moment() Point {
	chord := b.from.plus(b.to).times(b.from.cross(b.to) / 6)
	switch {
	case b.course != nil:
		return chord.plus(b.course.enclosedMoment())
	case b.radius == 0:
		return chord
	}
	half := b.sweep() / 2
	way := b.to.minus(b.from)
	if !(half > 0) || way == (Point{}) {
		return chord
	}
	out := way.left().times(-b.turn / way.length()) // from the chord to the arc
	middle := b.from.plus(b.to).times(0.5)
	// Taken about the middle of the chord, so that a far centre costs no digits.
	r, sin, cos := b.radius, math.Sin(half), math.Cos(half)
	area := r * r / 2 * lessSine(2*half)
	about := 2.0/3*r*r*r*sin*sin*sin - area*r*cos
	return chord.plus(middle.times(b.turn * area)).plus(out.times(b.turn * about))
}

// lessSine is x − sin x without the loss of digits near 0.
func lessSine(x float64) float64 {
	if x > 0.3 {
		return x - math.Sin(x)
	}
	s := x * x
	return x * s / 6 * (1 - s/20*(1-s/42*(1-s/72*(1-s/110))))
}
