package marking

import (
	"fmt"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

const sourceStencil = sourceLettering + "; bridges: plane geometry, no public rule gives their width"

// StencilText is lettering with bridges across its strokes, so that nothing
// falls out of the stencil. Each island gets bridges straight up and down.
//
//	a bridge of width b across a level stroke of width s: area − b·s, edge + 2·s − 2·b
//
// No public rule gives the width of bridges; two to an island are common
// practice.
type StencilText struct {
	Setting
	BridgeWidthM float64 `json:"bridge_width_m" limit:"(0,10]" doc:"width of each bridge, less than that of the narrowest island"`
	Bridges      int     `json:"bridges" limit:"[1,2]" doc:"to each island: 2 (above and below it, taken unless given) or 1 (above)"`
	Repeat       int     `json:"repeat" limit:"[1,1000]" doc:"how many of the same stand side by side; 1 unless given"`
	Shared
}

func newStencilText() *StencilText {
	return &StencilText{Setting: usualSetting(), Bridges: 2, Repeat: 1, Shared: usualShared()}
}

// mostCopies keeps the work bounded.
const mostCopies = 50_000

// Kind implements Figure.
func (*StencilText) Kind() string { return "stencil" }

// Check implements Figure. A letter with an island too narrow for the bridge is
// named.
func (f *StencilText) Check(report func(pointer, code, detail string)) {
	clean := inRange(f, report)
	if f.Repeat > 1 && f.Sizes == "projected" {
		report("/repeat", "not_applicable", "repeat is given and sizes is projected; seen from the side each of them looks another way, so give one at a time")
	}
	if f.Setting.check(report) && clean {
		places, _ := f.set()
		if n := len(places) * f.Repeat; n > mostCopies {
			report("/repeat", "too_many", fmt.Sprintf("the stencils would have %d letters in all; at most %d: use count for more", n, mostCopies))
			return
		}
		told := map[rune]bool{}
		for _, p := range places {
			if told[p.of] {
				continue
			}
			told[p.of] = true
			if _, narrow := f.bridges(p.outline); narrow > 0 {
				report("/bridge_width_m", "inconsistent", fmt.Sprintf("bridge_width_m is %s and an island of %q is only %s wide there; make the bridges narrower", metres(f.BridgeWidthM), p.of, metres(narrow*f.HeightM)))
			}
		}
	}

}

// Layers implements Figure.
func (f *StencilText) Layers() []planar.Layer { return spread(f.blocks()) }

func (f *StencilText) blocks() []block {
	places, width := f.set()
	cut := map[rune]planar.Region{}
	blocks := letterBlocks(places, f.HeightM, func(of rune, outline planar.Region) []planar.Layer {
		if _, known := cut[of]; !known {
			cut[of], _ = f.bridges(outline)
		}
		return []planar.Layer{{Colour: f.Colour, Outline: outline}, {Colour: planar.Base, Outline: cut[of]}}
	})
	step := (width + 1) * f.HeightM // a height apart
	for i := range blocks {
		once := blocks[i].at
		for n := 1; n < f.Repeat; n++ {
			for _, at := range once {
				blocks[i].at = append(blocks[i].at, planar.Point{X: at.X + float64(n)*step, Y: at.Y})
			}
		}
	}
	return blocks
}

// bridges are the bridges of a letter of height 1. narrow is the width of an
// island too narrow for them, 0 if there is none.
func (f *StencilText) bridges(outline planar.Region) (cut planar.Region, narrow float64) {
	a, err := planar.Arrange([]planar.Layer{{Colour: f.Colour, Outline: outline}})
	if err != nil {
		return nil, 0
	}
	half := f.BridgeWidthM / f.HeightM / 2
	for _, l := range a.Loops() {
		if l.Area >= 0 {
			continue
		}
		box := planar.Region{l.Outline}.Box()
		if box.Width() <= 2*half {
			narrow = box.Width()
			continue
		}
		middle := (box.Min.X + box.Max.X) / 2
		up, down := 0.0, 0.0
		for i, x := range []float64{middle - half, middle, middle + half} {
			high, low, inside := BridgeReach(a.Across(x), box, beyond)
			if !inside {
				narrow = box.Width()
				break
			}
			if i == 0 {
				up, down = high, low
			}
			up, down = max(up, high), min(down, low)
		}
		bottom := (box.Min.Y + box.Max.Y) / 2
		if f.Bridges == 2 {
			bottom = down
		}
		cut = append(cut, planar.Rectangle(planar.Point{X: middle - half, Y: bottom}, planar.Point{X: middle + half, Y: up}))
	}
	return cut, narrow
}

// beyond is how far a bridge goes where nothing follows the stroke: letters
// nearer than twice this were put together.
const beyond = near / 2

// BridgeReach returns how far bridges from an island in a box reach up and down
// along a line that crosses the borders of strokes at the heights, which
// increase: past the next stroke, half way through what is free after it, and no
// farther than a step. found is false where no island of the box lies on the
// line.
func BridgeReach(heights []float64, box planar.Box, step float64) (up, down float64, found bool) {
	for i := 1; i+2 < len(heights); i += 2 {
		if middle := (heights[i] + heights[i+1]) / 2; middle < box.Min.Y || middle > box.Max.Y {
			continue
		}
		up, down = heights[i+2]+step, heights[i-1]-step
		if i+3 < len(heights) {
			up = min(up, (heights[i+2]+heights[i+3])/2)
		}
		if i > 1 {
			down = max(down, (heights[i-1]+heights[i-2])/2)
		}
		return up, down, true
	}
	return 0, 0, false
}

func (f *StencilText) dimensions() []quantity.Working {
	places, _ := f.set()
	per := map[rune]int{}
	islands := 0
	for _, p := range places {
		if _, known := per[p.of]; !known {
			cut, _ := f.bridges(p.outline)
			per[p.of] = len(cut)
		}
		islands += per[p.of]
	}
	n := float64(islands * f.Repeat)
	return append(f.settingDimensions(), quantity.Working{
		Quantity: "bridges", Value: n * float64(f.Bridges), Formula: "islands·n", Terms: map[string]float64{"islands": n, "n": float64(f.Bridges)},
		Source: "identity: islands = closed lines − 1 for each letter; two bridges to an island are common practice",
	})
}
