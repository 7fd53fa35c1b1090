package estimate

import "filmbuild/products"

// topCoat is what coat steps have put on a face so far.
type topCoat struct {
	step     string
	paint    *products.Paint
	endsH    *float64 // when that step ends, where its start is given
	systemUM float64  // film asked for, of all coats since bare metal
	even     bool     // false where a region of the face was coated by itself: its film differs
	scuffed  bool     // since the last coat
}

// lay notes a coat on the faces of a selection.
func (r *run) lay(b *StepBase, s *StepEstimate, sel selection, paint *products.Paint, filmUM float64) {
	if r.topCoats == nil {
		r.topCoats = map[[2]int]topCoat{}
	}
	for _, p := range sel.patches {
		face := [2]int{p.surface, p.face}
		before, known := r.topCoats[face]
		now := topCoat{step: b.ID, paint: paint, systemUM: before.systemUM + filmUM, even: p.share == 1 && (!known || before.even)}
		if begins := startH(b.Starts); begins != nil {
			ends := *begins + s.Hours/float64(b.Crew)
			now.endsH = &ends
		}
		r.topCoats[face] = now
	}
}

// bared forgets the coats of faces that are taken to bare metal.
func (r *run) bared(p patch) {
	face := [2]int{p.surface, p.face}
	if p.share == 1 {
		delete(r.topCoats, face)
	} else if before, known := r.topCoats[face]; known {
		before.even = false
		r.topCoats[face] = before
	}
}

// roughened notes that the last coats of a selection have been scuffed.
func (r *run) roughened(sel selection) {
	for _, p := range sel.patches {
		face := [2]int{p.surface, p.face}
		if before, known := r.topCoats[face]; known {
			before.scuffed = true
			r.topCoats[face] = before
		}
	}
}

// under lists the last coats on the faces of a selection, each step once, in
// the order of the faces.
func (r *run) under(sel selection) []topCoat {
	var below []topCoat
	seen := map[string]bool{}
	for _, p := range sel.patches {
		l, known := r.topCoats[[2]int{p.surface, p.face}]
		if known && !seen[l.step] {
			seen[l.step] = true
			below = append(below, l)
		}
	}
	return below
}

// systemUnder is the film of the coats already on a selection, where it is the
// same all over.
func (r *run) systemUnder(sel selection) (float64, bool) {
	film := 0.0
	for i, p := range sel.patches {
		l := r.topCoats[[2]int{p.surface, p.face}]
		if l.paint != nil && !l.even || i > 0 && l.systemUM != film {
			return 0, false
		}
		film = l.systemUM
	}
	return film, true
}
