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
	if !(b > a) {
		return 0, 0
	}
	g := func(s float64) float64 { return f(a+(b-a)*s*s*(3-2*s)) * 6 * s * (1 - s) * (b - a) }
	h := halver{g: g, left: mostHalvings}
	first := integrate(g, 0, 1)
	h.tolerance = 1e-12 * math.Abs(first)
	return h.halve(0, 1, first)
}

// mostHalvings bounds the work on a function that rounding keeps from settling;
// the bound of the error then says how far it got.
const mostHalvings = 4000

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
// 0 and 1; the nearer end if it has none.
func inverse(f func(float64) float64, value float64) float64 {
	low, high := 0.0, 1.0
	rises := f(high) > f(low)
	for range 200 {
		middle := (low + high) / 2
		if middle == low || middle == high {
			break
		}
		if (f(middle) < value) == rises {
			low = middle
		} else {
			high = middle
		}
	}
	if math.Abs(f(high)-value) < math.Abs(f(low)-value) {
		return high
	}
	return low
}
