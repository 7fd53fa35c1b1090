package surfaces

import (
	"math"
	"sync"
)

// inPlane is a point of a section, or the direction of its outline there, in
// the section's own plane.
type inPlane struct{ x, z float64 }

func (p inPlane) length() float64 { return math.Sqrt(p.x*p.x + p.z*p.z) }

func (p inPlane) scaled(by float64) inPlane { return inPlane{p.x * by, p.z * by} }

// vector is a direction in space.
type vector [3]float64

func (v vector) dot(w vector) float64 { return v[0]*w[0] + v[1]*w[1] + v[2]*w[2] }

func (v vector) cross(w vector) vector {
	return vector{v[1]*w[2] - v[2]*w[1], v[2]*w[0] - v[0]*w[2], v[0]*w[1] - v[1]*w[0]}
}

// ruledStrip returns the area of the narrow strip of straight lines that join
// an element of one section's outline to the matching element of the next.
// The sections lie in parallel planes a distance gap apart; p0 and p1 are the
// matching points and d0 and d1 the outlines' elements there.
//
//	∫₀¹ |∂r/∂u × ∂r/∂η| dη du,  r = (1−η)·R₀(u) + η·R₁(u)
//
// The cross product is linear in η, so the inner integral is exact.
//
// Source: identity (area of a ruled surface).
func ruledStrip(p0, d0, p1, d1 inPlane, gap float64) float64 {
	dx, dz := p1.x-p0.x, p1.z-p0.z
	return meanLength(
		gap*d0.x, gap*d0.z, d0.z*dx-d0.x*dz,
		gap*d1.x, gap*d1.z, d1.z*dx-d1.x*dz)
}

// meanLength returns the mean length of the vectors on the way from v to w.
//
//	∫₀¹ |v + η(w−v)| dη = [s·√(s²+h²) + h²·asinh(s/h)] / 2|w−v|  from s₀ to s₁
//
// s is the position along the line through both tips, from the foot of the
// perpendicular of length h. Where v and w differ little that form loses digits
// and takes long, and Gauss's rule does better: of n points it is wrong by
//
//	(n!)⁴/((2n+1)·(2n)!³) · (2n−1)!!·(2n−3)!! · rⁿ,  r = |w−v|²/min(|v|,|w|)²
//
// of it at most, nearly.
//
// Source: identity; the error of Gauss's rule by the derivative of order 2n
// (from memory), which a test holds against the integral by brute force.
func meanLength(vx, vy, vz, wx, wy, wz float64) float64 {
	ux, uy, uz := wx-vx, wy-vy, wz-vz
	vv, ww, uu := vx*vx+vy*vy+vz*vz, wx*wx+wy*wy+wz*wz, ux*ux+uy*uy+uz*uz
	vu := vx*ux + vy*uy + vz*uz
	if vv+ww < 1e-280 { // squares lose their digits; no skin is that small
		return (math.Sqrt(vv) + math.Sqrt(ww)) / 2
	}
	if least := min(vv, ww); uu <= 0.5*least {
		sum := 0.0
		for _, n := range meanRules().enough(uu / least) {
			sum += n.weight * math.Sqrt(vv+n.at*(2*vu+n.at*uu))
		}
		return sum
	}
	lengthV, lengthW := math.Sqrt(vv), math.Sqrt(ww)
	if vv == 0 || ww == 0 {
		return (lengthV + lengthW) / 2
	}
	span := math.Sqrt(uu)
	s0 := vu / span
	s1 := s0 + span
	sum := s1*lengthW - s0*lengthV
	x, y, z := vy*uz-vz*uy, vz*ux-vx*uz, vx*uy-vy*ux // v × u
	if hh := (x*x + y*y + z*z) / uu; hh > 1e-30*uu {
		sum += hh * math.Log(asinhRatio(s0, lengthV, s1, lengthW, hh))
	}
	return sum / (2 * span)
}

// lengthRules are Gauss's rules of 2, 3, 4, 5, 6 and 8 points on [0, 1].
type lengthRules struct{ two, three, four, five, six, eight []node }

var meanRules = sync.OnceValue(func() *lengthRules {
	return &lengthRules{gaussOf(2), gaussOf(3), gaussOf(4), gaussOf(5), gaussOf(6), gaussOf(8)}
})

// enough is the rule that is good to 2e-13 at a ratio r of up to 0.5.
func (l *lengthRules) enough(r float64) []node {
	switch {
	case r <= 1e-5:
		return l.two
	case r <= 1.5e-3:
		return l.three
	case r <= 0.02:
		return l.four
	case r <= 0.07:
		return l.five
	case r <= 0.2:
		return l.six
	}
	return l.eight
}

// asinhRatio returns exp(asinh(s1/h) − asinh(s0/h)), s0 < s1, from the lengths
// √(s²+h²) of both, in the form that does not cancel.
func asinhRatio(s0, length0, s1, length1, hh float64) float64 {
	switch {
	case s0 >= 0:
		return (s1 + length1) / (s0 + length0)
	case s1 <= 0:
		return (length0 - s0) / (length1 - s1)
	}
	return (s1 + length1) * (length0 - s0) / hh
}
