package planar

import "fmt"

// Box returns the smallest upright box about the outlines, arcs and curves
// included; the zero box of none.
func (r Region) Box() Box {
	box, empty := nowhere(), true
	in := frameOf([]Layer{{Outline: r}})
	for _, o := range r {
		edges, err := edgesOf(o, in, 0, 0, nil)
		if err != nil {
			edges = nil
		}
		for i := range edges {
			empty = false
			box = box.with(edges[i].box)
		}
	}
	if empty {
		return Box{}
	}
	return Box{in.back(box.Min), in.back(box.Max)}
}

// EvenOdd returns the set of points about which the outlines wind an odd number
// of times, as outlines that neither cross nor overlap: counter-clockwise round
// its parts and clockwise round its holes.
func (r Region) EvenOdd() (Region, error) {
	a, err := arrange([]Layer{{"odd", r}}, func(winding int) bool { return winding%2 != 0 })
	if err != nil {
		return nil, err
	}
	var out Region
	for _, l := range a.Loops() {
		out = append(out, l.Outline)
	}
	return out, nil
}

// Simple returns nil if no outline of the region crosses or touches itself or
// another; a *CrossingError for a meeting; or the error that Arrange would
// return.
func (r Region) Simple() error {
	in := frameOf([]Layer{{Outline: r}})
	var edges []edge
	for i, o := range r {
		err := o.Simple()
		if crossing, ok := err.(*CrossingError); ok {
			crossing.Outlines = [2]int{i, i}
			return crossing
		}
		if err != nil {
			return fmt.Errorf("outline %d: %w", i, err)
		}
		if edges, err = edgesOf(o, in, 0, i, edges); err != nil {
			return fmt.Errorf("outline %d: %w", i, err)
		}
	}
	var first *CrossingError
	eachMeeting(edges, func(i, j int) {
		e, f := &edges[i], &edges[j]
		if first != nil || e.outline == f.outline {
			return
		}
		if at, found := e.meetsBeyondCorner(f, false, false); found {
			first = &CrossingError{At: in.back(at), First: e.corner, Second: f.corner, Outlines: [2]int{e.outline, f.outline}}
		}
	})
	if first != nil {
		return first
	}
	return nil
}
