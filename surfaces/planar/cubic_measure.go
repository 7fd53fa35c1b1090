package planar

import "math"

// enclosed is the area between the curve and its chord, positive to the left.
//
//	½ ∫ B × dB = 3/20 · (a × b + a × c + 2·b × c),  a, b, c = p1, p2, p3 − p0
//
// Source: Green's theorem on the Bernstein form, identity.
func (c *cubic) enclosed() float64 {
	a, b, d := c[1].minus(c[0]), c[2].minus(c[0]), c[3].minus(c[0])
	return 3.0 / 20 * (a.cross(b) + a.cross(d) + 2*b.cross(d))
}

// enclosedMoment is the first moment of the area between the curve and its
// chord.
//
//	⅓ ∫ B·(B × dB) less that of the chord
//
// The integrand has degree 8, for which five points of Gauss are exact.
func (c *cubic) enclosedMoment() Point {
	var sum Point
	for i, x := range gaussPoints() {
		t := (1 + x.at) / 2
		p := c.at(t)
		sum = sum.plus(p.times(p.cross(c.slope(t)) * gaussPoints()[i].weight / 2 / 3))
	}
	return sum.minus(c[0].plus(c[3]).times(c[0].cross(c[3]) / 6))
}

// gaussPoint is a node of the rule on (−1, 1) with its weight.
type gaussPoint struct{ at, weight float64 }

// gaussPoints is the rule of Gauss and Legendre with five points.
//
//	x = 0, ±⅓·√(5 ∓ 2·√(10/7)),  w = 128/225, (322 ± 13·√70)/900
func gaussPoints() [5]gaussPoint {
	near, far := math.Sqrt(5-2*math.Sqrt(10.0/7))/3, math.Sqrt(5+2*math.Sqrt(10.0/7))/3
	heavy, light := (322+13*math.Sqrt(70))/900, (322-13*math.Sqrt(70))/900
	return [5]gaussPoint{{-far, light}, {-near, heavy}, {0, 128.0 / 225}, {near, heavy}, {far, light}}
}

// length is the length of the curve, to 1e-11 of its parts or better.
func (c *cubic) length() float64 {
	return integrate(func(t float64) float64 { return c.slope(t).length() }, 1e-11)
}

// integrate is the integral of f from 0 to 1: the rule of five points on halves,
// quarters and so on, until halving changes a part by less than near of its
// size. Where f is smooth the error falls by 2^10 with each halving, so that
// what is left is far below near.
func integrate(f func(float64) float64, near float64) float64 {
	rule := gaussPoints()
	over := func(u, v float64) (sum, size float64) {
		for _, g := range rule {
			here := g.weight * f((u+v)/2+g.at*(v-u)/2)
			sum, size = sum+here, size+math.Abs(here)
		}
		return sum * (v - u) / 2, size * (v - u) / 2
	}
	var refine func(u, v, known float64, depth int) float64
	refine = func(u, v, known float64, depth int) float64 {
		m := (u + v) / 2
		a, sizeA := over(u, m)
		b, sizeB := over(m, v)
		if depth == 0 || math.Abs(a+b-known) <= near*(sizeA+sizeB) {
			return a + b
		}
		return refine(u, m, a, depth-1) + refine(m, v, b, depth-1)
	}
	whole, _ := over(0, 1)
	return refine(0, 1, whole, 24)
}
