package surfaces_test

import (
	"fmt"

	"filmbuild/surfaces"
)

// The triaxial ellipsoid of semi-axes 3, 2 and 1. Legendre's form and double
// quadrature give 48.882146302582 (reference G1.08, computed).
func ExampleEllipsoid() {
	m, err := surfaces.Measure(&surfaces.Ellipsoid{AM: 3, BM: 2, CM: 1, Part: "whole"})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.12f m²\n", m.AreaM2())
	// Output:
	// 48.882146302582 m²
}

// A wing of 12 % section and constant chord, swept 60°, has 21.21384464 m²
// (reference G3.21, computed); the same section unswept has 20.39548931 m².
func ExampleWing() {
	for _, sweep := range []float64{0, 60} {
		shape, _ := surfaces.New("wing")
		wing := shape.(*surfaces.Wing)
		chord, thickness := 2.0, 0.12
		wing.RootChordM, wing.TipChordM, wing.SpanM, wing.SweepLEDeg = chord, &chord, 5, sweep
		wing.RootThicknessRatio, wing.Tip = &thickness, "open"
		m, err := surfaces.Measure(wing)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f°: %.8f m²\n", sweep, m.AreaM2())
	}
	// Output:
	//  0°: 20.39548931 m²
	// 60°: 21.21384464 m²
}

// An elliptic frustum from 1.0 × 0.6 to 0.3 × 0.8 m semi-axes over 2 m
// (reference G4.03, computed: 8.7497124117112). The boundary of each side is
// half of both ellipses and the lines √4.04 m along the top and the bottom.
func ExampleBody() {
	m, err := surfaces.Measure(&surfaces.Body{Nose: "open", Tail: "open", Stations: []surfaces.Station{
		{XM: 0, WidthM: 2, HeightM: 1.2}, {XM: 2, WidthM: 0.6, HeightM: 1.6},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range m.Faces {
		fmt.Printf("%s %.10f m², boundary %.4f m\n", f.Name, f.AreaM2, m.FaceEdgeM(f.Name))
	}
	fmt.Printf("%.12f m²\n", m.AreaM2())
	// Output:
	// left 4.3748562059 m², boundary 8.3910 m
	// right 4.3748562059 m², boundary 8.3910 m
	// 8.749712411711 m²
}

// Every fault is reported at once, with the field it concerns.
func ExampleMeasure_faults() {
	_, err := surfaces.Measure(&surfaces.Cylinder{Ends: 3})
	fmt.Println(err)
	// Output:
	// /length_m: length_m is missing or 0; it must be at least 0.001 m and at most 500 m (out_of_range)
	// /ends: ends is 3; it must be at least 0 and at most 2 (out_of_range)
	// /radius_m: radius_m and diameter_m are both missing; give one of them (required)
}
