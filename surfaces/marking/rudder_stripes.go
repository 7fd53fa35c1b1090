package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceRudder = "US Army rudder after 1926 by an aircraft history page: vertical blue over a third of the greatest chord, 13 stripes, red first"

// RudderStripes is an upright band along the hinge and level stripes of two
// colours behind it, equal in height, the first colour at the top. The rudder is
// a rectangle, or narrows straight to another chord at the top.
//
//	width of the band = chord/3
//
// Source: an aircraft history page, read; the form of the rudder is ours.
type RudderStripes struct {
	ChordM       float64  `json:"chord_m" limit:"[0.001,100]" doc:"greatest chord, from the hinge back, at the bottom"`
	TipChordM    *float64 `json:"tip_chord_m" limit:"[0,100]" doc:"chord at the top, at most chord_m; as chord_m unless given"`
	HeightM      float64  `json:"height_m" limit:"[0.001,100]" doc:"from bottom to top"`
	Stripes      int      `json:"stripes" limit:"[1,99]" doc:"13 unless given"`
	BandRatio    float64  `json:"band_ratio" limit:"[0,1]" doc:"width of the upright band over the chord; 1/3 unless given, 0 for none"`
	FirstColour  string   `json:"first_colour" doc:"of the top stripe, red unless given"`
	SecondColour string   `json:"second_colour" doc:"white unless given"`
	BandColour   string   `json:"band_colour" doc:"blue unless given"`
	Shared
}

func newRudderStripes() *RudderStripes {
	return &RudderStripes{Stripes: 13, BandRatio: 1.0 / 3, FirstColour: "red", SecondColour: "white", BandColour: "blue", Shared: usualShared()}
}

// Kind implements Figure.
func (*RudderStripes) Kind() string { return "rudder_stripes" }

// Check implements Figure.
func (f *RudderStripes) Check(report func(pointer, code, detail string)) {
	if inRange(f, report) && f.TipChordM != nil && *f.TipChordM > f.ChordM {
		report("/tip_chord_m", "inconsistent", fmt.Sprintf("tip_chord_m is %s; it must be at most chord_m, %s", metres(*f.TipChordM), metres(f.ChordM)))
	}
	if f.BandRatio > 0 && f.BandRatio < 1e-3 {
		report("/band_ratio", "inconsistent", fmt.Sprintf("band_ratio is %g, a band that no brush follows; give 0 for none", f.BandRatio))
	}
	checkColour("/first_colour", f.FirstColour, report)
	checkColour("/second_colour", f.SecondColour, report)
	checkColour("/band_colour", f.BandColour, report)
}

// chordAt is the chord at a height.
func (f *RudderStripes) chordAt(y float64) float64 {
	if f.TipChordM == nil {
		return f.ChordM
	}
	return f.ChordM + (*f.TipChordM-f.ChordM)*y/f.HeightM
}

// Layers implements Figure. The hinge stands at x = 0.
func (f *RudderStripes) Layers() []planar.Layer {
	point := func(x, y float64) planar.Point { return planar.Point{X: x, Y: y} }
	between := func(low, high float64) []planar.Point {
		return []planar.Point{point(0, low), point(f.chordAt(low), low), point(f.chordAt(high), high), point(0, high)}
	}
	first, second := planar.Layer{Colour: f.FirstColour}, planar.Layer{Colour: f.SecondColour}
	for i := range f.Stripes {
		n := float64(f.Stripes)
		stripe := planar.Polygon(between(f.HeightM*(n-float64(i)-1)/n, f.HeightM*(n-float64(i))/n)...)
		if i%2 == 0 {
			first.Outline = append(first.Outline, stripe)
		} else {
			second.Outline = append(second.Outline, stripe)
		}
	}
	layers := []planar.Layer{first, second}
	if band := cutAt(between(0, f.HeightM), f.BandRatio*f.ChordM, -1); len(band) > 0 && f.BandRatio > 0 {
		layers = append(layers, layer(f.BandColour, planar.Polygon(band...)))
	}
	return layers
}

func (f *RudderStripes) dimensions() []quantity.Working {
	return []quantity.Working{
		length("stripe_height_m", f.HeightM/float64(f.Stripes), "H/n", map[string]float64{"H": f.HeightM, "n": float64(f.Stripes)}, identity),
		length("band_width_m", f.BandRatio*f.ChordM, "C·k", map[string]float64{"C": f.ChordM, "k": f.BandRatio}, sourceRudder),
	}
}
