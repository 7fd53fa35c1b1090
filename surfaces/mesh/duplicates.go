package mesh

import (
	"cmp"
	"encoding/binary"
	"hash/maphash"
	"slices"
)

// outline is a facet's vertices in a form that does not depend on where the
// file begins to list them, nor on which way the facet faces.
func (s *store) outline(i int, buffer []uint32) []uint32 {
	f := s.facet(i)
	n := len(f)
	first := 0
	for k := range f {
		if f[k] < f[first] {
			first = k
		}
	}
	step := 1
	if f[(first+n-1)%n] < f[(first+1)%n] {
		step = n - 1
	}
	buffer = buffer[:0]
	for k := range n {
		buffer = append(buffer, f[(first+k*step)%n])
	}
	return buffer
}

// findDuplicates counts the facets that are there already, those without area
// included.
func (c *Checks) findDuplicates(s *store, metres float64) {
	type mark struct {
		hash  uint64
		facet uint32
	}
	marks := make([]mark, 0, s.facets())
	var a, b []uint32
	var corners []Point
	var bytes []byte
	for i := range s.facets() {
		a = s.outline(i, a)
		bytes = bytes[:0]
		for _, v := range a {
			bytes = binary.LittleEndian.AppendUint32(bytes, v)
		}
		marks = append(marks, mark{maphash.Bytes(s.seed, bytes), uint32(i)})
	}
	slices.SortFunc(marks, func(p, q mark) int {
		return cmp.Or(cmp.Compare(p.hash, q.hash), cmp.Compare(p.facet, q.facet))
	})
	var copies sum
	for k := 1; k < len(marks); k++ {
		if marks[k].hash != marks[k-1].hash {
			continue
		}
		a, b = s.outline(int(marks[k-1].facet), a), s.outline(int(marks[k].facet), b)
		if !slices.Equal(a, b) {
			continue
		}
		corners = s.places(int(marks[k].facet), corners)
		c.DuplicateFacets++
		copies.add(measurePolygon(corners).area)
	}
	c.DuplicateAreaM2 = copies.value() * metres * metres
}
