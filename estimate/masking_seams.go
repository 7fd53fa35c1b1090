package estimate

import "filmbuild/surfaces"

// openEnds is a line where the skin stops. As far as another component is set on
// there, that is a seam: none where both are treated, and one towards the other
// where it is not.
func (r *run) openEnds(sel *selection, p parcel, l line) []edge {
	face := r.called(p, l.face)
	left := l.lengthM
	var list []edge
	for _, rim := range r.rims(p, l) {
		on := side{rim.body, rim.face, whole}
		length := min(rim.lengthM, left)
		left -= length
		if length -= sel.seamIn(rim, p.surface, length/rim.lengthM); sel.takes(on) || length <= 1e-9*rim.lengthM {
			continue
		}
		body := &r.surfaces[rim.body]
		e := edge{mine: r.sideOf(p, l.face), other: on, known: true, areaM2: body.faces[rim.face].areaM2}
		e.MaskedEdge = MaskedEdge{Kind: "seam", Name: r.surfaces[p.surface].component.ID + " on " + body.component.ID, Between: [2]string{face, body.component.ID + "/" + body.faces[rim.face].name}, LengthM: length}
		list = append(list, e.keyed())
	}
	if left > 1e-9*l.lengthM {
		e := edge{mine: r.sideOf(p, l.face)}
		e.MaskedEdge = MaskedEdge{Kind: "open_end", Name: "open end of " + face, Between: [2]string{face, surfaces.Open}, LengthM: left}
		list = append(list, e.keyed())
	}
	return list
}

// rim is where an open end of a component is set on a face of another.
type rim struct {
	body, face int
	lengthM    float64
	share      float64 // of the whole rim there, that falls to one line of the component
}

// rims are those of one line of a component, which its faces share in proportion
// to their open ends.
func (r *run) rims(p parcel, l line) []rim {
	if p.region != whole || len(r.masks.joined[p.surface]) == 0 {
		return nil
	}
	open := 0.0
	for _, e := range r.surfaces[p.surface].one.Edges {
		if e.Between[1] == surfaces.Open {
			open += e.LengthM * float64(r.surfaces[p.surface].component.Count)
		}
	}
	var list []rim
	for _, on := range r.masks.joined[p.surface] {
		list = append(list, rim{on.body, on.face, on.lengthM * l.lengthM / open, l.lengthM / open})
	}
	return list
}

// seamIn is how much of a rim is set on bays, bands and strips that are treated;
// portion is that of the joint's whole rim which is meant.
func (s *selection) seamIn(on rim, part int, portion float64) float64 {
	sum := 0.0
	for _, h := range s.seams {
		if h.surface == on.body && h.face == on.face && h.seam.part == part {
			sum += h.seam.rimM * portion * on.share
		}
	}
	return sum
}

// takes says whether a selection treats the whole of a face.
func (s *selection) takes(at side) bool { return s.whole[[2]int{at.surface, at.face}] }

// seamsOf are the lines along which other components are set on the faces of a
// parcel, where those are not treated too.
func (r *run) seamsOf(sel *selection, p parcel) []edge {
	s := &r.surfaces[p.surface]
	var list []edge
	for _, name := range p.faces {
		for _, seam := range s.faces[s.faceIndex(name)].seams {
			list = append(list, r.seamEdge(sel, p, name, seam)...)
		}
	}
	return list
}

// seamsInParts are those of joints that lie in bays, bands and strips.
func (r *run) seamsInParts(sel *selection) []edge {
	var list []edge
	for _, h := range sel.seams {
		list = append(list, r.seamEdge(sel, parcel{surface: h.surface, region: h.region}, r.surfaces[h.surface].faces[h.face].name, h.seam)...)
	}
	return list
}

func (r *run) seamEdge(sel *selection, p parcel, face string, line seam) []edge {
	if sel.whole[[2]int{line.part, anyFace}] {
		return nil
	}
	part := &r.surfaces[line.part]
	e := edge{mine: r.sideOf(p, face), areaM2: part.totalM2()}
	if f := r.openFace(line.part); f >= 0 && line.rimM > 0 {
		e.other, e.known = side{line.part, f, whole}, true
	}
	e.MaskedEdge = MaskedEdge{Kind: "seam", Name: part.component.ID + " on " + r.surfaces[p.surface].component.ID, Between: [2]string{r.called(p, face), part.component.ID}, LengthM: line.edgeM}
	return []edge{e.keyed()}
}

// openFace is the first face of a component that ends in the open, −1 for none.
func (r *run) openFace(k int) int {
	for _, e := range r.surfaces[k].one.Edges {
		if e.Between[1] == surfaces.Open {
			return r.surfaces[k].faceIndex(e.Between[0])
		}
	}
	return -1
}

func (s *surface) totalM2() float64 {
	sum := 0.0
	for _, f := range s.faces {
		sum += f.areaM2
	}
	return sum
}
