package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
)

// footprint measures a joint, none of whose dimensions comes from the shapes
// unless they are given.
func footprint(t *testing.T, j surfaces.Joint, part, body surfaces.Shape) surfaces.Footprint {
	t.Helper()
	j.Check(part, body, func(pointer, code, detail string) { require.Fail(t, code, "%s: %s", pointer, detail) })
	return j.Measure(part, body)
}

// TestGeometryG8Joints checks reference section 8, junctions. The expected
// values are computed (A); 13 or 14 digits are printed.
func TestGeometryG8Joints(t *testing.T) {
	some := &surfaces.Box{LengthM: 1, WidthM: 1, HeightM: 1}
	for _, c := range []struct{ r, area, ratio float64 }{
		{0.25, 0.19792069142767, 1.0080}, {0.5, 0.81259777291992, 1.0346}, {0.75, 1.9296563156628, 1.0920},
		{0.9, 2.9535708659252, 1.1607}, {1, 4, 1.2732},
	} {
		f := footprint(t, surfaces.Joint{Kind: "tube", RadiusM: num(c.r), BodyRadiusM: num(1)}, some, some)
		assert.InEpsilon(t, c.area, f.BodyM2, 1e-12, "G8.01 r = %g on R = 1", c.r)
		assert.InDelta(t, c.ratio, f.BodyM2/f.OwnM2, 5e-5, "G8.02 r = %g: ratio to the flat circle, 4 decimals printed", c.r)
	}
	t.Run("G8.03 length of the saddle", func(t *testing.T) {
		f := footprint(t, surfaces.Joint{Kind: "tube", RadiusM: num(0.5), BodyRadiusM: num(1)}, some, some)
		assert.InEpsilon(t, 3.19724445685, f.EdgeM, 2e-12, "12 digits printed")
		f = footprint(t, surfaces.Joint{Kind: "tube", RadiusM: num(1), BodyRadiusM: num(1)}, some, some)
		assert.InEpsilon(t, 7.64039557806, f.EdgeM, 1e-12, "two ellipses, 4√2·E(½)")
	})
	t.Run("G8.04 cylinder on a sphere", func(t *testing.T) {
		f := footprint(t, surfaces.Joint{Kind: "cylinder_on_sphere"}, cylinderOf(0.3), &surfaces.Sphere{Round: surfaces.Round{RadiusM: num(1)}})
		assert.InEpsilon(t, 0.28940853289401, f.BodyM2, 1e-13)
		assert.InEpsilon(t, 2*math.Pi*0.3, f.EdgeM, exact, "identity")
	})
	t.Run("G8.05 wing root", func(t *testing.T) {
		f := footprint(t, surfaces.Joint{Kind: "wing_root", ChordM: num(3.2), ThicknessRatio: num(0.05)}, some, some)
		assert.InDelta(t, 0.6808833*0.05*3.2*3.2, f.BodyM2, 5e-8*0.05*3.2*3.2, "closed naca four-digit, 7 decimals printed")
		assert.Equal(t, f.BodyM2, f.OwnM2)
		assert.InEpsilon(t, 0.673*0.05*3.2*3.2, f.BodyM2, 0.012, "published coefficient of a design code, a rounder section")
	})
	t.Run("G8.14 dome rivets", func(t *testing.T) {
		assert.InDelta(t, 9.0792, surfaces.RivetArea(1, 1.7)*1e6, 5e-5, "mm², 4 decimals printed")
		assert.InDelta(t, 2.27, 100*surfaces.RivetArea(1, 1.7)/(0.02*0.02), 5e-3, "percent, one rivet in each square of 20 mm")
		assert.InDelta(t, 3.14, 100*surfaces.RivetArea(1, 2.5)/(0.025*0.025), 5e-3, "percent, one rivet in each square of 25 mm")
		assert.Zero(t, surfaces.RivetArea(100, 0), "flush")
	})
}

func cylinderOf(radius float64) *surfaces.Cylinder {
	return &surfaces.Cylinder{Round: surfaces.Round{RadiusM: num(radius)}, LengthM: 1}
}

// TestGeometryG3AGARD checks the delta wing of reference section 3b: G3.28 to
// the centreline, G3.29 exposed beyond half a diameter, and G3.31, what it takes
// off the body of one diameter, one side. The wing has one circular-arc section
// of 4 %, pointed tips, and its wetted area factorises, so 13 digits hold.
func TestGeometryG3AGARD(t *testing.T) {
	half := wing("biconvex", 2*math.Sqrt(3), 0, 2, 60, 0.04, 0.04)
	assert.InEpsilon(t, 6.9488458531881, areaOf(t, half, ""), exact, "G3.28")
	whole := areaOf(t, half, "upper")
	beyond, err := surfaces.MeasurePart(half, surfaces.Part{FromM: num(0.5)})
	require.NoError(t, err)
	assert.InEpsilon(t, 3.9087257924183, beyond.AreaM2(), exact, "G3.29 as the part beyond 0.5 m of G3.28")
	assert.Less(t, beyond.AreaM2(), 2*whole)

	exposed := wing("biconvex", 2*math.Sqrt(3)*0.75, 0, 1.5, 60, 0.04, 0.04)
	assert.InEpsilon(t, 3.9087257924183, areaOf(t, exposed, ""), exact, "G3.29 as a wing of its own")
	body := &surfaces.Cylinder{Round: surfaces.Round{RadiusM: num(0.5)}, LengthM: 8}
	f := footprint(t, surfaces.Joint{Kind: "wing_root", BodyRadiusM: num(0.5)}, exposed, body)
	assert.InDelta(t, 0.1805798867, f.BodyM2, 6e-11, "G3.31, 10 decimals printed")
	flat := footprint(t, surfaces.Joint{Kind: "wing_root"}, exposed, body)
	assert.InEpsilon(t, 0.6668799513*0.04*6.75, flat.BodyM2, 1e-9, "G3.16 circular arcs of 4 %; planar root of G3.31")
}
