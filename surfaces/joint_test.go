package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func tubeJoint(r, body, offset, angle float64) Joint {
	return Joint{Kind: "tube", RadiusM: &r, BodyRadiusM: &body, OffsetM: &offset, AngleDeg: &angle}
}

// The footprint of any tube by counting squares of the body's side within it,
// and its outline by a polygon: independent of the formulas.
func TestTubeByCounting(t *testing.T) {
	for _, c := range []struct{ r, offset, angle float64 }{{0.5, 0, 90}, {0.5, 0.3, 90}, {0.4, 0, 40}, {0.3, 0.5, 55}, {0.6, 0.4, 70}} {
		f := tubeJoint(c.r, 1, c.offset, c.angle).Measure(nil, nil)
		sin, cos := math.Sincos(c.angle * math.Pi / 180)
		const n = 2000
		inside := 0
		for i := range n {
			phi := (float64(i)/n - 0.5) * math.Pi
			y, z := math.Sin(phi), math.Cos(phi)
			for k := range n {
				x := (float64(k)/n - 0.5) * 6
				across := x*sin - z*cos // from the tube's axis, in the plane of both axes
				if across*across+(y-c.offset)*(y-c.offset) <= c.r*c.r {
					inside++
				}
			}
		}
		assert.InEpsilon(t, float64(inside)*math.Pi*6/(n*n), f.BodyM2, 2e-3, "%v", c)

		line := 0.0
		var last vector
		for i := range 20001 {
			a := float64(i) / 20000 * 2 * math.Pi
			s := c.offset + c.r*math.Sin(a)
			z := math.Sqrt(max(0, 1-s*s))
			p := vector{(c.r*math.Cos(a) + z*cos) / sin, s, z}
			if i > 0 {
				d := vector{p[0] - last[0], p[1] - last[1], p[2] - last[2]}
				line += math.Sqrt(d.dot(d))
			}
			last = p
		}
		assert.InEpsilon(t, line, f.EdgeM, 1e-5, "%v", c)
	}
}

// A slanting tube covers 1/sin of the angle of what a square one does, and the
// footprint on a large body is the flat ellipse. Identity.
func TestTubeOnALargeBodyIsFlat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, angle := number(t, 0.05, 0.9, "r"), number(t, 20, 90, "angle")
		square, slanting := tubeJoint(r, 1, 0, 90).Measure(nil, nil), tubeJoint(r, 1, 0, angle).Measure(nil, nil)
		near(t, square.BodyM2/math.Sin(angle*math.Pi/180), slanting.BodyM2, "slanting")
		assert.GreaterOrEqual(t, square.BodyM2, math.Pi*r*r)
		flat := tubeJoint(r, 200, 0, angle).Measure(nil, nil)
		assert.InEpsilon(t, math.Pi*r*r/math.Sin(angle*math.Pi/180), flat.BodyM2, 2e-5)
		assert.InEpsilon(t, ellipsePerimeter(r, r/math.Sin(angle*math.Pi/180)), flat.EdgeM, 2e-2)
		touching := tubeJoint(r, 1, 1-r, 90).Measure(nil, nil)
		assert.False(t, math.IsNaN(touching.BodyM2+touching.EdgeM))
		assert.Greater(t, touching.BodyM2, square.BodyM2, "the side of the body falls away")
	})
}

// On a body much larger than the wing is thick the root is as good as flat, and
// a thick blunt trailing edge closes the outline.
func TestWingRootOnALargeBodyIsFlat(t *testing.T) {
	for _, edge := range []string{"closed", "open"} {
		w := plainWing("naca", 2, 1.4, 5, 20, 0.15, 0.12)
		w.TrailingEdge, w.CamberRatio, w.CamberPositionRatio = edge, 0.02, pointer(0.4)
		j := Joint{Kind: "wing_root"}
		flat := j.Measure(w, nil)
		near(t, w.RootChordM, flat.Terms["c"], "chord")
		j.BodyRadiusM = pointer(200.0)
		large := j.Measure(w, nil)
		assert.InEpsilon(t, flat.BodyM2, large.BodyM2, 1e-5, edge)
		assert.InEpsilon(t, flat.EdgeM, large.EdgeM, 1e-5, edge)
		j.BodyRadiusM = pointer(0.8)
		assert.Greater(t, j.Measure(w, nil).BodyM2, flat.BodyM2, "carried on inwards the wing grows")
	}
}

func TestJointsScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, k := drawnWing(t), number(t, 0.3, 3, "k")
		w.RootChordM = number(t, 1, 3, "chord")
		j := Joint{Kind: "wing_root", BodyRadiusM: pointer(2.5), ThicknessRatio: pointer(0.12)}
		large := Joint{Kind: "wing_root", BodyRadiusM: pointer(2.5 * k), ThicknessRatio: pointer(0.12)}
		small, more := j.Measure(w, nil), large.Measure(scaled(w, k), nil)
		near(t, k*k*small.BodyM2, more.BodyM2, "area")
		near(t, k*small.EdgeM, more.EdgeM, "line")
	})
}

func TestJointTakesSizesFromTheShapes(t *testing.T) {
	stub, tank := &Cylinder{Round: Round{DiameterM: pointer(0.8)}, LengthM: 1}, &Vessel{Round: Round{RadiusM: pointer(1.0)}, LengthM: 3, Head: "flat"}
	j := Joint{Kind: "tube"}
	j.Check(stub, tank, func(pointer, code, detail string) { require.Fail(t, code, detail) })
	assert.Equal(t, map[string]float64{"r": 0.4, "R": 1, "e": 0, "β": 90}, j.Measure(stub, tank).Terms)
	found := map[string]string{}
	j.Check(tank, stub, func(pointer, code, _ string) { found[pointer] = code })
	assert.Equal(t, map[string]string{"/radius_m": "required"}, found, "a vessel gives no branch")
	found = map[string]string{}
	Joint{Kind: "glued"}.Check(tank, stub, func(pointer, code, _ string) { found[pointer] = code })
	assert.Equal(t, map[string]string{"/kind": "unknown_kind"}, found)
}
