package planar

import "fmt"

// CrossingError says where an outline meets itself.
type CrossingError struct {
	At            Point
	First, Second int    // the corners from which the two edges start
	Outlines      [2]int // of a region, the outlines that they belong to
}

func (e *CrossingError) Error() string {
	return fmt.Sprintf("the edges after corners %d and %d meet at (%.6g, %.6g)", e.First, e.Second, e.At.X, e.At.Y)
}

// Simple returns nil if the outline neither crosses nor touches itself, apart
// from each corner joining its two edges; a *CrossingError for a meeting, the
// first by corner; or the error that Arrange would return. Corners that
// coincide with the next one are passed over.
func (o Outline) Simple() error {
	if err := o.valid(); err != nil {
		return err
	}
	in := frameOf([]Layer{{Outline: Region{o}}})
	edges, err := edgesOf(o, in, 0, 0, nil)
	if err != nil {
		return err
	}
	var first *CrossingError
	eachMeeting(edges, func(i, j int) {
		e, f := &edges[i], &edges[j]
		if first != nil && e.corner > first.First {
			return
		}
		at, found := e.meetsBeyondCorner(f, j == i+1, i == 0 && j == len(edges)-1)
		if found && (first == nil || e.corner < first.First || (e.corner == first.First && f.corner < first.Second)) {
			first = &CrossingError{At: in.back(at), First: e.corner, Second: f.corner}
		}
	})
	if first != nil {
		return first
	}
	return nil
}

// meetsBeyondCorner returns a point that two edges of one outline share other
// than a corner between them: follows says that f starts where e ends, closes
// that f ends where e starts.
func (e *edge) meetsBeyondCorner(f *edge, follows, closes bool) (Point, bool) {
	places := meet(e, f, nil)
	for _, p := range []Point{f.from, f.to} {
		if e.near(p, tolerance) {
			places = append(places, p)
		}
	}
	for _, p := range []Point{e.from, e.to} {
		if f.near(p, tolerance) {
			places = append(places, p)
		}
	}
	const corner = 4 * tolerance
	for _, p := range places {
		if (follows && p.within(e.to, corner)) || (closes && p.within(e.from, corner)) {
			continue
		}
		return p, true
	}
	return Point{}, false
}
