package marking

import (
	"fmt"
	"strconv"
	"strings"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceRoundel = "plane geometry; sets of ratios: encyclopaedic list of air force roundels, pages on French air force insignia (1-2-3), a literal reading of an archived history page (3-7-11, low confidence)"

// Roundel is a set of discs of one centre: free rings, or a public set of ratios
// with a colour for each. Only the proportion of the ratios counts: 1:2:3 and
// 0.1:0.2:0.3 are the same roundel.
//
//	diameter of ring i = size · ratio i / last ratio
type Roundel struct {
	SizeM    float64       `json:"size_m" limit:"[0.001,100]" doc:"outer diameter"`
	Rings    []RoundelRing `json:"rings" doc:"from the centre out, ratios increasing; at most 100; left out with ratio_set"`
	RatioSet string        `json:"ratio_set" doc:"public ratios of diameters from the centre out: 1-3-5, 1-3-5-7, 1-3-5-6, 2-5, 3-4-8, 1-2-3 or 3-7-11; none unless given"`
	Colours  []string      `json:"colours" doc:"of the rings of ratio_set, from the centre out"`
	Shared
}

// RoundelRing is one ring, or the disc in the middle.
type RoundelRing struct {
	Ratio  float64 `json:"ratio" limit:"[0.000001,1000000]" doc:"outer diameter of the ring, on any scale common to the rings"`
	Colour string  `json:"colour" doc:"lower-case words"`
}

func newRoundel() *Roundel { return &Roundel{Shared: usualShared()} }

// Kind implements Figure.
func (*Roundel) Kind() string { return "roundel" }

// mostRings is above anything ever painted and keeps the work bounded.
const mostRings = 100

// Check implements Figure. A ring under a millionth of the outer diameter wide
// is refused as not increasing: no brush follows it.
func (f *Roundel) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	if f.RatioSet != "" {
		f.checkRatioSet(report)
		return
	}
	if len(f.Colours) > 0 {
		report("/colours", "not_applicable", "colours is given without ratio_set; name the set, or give the colours with the rings")
	}
	if len(f.Rings) == 0 {
		report("/rings", "required", "rings is empty; give each ring from the centre out, with its ratio and colour")
		return
	}
	if len(f.Rings) > mostRings {
		report("/rings", "too_many", fmt.Sprintf("rings has %d entries; at most %d", len(f.Rings), mostRings))
		return
	}
	for i, ring := range f.Rings {
		at := "/rings/" + strconv.Itoa(i)
		checkColour(at+"/colour", ring.Colour, report)
		if clean && i > 0 && !(ring.Ratio-f.Rings[i-1].Ratio > 1e-6*f.Rings[len(f.Rings)-1].Ratio) {
			report(at+"/ratio", "not_increasing", fmt.Sprintf("ratio is %g after %g; ratios are diameters from the centre out, so each must be greater than the one before", ring.Ratio, f.Rings[i-1].Ratio))
		}
	}
}

func (f *Roundel) checkRatioSet(report reporter) {
	set, found, names := ratioSetNamed(f.RatioSet)
	if len(f.Rings) > 0 {
		report("/rings", "not_applicable", "rings and ratio_set are both given; leave one of them out")
	}
	if !found {
		report("/ratio_set", "unknown_reference", fmt.Sprintf("there is no set of ratios %q; it must be one of %s", f.RatioSet, strings.Join(names, ", ")))
		return
	}
	if len(f.Colours) != len(set.ratios) {
		report("/colours", "inconsistent", fmt.Sprintf("colours has %d entries; the set %s has %d rings, from the centre out", len(f.Colours), set.name, len(set.ratios)))
		return
	}
	for i, c := range f.Colours {
		checkColour(fmt.Sprintf("/colours/%d", i), c, report)
	}
}

// drawn are the rings, given or of the set.
func (f *Roundel) drawn() (rings []RoundelRing, source string) {
	if f.RatioSet == "" {
		return f.Rings, identity
	}
	set, found, _ := ratioSetNamed(f.RatioSet)
	if !found || len(set.ratios) != len(f.Colours) {
		return f.Rings, identity
	}
	for i, ratio := range set.ratios {
		rings = append(rings, RoundelRing{ratio, f.Colours[i]})
	}
	return rings, set.source + " (mark " + set.mark + ")"
}

// Layers implements Figure. The outermost disc is put down first.
func (f *Roundel) Layers() []planar.Layer {
	rings, _ := f.drawn()
	layers := make([]planar.Layer, 0, len(rings))
	for i := len(rings) - 1; i >= 0; i-- {
		layers = append(layers, layer(rings[i].Colour, planar.Circle(planar.Point{}, f.SizeM*rings[i].Ratio/rings[len(rings)-1].Ratio/2)))
	}
	return layers
}

func (f *Roundel) dimensions() []quantity.Working {
	rings, source := f.drawn()
	list := make([]quantity.Working, 0, len(rings)+5) // and what all figures note
	for i, ring := range rings {
		whole := rings[len(rings)-1].Ratio
		list = append(list, length("ring_"+strconv.Itoa(i+1)+"_diameter_m", f.SizeM*ring.Ratio/whole, "D·k/K",
			map[string]float64{"D": f.SizeM, "k": ring.Ratio, "K": whole}, source))
	}
	return list
}
