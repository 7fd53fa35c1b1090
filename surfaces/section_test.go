package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// around returns the length of a section's outline, each piece cut into parts.
func around(s section, parts int) float64 {
	pieces := s.pieces()
	sum := 0.0
	for i := 1; i < len(pieces); i++ {
		width := (pieces[i] - pieces[i-1]) / float64(parts)
		for k := range parts {
			start := pieces[i-1] + width*float64(k)
			for _, n := range gauss() {
				for _, side := range []float64{1, -1} {
					_, d := s.at(start+width*n.at, side)
					sum += width * n.weight * d.length()
				}
			}
		}
	}
	return sum
}

// Cutting every piece into 64 changes nothing, down to the thinnest section.
func TestSectionQuadratureHasConverged(t *testing.T) {
	for _, family := range []string{"naca", "biconvex", "double_wedge", "elliptic", "flat"} {
		for _, thickness := range []float64{0.001, 0.003, 0.01, 0.03, 0.06, 0.12, 0.25, 0.5} {
			s := section{family: family, thickness: thickness, position: 0.4}
			assert.InEpsilon(t, around(s, 64), around(s, 1), 1e-9, "%s %g", family, thickness)
			if family == "naca" {
				s.camber = 0.15
				assert.InEpsilon(t, around(s, 64), around(s, 1), 1e-9, "cambered %g", thickness)
			}
		}
	}
}

// The derivative is that of the outline: central differences, an independent way.
func TestSectionDerivative(t *testing.T) {
	const h = 1e-6
	for _, s := range []section{
		{family: "naca", thickness: 0.12, position: 0.4},
		{family: "naca", thickness: 0.15, camber: 0.06, position: 0.3, openTail: true},
		{family: "biconvex", thickness: 0.2}, {family: "double_wedge", thickness: 0.1},
		{family: "elliptic", thickness: 0.3}, {family: "flat"},
	} {
		for _, u := range []float64{0.01, 0.2, 0.49, 0.51, 0.77, 0.99} {
			for _, side := range []float64{1, -1} {
				before, _ := s.at(u-h, side)
				after, _ := s.at(u+h, side)
				_, d := s.at(u, side)
				assert.InDelta(t, (after.x-before.x)/(2*h), d.x, 1e-7, "%+v at %g", s, u)
				assert.InDelta(t, (after.z-before.z)/(2*h), d.z, 1e-7, "%+v at %g", s, u)
			}
		}
	}
}

func TestClosedTailsMeet(t *testing.T) {
	s := section{family: "naca", thickness: 0.2, camber: 0.03, position: 0.4}
	upper, _ := s.at(1, 1)
	lower, _ := s.at(1, -1)
	assert.InDelta(t, 0, math.Hypot(upper.x-lower.x, upper.z-lower.z), 1e-15)
}
