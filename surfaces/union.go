package surfaces

import (
	"math"
	"slices"

	"filmbuild/surfaces/planar"
)

// together sorts figures into groups that overlap or touch, directly or
// through others; each group lists its figures by number.
func together(figures []planar.Outline) ([][]int, error) {
	group := make([]int, len(figures))
	boxes := make([]planar.Box, len(figures))
	for i, f := range figures {
		group[i] = i
		boxes[i] = boxAbout(f)
	}
	for i := range figures {
		for j := range i {
			if group[i] == group[j] || !overlap(boxes[i], boxes[j]) {
				continue
			}
			t, err := compare(planar.Region{figures[j]}, planar.Region{figures[i]})
			if err != nil {
				return nil, err
			}
			if t.meets {
				from, to := group[i], group[j]
				for k := range group {
					if group[k] == from {
						group[k] = to
					}
				}
			}
		}
	}
	var groups [][]int
	at := map[int]int{}
	for i, g := range group {
		k, known := at[g]
		if !known {
			k = len(groups)
			at[g] = k
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	return groups, nil
}

// boxAbout is a box that a figure cannot reach beyond; arcs may not fill it.
func boxAbout(o planar.Outline) planar.Box {
	low, high := o[0].At, o[0].At
	for i, c := range o {
		next := o[(i+1)%len(o)].At
		reach := math.Hypot(next.X-c.At.X, next.Y-c.At.Y)
		if c.Sweep == 0 {
			reach = 0
		}
		low = planar.Point{X: min(low.X, c.At.X-reach), Y: min(low.Y, c.At.Y-reach)}
		high = planar.Point{X: max(high.X, c.At.X+reach), Y: max(high.Y, c.At.Y+reach)}
	}
	return planar.Box{Min: low, Max: high}
}

// holds says whether a point lies in a box or within touch of it.
func holds(b planar.Box, p planar.Point) bool {
	return p.X >= b.Min.X-touch && p.X <= b.Max.X+touch && p.Y >= b.Min.Y-touch && p.Y <= b.Max.Y+touch
}

func overlap(a, b planar.Box) bool {
	return a.Min.X <= b.Max.X+touch && b.Min.X <= a.Max.X+touch && a.Min.Y <= b.Max.Y+touch && b.Min.Y <= a.Max.Y+touch
}

// cutsFree says whether figures united enclose a piece of what they are cut
// from, which then falls out.
func cutsFree(figures planar.Region) (bool, error) {
	seen, err := layout(planar.Layer{Colour: cutout, Outline: figures})
	if err != nil {
		return false, err
	}
	return slices.ContainsFunc(seen.Holes(), func(h planar.Holes) bool { return h.Holes > 0 }), nil
}
