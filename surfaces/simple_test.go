package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRoundShapesTakeRadiusOrDiameter(t *testing.T) {
	for _, kind := range []string{"cylinder", "sphere", "cap"} {
		rest := map[string]string{"cylinder": `"length_m": 2`, "sphere": ``, "cap": `"height_m": 0.1`}[kind]
		join := func(size string) string {
			if size != "" && rest != "" {
				size += ", "
			}
			return "{" + size + rest + "}"
		}
		byRadius := must(t, read(t, kind, join(`"radius_m": 0.75`)))
		byDiameter := must(t, read(t, kind, join(`"diameter_m": 1.5`)))
		assert.Equal(t, byRadius, byDiameter, kind)
		assert.Equal(t, map[string]string{"/radius_m": "required"}, codes(read(t, kind, join(``))), kind)
		assert.Equal(t, map[string]string{"/diameter_m": "inconsistent"}, codes(read(t, kind, join(`"radius_m": 1, "diameter_m": 2`))), kind)
	}
}

func TestEndsOfRoundTubes(t *testing.T) {
	for ends, want := range []struct{ area, open, closed float64 }{
		{2 * math.Pi, 4 * math.Pi, 0},
		{3 * math.Pi, 2 * math.Pi, 2 * math.Pi},
		{4 * math.Pi, 0, 4 * math.Pi},
	} {
		// A frustum with equal radii is a cylinder (identity).
		for _, s := range []Shape{
			&Cylinder{Round: Round{RadiusM: pointer(1.0)}, LengthM: 1, Ends: ends},
			&Frustum{Radius1M: 1, Radius2M: pointer(1.0), LengthM: 1, Ends: ends},
		} {
			m := must(t, s)
			assert.InDelta(t, want.area, m.AreaM2(), 1e-12)
			assert.InDelta(t, want.open, m.FaceEdgeM(Open), 1e-12)
			assert.InDelta(t, want.closed, m.FaceEdgeM("end_1")+m.FaceEdgeM("end_2"), 1e-12)
			assert.InDelta(t, 4*math.Pi, m.FaceEdgeM("side"), 1e-12)
		}
	}
}

func TestConeHasNoSecondEnd(t *testing.T) {
	m := must(t, &Frustum{Radius1M: 0.6, Radius2M: pointer(0.0), LengthM: 0.8, Ends: 2})
	assert.Len(t, m.Faces, 2)
	assert.InDelta(t, 0.6*math.Pi*1, m.Faces[0].AreaM2, 1e-12) // identity π·r·slant, 3-4-5 triangle
	assert.InDelta(t, 1.2*math.Pi, m.EdgeM(), 1e-12)
	assert.Equal(t, map[string]string{"/radius_2_m": "required"}, codes(&Frustum{Radius1M: 1, LengthM: 1}))
}

func TestCapUpToTheWholeSphere(t *testing.T) {
	sphere := must(t, &Sphere{Round{RadiusM: pointer(0.7)}})
	whole := must(t, &Cap{Round: Round{RadiusM: pointer(0.7)}, HeightM: 1.4})
	assert.InDelta(t, sphere.AreaM2(), whole.AreaM2(), 1e-12)
	assert.Zero(t, whole.EdgeM())
	half := must(t, &Cap{Round: Round{RadiusM: pointer(0.7)}, HeightM: 0.7})
	assert.InDelta(t, 1.4*math.Pi, half.EdgeM(), 1e-12)
	assert.Equal(t, map[string]string{"/height_m": "inconsistent"}, codes(&Cap{Round: Round{RadiusM: pointer(0.7)}, HeightM: 1.5}))
}

func TestEllipsoidOfEqualAxesIsASphere(t *testing.T) {
	for _, r := range []float64{0.001, 0.5, 200} {
		m := must(t, &Ellipsoid{AM: r, BM: r, CM: r, Part: "whole"})
		assert.InEpsilon(t, 4*math.Pi*r*r, m.AreaM2(), 1e-14)
	}
	half := must(t, &Ellipsoid{AM: 3, BM: 2, CM: 1, Part: "half"})
	whole := must(t, &Ellipsoid{AM: 3, BM: 2, CM: 1, Part: "whole"})
	assert.InEpsilon(t, whole.AreaM2(), 2*half.AreaM2(), 1e-15)
	assert.InEpsilon(t, 9.6884482205477, half.EdgeM(), 1e-13) // reference G2.01, computed: ellipse 2, 1
	assert.Zero(t, whole.EdgeM())
	assert.Equal(t, map[string]string{"/part": "unknown_kind", "/a_m": "out_of_range"}, codes(&Ellipsoid{BM: 1, CM: 1, Part: "third"}))
}

func TestEllipsePerimeterDoesNotCareForOrder(t *testing.T) {
	assert.Equal(t, ellipsePerimeter(2, 5), ellipsePerimeter(5, 2))
	assert.Zero(t, ellipsePerimeter(0, 0))
	assert.Equal(t, 4.0, ellipsePerimeter(1, 0))
}

func TestMeasuredIsTakenAsGiven(t *testing.T) {
	m := must(t, &Measured{AreaM2: 3.25, EdgeM: 8.5})
	assert.Equal(t, 3.25, m.AreaM2())
	assert.Equal(t, 8.5, m.FaceEdgeM("surface"))
	assert.Empty(t, must(t, &Measured{AreaM2: 1}).Edges)
	assert.Equal(t, map[string]string{"/area_m2": "out_of_range", "/edge_m": "out_of_range"}, codes(&Measured{AreaM2: math.NaN(), EdgeM: -1}))
}
