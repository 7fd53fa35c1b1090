package marking

import (
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceStarAndBar = "aircraft insignia rule AN-I-9b, amendment 2 of 16 January 1947, as quoted; where the bar ends is our reading, see bar_end"

// StarAndBar is a white star in a blue circle of radius R = size/2 with a bar
// on each side. The bar is R long and R/2 high; its top lies on the line
// through the star's two side points; a red stripe of R/6 runs along its
// middle. A border R/8 wide goes round the whole, corners mitred.
//
// Without blue the circle and the border are left out and the base shows where
// the circle was, as the rule allows on dark blue and black.
//
// Source: AN-I-9b amendment 2 (1947). The text does not say from where the
// bar's length R counts: from the star's shoulder (side point), which is the
// literal reading, or from the circle's extreme side.
type StarAndBar struct {
	SizeM        float64  `json:"size_m" limit:"[0.001,100]" doc:"diameter of the circle through the star's points"`
	BarEnd       string   `json:"bar_end" doc:"from where the bar's length counts: shoulder (side points of the star, the default) or circle (extreme side of the circle)"`
	Red          bool     `json:"red" doc:"the red stripes, in use since 1947; true unless given"`
	Blue         bool     `json:"blue" doc:"the blue circle and border; true unless given"`
	Border       *bool    `json:"border" doc:"the border; as blue unless given"`
	BorderWidthM *float64 `json:"border_width_m" limit:"[0.0001,100]" doc:"width of the border, less than R; R/8, as the rule says, unless given"`
	Shared
}

func newStarAndBar() *StarAndBar {
	return &StarAndBar{BarEnd: "shoulder", Red: true, Blue: true, Shared: usualShared()}
}

// Kind implements Figure.
func (*StarAndBar) Kind() string { return "star_and_bar" }

// Check implements Figure.
func (f *StarAndBar) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	oneOf("/bar_end", f.BarEnd, report, "shoulder", "circle")
	if clean && f.BorderWidthM != nil && *f.BorderWidthM >= f.SizeM/2 {
		report("/border_width_m", "inconsistent", fmt.Sprintf("border_width_m is %s, wider than the figure's radius of %s; the rule says R/8, %s", metres(*f.BorderWidthM), metres(f.SizeM/2), metres(f.SizeM/2*borderEdge)))
	}
	if f.BorderWidthM != nil && !f.bordered() {
		report("/border_width_m", "not_applicable", "border_width_m is given and there is no border; leave it out")
	}
	if f.Border != nil && *f.Border && !f.Blue {
		report("/border", "inconsistent", "border is true and blue is false; the border is blue, so leave border out or set blue to true")
	}
}

// The parts of the rule, as shares of R.
const (
	barLength  = 1.0
	barHeight  = 1.0 / 2
	redWidth   = 1.0 / 6
	borderEdge = 1.0 / 8
)

// bar is the right-hand bar: the height of its top and bottom and how far out
// it ends, for R = 1.
func (f *StarAndBar) bar() (top, bottom, end float64) {
	top = math.Sin(18 * degree)
	start := math.Cos(18 * degree)
	if f.BarEnd == "circle" {
		start = 1
	}
	return top, top - barHeight, start + barLength
}

// Layers implements Figure. The bars run through behind the circle.
func (f *StarAndBar) Layers() []planar.Layer {
	r := f.SizeM / 2
	top, bottom, end := f.bar()
	across := func(end, bottom, top float64) planar.Outline {
		return planar.Rectangle(planar.Point{X: -end * r, Y: bottom * r}, planar.Point{X: end * r, Y: top * r})
	}
	var layers []planar.Layer
	if f.bordered() {
		edge := f.borderShare()
		layers = append(layers, layer("blue",
			planar.Circle(planar.Point{}, r*(1+edge)), across(end+edge, bottom-edge, top+edge)))
	}
	layers = append(layers, layer("white", across(end, bottom, top)))
	if f.Red {
		middle := (top + bottom) / 2
		layers = append(layers, layer("red", across(end, middle-redWidth/2, middle+redWidth/2)))
	}
	field := planar.Base
	if f.Blue {
		field = "blue"
	}
	return append(layers, layer(field, planar.Circle(planar.Point{}, r)), layer("white", starOutline(r)))
}

// borderShare is the width of the border as a share of R.
func (f *StarAndBar) borderShare() float64 {
	if f.BorderWidthM != nil {
		return *f.BorderWidthM / (f.SizeM / 2)
	}
	return borderEdge
}

func (f *StarAndBar) bordered() bool {
	if f.Border == nil {
		return f.Blue
	}
	return *f.Border
}

func (f *StarAndBar) dimensions() []quantity.Working {
	r := f.SizeM / 2
	terms, reached := map[string]float64{"R": r}, map[string]float64{"R": r, "cos_18": math.Cos(18 * degree)}
	_, _, end := f.bar()
	reach := "(1 + cos_18)·R"
	if f.BarEnd == "circle" {
		reach, reached = "2·R", terms
	}
	list := []quantity.Working{
		length("bar_length_m", r*barLength, "R", terms, sourceStarAndBar),
		length("bar_height_m", r*barHeight, "R/2", terms, sourceStarAndBar),
		length("bar_end_m", r*end, reach, reached, sourceStarAndBar),
		notch(r),
	}
	if f.Red {
		list = append(list, length("red_width_m", r*redWidth, "R/6", terms, sourceStarAndBar))
	}
	switch {
	case f.BorderWidthM != nil:
		list = append(list, length("border_width_m", *f.BorderWidthM, "t", map[string]float64{"t": *f.BorderWidthM}, "given"))
	case f.bordered():
		list = append(list, length("border_width_m", r*borderEdge, "R/8", terms, sourceStarAndBar))
	}
	return list
}
