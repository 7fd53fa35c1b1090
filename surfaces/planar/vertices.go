package planar

import (
	"cmp"
	"math"
	"slices"
)

// vertex is a point at which edges end, cross or touch.
type vertex struct {
	at   Point
	rank rank
}

// rank says how a vertex came about. Of several in one place the greatest
// stands for all.
type rank int

const (
	cut      rank = iota // where an arc was cut at an extreme: no feature of the figure
	crossing             // computed
	corner               // given by the caller, hence the best known
)

// verticesOf returns the distinct vertices of the edges, ordered by x. Those
// nearer to each other than the tolerance are one. It may shift the cuts of
// the edges.
func verticesOf(edges []edge) []vertex {
	all := make([]vertex, 0, 4*len(edges))
	for i := range edges {
		e := &edges[i]
		if !e.cutFrom {
			all = append(all, vertex{e.from, corner})
		}
		if !e.cutTo {
			all = append(all, vertex{e.to, corner})
		}
	}
	var found []Point
	eachMeeting(edges, func(i, j int) {
		found = meet(&edges[i], &edges[j], found[:0])
		for _, p := range found {
			all = append(all, vertex{p, crossing})
		}
	})
	vertices := distinct(all)
	return distinct(append(vertices, snapCuts(edges, vertices)...))
}

// snapCuts moves the cuts of arcs onto vertices of the same arc so near that
// the arc's rise in between is lost in the tolerance, and returns the other
// cuts. A short piece left there would hug the tangent at the vertex, and
// rounding would decide on which side of it the piece lies.
func snapCuts(edges []edge, vertices []vertex) []vertex {
	var cuts []vertex
	for i := range edges {
		if !edges[i].cutTo {
			continue
		}
		e, f := &edges[i], &edges[i+1] // an arc's edges follow each other
		at, snapped := e.to, false
		nearest := max(math.Sqrt(e.radius*tolerance), 2*tolerance)
		for _, v := range vertices[firstFrom(vertices, at.X-nearest):] {
			if v.at.X > at.X+nearest {
				break
			}
			if d := v.at.minus(at).length(); d <= nearest && (e.near(v.at, 2*tolerance) || f.near(v.at, 2*tolerance)) {
				e.to, nearest, snapped = v.at, d, true
			}
		}
		if !snapped {
			cuts = append(cuts, vertex{at, cut})
			continue
		}
		f.from = e.to
		*e, *f = e.boxed(), f.boxed()
	}
	return cuts
}

// firstFrom returns the index of the first vertex at x or to the right of it.
func firstFrom(vertices []vertex, x float64) int {
	first, _ := slices.BinarySearchFunc(vertices, x, func(v vertex, x float64) int { return cmp.Compare(v.at.X, x) })
	return first
}

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

func byPlace(a, b vertex) int {
	return cmp.Or(cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.at.Y, b.at.Y))
}

func distinct(all []vertex) []vertex {
	slices.SortFunc(all, byPlace)
	kept := all[:0]
next:
	for _, v := range all {
		for i := len(kept) - 1; i >= 0 && kept[i].at.X >= v.at.X-2*tolerance; i-- {
			if kept[i].at.within(v.at, tolerance) {
				if v.rank > kept[i].rank {
					kept[i] = v
				}
				continue next
			}
		}
		kept = append(kept, v)
	}
	slices.SortFunc(kept, byPlace)
	return kept
}

// onEdge appends to out the vertices that lie on the edge, from its beginning
// to its end. A vertex may sit a tolerance from the point it stands for, hence
// twice the tolerance here.
//
// A mere cut belongs only to the arcs that were cut there. Near a tangent it
// would otherwise tie an arc to a line that it has left already.
func onEdge(e *edge, vertices []vertex, out []int) []int {
	const reach = 2 * tolerance
	for i := firstFrom(vertices, e.box.Min.X-reach); i < len(vertices) && vertices[i].at.X <= e.box.Max.X+reach; i++ {
		v := &vertices[i]
		if !e.near(v.at, reach) {
			continue
		}
		if v.rank > cut || v.at.within(e.from, reach) || v.at.within(e.to, reach) {
			out = append(out, i)
		}
	}
	// Along a line or a quarter arc the way along the chord only rises.
	along := e.to.minus(e.from)
	slices.SortFunc(out, func(i, j int) int {
		return cmp.Or(cmp.Compare(along.dot(vertices[i].at), along.dot(vertices[j].at)), cmp.Compare(i, j))
	})
	return out
}
