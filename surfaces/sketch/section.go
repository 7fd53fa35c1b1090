package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// section is a wing section of unit chord.
type section struct {
	family                      string
	thickness, camber, position float64
	tail                        float64 // naca: coefficient of x⁴
}

// sectionsOf returns the sections at root and tip.
func sectionsOf(s *surfaces.Wing) (root, tip section) {
	root = section{s.Section, or(s.RootThicknessRatio, 0), s.CamberRatio, or(s.CamberPositionRatio, 0.4), 0.1036}
	if s.TrailingEdge == "open" {
		root.tail = 0.1015
	}
	tip = root
	tip.thickness = or(s.TipThicknessRatio, root.thickness)
	return root, tip
}

// around returns points once round the section from the trailing edge over the
// upper side: x aft from the leading edge, y up.
func (s section) around() []point {
	const steps = 40
	var points []point
	for i := steps; i >= 0; i-- {
		points = append(points, s.at((1-math.Cos(math.Pi*float64(i)/steps))/2, 1))
	}
	for i := 1; i <= steps; i++ {
		points = append(points, s.at((1-math.Cos(math.Pi*float64(i)/steps))/2, -1))
	}
	return points
}

// at returns the upper (side 1) or lower (side −1) outline at x of the chord
// (of a naca section: of its mean line).
//
// Source: NASA TM-4741 for naca, with 0.1036 where the trailing edge is closed;
// identity for the others. They are the sections whose areas are computed.
func (s section) at(x, side float64) point {
	half := side * s.thickness / 2
	switch s.family {
	case "biconvex":
		r := (1 + s.thickness*s.thickness) / (4 * s.thickness)
		rise := math.Sqrt(r*r - (x-0.5)*(x-0.5))
		return point{x, half - side*(x-0.5)*(x-0.5)/(rise+r)}
	case "double_wedge":
		return point{x, half * (1 - math.Abs(2*x-1))}
	case "elliptic":
		return point{x, 2 * half * math.Sqrt(max(0, x*(1-x)))}
	case "naca":
		thick := 5 * s.thickness * (0.2969*math.Sqrt(x) + x*(-0.1260+x*(-0.3516+x*(0.2843-x*s.tail))))
		line, slope := s.meanLine(x)
		cos := 1 / math.Sqrt(1+slope*slope)
		return point{x - side*thick*slope*cos, line + side*thick*cos}
	}
	return point{x, 0}
}

// meanLine returns height and slope of the mean line of a naca section.
func (s section) meanLine(x float64) (line, slope float64) {
	if s.camber == 0 {
		return 0, 0
	}
	p := s.position
	if x <= p {
		return s.camber / (p * p) * x * (2*p - x), 2 * s.camber / (p * p) * (p - x)
	}
	q := s.camber / ((1 - p) * (1 - p))
	return q * (1 - 2*p + x*(2*p-x)), 2 * q * (p - x)
}
