package surfaces

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Ellipsoid is a body with three elliptic outlines at right angles: a tank, a
// dome, a fairing.
type Ellipsoid struct {
	AM   float64 `json:"a_m" limit:"[0.0005,250]" doc:"semi-axis; a half is cut across this one"`
	BM   float64 `json:"b_m" limit:"[0.0005,250]" doc:"semi-axis"`
	CM   float64 `json:"c_m" limit:"[0.0005,250]" doc:"semi-axis"`
	Part string  `json:"part" doc:"whole (the default) or half: the dome over the ellipse of b_m and c_m"`
}

// Kind implements Shape.
func (*Ellipsoid) Kind() string { return "ellipsoid" }

// Check implements Shape.
func (s *Ellipsoid) Check(report func(pointer, code, detail string)) {
	inRange(s, report)
	oneOf("/part", s.Part, report, "whole", "half")
}

// Measure implements Shape. The face is called outside; a half ends at the rim
// of the ellipse b, c.
func (s *Ellipsoid) Measure() Measurement {
	const source = "DLMF 19.33.1 (section number from memory; identity verified numerically)"
	m := Measurement{Method: "ellipsoid from its semi-axes", AccuracyPercent: accuracy(wayTaped)}
	area, formula := ellipsoidArea(s.AM, s.BM, s.CM), "by 4π·R_G(a²b², a²c², b²c²)"
	if s.Part == "half" {
		area, formula = area/2, "by 2π·R_G(a²b², a²c², b²c²)"
		m.edge("outside", Open, ellipsePerimeter(s.BM, s.CM))
	}
	m.face("outside", area, formula, map[string]float64{"a": s.AM, "b": s.BM, "c": s.CM}, source)
	return m
}

// ellipsoidArea returns the area of an ellipsoid with the positive semi-axes
// a, b and c.
//
//	S = 4π·R_G(a²b², a²c², b²c²)
//
// Source: DLMF §19.33 (section number from memory).
func ellipsoidArea(a, b, c float64) float64 {
	scale := max(a, b, c) // keeps the fourth powers within the numbers' range
	a, b, c = a/scale, b/scale, c/scale
	return 4 * math.Pi * scale * scale * carlsonRG(a*a*b*b, a*a*c*c, b*b*c*c)
}

// carlsonRG returns Carlson's symmetric elliptic integral of the second kind
// for positive arguments.
//
//	R_G = ½·[z·R_F − ⅓(x−z)(y−z)·R_D + √(xy/z)]
//
// With z between x and y no term is negative, so none cancels.
//
// Source: DLMF §19.21 (section number from memory).
func carlsonRG(x, y, z float64) float64 {
	x, z = min(x, z), max(x, z)
	y, z = max(y, z), min(y, z)
	x, z = min(x, z), max(x, z)
	return (z*mathext.EllipticRF(x, y, z) + (z-x)*(y-z)*mathext.EllipticRD(x, y, z)/3 + math.Sqrt(x*y/z)) / 2
}

// ellipsePerimeter returns the perimeter of an ellipse with semi-axes a and b.
//
//	P = 4a·E(m),  m = 1 − b²/a²,  a ≥ b
//
// Source: DLMF §19.9 (section number from memory); both arguments may be 0.
func ellipsePerimeter(a, b float64) float64 {
	a, b = max(a, b), min(a, b)
	if a == 0 {
		return 0
	}
	return 4 * a * mathext.CompleteE((1-b/a)*(1+b/a))
}
