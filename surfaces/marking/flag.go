package marking

import (
	"fmt"
	"math"
	"strings"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceFlag = "the act or order of each design, see the working; no is from memory"

// Flag is a flag from its hoist: one whose proportions a public rule fixes, free
// stripes, or a free cross on a field.
type Flag struct {
	Design      string    `json:"design" doc:"us, uk_3_5, fi, se, se_three_tongued, ch, jp, no (from memory), red_cross; or free: stripes, cross"`
	HoistM      float64   `json:"hoist_m" limit:"[0.001,100]" doc:"height, along the hoist"`
	FlyM        *float64  `json:"fly_m" limit:"[0.001,200]" doc:"of free stripes and crosses: length, away from the hoist; the designs have their own"`
	Direction   string    `json:"direction" doc:"of free stripes: level (from the top, taken unless given) or upright (from the hoist)"`
	Bands       []Band    `json:"bands" doc:"of free stripes; at most 100"`
	FieldColour string    `json:"field_colour" doc:"of a free cross"`
	Arms        []FlagArm `json:"arms" doc:"of a free cross, the widest first; narrower ones lie on it; at most 10"`
	CrossXM     *float64  `json:"cross_x_m" limit:"[0,200]" doc:"of a free cross: its middle from the hoist; half of fly_m unless given"`
	Shared
}

// FlagArm is one cross of a free flag, from edge to edge.
type FlagArm struct {
	WidthM float64 `json:"width_m" limit:"[0.0001,100]" doc:"of both bars"`
	Colour string  `json:"colour" doc:"lower-case words"`
}

func newFlag() *Flag { return &Flag{Direction: "level", Shared: usualShared()} }

// Kind implements Figure.
func (*Flag) Kind() string { return "flag" }

// design finds the flag of a public rule, and lists the names of all.
func (f *Flag) design() (design flagDesign, found bool, names []string) {
	designs, err := flagDesigns()
	if err != nil {
		return flagDesign{}, false, nil
	}
	for _, d := range designs {
		names = append(names, d.name)
		if d.name == f.Design {
			design, found = d, true
		}
	}
	return design, found, append(names, "stripes", "cross")
}

// Check implements Figure.
func (f *Flag) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	oneOf("/direction", f.Direction, report, "level", "upright")
	_, found, names := f.design()
	free := f.Design == "stripes" || f.Design == "cross"
	switch {
	case f.Design == "":
		report("/design", "required", "design is missing; it must be one of "+strings.Join(names, ", "))
		return
	case !found && !free:
		report("/design", "unknown_reference", fmt.Sprintf("there is no design %q; it must be one of %s", f.Design, strings.Join(names, ", ")))
		return
	}
	for _, x := range []struct {
		given   bool
		pointer string
		of      string
	}{
		{len(f.Bands) > 0, "/bands", "stripes"}, {f.FieldColour != "", "/field_colour", "cross"},
		{len(f.Arms) > 0, "/arms", "cross"}, {f.CrossXM != nil, "/cross_x_m", "cross"},
	} {
		if x.given && f.Design != x.of {
			report(x.pointer, "not_applicable", fmt.Sprintf("%s is given and goes with the design %s alone; leave it out", last(x.pointer), x.of))
		}
	}
	switch {
	case found && f.FlyM != nil:
		report("/fly_m", "not_applicable", fmt.Sprintf("fly_m is given and the design %s has a length of its own; leave it out", f.Design))
	case free && f.FlyM == nil:
		report("/fly_m", "required", "fly_m is missing; give the length of the flag")
	case f.Design == "stripes":
		checkBands(f.Bands, report)
	case f.Design == "cross":
		f.checkCross(clean, report)
	}
}

// checkBands reports what is wrong with the bands of a flag or fin flash.
func checkBands(bands []Band, report reporter) {
	if len(bands) == 0 {
		report("/bands", "required", "bands is empty; give each band in order, with its ratio and colour")
	}
	if len(bands) > mostRings {
		report("/bands", "too_many", fmt.Sprintf("bands has %d entries; at most %d", len(bands), mostRings))
		return
	}
	for i, b := range bands {
		checkColour(fmt.Sprintf("/bands/%d/colour", i), b.Colour, report)
	}
}

func (f *Flag) checkCross(clean bool, report reporter) {
	checkColour("/field_colour", f.FieldColour, report)
	if n := len(f.Arms); n == 0 {
		report("/arms", "required", "arms is empty; give the width and colour of the cross")
	} else if n > 10 {
		report("/arms", "too_many", fmt.Sprintf("arms has %d entries; at most 10", n))
		return
	}
	widest := min(f.HoistM, *f.FlyM)
	if middle := f.crossX(); clean {
		widest = min(f.HoistM, 2*middle, 2*(*f.FlyM-middle))
	}
	for i, a := range f.Arms {
		at := fmt.Sprintf("/arms/%d", i)
		checkColour(at+"/colour", a.Colour, report)
		if clean && !(a.WidthM < widest*(1-1e-6)) {
			report(at+"/width_m", "inconsistent", fmt.Sprintf("width_m is %s; it must be below %s, the arm before it or what the flag has room for", metres(a.WidthM), metres(widest)))
		}
		widest = min(widest, a.WidthM)
	}
}

func (f *Flag) crossX() float64 {
	if f.CrossXM != nil {
		return *f.CrossXM
	}
	return *f.FlyM / 2
}

// Layers implements Figure.
func (f *Flag) Layers() []planar.Layer {
	if d, found, _ := f.design(); found {
		return planar.Placement{Scale: f.HoistM / d.hoist}.Layers(d.layers)
	}
	if f.FlyM == nil {
		return nil
	}
	whole := planar.Rectangle(planar.Point{}, planar.Point{X: *f.FlyM, Y: f.HoistM})
	if f.Design == "cross" {
		layers := []planar.Layer{layer(f.FieldColour, whole)}
		x, y := f.crossX(), f.HoistM/2
		for _, a := range f.Arms {
			w := a.WidthM / 2
			layers = append(layers, layer(a.Colour,
				planar.Rectangle(planar.Point{X: 0, Y: y - w}, planar.Point{X: *f.FlyM, Y: y + w}),
				planar.Rectangle(planar.Point{X: x - w, Y: 0}, planar.Point{X: x + w, Y: f.HoistM})))
		}
		return layers
	}
	if f.Direction == "upright" {
		return (&FinFlash{WidthM: *f.FlyM, HeightM: f.HoistM, Bands: f.Bands}).Layers()
	}
	// Level bands are upright ones turned clockwise: the first comes to the top.
	turned := planar.Placement{Scale: 1, Turn: -math.Pi / 2, Shift: planar.Point{Y: f.HoistM}}
	layers := (&FinFlash{WidthM: f.HoistM, HeightM: *f.FlyM, Bands: f.Bands}).Layers()
	return turned.Layers(layers)
}

func (f *Flag) dimensions() []quantity.Working {
	d, found, _ := f.design()
	if !found {
		return nil
	}
	return []quantity.Working{
		length("fly_m", f.HoistM*d.fly/d.hoist, "H·fly/hoist", map[string]float64{"H": f.HoistM, "fly": d.fly, "hoist": d.hoist}, d.source+" (mark "+d.mark+")"),
		length("unit_m", f.HoistM/d.hoist, "H/hoist", map[string]float64{"H": f.HoistM, "hoist": d.hoist}, d.source+" (mark "+d.mark+")"),
	}
}
