package estimate

import (
	"fmt"
	"slices"

	"filmbuild/surfaces"
)

// MaskedEdge is one line along which a step is masked, or would be if another
// step's tape did not serve. Lengths are of all parts together.
type MaskedEdge struct {
	Kind     string    `json:"kind"`             // opening, face, open_end, seam, region or marking
	Name     string    `json:"name"`             // what it runs round or along
	Between  [2]string `json:"between"`          // what is treated, and what is not
	Colour   string    `json:"colour,omitempty"` // of a marking: the one that is sprayed inside this tape
	LengthM  float64   `json:"length_m"`
	Passes   int       `json:"passes"`              // times it is taped in this step
	Tapes    int       `json:"tapes"`               // side by side: 2 where a narrow one is laid first
	TapeM    float64   `json:"tape_m"`              // length · passes · tapes, without waste
	CoverM2  float64   `json:"cover_m2,omitempty"`  // film or paper in all passes
	ServedBy string    `json:"served_by,omitempty"` // the step whose tape serves, or that tapes the border later
	Note     string    `json:"note,omitempty"`
}

// edge is a masked edge in the making.
type edge struct {
	MaskedEdge
	key         string  // the same for one edge in every step
	mine, other side    // whose edge it is, and what lies beyond
	known       bool    // other is a face or a region that a step may treat
	covered     bool    // what lies beyond is covered whole: an opening
	straight    bool    // nothing about it is curved
	areaM2      float64 // that is covered, or of what lies beyond
}

// edgesOf lists the edges of a selection: of each parcel, less what two parcels
// share; of the openings in faces that are whole; and those that were given.
func (r *run) edgesOf(sel selection) []edge {
	all := make([][]line, len(sel.parcels))
	for i, p := range sel.parcels {
		all[i] = r.lines(p)
	}
	held := map[[2]int]int{} // surface and region -> index of the parcel
	for i, p := range sel.parcels {
		held[[2]int{p.surface, p.region}] = i
	}
	var list []edge
	for i, p := range sel.parcels {
		var others []parcel
		for _, q := range r.besides(p) {
			if k, here := held[[2]int{q.surface, q.region}]; !here {
				others = append(others, q)
			} else {
				r.takeShared(all[i], p, sel.parcels[k])
			}
		}
		if k, here := held[[2]int{p.surface, whole}]; here && p.region != whole {
			r.takeShared(all[i], p, sel.parcels[k])
		}
		list = append(list, r.edgesOfParcel(&sel, p, all[i], others)...)
	}
	list = append(list, r.openings(&sel)...)
	list = append(list, r.seamsInParts(&sel)...)
	for _, l := range sel.loose {
		list = append(list, r.looseEdge(l))
	}
	return slices.DeleteFunc(list, func(e edge) bool { return e.LengthM == 0 && !e.covered })
}

// takeShared takes off the boundary of a parcel what it shares with another that
// is treated too.
func (r *run) takeShared(lines []line, p, q parcel) {
	for _, b := range r.shared(p, q) {
		take(lines, b.mine, beyondOf(b.other, b.mine), b.lengthM)
	}
}

// beyondOf is what a line is called that a parcel shares with a face of another:
// the cut where both are of one face.
func beyondOf(other, mine string) string {
	if other == mine {
		return surfaces.Cut
	}
	return other
}

// edgesOfParcel turns what is left of a parcel's boundary into edges: towards the
// regions that other steps treat, towards faces, and open.
func (r *run) edgesOfParcel(sel *selection, p parcel, lines []line, others []parcel) []edge {
	s := &r.surfaces[p.surface]
	var list []edge
	for _, q := range others {
		for _, b := range r.shared(p, q) {
			take(lines, b.mine, beyondOf(b.other, b.mine), b.lengthM)
			list = append(list, r.regionEdge(p, b.mine, r.job.Regions[q.region].ID, side{p.surface, s.faceIndex(b.other), q.region}, b.lengthM, r.partM2(q)))
		}
	}
	for _, l := range lines {
		if l.lengthM <= 1e-9 {
			continue
		}
		face := s.component.ID + "/" + l.face
		switch l.beyond {
		case surfaces.Cut:
			f := s.faceIndex(l.face)
			rest := s.faces[f].areaM2 - r.partM2(p)
			list = append(list, r.regionEdge(p, l.face, face, side{p.surface, f, whole}, l.lengthM, max(0, rest)))
		case surfaces.Open:
			list = append(list, r.openEnds(sel, p, l)...)
		default:
			f := s.faceIndex(l.beyond)
			e := edge{mine: r.sideOf(p, l.face), other: side{p.surface, f, whole}, known: true, areaM2: s.faces[f].areaM2}
			e.MaskedEdge = MaskedEdge{Kind: "face", Name: "edge of " + r.called(p, l.face), Between: [2]string{r.called(p, l.face), s.component.ID + "/" + l.beyond}, LengthM: l.lengthM}
			list = append(list, e.keyed())
		}
	}
	if p.region == whole {
		list = append(list, r.seamsOf(sel, p)...)
	}
	return list
}

