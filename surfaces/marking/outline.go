package marking

import (
	"errors"
	"fmt"
	"slices"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Outline is a free figure drawn as an SVG path. Its lines may not cross or
// touch unless crossings is resolve; then, and for holes, the fill rule says
// which points belong to the figure.
type Outline struct {
	Path      string   `json:"path" most:"100000" doc:"SVG path data with M L H V C S Q T A Z, absolute or relative, y down; open subpaths are closed; at most 100000 characters and 5000 edges"`
	UnitMM    float64  `json:"unit_mm" unit:"mm" limit:"[0.000001,100000]" doc:"length of one unit of the path; 1 unless given"`
	WidthM    *float64 `json:"width_m" limit:"[0.001,1000]" doc:"width of the figure's box, to which the path is scaled in place of unit_mm"`
	FillRule  string   `json:"fill_rule" doc:"nonzero (taken unless given) or evenodd"`
	Crossings string   `json:"crossings" doc:"lines that cross or touch: refuse (taken unless given) or resolve by the fill rule, for at most 150 edges"`
	Colour    string   `json:"colour" doc:"lower-case words"`
	Shared
}

func newOutline() *Outline {
	return &Outline{UnitMM: 1, FillRule: "nonzero", Crossings: "refuse", Shared: usualShared()}
}

// mostPath is the longest path in bytes (as its tag says), mostResolved the most edges that may
// cross each other: all of them may cross all.
const (
	mostPath     = 100_000
	mostResolved = 150
)

// Kind implements Figure.
func (*Outline) Kind() string { return "outline" }

// Check implements Figure.
func (f *Outline) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	checkColour("/colour", f.Colour, report)
	oneOf("/fill_rule", f.FillRule, report, "nonzero", "evenodd")
	oneOf("/crossings", f.Crossings, report, "refuse", "resolve")
	switch {
	case f.Path == "":
		report("/path", "required", "path is empty; give SVG path data, such as M0 0H100V50Z")
		return
	case len(f.Path) > mostPath:
		report("/path", "too_many", fmt.Sprintf("path has %d bytes; at most %d", len(f.Path), mostPath))
		return
	}
	region, err := ReadPath(f.Path)
	if err != nil {
		report("/path", "wrong_type", "the path cannot be read "+err.Error())
		return
	}
	if n := len(slices.Concat(region...)); f.Crossings == "resolve" && n > mostResolved {
		report("/path", "too_many", fmt.Sprintf("the path has %d edges and crossings are to be resolved; at most %d then: draw it without crossings, or in parts", n, mostResolved))
		return
	}
	if f.Crossings == "refuse" {
		var crossing *planar.CrossingError
		switch err := region.Simple(); {
		case errors.As(err, &crossing):
			report("/path", "self_crossing", fmt.Sprintf("lines of subpaths %d and %d meet at (%.6g, %.6g) of the path; draw them apart, or set crossings to resolve", crossing.Outlines[0]+1, crossing.Outlines[1]+1, crossing.At.X, -crossing.At.Y))
			return
		case err != nil:
			report("/path", "inconsistent", "the path cannot be measured: "+err.Error())
			return
		}
	}
	if clean {
		f.checkSize(region, report)
	}
}

func (f *Outline) checkSize(region planar.Region, report reporter) {
	region, err := f.filled(region)
	if err != nil {
		report("/path", "inconsistent", "the path cannot be measured: "+err.Error())
		return
	}
	a, err := planar.Arrange([]planar.Layer{{Colour: "grey", Outline: region}})
	if err != nil {
		report("/path", "inconsistent", "the path cannot be measured: "+err.Error())
		return
	}
	box := a.Box()
	extent := max(box.Width(), box.Height())
	size := extent * f.scale(box)
	switch areas := a.Areas(); {
	case len(areas) == 0 || areas[0].Area < leastShare*extent*extent:
		report("/path", "inconsistent", "the path encloses next to nothing; its points seem to lie on one line")
	case size < leastExtent || size > 2*farthest:
		report("/path", "out_of_range", fmt.Sprintf("the figure reaches %s; it must reach %s to %s: see unit_mm and width_m", metres(size), metres(leastExtent), metres(2*farthest)))
	}
}

// filled is the region under the fill rule.
func (f *Outline) filled(region planar.Region) (planar.Region, error) {
	if f.FillRule == "evenodd" {
		return region.EvenOdd()
	}
	return region, nil
}

// scale is what one unit of the path comes to in m.
func (f *Outline) scale(box planar.Box) float64 {
	if f.WidthM != nil && box.Width() > 0 {
		return *f.WidthM / box.Width()
	}
	return f.UnitMM / 1000
}

// Layers implements Figure.
func (f *Outline) Layers() []planar.Layer {
	region, err := ReadPath(f.Path)
	if err != nil {
		return nil
	}
	if region, err = f.filled(region); err != nil {
		return nil
	}
	drawn := planar.Layer{Colour: f.Colour, Outline: region}
	box := planar.Box{}
	if f.WidthM != nil { // lines that enclose nothing do not count
		if a, err := planar.Arrange([]planar.Layer{drawn}); err == nil {
			box = a.Box()
		}
	}
	return planar.Placement{Scale: f.scale(box)}.Layers([]planar.Layer{drawn})
}

func (f *Outline) dimensions() []quantity.Working {
	if f.WidthM != nil {
		return []quantity.Working{length("width_m", *f.WidthM, "w", map[string]float64{"w": *f.WidthM}, "given")}
	}
	return []quantity.Working{length("unit_m", f.UnitMM/1000, "u", map[string]float64{"u": f.UnitMM / 1000}, "given")}
}
