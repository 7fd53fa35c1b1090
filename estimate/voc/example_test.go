package voc_test

import (
	"fmt"

	"filmbuild/estimate/voc"
)

// gramsPerLitre of one pound per US gallon (definition: 119.826).
const gramsPerLitre = 453.59237 / 3.785411784

func ExampleLessWater() {
	// Metal Finishing Guidebook 2013 p. 826 [coating V10]: 1 gal at 2.5 lb/gal and
	// 0.25 gal of thinner at 6.8 lb/gal, in pounds and gallons.
	less, _ := voc.LessWater(2.5+0.25*6.8, 1.25, 0, 0)
	fmt.Printf("%.2f lb/gal\n", less)
	// Output:
	// 3.36 lb/gal
}

func ExampleMixture_Calculate() {
	// Metal Finishing Guidebook 2013 p. 830 [coating V16, X8]: 3 parts at 3.1, 1 at
	// 1.8 and 7 of water make 11.1/4 = 2.775 lb/gal; the book prints 2.75.
	m := voc.NewMixture()
	m.Parts = []voc.Part{
		{VolumeL: 3, VOCGL: new(3.1 * gramsPerLitre)},
		{VolumeL: 1, VOCGL: new(1.8 * gramsPerLitre)},
		{VolumeL: 7, VOCGL: new(0.0), WaterVolumePercent: new(100.0)},
	}
	m.LimitGL = new(2.8 * gramsPerLitre)
	r, _ := m.Calculate()
	fmt.Printf("%.3f lb/gal, within the limit: %t\n", r.VOCGL/gramsPerLitre, *r.WithinLimit)
	// Output:
	// 2.775 lb/gal, within the limit: true
}
