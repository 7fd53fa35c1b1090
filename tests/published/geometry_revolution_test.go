package published

import (
	"testing"

	"filmbuild/surfaces"
)

func nose(profile string, radius, length float64) *surfaces.Nose {
	return &surfaces.Nose{Round: surfaces.Round{RadiusM: &radius}, Profile: profile, LengthM: length}
}

// TestGeometryG1Noses checks bodies of revolution.
//
// Source: profiles of Crowell, The Descriptive Geometry of Nose Cones (1996); areas
// computed with mpmath, independently of this program.
func TestGeometryG1Noses(t *testing.T) {
	secant := nose("secant_ogive", 0.5, 2)
	secant.ArcRadiusM = num(6)
	limit := nose("secant_ogive", 0.5, 2)
	limit.ArcRadiusM = num(4.25)
	power := func(n float64) *surfaces.Nose {
		s := nose("power", 0.5, 2)
		s.Exponent = &n
		return s
	}
	runGeometry(t, []geometryCase{
		{"G1.13 paraboloid", nose("paraboloid", 1, 2), "", 9.0442257993529, exact, "computed, A"},
		{"G1.14 paraboloid", nose("paraboloid", 0.6, 2.4), "", 6.1619993951908, exact, "computed, A"},
		{"G1.15 tangent ogive", nose("tangent_ogive", 0.5, 2), "", 4.3435981277192, exact, "closed form and quadrature, A"},
		{"G1.16 tangent ogive", nose("tangent_ogive", 0.5, 3), "", 6.3872213062231, exact, "computed, A"},
		{"G1.17 tangent ogive", nose("tangent_ogive", 1, 3), "", 13.383045369219, exact, "computed, A"},
		{"G1.18 secant ogive", secant, "", 4.0050965091205, exact, "computed, A"},
		{"G1.18 in the limit of G1.15", limit, "", 4.3435981277192, exact, "computed, A"},
		{"G1.19 Haack, C 0", nose("haack", 0.5, 2.5), "", 5.1884161738583, exact, "computed, A"},
		{"G1.21 Haack, C 0", nose("haack", 1, 5), "", 20.753664695433, exact, "four times G1.19, A"},
		{"G1.23 power 1/2", power(0.5), "", 4.2791662466603, exact, "computed, A"},
		{"G1.23 power 3/4", power(0.75), "", 3.6775087418163, exact, "computed, A"},
		{"G1.05 half a spheroid", nose("elliptic", 1, 3), "", 30.893723975089 / 2, exact, "computed, A"},
	})
}

func vessel(head string, radius, length float64) *surfaces.Vessel {
	return &surfaces.Vessel{Round: surfaces.Round{RadiusM: &radius}, LengthM: length, Head: head}
}

// TestGeometryG1Vessels checks tanks. The two published values are unit tests
// of an aircraft geometry library (TIGL, A), to ±0.01 m².
func TestGeometryG1Vessels(t *testing.T) {
	oval := vessel("ellipsoidal", 0.3, 0.1)
	oval.HeadDepthM = num(0.36)
	dished := func(crown, knuckle float64) *surfaces.Vessel {
		v := vessel("torispherical", 0.5, 0)
		v.CrownRadiusM, v.KnuckleRadiusM = &crown, &knuckle
		return v
	}
	semi := vessel("ellipsoidal", 0.5, 0)
	semi.HeadDepthM = num(0.25)
	torus := func(ring, tube float64) *surfaces.Torus {
		return &surfaces.Torus{RingRadiusM: ring, TubeRadiusM: tube}
	}
	runGeometry(t, []geometryCase{
		{"G1.27 torus", torus(2, 0.3), "", 23.687050562614, exact, "computed, A"},
		{"G1.28 tyre", torus(0.35, 0.11), "", 1.5199190777678, exact, "computed, A"},
		{"G1.28 tyre, outer half", torus(0.35, 0.11), "outer", 0.91201262331763, exact, "computed, A"},
		{"G1.28 tyre, inner half", torus(0.35, 0.11), "inner", 0.60790645445013, exact, "computed, A"},
		{"G1.29 capsule", vessel("hemisphere", 0.6, 2.5), "", 13.948671381939, exact, "computed, A"},
		{"G1.30 capsule", vessel("hemisphere", 1.2, 2.4), "", 36.191147369354, exact, "computed, A"},
		{"G1.30 capsule, published", vessel("hemisphere", 1.2, 2.4), "", 36.19, 0.01 / 36.19, "TIGL, published 36.19 ± 0.01, A"},
		{"G1.31 oval heads", oval, "", 1.472972544768, exact, "computed, A"},
		{"G1.31 oval heads, published", oval, "", 1.47, 0.01 / 1.47, "TIGL, published 1.47 ± 0.01, A"},
		{"G1.33 crown D, knuckle 0.1 D", dished(1, 0.1), "head_1", 0.98998710332690, exact, "computed, A"},
		{"G1.34 crown 0.8 D, knuckle 0.154 D", dished(0.8, 0.154), "head_2", 1.0879208613046, exact, "computed, A"},
		{"G1.35 2:1 semi-ellipsoid", semi, "head_1", 1.0839853379181, exact, "computed, A"},
	})
}

// The AGARD-B nose as a free profile: r = x/3·(1 − (x/D)²/9 + (x/D)³/54) up to
// x = 3D; G1.25, computed, A. Straight lines between 401 points are 1e-5 low.
func TestGeometryG1FreeProfile(t *testing.T) {
	s := &surfaces.Revolved{}
	for i := range 401 {
		x := 3 * float64(i) / 400
		s.Profile = append(s.Profile, [2]float64{x, x / 3 * (1 - x*x/9 + x*x*x/54)})
	}
	runGeometry(t, []geometryCase{
		{"G1.25", s, "", 6.6756117964469, 1e-5, "computed, A"},
		{"G1.36 profile of a cone", &surfaces.Revolved{Profile: [][2]float64{{0, 1.25}, {3.5, 0}}}, "", 14.594728863855, exact, "G1.02, computed, A"},
	})
}
