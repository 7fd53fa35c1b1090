package surfaces

import "math"

// adaptive returns the integral of f from a to b, and a bound of its error.
// Gauss's rule on a stretch is compared with the rule on its halves, which are
// halved in turn until both agree. The ends are stretched by
//
//	x = a + (b−a)·s²·(3−2s)
//
// so that roots and poles below 1/x there do no harm; a kink within costs
// halvings only.
//
// Source: identity.
func adaptive(f func(float64) float64, a, b float64) (value, bound float64) {
	return settled(f, a, b, 1e-12, 4000)
}

// roughly is adaptive for a function that takes long and whose own digits end
// at about 1e-9: it settles for 1e-8.
func roughly(f func(float64) float64, a, b float64) (value, bound float64) {
	return settled(f, a, b, 1e-8, 60)
}

// settled halves until the error is a given share of the first estimate, or
// has done so as often as it may; the bound then says how far it got.
func settled(f func(float64) float64, a, b, share float64, most int) (value, bound float64) {
	if !(b > a) {
		return 0, 0
	}
	g := func(s float64) float64 { return f(a+(b-a)*s*s*(3-2*s)) * 6 * s * (1 - s) * (b - a) }
	first := integrate(g, 0, 1)
	h := halver{g: g, tolerance: share * math.Abs(first), left: most}
	return h.halve(0, 1, first)
}

type halver struct {
	g         func(float64) float64
	tolerance float64
	left      int
}

func (h *halver) halve(a, b, whole float64) (value, bound float64) {
	middle := (a + b) / 2
	left, right := integrate(h.g, a, middle), integrate(h.g, middle, b)
	off := math.Abs(left + right - whole)
	h.left--
	if h.left <= 0 || b-a < 1e-9 || off <= h.tolerance || off <= 1e-15*math.Abs(whole) {
		return left + right, off
	}
	l, lowBound := h.halve(a, middle, left)
	r, highBound := h.halve(middle, b, right)
	return l + r, lowBound + highBound
}

// inverse returns where f, which only rises or only falls, has a value between
// 0 and 1; the nearer end if it has none. It narrows an interval by inverse
// quadratic interpolation where that is safe, and by halves where it is not.
//
// Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145
// (from memory).
func inverse(f func(float64) float64, value float64) float64 {
	off := func(x float64) float64 { return f(x) - value }
	b, a := 0.0, 1.0
	fb, fa := off(b), off(a)
	if (fa > 0) == (fb > 0) {
		if math.Abs(fa) < math.Abs(fb) {
			return a
		}
		return b
	}
	for t := 0.5; ; {
		x := a + t*(b-a)
		fx := off(x)
		c, fc := b, fb
		if (fx > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			b, fb = a, fa
		}
		a, fa = x, fx
		best, least := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, least = b, fb
		}
		nearest := (2e-16*math.Abs(best) + 1e-17) / math.Abs(b-c)
		if least == 0 || !(nearest <= 0.5) {
			return best
		}
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		t = 0.5
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		t = min(max(t, nearest), 1-nearest)
	}
}
