package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// drawMeasured stands a square in for a surface of which only the area is known.
func drawMeasured(d *drawing, s *surfaces.Measured) {
	side := math.Sqrt(s.AreaM2)
	d.upTo(max(side, s.EdgeM))
	d.views = "A square of the same area stands for a surface of unknown form, area " + d.area(s.AreaM2)
	d.note("Form unknown: drawn as a square of this area.")
	a := side * d.k
	b := bounds{point{0, -a}, point{a, 0}}
	d.drawMain(imaginary, d.path().rectangle(b, 0, 0))
	texts := []lettering{d.face("surface"), {text: d.area(s.AreaM2), class: dimensionText}}
	if s.EdgeM > 0 {
		edge := plain("edge", s.EdgeM)
		texts = append(texts, lettering{text: "edge " + d.text(edge), class: dimensionText})
	}
	d.within(b, -a-5, texts...)
	d.level(point{0, 0}, point{a, 0}, firstDimension, plain("side of the square", side).bracketed())
}
