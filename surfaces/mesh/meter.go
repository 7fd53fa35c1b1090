package mesh

import (
	"math"
	"slices"
)

// sums are the measures of a mesh or of one of its solids, in the unit of the
// file: twice the area, six times the volume about the meter's origin, and
// twice the vector area, which is zero for a closed surface.
type sums struct {
	facets int64
	area   sum
	volume sum
	vector Point
	zero   int64 // facets without area
}

// meter is the sink that measures.
type meter struct {
	options   Options
	direction *direction
	chosen    []string // solids to be measured; empty for all
	skipped   []bool   // by solid: not chosen
	started   bool
	origin    Point // the first corner, about which volumes are summed
	box       Box
	facets    int64
	all       sums
	solids    []sums
	parts     [3]sum // areas by direction
	near      sum    // area near a border
	warped    [3]sum // areas of the facets that are concave, warped, crossing
	forms     [3]int64
	first     [3]Place
	store     *store // nil once the checks are left out
	read      *reading
}

func newMeter(o Options) *meter {
	m := &meter{options: o, direction: newDirection(o), chosen: o.Solids, box: emptyBox()}
	if o.CheckFacets > 0 {
		m.store = newStore()
	}
	return m
}

func (m *meter) start(first Point) { m.started, m.origin = true, first }

// facet measures one facet.
func (m *meter) facet(f Facet) error {
	for n := len(m.solids); n <= f.Solid; n++ {
		m.solids = append(m.solids, sums{})
		m.skipped = append(m.skipped, len(m.chosen) > 0 && !slices.Contains(m.chosen, solidName(m.read.contents.Solids, n)))
	}
	if m.skipped[f.Solid] {
		return nil
	}
	if !m.started {
		m.start(f.Corners[0])
	}
	for _, c := range f.Corners {
		m.box.add(c)
	}
	p := measurePolygon(f.Corners)
	six := p.vector.dot(f.Corners[0].minus(m.origin))
	for _, s := range []*sums{&m.all, &m.solids[f.Solid]} {
		s.add(p, six)
	}
	m.facets++
	if p.form != formConvex {
		i := p.form - 1
		if m.forms[i] == 0 {
			m.first[i] = f.At
		}
		m.forms[i]++
		m.warped[i].add(p.area)
	}
	part := partRest
	if m.direction != nil {
		var near bool
		part, near = m.direction.part(p.vector)
		m.parts[part].add(p.area)
		if near {
			m.near.add(p.area)
		}
	}
	m.keep(f, part)
	return nil
}

func (s *sums) add(p polygon, six float64) {
	s.facets++
	s.area.add(2 * p.area)
	s.volume.add(six)
	s.vector = s.vector.plus(p.vector)
	if p.area == 0 {
		s.zero++
	}
}

// keep stores a facet for the checks, and gives them up when there are more
// facets than they are made for.
func (m *meter) keep(f Facet, part int) {
	if m.store == nil {
		return
	}
	if m.facets > int64(m.options.CheckFacets) || !m.store.add(f.Corners, part) {
		m.store = nil
	}
}

// areaM2 and volumeM3 give the sums in SI. Volumes are about the origin of the
// file, as everybody else gives them: for a closed surface that changes
// nothing, for an open one the volume means little.
func (s sums) areaM2(metres float64) float64 { return s.area.value() / 2 * metres * metres }

func (s sums) volumeM3(origin Point, metres float64) float64 {
	return (s.volume.value() + s.vector.dot(origin)) / 6 * metres * metres * metres
}

// gap is the vector area as a share of the area: 0 for a closed surface whose
// facets all face outward, and rarely 0 otherwise.
func (s sums) gap() float64 {
	if s.area.value() == 0 {
		return 0
	}
	return math.Sqrt(s.vector.dot(s.vector)) / s.area.value()
}