// besides are the regions on a parcel's component that other steps treat.
func (r *run) besides(p parcel) []parcel {
	m := &r.masks
	if p.region == whole {
		return slices.DeleteFunc(slices.Clone(m.parted[p.surface]), func(q parcel) bool {
			return slices.ContainsFunc(q.faces, func(f string) bool { return slices.Contains(p.faces, f) })
		})
	}
	key := [2]int{p.region, p.surface}
	if known, ok := m.beside[key]; ok {
		return known
	}
	var found []parcel
	for _, q := range m.parted[p.surface] {
		if q.region == p.region {
			continue
		}
		_, _, _, meet := meeting(r.job.Regions[p.region], r.job.Regions[q.region])
		_, overlap := common(r.job.Regions[p.region], r.job.Regions[q.region])
		if meet || overlap {
			found = append(found, q)
		}
	}
	r.effort += len(m.parted[p.surface]) / comparisonsInMs
	m.beside[key] = found
	return found
}

// comparisonsInMs is how many regions are compared in a millisecond, so that
// the work on borders counts towards the most there may be.
const comparisonsInMs = 5000

// partM2 is the area of the faces of a parcel, of all parts together.
func (r *run) partM2(p parcel) float64 {
	s, sum := &r.surfaces[p.surface], 0.0
	one := s.one
	if p.region != whole {
		one, _ = r.partOf(p.region, p.surface)
	}
	for _, f := range one.Faces {
		if slices.Contains(p.faces, f.Name) {
			sum += f.AreaM2 * float64(s.component.Count)
		}
	}
	return sum
}

// called is a parcel as people know it.
func (r *run) called(p parcel, face string) string {
	if p.region != whole {
		return r.job.Regions[p.region].ID
	}
	return r.surfaces[p.surface].component.ID + "/" + face
}

func (r *run) sideOf(p parcel, face string) side {
	return side{p.surface, r.surfaces[p.surface].faceIndex(face), p.region}
}

// regionEdge is a border on the paint: it is nowhere but where the tape lies.
func (r *run) regionEdge(p parcel, face, beyond string, other side, lengthM, restM2 float64) edge {
	name := r.called(p, face)
	e := edge{mine: r.sideOf(p, face), other: other, known: true, areaM2: restM2}
	e.MaskedEdge = MaskedEdge{Kind: "region", Name: "border of " + name, Between: [2]string{name, beyond}, LengthM: lengthM}
	return e.keyed()
}

func (r *run) looseEdge(l looseRegion) edge {
	id := r.job.Regions[l.region].ID
	e := edge{areaM2: l.restM2, mine: side{region: l.region, surface: -1}, other: side{region: whole, surface: -1}}
	e.known = len(l.on) > 0
	for i, on := range l.on {
		if i == 0 {
			e.mine.surface, e.mine.face, e.other = on[0], on[1], side{on[0], on[1], whole}
		}
		e.known = e.known && r.masks.paintOn(side{on[0], on[1], whole}) == r.masks.paintOn(e.other)
	}
	e.MaskedEdge = MaskedEdge{Kind: "region", Name: "border of " + id, Between: [2]string{id, "what surrounds it"}, LengthM: l.edgeM}
	return e.keyed()
}

// openings lists those in the faces that a selection takes whole, and in the
// bays, bands and strips where their place is known.
func (r *run) openings(sel *selection) []edge {
	var list []edge
	for _, p := range sel.patches {
		s := &r.surfaces[p.surface]
		for i, o := range s.component.Openings {
			if p.share != 1 || (o.Face != s.faces[p.face].name && (o.Face != "" || len(s.faces) != 1)) {
				continue
			}
			count := float64(s.component.Count)
			list = append(list, s.openingEdge(p.face, i, o.AreaM2*count, o.EdgeM*count))
		}
	}
	for _, o := range sel.openings {
		list = append(list, r.surfaces[o.surface].openingEdge(o.face, o.of.opening, o.of.areaM2, o.of.edgeM))
	}
	return list
}

// openingEdge is the edge of an opening of a component, or of a part of it.
func (s *surface) openingEdge(face, opening int, areaM2, edgeM float64) edge {
	name := s.component.Openings[opening].Name
	if name == "" {
		name = fmt.Sprintf("opening %d", opening+1)
	}
	e := edge{covered: true, areaM2: areaM2, key: fmt.Sprintf("opening %d of %s", opening, s.component.ID)}
	e.MaskedEdge = MaskedEdge{Kind: "opening", Name: name, Between: [2]string{s.component.ID + "/" + s.faces[face].name, name}, LengthM: edgeM}
	return e
}

// keyed gives an edge the name under which any step knows it, from either side.
func (e edge) keyed() edge {
	sides := []string{e.Between[0], e.Between[1]}
	slices.Sort(sides)
	e.key = e.Kind + " " + sides[0] + " | " + sides[1]
	return e
}
