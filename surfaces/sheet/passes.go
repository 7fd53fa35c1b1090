package sheet

import (
	"math"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// Pass is one colour as it is sprayed: the closed lines round it, in m, holes
// running clockwise.
type Pass struct {
	Colour string
	AreaM2 float64
	Lines  []planar.Outline
}

// Passes checks a figure and returns its colours in the order of painting, and
// its measures. With an under colour the first pass is the whole figure. Sizes
// given as seen from the side are laid along the skin.
//
// The error is a surfaces.Faults for a figure that its Check refuses.
func Passes(f marking.Figure) ([]Pass, marking.Measurement, error) {
	m, err := marking.Measure(f)
	if err != nil {
		return nil, m, err
	}
	a, err := marking.Arrange(f)
	if err != nil {
		return nil, m, err
	}
	loops := a.Loops()
	laid := layingOf(a.Box(), m)
	lines := map[string][]planar.Outline{}
	for _, l := range loops {
		lines[l.Colour] = append(lines[l.Colour], laid.outline(joined(l.Outline)))
	}
	seen := map[string]float64{}
	for _, c := range m.Colours {
		seen[c.Colour] = c.AreaM2
	}
	var passes []Pass
	for i, c := range m.Painted {
		own := lines[c.Colour]
		if i == 0 && math.Abs(c.AreaM2-seen[c.Colour]) > 1e-9*c.AreaM2 {
			if own, err = whole(loops, laid); err != nil {
				return nil, m, err
			}
		}
		passes = append(passes, Pass{c.Colour, c.AreaM2, own})
	}
	return passes, m, nil
}

// whole is the line round all colours together.
func whole(loops []planar.Loop, laid laying) ([]planar.Outline, error) {
	var layers []planar.Layer
	for at := 0; at < len(loops); {
		next := at
		var region planar.Region
		for ; next < len(loops) && loops[next].Colour == loops[at].Colour; next++ {
			region = append(region, loops[next].Outline)
		}
		layers, at = append(layers, planar.Layer{Colour: "under", Outline: region}), next
	}
	a, err := planar.Arrange(layers)
	if err != nil {
		return nil, err
	}
	var out []planar.Outline
	for _, l := range a.Loops() {
		out = append(out, laid.outline(joined(l.Outline)))
	}
	return out, nil
}

// joined leaves out corners at which a straight line goes straight on.
func joined(o planar.Outline) planar.Outline {
	n := len(o)
	out := make(planar.Outline, 0, n)
	for i, c := range o {
		before, after := o[(i+n-1)%n], o[(i+1)%n]
		if straight(before) && straight(c) {
			ax, ay, bx, by := c.At.X-before.At.X, c.At.Y-before.At.Y, after.At.X-c.At.X, after.At.Y-c.At.Y
			if cross, dot := ax*by-ay*bx, ax*bx+ay*by; dot > 0 && math.Abs(cross) <= 1e-12*dot {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

func straight(c planar.Corner) bool { return c.Sweep == 0 && c.Bend == nil }

// boxOf is the box about the lines of all passes.
func boxOf(passes []Pass) planar.Box {
	var all planar.Region
	for _, p := range passes {
		all = append(all, p.Lines...)
	}
	return all.Box()
}
