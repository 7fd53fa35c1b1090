package planar_test

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

// A white disc half on a red square: the disc hides a quarter disc of red.
func Example() {
	a, err := planar.Arrange([]planar.Layer{
		{Colour: "red", Outline: planar.Region{planar.Rectangle(planar.Point{}, planar.Point{X: 2, Y: 2})}},
		{Colour: "white", Outline: planar.Region{planar.Circle(planar.Point{X: 2, Y: 2}, 1)}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range a.Areas() {
		fmt.Printf("%s %.6f\n", c.Colour, c.Area)
	}
	for _, l := range a.Lengths() {
		fmt.Printf("%s/%s %.6f\n", l.Between[0], l.Between[1], l.Length)
	}
	// Output:
	// red 3.214602
	// white 3.141593
	// red/white 1.570796
	// red/base 6.000000
	// white/base 4.712389
}
