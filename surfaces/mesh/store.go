package mesh

import "hash/maphash"

// store keeps a mesh for the checks: its vertices, each place once, and the
// facets as references to them. Two corners are the same vertex when all
// coordinates are equal; nothing is moved together.
type store struct {
	seed    maphash.Seed
	points  []Point
	slots   []uint32 // open addressing: index into points plus 1
	corners []uint32
	ends    []uint32 // of each facet, in corners
	parts   []uint8
}

// storeCorners bounds the memory of polygons: on average four corners a facet.
const storeCorners = 4 * CheckLimit

func newStore() *store {
	return &store{seed: maphash.MakeSeed(), slots: make([]uint32, 1<<10)}
}

// add returns false, and the store is useless, when it would grow too large.
func (s *store) add(corners []Point, part int) bool {
	if len(s.corners)+len(corners) > storeCorners {
		return false
	}
	for _, c := range corners {
		s.corners = append(s.corners, s.vertex(c))
	}
	s.ends = append(s.ends, uint32(len(s.corners)))
	s.parts = append(s.parts, uint8(part))
	return true
}

func (s *store) facets() int { return len(s.ends) }

// facet returns the vertices of a facet.
func (s *store) facet(i int) []uint32 {
	if i == 0 {
		return s.corners[:s.ends[0]]
	}
	return s.corners[s.ends[i-1]:s.ends[i]]
}

// places returns the corners of a facet, in buffer.
func (s *store) places(i int, buffer []Point) []Point {
	buffer = buffer[:0]
	for _, v := range s.facet(i) {
		buffer = append(buffer, s.points[v])
	}
	return buffer
}

// vertex finds or adds a vertex. The seed is random, so that no file can be
// made to fill one slot; what is found does not depend on it.
func (s *store) vertex(p Point) uint32 {
	if 2*len(s.points) >= len(s.slots) {
		s.grow()
	}
	for i := s.slot(p); ; i = (i + 1) % len(s.slots) {
		switch found := s.slots[i]; {
		case found == 0:
			s.points = append(s.points, p)
			s.slots[i] = uint32(len(s.points))
			return uint32(len(s.points) - 1)
		case s.points[found-1] == p:
			return found - 1
		}
	}
}

func (s *store) slot(p Point) int {
	return int(maphash.Comparable(s.seed, p) % uint64(len(s.slots)))
}

func (s *store) grow() {
	s.slots = make([]uint32, 2*len(s.slots))
	for n, p := range s.points {
		i := s.slot(p)
		for s.slots[i] != 0 {
			i = (i + 1) % len(s.slots)
		}
		s.slots[i] = uint32(n + 1)
	}
}
