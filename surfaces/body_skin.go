package surfaces

import "math"

// skinReach bounds the parameter u of a section's quarter, tan θ = e^g,
// g = π/2·sinh u: beyond it no exponent leaves 1e-12 of the outline, and no
// power runs out of the numbers' range before it.
const skinReach = 5.9

// arcAt is the point of a section's quarter at u, with its derivative by u; see
// newSectionArc. side is +1 for the upper quarter and −1 for the lower one.
func arcAt(s Station, u, side float64) (p, d inPlane) {
	g := math.Pi / 2 * math.Sinh(u)
	logCos := -math.Log1p(math.Exp(2*g)) / 2
	if g > 300 {
		logCos = -g
	}
	logSin := g + logCos
	weight := math.Pi / 2 * math.Cosh(u) * s.power()
	cos, sin := math.Exp(s.power()*logCos), math.Exp(s.power()*logSin)
	a, b := s.WidthM/2, side*s.HeightM/2
	return inPlane{a * cos, b * sin}, inPlane{-a * cos * math.Exp(2*logSin) * weight, b * sin * math.Exp(2*logCos) * weight}
}

// panelBay is the right half of the skin between two stations, in one quarter of
// the section. Heights are those of the body.
type panelBay struct {
	s0, s1 Station
	side   float64
	gap    float64
}

func quarters(s0, s1 Station) [2]panelBay {
	return [2]panelBay{{s0, s1, -1, s1.XM - s0.XM}, {s0, s1, 1, s1.XM - s0.XM}}
}

// at returns matching points of both sections at u, with their derivatives by u.
func (b panelBay) at(u float64) (p0, p1, d0, d1 inPlane) {
	p0, d0 = arcAt(b.s0, u, b.side)
	p1, d1 = arcAt(b.s1, u, b.side)
	p0.z += b.s0.ZM
	p1.z += b.s1.ZM
	return p0, p1, d0, d1
}

// ridge is the height at a share of the bay of the crown, of the keel in the
// lower quarter.
func (b panelBay) ridge(t float64) float64 {
	z0, z1 := b.s0.ZM+b.side*b.s0.HeightM/2, b.s1.ZM+b.side*b.s1.HeightM/2
	return z0 + t*(z1-z0)
}

// middle is the height of the widest point.
func (b panelBay) middle(t float64) float64 { return b.s0.ZM + t*(b.s1.ZM-b.s0.ZM) }

// height is that of the point at u, at a share of the bay.
func (b panelBay) height(u, t float64) float64 {
	p0, p1, _, _ := b.at(u)
	return p0.z + t*(p1.z-p0.z)
}

// atHeight is the u of the skin at a height, at a share of the bay.
func (b panelBay) atHeight(z, t float64) float64 {
	return -skinReach + 2*skinReach*inverse(func(k float64) float64 { return b.height(-skinReach+2*skinReach*k, t) }, z)
}

// spans divides the range of u where the lines at the shares of the bay pass
// the heights.
func (b panelBay) spans(low, high float64, shares ...float64) []float64 {
	at := []float64{-skinReach}
	for _, t := range shares {
		for _, z := range []float64{low, high} {
			if math.IsInf(z, 0) || (z-b.ridge(t))*(z-b.middle(t)) >= 0 {
				continue
			}
			at = append(at, b.atHeight(z, t))
		}
	}
	return append(at, skinReach)
}

// shareBetween returns the part of a straight line from z0 to z1, of the range
// of shares given, that lies between two heights.
func shareBetween(z0, z1, low, high, from, to float64) (a, b float64) {
	a, b = from, to
	if z0 == z1 {
		if z0 < low || z0 > high {
			return 0, 0
		}
		return a, b
	}
	t0, t1 := (low-z0)/(z1-z0), (high-z0)/(z1-z0)
	a, b = max(a, min(t0, t1)), min(b, max(t0, t1))
	return a, max(a, b)
}

// area is that of the quarter between two shares of the bay and two heights.
func (b panelBay) area(from, to, low, high float64) (area, bound float64) {
	f := func(u float64) float64 {
		p0, p1, d0, d1 := b.at(u)
		t0, t1 := shareBetween(p0.z, p1.z, low, high, from, to)
		if t1 <= t0 {
			return 0
		}
		return ruledStrip(between(p0, p1, t0), between(d0, d1, t0), between(p0, p1, t1), between(d0, d1, t1), b.gap*(t1-t0))
	}
	return overSpans(f, b.spans(low, high, from, to))
}

// sectionLine is the length of the quarter's outline at a share of the bay,
// between two heights.
func (b panelBay) sectionLine(t, low, high float64) float64 {
	length, _ := overSpans(func(u float64) float64 {
		p0, p1, d0, d1 := b.at(u)
		if z := p0.z + t*(p1.z-p0.z); z < low || z > high {
			return 0
		}
		return between(d0, d1, t).length()
	}, b.spans(low, high, t))
	return length
}

// sectionArea is what the quarter of a section encloses to the plane of
// symmetry, between two heights.
func (b panelBay) sectionArea(t, low, high float64) float64 {
	area, _ := overSpans(func(u float64) float64 {
		p0, p1, d0, d1 := b.at(u)
		if z := p0.z + t*(p1.z-p0.z); z < low || z > high {
			return 0
		}
		return between(p0, p1, t).x * math.Abs(between(d0, d1, t).z)
	}, b.spans(low, high, t))
	return area
}

// ridgeLine is the length of the crown or the keel between two shares of the
// bay and two heights.
func (b panelBay) ridgeLine(from, to, low, high float64) float64 {
	t0, t1 := shareBetween(b.ridge(0), b.ridge(1), low, high, from, to)
	return (t1 - t0) * math.Hypot(b.gap, b.ridge(1)-b.ridge(0))
}
