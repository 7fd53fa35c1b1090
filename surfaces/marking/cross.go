package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
)

// Cross is an upright cross of two equal bars. Flanks of another colour may
// run along the sides of the arms; they stop flush with the arms' ends.
type Cross struct {
	SizeM       float64 `json:"size_m" limit:"[0.001,100]" doc:"length of each bar, from end to end"`
	ArmWidthM   float64 `json:"arm_width_m" limit:"[0.0005,100]" doc:"width of the bars, without flanks"`
	FlankWidthM float64 `json:"flank_width_m" limit:"[0,100]" doc:"width of the flank on each side of an arm; 0, no flanks, unless given"`
	Colour      string  `json:"colour" doc:"of the bars, lower-case words"`
	FlankColour string  `json:"flank_colour" doc:"of the flanks; required with flanks"`
	Shared
}

func newCross() *Cross { return &Cross{Shared: usualShared()} }

// Kind implements Figure.
func (*Cross) Kind() string { return "cross" }

// Check implements Figure.
func (f *Cross) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) {
		if across := f.ArmWidthM + 2*f.FlankWidthM; across > f.SizeM*(1-1e-6) {
			report("/size_m", "inconsistent", fmt.Sprintf("an arm with its flanks is %s wide and the cross only %s long; make arm_width_m + 2·flank_width_m less than size_m", metres(across), metres(f.SizeM)))
		}
	}
	if f.FlankWidthM > 0 && f.FlankWidthM < 1e-6*f.SizeM {
		report("/flank_width_m", "inconsistent", fmt.Sprintf("flank_width_m is %s, under a millionth of the cross: no brush follows it; give 0 for no flanks", metres(f.FlankWidthM)))
	}
	checkColour("/colour", f.Colour, report)
	switch {
	case f.FlankWidthM > 0:
		checkColour("/flank_colour", f.FlankColour, report)
	case f.FlankColour != "":
		report("/flank_colour", "not_applicable", "flank_colour is given and flank_width_m is 0; give the width, or leave the colour out")
	}
}

// Layers implements Figure.
func (f *Cross) Layers() []planar.Layer {
	bars := func(width float64) planar.Region {
		l, w := f.SizeM/2, width/2
		return planar.Region{
			planar.Rectangle(planar.Point{X: -l, Y: -w}, planar.Point{X: l, Y: w}),
			planar.Rectangle(planar.Point{X: -w, Y: -l}, planar.Point{X: w, Y: l}),
		}
	}
	var layers []planar.Layer
	if f.FlankWidthM > 0 {
		layers = append(layers, planar.Layer{Colour: f.FlankColour, Outline: bars(f.ArmWidthM + 2*f.FlankWidthM)})
	}
	return append(layers, planar.Layer{Colour: f.Colour, Outline: bars(f.ArmWidthM)})
}
