package mesh

import (
	"cmp"
	"math"
	"slices"
	"sort"
)

// look passes over a mesh once and counts, for each spot, what a line of sight
// through it passes. It returns how many corners it held against a line.
func look(s *store, spots []spot, sight [3]Point, touch float64) (work int) {
	along, right, up := sight[0], sight[1], sight[2]
	order := make([]*spot, len(spots))
	for i := range spots {
		p := &spots[i]
		p.flat, p.along = [2]float64{p.at.dot(right), p.at.dot(up)}, p.at.dot(along)
		p.above, p.below, p.twice = 0, 0, [2]int{}
		order[i] = p
	}
	slices.SortFunc(order, func(a, b *spot) int { return cmp.Compare(a.flat[0], b.flat[0]) })
	var corners []Point
	var flat [][2]float64
	for i := range s.facets() {
		corners = s.places(i, corners)
		flat = flat[:0]
		low, high := math.Inf(1), math.Inf(-1)
		for _, c := range corners {
			x := c.dot(right)
			low, high = min(low, x), max(high, x)
			flat = append(flat, [2]float64{x, c.dot(up)})
		}
		first := sort.Search(len(order), func(k int) bool { return order[k].flat[0] >= low })
		for _, p := range order[first:] {
			if p.flat[0] > high {
				break
			}
			work += len(flat)
			if turns := turnsAround(flat, p.flat); turns != 0 {
				p.pass(corners, along, turns, touch)
			}
		}
	}
	return work
}

// pass counts a facet that the line of sight through a spot goes through.
func (p *spot) pass(corners []Point, along Point, turns int, touch float64) {
	normal := measurePolygon(corners).vector
	ahead := corners[0].minus(p.at).dot(normal) / along.dot(normal)
	switch {
	case ahead > touch:
		p.above += turns
		p.twice[0]++
	case ahead < -touch:
		p.below -= turns
		p.twice[1]++
	}
}

// turnsAround returns how often an outline goes round a point, counter-
// clockwise. A side belongs to the outline on one of its two sides only, so
// that of two facets that share it a point on it is in exactly one. The
// products are rounded on their own, so that a side walked backwards gives
// exactly the opposite.
func turnsAround(outline [][2]float64, point [2]float64) int {
	turns := 0
	a := outline[len(outline)-1]
	ax, ay := a[0]-point[0], a[1]-point[1]
	for _, b := range outline {
		bx, by := b[0]-point[0], b[1]-point[1]
		if (ay <= 0) != (by <= 0) {
			left := float64(ax*by) - float64(ay*bx)
			if ay <= 0 && left > 0 {
				turns++
			} else if by <= 0 && left < 0 {
				turns--
			}
		}
		ax, ay = bx, by
	}
	return turns
}
