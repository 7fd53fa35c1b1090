package surfaces

import "math"

// section is a wing section of unit chord, leading edge at x = 0.
type section struct {
	family           string  // naca, biconvex, double_wedge, elliptic or flat
	thickness        float64 // greatest thickness per chord
	camber, position float64 // naca: greatest camber per chord, and where it is
	openTail         bool    // naca: the tabulated section, with a thick trailing edge
}

// pieces are the stretches of u, the parameter of at, to integrate over one by
// one: smooth within, and short beside the sharp turn at a thin round edge, so
// that a section of 0.1 % thickness is still exact to 1e-9.
func (s section) pieces() []float64 {
	switch s.family {
	case "naca":
		if s.camber > 0 {
			return []float64{0, 0.1, math.Sqrt(s.position), 1}
		}
		return []float64{0, 0.1, 1}
	case "double_wedge":
		return []float64{0, 0.5, 1}
	case "elliptic":
		return []float64{0, 0.02, 0.2, 0.8, 0.98, 1}
	}
	return []float64{0, 1}
}

// at returns the point of the upper (side +1) or lower (side −1) outline at u
// in [0, 1], leading to trailing edge, and its derivative by u. Each family
// has the parameter in which its outline is smooth up to the leading edge.
func (s section) at(u, side float64) (p, d inPlane) {
	half := side * s.thickness / 2
	switch s.family {
	case "naca":
		return s.naca(u, side)
	case "biconvex": // circular arcs; x = u
		radius := (1 + s.thickness*s.thickness) / (4 * s.thickness)
		rise := math.Sqrt(radius*radius - (u-0.5)*(u-0.5))
		return inPlane{u, half - side*(u-0.5)*(u-0.5)/(rise+radius)}, inPlane{1, -side * (u - 0.5) / rise}
	case "double_wedge": // straight to half the chord and back; x = u
		if u < 0.5 {
			return inPlane{u, 2 * half * u}, inPlane{1, 2 * half}
		}
		return inPlane{u, 2 * half * (1 - u)}, inPlane{1, -2 * half}
	case "elliptic": // x = (1−cos πu)/2
		sin, cos := math.Sincos(math.Pi * u)
		return inPlane{(1 - cos) / 2, half * sin}, inPlane{math.Pi / 2 * sin, math.Pi * half * cos}
	}
	return inPlane{u, 0}, inPlane{1, 0}
}

// naca is the NACA four-digit section; x = u², which makes √x smooth.
//
//	y_t = 5t·(0.2969√x − 0.1260x − 0.3516x² + 0.2843x³ − k·x⁴)
//	y_c = m/p²·(2px − x²) ahead of p, m/(1−p)²·(1 − 2p + 2px − x²) behind
//	X = x ∓ y_t·sin θ,  Z = y_c ± y_t·cos θ,  tan θ = dy_c/dx
//
// k is 0.1015 for the tabulated section, whose trailing edge is 0.0210·t thick
// in all, and 0.1036 for one that closes.
//
// Source: NASA TM-4741 (Ladson et al., 1996); 0.1036 is the usual change that
// closes the trailing edge (the coefficients then add up to 0).
func (s section) naca(u, side float64) (p, d inPlane) {
	n := s.nacaAt(u)
	return n.on(s.thickness, side)
}

// nacaPlace is what a naca section is at u without its thickness: sections of
// one camber share it.
type nacaPlace struct {
	u, x           float64
	thick, slope   float64 // y_t and its derivative by u, for t = 1
	cambered       bool
	line, incline  float64 // y_c and dy_c/dx
	sin, cos, turn float64 // of θ, and dθ/du
}

func (s section) nacaAt(u float64) nacaPlace {
	k := 0.1036
	if s.openTail {
		k = 0.1015
	}
	x := u * u
	n := nacaPlace{
		u: u, x: x, cambered: s.camber > 0, cos: 1,
		thick: 5 * u * (0.2969 + u*(-0.1260+x*(-0.3516+x*(0.2843-x*k)))),
		slope: 5 * (0.2969 + u*(-2*0.1260+x*(-4*0.3516+x*(6*0.2843-8*x*k)))),
	}
	if !n.cambered {
		return n
	}
	scale, c := s.camber/(s.position*s.position), 0.0
	if x > s.position {
		scale, c = s.camber/((1-s.position)*(1-s.position)), 1-2*s.position
	}
	n.line, n.incline = scale*(c+x*(2*s.position-x)), 2*scale*(s.position-x)
	n.cos = 1 / math.Sqrt(1+n.incline*n.incline)
	n.sin = n.incline * n.cos
	n.turn = -2 * scale * n.cos * n.cos * 2 * u
	return n
}

// on is the point of the section of a thickness, and its derivative by u.
func (n *nacaPlace) on(thickness, side float64) (p, d inPlane) {
	thick, slope := side*thickness*n.thick, side*thickness*n.slope
	if !n.cambered {
		return inPlane{n.x, thick}, inPlane{2 * n.u, slope}
	}
	p = inPlane{n.x - thick*n.sin, n.line + thick*n.cos}
	d = inPlane{2*n.u - (slope*n.sin + thick*n.cos*n.turn), n.incline*2*n.u + (slope*n.cos - thick*n.sin*n.turn)}
	return p, d
}
