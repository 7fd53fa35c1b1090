package marking

import (
	"errors"
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
)

// Polygon is a free figure with straight sides. Either sense of rotation will
// do; sides may not cross or touch, apart from neighbours at their corner.
type Polygon struct {
	Points [][2]float64 `json:"points" unit:"m" doc:"corners [x, y] in order, x to the right and y up; 3 to 2000, each within 1000 m of the origin; the last side returns to the first corner"`
	Colour string       `json:"colour" doc:"lower-case words"`
	Shared
}

const (
	mostPoints  = 2000   // keeps the work bounded
	farthest    = 1000.0 // m, as far as any other figure reaches
	leastExtent = 0.001  // m, the least that any figure may measure
	leastShare  = 1e-6   // of the square about the figure: below, it is a line
)

func newPolygon() *Polygon { return &Polygon{Shared: usualShared()} }

// Kind implements Figure.
func (*Polygon) Kind() string { return "polygon" }

// Check implements Figure.
func (f *Polygon) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkColour("/colour", f.Colour, report)
	if len(f.Points) == 0 {
		report("/points", "required", "points is empty; give the corners [x, y] in order")
		return
	}
	if n := len(f.Points); n < 3 || n > mostPoints {
		report("/points", "out_of_range", fmt.Sprintf("points has %d corners; it must have 3 to %d", n, mostPoints))
		return
	}
	clean := true
	for i, p := range f.Points {
		for k, x := range p {
			if !(math.Abs(x) <= farthest) {
				clean = false
				report(fmt.Sprintf("/points/%d/%d", i, k), "out_of_range", fmt.Sprintf("a coordinate is %g m; it must lie between -%g m and %g m", x, farthest, farthest))
			}
		}
	}
	if clean {
		f.checkForm(report)
	}
}

func (f *Polygon) checkForm(report reporter) {
	var crossing *planar.CrossingError
	err := f.outline().Simple()
	switch {
	case errors.As(err, &crossing):
		report("/points", "self_crossing", fmt.Sprintf("the sides from points %d and %d meet at (%.6g, %.6g) m; put the corners in order round the figure", crossing.First, crossing.Second, crossing.At.X, crossing.At.Y))
		return
	case err != nil:
		report("/points", "inconsistent", err.Error())
		return
	}
	extent := 0.0
	for _, p := range f.Points {
		extent = max(extent, math.Abs(p[0]-f.Points[0][0]), math.Abs(p[1]-f.Points[0][1]))
	}
	switch area := math.Abs(f.outline().SignedArea()); {
	case extent < leastExtent:
		report("/points", "out_of_range", fmt.Sprintf("the points lie within %s of the first; a figure must reach at least %s", metres(extent), metres(leastExtent)))
	case area < leastShare*extent*extent:
		report("/points", "inconsistent", fmt.Sprintf("the points enclose %.3g m², next to nothing for a figure that reaches %s; they seem to lie on one line", area, metres(extent)))
	}
}

func (f *Polygon) outline() planar.Outline {
	points := make([]planar.Point, len(f.Points))
	for i, p := range f.Points {
		points[i] = planar.Point{X: p[0], Y: p[1]}
	}
	return planar.Polygon(points...)
}

// Layers implements Figure.
func (f *Polygon) Layers() []planar.Layer { return []planar.Layer{layer(f.Colour, f.outline())} }
