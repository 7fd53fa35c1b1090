package climate_test

import (
	"fmt"

	"filmbuild/estimate/climate"
)

func ExampleDewPointOverWater() {
	// Coating information sheet 1650, June 2013 [planning W01, W02].
	half, _ := climate.DewPointOverWater(20, 0.5)
	more, _ := climate.DewPointOverWater(20, 0.6)
	fmt.Printf("%.1f °C, %.1f °C\n", half, more)
	// Output:
	// 9.3 °C, 12.0 °C
}

func ExampleDewPoint_Calculate() {
	// Rule of 3 °C, an example that refuses [planning W14: dew point 11 °C, margin 2].
	d := climate.DewPoint{AirC: new(16.0), RelativeHumidityPercent: 71, SurfaceC: new(13.0)}
	r, _ := d.Calculate()
	fmt.Printf("%.0f °C, margin %.0f °C, may coat: %t\n", r.DewPointC, *r.MarginC, *r.MayCoat)
	fmt.Println(r.Reasons[0])
	fmt.Println(r.Reasons[1])
	// Output:
	// 11 °C, margin 2 °C, may coat: false
	// refused: the surface is 2.26 °C above the dew point; it must be at least 3 °C above it
	// passed: relative humidity is 71 %, at most 85 %
}

func ExampleHalvedPotLife() {
	// Trade rule, 4 h at 23 °C [coating K1].
	for _, at := range []float64{13, 33, 43} {
		life, _ := climate.HalvedPotLife(4, 23, at)
		fmt.Println(life)
	}
	// Output:
	// 8
	// 2
	// 1
}
