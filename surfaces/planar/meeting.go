package planar

import (
	"cmp"
	"slices"
)

// eachMeeting calls visit for every pair of edges whose boxes come within the
// tolerance, the lesser index first, by a sweep along x.
func eachMeeting(edges []edge, visit func(i, j int)) {
	order := make([]int, len(edges))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(edges[i].box.Min.X, edges[j].box.Min.X), cmp.Compare(i, j))
	})
	for k, i := range order {
		e := &edges[i]
		for _, j := range order[k+1:] {
			f := &edges[j]
			if f.box.Min.X > e.box.Max.X+tolerance {
				break
			}
			if e.box.meets(f.box, tolerance) {
				visit(min(i, j), max(i, j))
			}
		}
	}
}

// onEdge appends to out the vertices of an edge from its beginning to its end:
// those tied to it and those in its reach. It begins and ends where its ties
// say, so that an outline stays closed whatever its vertices were joined to.
//
// A mere cut belongs only to the arcs that were cut there. Near a tangent it
// would otherwise tie an arc to a line that it has left already.
func onEdge(e *edge, vertices []vertex, ties []tie, out []int) []int {
	var begin, end int
	for _, t := range ties {
		out = append(out, t.vertex)
		if t.begins {
			begin = t.vertex
		}
		if t.finishes {
			end = t.vertex
		}
	}
	first, _ := slices.BinarySearchFunc(vertices, e.box.Min.X-reach, func(v vertex, x float64) int { return cmp.Compare(v.at.X, x) })
	for i := first; i < len(vertices) && vertices[i].at.X <= e.box.Max.X+reach; i++ {
		if v := &vertices[i]; v.rank != cut && e.near(v.at, reach) {
			out = append(out, i)
		}
	}
	// Along a line or a quarter arc the way along the chord only rises.
	along := e.to.minus(e.from)
	slices.SortFunc(out, func(i, j int) int {
		return cmp.Or(cmp.Compare(along.dot(vertices[i].at), along.dot(vertices[j].at)), cmp.Compare(i, j))
	})
	out = slices.Compact(out)
	from, to := slices.Index(out, begin), slices.Index(out, end)
	if from > to { // shorter than the tolerance, turned round by joining
		return append(out[:0], begin, end)
	}
	return out[from : to+1]
}
