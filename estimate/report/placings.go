package report

import (
	"strings"

	"filmbuild/estimate/units"
)

// placings prints where the markings go, and what the steps have to do with it.
func (t *table) placings() {
	if len(t.e.Placings) > 0 {
		t.section("PLACES of markings (face seen from outside, x to the right, y up)")
		unit := t.unit("m")
		g := grid{columns: []column{{"marking", false}, {"on", false}, {"point", false}, {"x " + unit, true}, {"y " + unit, true}, {"turned °", true}, {"± " + t.unit("mm"), true}}}
		for _, p := range t.e.Placings {
			on := strings.Trim(p.Component+"/"+p.Face, "/")
			g.row(p.Marking, on, words(p.Anchor), t.place(p.XM), t.place(p.YM), units.Format(p.RotationDeg, 4), t.number(p.ErrorM*1000, "mm", 1))
			if p.Mirrored {
				o := p.OtherSide
				g.row("  the other side", strings.Trim(p.Component+"/"+p.OtherFace, "/"), words(o.Anchor), t.place(o.XM), t.place(o.YM), units.Format(o.RotationDeg, 4), t.number(o.ErrorM*1000, "mm", 1))
			}
		}
		g.write(&t.out)
		for _, p := range t.e.Placings {
			for _, w := range p.Warnings {
				paragraph(&t.out, "! ", p.Marking+": "+w)
			}
		}
	}
	t.instructions()
}

// place prints a coordinate to a millimetre; 0 is a place too.
func (t *table) place(x float64) string {
	if x == 0 {
		return "0"
	}
	return t.number(x, "m", 3)
}

func words(name string) string { return strings.ReplaceAll(name, "_", " ") }

func (t *table) instructions() {
	begun := false
	for i := range t.e.Steps {
		for _, text := range t.e.Steps[i].Instructions {
			if !begun {
				t.section("DO NOT FORGET")
				begun = true
			}
			paragraph(&t.out, "- ", t.e.Steps[i].ID+": "+text)
		}
	}
}
