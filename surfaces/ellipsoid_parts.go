package surfaces

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mathext"
)

// Extent implements Divisible. Heights count along the axis c.
func (s *Ellipsoid) Extent() Extent {
	e := Extent{To: 2 * s.AM, Low: -s.CM, High: s.CM, Station: "from its top, along the axis a", Height: "along the axis c, from the middle"}
	if s.Part == "half" {
		e.To = s.AM
	}
	return e
}

// Between implements Divisible. With x = a·u, y = b·√(1−u²)·cos φ and
// z = c·√(1−u²)·sin φ,
//
//	S = ∫∫ √(P + Q·sin²φ) dφ du,  P = b²c²u² + a²c²(1−u²),  Q = a²(b²−c²)(1−u²)
//
// The inner integral is an incomplete elliptic integral of the second kind.
//
// Source: identity.
func (s *Ellipsoid) Between(w Window) Measurement {
	m := partOf(s, "part "+w.String())
	a, b, c := s.AM, s.BM, s.CM
	low, high := 1-w.To/a, 1-w.From/a // u falls from 1 at the top
	bound := 0.0
	area := 0.0
	for _, span := range s.spans(low, high, w) {
		part, off := adaptive(func(u float64) float64 {
			square := (1 - u) * (1 + u)
			p := b*b*c*c*u*u + a*a*c*c*square
			q := a * a * (b - c) * (b + c) * square
			from, to := w.angles(c * math.Sqrt(square))
			return 2 * (ellipticArc(p, q, to) - ellipticArc(p, q, from))
		}, span[0], span[1])
		area, bound = area+part, bound+off
	}
	m.add("outside", area)
	for _, z := range []float64{w.Low, w.High} {
		m.edge("outside", Cut, s.heightLine(low, high, z))
	}
	if high < 1 {
		m.edge("outside", Cut, s.ring(high, w))
	}
	switch {
	case s.Part == "half" && w.To >= a:
		m.edge("outside", Open, s.ring(low, w))
	case low > -1:
		m.edge("outside", Cut, s.ring(low, w))
	}
	m.noteParts("by ∫∫ √(P+Q·sin²φ) dφ du, P = b²c²u²+a²c²(1−u²), Q = a²(b²−c²)(1−u²), u = 1−x/a", w.terms(), bound)
	return m
}

// spans divides a range of u where the rings just reach a height.
func (s *Ellipsoid) spans(low, high float64, w Window) [][2]float64 {
	at := []float64{low, high}
	for _, z := range []float64{w.Low, w.High} {
		if k := z / s.CM; k > -1 && k < 1 {
			u := math.Sqrt((1 - k) * (1 + k))
			for _, v := range []float64{-u, u} {
				if v > low && v < high {
					at = append(at, v)
				}
			}
		}
	}
	slices.Sort(at)
	var spans [][2]float64
	for i := 1; i < len(at); i++ {
		spans = append(spans, [2]float64{at[i-1], at[i]})
	}
	return spans
}

// angles are where a ring that reaches from −top to top lies between the
// heights, on its side of positive y.
func (w Window) angles(top float64) (from, to float64) {
	if top == 0 {
		return 0, 0
	}
	return math.Asin(min(1, max(-1, w.Low/top))), math.Asin(min(1, max(-1, w.High/top)))
}

// ring is the length of the ellipse at u, both sides, between the heights.
func (s *Ellipsoid) ring(u float64, w Window) float64 {
	square := (1 - u) * (1 + u)
	from, to := w.angles(s.CM * math.Sqrt(max(0, square)))
	p, q := s.CM*s.CM*square, (s.BM-s.CM)*(s.BM+s.CM)*square
	return 2 * (ellipticArc(p, q, to) - ellipticArc(p, q, from))
}

// heightLine is the length of the ellipse at a height, as far as u goes.
func (s *Ellipsoid) heightLine(low, high, z float64) float64 {
	k := z / s.CM
	if !(k > -1 && k < 1) {
		return 0
	}
	reach := math.Sqrt((1 - k) * (1 + k)) // of u
	a, b := s.AM*reach, s.BM*reach
	from, to := math.Asin(min(1, max(-1, low/reach))), math.Asin(min(1, max(-1, high/reach)))
	return 2 * (ellipticArc(a*a, (b-a)*(b+a), to) - ellipticArc(a*a, (b-a)*(b+a), from))
}

// ellipticArc returns ∫₀^φ √(p + q·sin²θ) dθ, |φ| ≤ π/2, p ≥ 0, p+q ≥ 0.
//
//	q ≤ 0: √p·E(φ, −q/p)    q > 0: √(p+q)·[E(m) − E(π/2−φ, m)], m = q/(p+q)
//
// Source: identity (DLMF §19.2 for E).
func ellipticArc(p, q, phi float64) float64 {
	if phi < 0 {
		return -ellipticArc(p, q, -phi)
	}
	switch {
	case phi == 0 || (p <= 0 && q <= 0):
		return 0
	case q <= 0:
		return math.Sqrt(p) * mathext.EllipticE(phi, min(1, -q/p))
	}
	m := q / (p + q)
	return math.Sqrt(p+q) * (mathext.CompleteE(m) - mathext.EllipticE(math.Pi/2-phi, m))
}
