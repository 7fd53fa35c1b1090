package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// FinFlash is an upright rectangle of vertical bands. Only the proportion of
// the ratios counts; equal ratios make equal bands.
//
//	width of band i = width · ratio i / Σ ratios
type FinFlash struct {
	WidthM  float64 `json:"width_m" limit:"[0.001,100]" doc:"of all bands together"`
	HeightM float64 `json:"height_m" limit:"[0.001,100]" doc:"from bottom to top"`
	Bands   []Band  `json:"bands" doc:"from left to right; at most 100"`
	Shared
}

// Band is one vertical band.
type Band struct {
	Ratio  float64 `json:"ratio" limit:"[0.001,1000]" doc:"width of the band, on any scale common to the bands"`
	Colour string  `json:"colour" doc:"lower-case words"`
}

func newFinFlash() *FinFlash { return &FinFlash{Shared: usualShared()} }

// Kind implements Figure.
func (*FinFlash) Kind() string { return "fin_flash" }

// Check implements Figure.
func (f *FinFlash) Check(report func(pointer, code, detail string)) {
	inRange(f, report)
	checkBands(f.Bands, report)
}

func (f *FinFlash) ratios() float64 {
	sum := 0.0
	for _, b := range f.Bands {
		sum += b.Ratio
	}
	return sum
}

// Layers implements Figure.
func (f *FinFlash) Layers() []planar.Layer {
	var layers []planar.Layer
	sum, before := f.ratios(), 0.0
	for _, b := range f.Bands {
		left := f.WidthM * before / sum
		before += b.Ratio
		layers = append(layers, layer(b.Colour, planar.Rectangle(planar.Point{X: left}, planar.Point{X: f.WidthM * before / sum, Y: f.HeightM})))
	}
	return layers
}

func (f *FinFlash) dimensions() []quantity.Working {
	var list []quantity.Working
	for i, b := range f.Bands {
		list = append(list, length(fmt.Sprintf("band_%d_width_m", i+1), f.WidthM*b.Ratio/f.ratios(), "W·k/K",
			map[string]float64{"W": f.WidthM, "k": b.Ratio, "K": f.ratios()}, identity))
	}
	return list
}
