package estimate

import (
	"slices"
	"strconv"
)

// maskState is what is taped, by which step, and what lies on each side.
type maskState struct {
	now   int    // index of the step at work
	picks []pick // what each step works on, found before the first is worked
	laid  map[string]*laidTape
	faces map[[2]int]painted // surface and face -> the paint last put on the whole of it
	parts map[int]painted    // region -> the paint last put on it

	treats map[side][]int      // face or part of a region -> the steps that treat it, in order
	parted map[int][]parcel    // surface -> the regions on it that steps choose, with their faces
	beside map[[2]int][]parcel // region and surface -> those of them that it may meet
	joined map[int][]rim       // surface -> where it is set on others
}

// pick is the selection of one step.
type pick struct {
	sel selection
	ok  bool
}

// laidTape is the tape that lies on an edge.
type laidTape struct {
	step, class string
	explicit    bool // laid by a mask step, for those that follow
	passes      int
	coats       int // that it has served
	perLaying   int // coats before it has to come off
}

// painted is a paint with the step that put it on.
type painted struct {
	product string
	step    int
}

// ahead finds what every step works on, so that a step knows which of its
// borders a later one will tape.
func (m *maskState) ahead(r *run) {
	m.picks = make([]pick, len(r.job.Steps))
	m.laid, m.faces, m.parts = map[string]*laidTape{}, map[[2]int]painted{}, map[int]painted{}
	m.treats, m.parted, m.beside = map[side][]int{}, map[int][]parcel{}, map[[2]int][]parcel{}
	m.joined = map[int][]rim{}
	for k := range r.surfaces {
		for f := range r.surfaces[k].faces {
			for _, s := range r.surfaces[k].faces[f].seams {
				if s.rimM > 0 {
					m.joined[s.part] = append(m.joined[s.part], rim{k, f, s.rimM, 1})
				}
			}
		}
	}
	for i, step := range r.job.Steps {
		if _, figures := step.(*Mark); step == nil || figures {
			continue
		}
		m.picks[i].sel, m.picks[i].ok = r.choose(step.base().On, "/steps/"+strconv.Itoa(i)+"/on")
		m.index(i, &m.picks[i].sel)
	}
}

// index notes what a step treats.
func (m *maskState) index(i int, sel *selection) {
	for _, p := range sel.patches {
		if p.share == 1 {
			at := side{p.surface, p.face, whole}
			m.treats[at] = append(m.treats[at], i)
		}
	}
	for _, p := range sel.parcels {
		if p.region == whole {
			continue
		}
		at := partSide(p.surface, p.region)
		if len(m.treats[at]) == 0 {
			m.parted[p.surface] = append(m.parted[p.surface], p)
		}
		m.treats[at] = append(m.treats[at], i)
	}
}

func (m *maskState) selection() (selection, bool) { return m.picks[m.now].sel, m.picks[m.now].ok }

// follower is the index of the step that a mask step works for: the next one
// that masks or has had its masking done for it. Another step is its own.
func (r *run) follower(i int) int {
	if _, mask := r.job.Steps[i].(*Mask); !mask {
		return i
	}
	for k := i + 1; k < len(r.job.Steps); k++ {
		if r.job.Steps[k] != nil && (r.job.masks(r.job.Steps[k]) || workClass(r.job.Steps[k].base().Operation) == workFilm) {
			return k
		}
	}
	return i
}

// side is what lies on one side of an edge: the whole of a face, or a region on
// one of its components.
type side struct {
	surface, face int
	region        int
}

// partSide is a region's part of a component, whatever the face.
func partSide(surface, region int) side { return side{surface, -1, region} }

// treated says whether a step takes a side in, as itself or with the whole face
// that it lies on.
func (m *maskState) treated(step int, s side) bool {
	_, wholly := slices.BinarySearch(m.treats[side{s.surface, s.face, whole}], step)
	_, partly := slices.BinarySearch(m.treats[partSide(s.surface, s.region)], step)
	return wholly || (s.region != whole && partly)
}

// laterTaper is the step after another that treats one side of an edge and not
// the other, in the same class of work, and so tapes the edge itself; −1 for none.
func (r *run) laterTaper(i int, mine, other side) int {
	class := workClass(r.job.Steps[i].base().Operation)
	steps := r.masks.treats[side{other.surface, other.face, whole}]
	if other.region != whole {
		steps = slices.Concat(steps, r.masks.treats[partSide(other.surface, other.region)])
		slices.Sort(steps)
	}
	for _, k := range steps {
		if step := r.job.Steps[k]; k > i && workClass(step.base().Operation) == class && r.job.masks(step) && !r.masks.treated(k, mine) {
			return k
		}
	}
	return -1
}

// paintOn is the paint last put on a side, "" for none.
func (m *maskState) paintOn(s side) string {
	on := m.faces[[2]int{s.surface, s.face}]
	if part, has := m.parts[s.region]; s.region != whole && has && part.step >= on.step {
		return part.product
	}
	return on.product
}

// coated notes the paint of a step on what it was put on whole.
func (m *maskState) coated(sel selection, product string) {
	for _, p := range sel.patches {
		if p.share == 1 {
			m.faces[[2]int{p.surface, p.face}] = painted{product, m.now}
		}
	}
	for _, p := range sel.parcels {
		if p.region != whole {
			m.parts[p.region] = painted{product, m.now}
		}
	}
	for _, l := range sel.loose {
		m.parts[l.region] = painted{product, m.now}
	}
}
