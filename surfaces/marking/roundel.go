package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Roundel is a set of discs of one centre. Only the proportion of the ratios
// counts: 1:2:3 and 0.1:0.2:0.3 are the same roundel.
//
//	diameter of ring i = size · ratio i / last ratio
type Roundel struct {
	SizeM float64       `json:"size_m" limit:"[0.001,100]" doc:"outer diameter"`
	Rings []RoundelRing `json:"rings" doc:"from the centre out, ratios increasing; at most 100"`
	Stencil
}

// RoundelRing is one ring, or the disc in the middle.
type RoundelRing struct {
	Ratio  float64 `json:"ratio" limit:"[0.000001,1000000]" doc:"outer diameter of the ring, on any scale common to the rings"`
	Colour string  `json:"colour" doc:"lower-case words"`
}

func newRoundel() *Roundel { return &Roundel{Stencil: usualStencil()} }

// Kind implements Figure.
func (*Roundel) Kind() string { return "roundel" }

// mostRings is above anything ever painted and keeps the work bounded.
const mostRings = 100

// Check implements Figure. A ring under a millionth of the outer diameter wide
// is refused as not increasing: no brush follows it.
func (f *Roundel) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	if len(f.Rings) == 0 {
		report("/rings", "required", "rings is empty; give each ring from the centre out, with its ratio and colour")
		return
	}
	if len(f.Rings) > mostRings {
		report("/rings", "too_many", fmt.Sprintf("rings has %d entries; at most %d", len(f.Rings), mostRings))
		return
	}
	for i, ring := range f.Rings {
		at := fmt.Sprintf("/rings/%d", i)
		checkColour(at+"/colour", ring.Colour, report)
		if clean && i > 0 && !(ring.Ratio-f.Rings[i-1].Ratio > 1e-6*f.Rings[len(f.Rings)-1].Ratio) {
			report(at+"/ratio", "not_increasing", fmt.Sprintf("ratio is %g after %g; ratios are diameters from the centre out, so each must be greater than the one before", ring.Ratio, f.Rings[i-1].Ratio))
		}
	}
}

// Layers implements Figure. The outermost disc is put down first.
func (f *Roundel) Layers() []planar.Layer {
	var layers []planar.Layer
	for i := len(f.Rings) - 1; i >= 0; i-- {
		layers = append(layers, layer(f.Rings[i].Colour, planar.Circle(planar.Point{}, f.diameter(i)/2)))
	}
	return layers
}

func (f *Roundel) diameter(ring int) float64 {
	return f.SizeM * f.Rings[ring].Ratio / f.Rings[len(f.Rings)-1].Ratio
}

func (f *Roundel) dimensions() []quantity.Working {
	var list []quantity.Working
	for i, ring := range f.Rings {
		list = append(list, length(fmt.Sprintf("ring_%d_diameter_m", i+1), f.diameter(i), "D·k/K",
			map[string]float64{"D": f.SizeM, "k": ring.Ratio, "K": f.Rings[len(f.Rings)-1].Ratio}, identity))
	}
	return list
}
