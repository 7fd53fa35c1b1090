package marking

import "filmbuild/surfaces/planar"

const sourceExitBand = "14 CFR 135.178(g): a band 2 in (51 mm) wide outlining the exit; that its outer corners are rounded with the opening is our reading"

// ExitBand is a band of one width round the outside of a rectangular opening
// with rounded corners; its own outer corners have the opening's radius and
// the width of the band.
//
//	area = P·t + π·t²  with P the perimeter of the opening and t the width
//
// Source of the area: Steiner's formula for convex outlines.
type ExitBand struct {
	SizeM          float64 `json:"size_m" limit:"[0.001,10]" doc:"width of the band; 0.0508 by the rule"`
	OpeningWidthM  float64 `json:"opening_width_m" limit:"[0.01,100]" doc:"of the opening, from side to side"`
	OpeningHeightM float64 `json:"opening_height_m" limit:"[0.01,100]" doc:"of the opening, from bottom to top"`
	CornerRadiusM  float64 `json:"corner_radius_m" limit:"[0,50]" doc:"of the opening's corners, at most half its shorter side; 0 unless given"`
	Colour         string  `json:"colour" doc:"in contrast with the skin; lower-case words"`
	Shared
}

func newExitBand() *ExitBand { return &ExitBand{Shared: usualShared()} }

// Kind implements Figure.
func (*ExitBand) Kind() string { return "exit_band" }

// Check implements Figure.
func (f *ExitBand) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) {
		checkCorner(f.CornerRadiusM, f.OpeningWidthM, f.OpeningHeightM, report)
	}
	checkColour("/colour", f.Colour, report)
}

// Layers implements Figure.
func (f *ExitBand) Layers() []planar.Layer {
	t := f.SizeM
	corner := planar.Point{X: f.OpeningWidthM, Y: f.OpeningHeightM}
	opening := planar.RoundedRectangle(planar.Point{}, corner, f.CornerRadiusM)
	outer := planar.RoundedRectangle(planar.Point{X: -t, Y: -t}, planar.Point{X: corner.X + t, Y: corner.Y + t}, f.CornerRadiusM+t)
	return []planar.Layer{layer(f.Colour, outer, opening.Reversed())}
}
