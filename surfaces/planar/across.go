package planar

import (
	"math"
	"slices"
)

// Across returns the heights at which the upright line at x crosses the borders,
// from the bottom up. A border holds its left end and not its right one, and an
// upright border is passed over, so that crossings of closed lines come in pairs.
func (a *Arrangement) Across(x float64) []float64 {
	var out []float64
	for i := range a.parts {
		p := &a.parts[i]
		for _, at := range p.at {
			local := (x - at.X - p.frame.origin.X) / p.frame.size
			for _, b := range p.borders {
				if (b.from.X <= local) != (b.to.X <= local) {
					out = append(out, p.placed(Point{local, b.heightAt(local)}, at).Y)
				}
			}
		}
	}
	slices.Sort(out)
	return out
}

// heightAt is the height of a border at an x that it spans.
func (b border) heightAt(x float64) float64 {
	switch {
	case b.course != nil:
		return b.course.at(b.course.level(Point{1, 0}, x, 0, 1)).Y
	case b.radius > 0:
		half := b.sweep() / 2
		chord := b.to.minus(b.from)
		centre := b.from.plus(b.to).times(0.5).plus(chord.left().times(b.turn * 0.5 / math.Tan(half)))
		out := math.Sqrt(max(0, b.radius*b.radius-(x-centre.X)*(x-centre.X)))
		if (b.from.Y+b.to.Y)/2 < centre.Y {
			out = -out
		}
		return centre.Y + out
	}
	return b.from.Y + (b.to.Y-b.from.Y)*(x-b.from.X)/(b.to.X-b.from.X)
}
