package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

// Rectangle is an upright rectangle with square or rounded corners.
type Rectangle struct {
	WidthM        float64 `json:"width_m" limit:"[0.001,1000]" doc:"from side to side"`
	HeightM       float64 `json:"height_m" limit:"[0.001,1000]" doc:"from bottom to top"`
	CornerRadiusM float64 `json:"corner_radius_m" limit:"[0,500]" doc:"of all four corners, at most half the shorter side; 0 unless given"`
	Colour        string  `json:"colour" doc:"lower-case words"`
	Shared
}

func newRectangle() *Rectangle { return &Rectangle{Shared: usualShared()} }

// Kind implements Figure.
func (*Rectangle) Kind() string { return "rectangle" }

// Check implements Figure.
func (f *Rectangle) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) {
		checkCorner(f.CornerRadiusM, f.WidthM, f.HeightM, report)
	}
	checkColour("/colour", f.Colour, report)
}

// checkCorner reports a corner radius that the sides have no room for.
func checkCorner(radius, width, height float64, report reporter) {
	if most := min(width, height) / 2; radius > most {
		report("/corner_radius_m", "inconsistent", fmt.Sprintf("corner_radius_m is %s; it must be at most half the shorter side, %s", metres(radius), metres(most)))
	}
}

// Layers implements Figure.
func (f *Rectangle) Layers() []planar.Layer {
	return []planar.Layer{layer(f.Colour, planar.RoundedRectangle(planar.Point{}, planar.Point{X: f.WidthM, Y: f.HeightM}, f.CornerRadiusM))}
}
