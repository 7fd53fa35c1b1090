package planar

import (
	"cmp"
	"slices"
)

// segments returns the distance of two straight segments and where they are
// nearest, as shares of their lengths; 0 where they cross.
func segments(p, q, r, s Point) (distance, u, v float64) {
	along, across := q.minus(p), s.minus(r)
	a, b := along.cross(r.minus(p)), along.cross(s.minus(p))
	c, d := across.cross(p.minus(r)), across.cross(q.minus(r))
	if a > 0 != (b > 0) && c > 0 != (d > 0) && a != b && c != d {
		return 0, c / (c - d), a / (a - b)
	}
	distance = -1
	try := func(point, from, way Point, given float64, swap bool) {
		share := 0.0
		if square := way.dot(way); square > 0 {
			share = min(1, max(0, way.dot(point.minus(from))/square))
		}
		if away := point.minus(from.plus(way.times(share))).length(); distance < 0 || away < distance {
			distance, u, v = away, given, share
			if swap {
				u, v = share, given
			}
		}
	}
	try(p, r, across, 0, false)
	try(q, r, across, 1, false)
	try(r, p, along, 0, true)
	try(s, p, along, 1, true)
	return distance, u, v
}

func sortApproaches(found []approach) {
	slices.SortFunc(found, func(a, b approach) int { return cmp.Compare(a.u, b.u) })
}
