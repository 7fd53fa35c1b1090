package surfaces

import "math"

// inPlane is a point of a section, or the direction of its outline there, in
// the section's own plane.
type inPlane struct{ x, z float64 }

func (p inPlane) length() float64 { return math.Hypot(p.x, p.z) }

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
		vector{gap * d0.x, gap * d0.z, d0.z*dx - d0.x*dz},
		vector{gap * d1.x, gap * d1.z, d1.z*dx - d1.x*dz})
}

// meanLength returns the mean length of the vectors on the way from v to w.
//
//	∫₀¹ |v + η(w−v)| dη = [s·√(s²+h²) + h²·asinh(s/h)] / 2|w−v|  from s₀ to s₁
//
// s is the position along the line through both tips, from the foot of the
// perpendicular of length h. Where v and w differ little that form loses
// digits, and Simpson's rule with the fourth-order term left out at 1e-3 of
// the length is good to 1e-13.
//
// Source: identity.
func meanLength(v, w vector) float64 {
	u := vector{w[0] - v[0], w[1] - v[1], w[2] - v[2]}
	vv, ww, uu := v.dot(v), w.dot(w), u.dot(u)
	lengthV, lengthW := math.Sqrt(vv), math.Sqrt(ww)
	if uu <= 1e-6*min(vv, ww) {
		middle := vector{v[0] + w[0], v[1] + w[1], v[2] + w[2]}
		return (lengthV + lengthW + 2*math.Sqrt(middle.dot(middle))) / 6
	}
	span := math.Sqrt(uu)
	s0 := v.dot(u) / span
	s1 := s0 + span
	sum := s1*lengthW - s0*lengthV
	across := v.cross(u)
	if hh := across.dot(across) / uu; hh > 1e-30*uu {
		sum += hh * math.Log(asinhRatio(s0, lengthV, s1, lengthW, hh))
	}
	return sum / (2 * span)
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
