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

// rank says how a vertex came about. Of several in one place the least stands
// for all.
type rank int

const (
	corner   rank = iota // given by the caller, hence the best known
	crossing             // computed
	cut                  // where an arc was cut at an extreme: no feature of the figure
)

// mark is a point that asks for a vertex: the end of an edge, or where two
// edges meet.
type mark struct {
	vertex
	edges  [2]int // an end has no second edge but one of the two below
	number int    // of the vertex that stands for it
}

const (
	beginning = -1
	ending    = -2
)

// tie says that an edge passes through a vertex, and whether it begins or ends
// there.
type tie struct {
	edge, vertex     int
	begins, finishes bool
}

// joining is the distance under which two points are one vertex, reach that
// under which a vertex lies on an edge that passes it. A reach of half the
// distance between vertices leaves no room to go round in circles: a piece
// that is cut comes out shorter each time.
const (
	joining = 2 * tolerance
	reach   = tolerance
)

// endsOf appends the ends of the edges that are cuts, or those that are not.
func endsOf(edges []edge, cuts bool, out []mark) []mark {
	as := corner
	if cuts {
		as = cut
	}
	for i := range edges {
		e := &edges[i]
		if e.cutFrom == cuts {
			out = append(out, mark{vertex: vertex{e.from, as}, edges: [2]int{i, beginning}})
		}
		if e.cutTo == cuts {
			out = append(out, mark{vertex: vertex{e.to, as}, edges: [2]int{i, ending}})
		}
	}
	return out
}

// verticesOf returns the distinct vertices of the edges, ordered by x; which
// edges they were found on, ordered by edge; and how far a point was moved at
// most to become one with another. Of edges fresh from outlines it may shift
// the cuts.
func verticesOf(edges []edge, fresh bool) (vertices []vertex, ties []tie, moved float64) {
	marks := endsOf(edges, false, make([]mark, 0, 4*len(edges)))
	var found []Point
	eachMeeting(edges, func(i, j int) {
		found = meet(&edges[i], &edges[j], found[:0])
		for _, p := range found {
			marks = append(marks, mark{vertex: vertex{p, crossing}, edges: [2]int{i, j}})
		}
	})
	if fresh {
		snapCuts(edges, marks)
	}
	marks = endsOf(edges, true, marks)
	vertices, moved = distinct(marks)
	ties = make([]tie, 0, len(marks)+len(marks)/2)
	for _, m := range marks {
		ties = append(ties, tie{m.edges[0], m.number, m.edges[1] == beginning, m.edges[1] == ending})
		if m.edges[1] >= 0 {
			ties = append(ties, tie{edge: m.edges[1], vertex: m.number})
		}
	}
	slices.SortFunc(ties, func(a, b tie) int { return cmp.Or(cmp.Compare(a.edge, b.edge), cmp.Compare(a.vertex, b.vertex)) })
	return vertices, ties, moved
}

// snapCuts moves the cuts of arcs and curves onto marks of the same arc so near
// that the arc's rise in between is lost in the tolerance. A short piece left there
// would hug the tangent at the mark, and rounding would decide on which side of
// it the piece lies.
func snapCuts(edges []edge, marks []mark) {
	slices.SortFunc(marks, func(a, b mark) int { return byPlace(a.vertex, b.vertex) })
	for i := range edges {
		if !edges[i].cutTo {
			continue
		}
		e, f := &edges[i], &edges[i+1] // the edges of an arc or curve follow each other
		at, to, nearest := e.to, e.to, max(math.Sqrt(e.roundness()*tolerance), 2*tolerance)
		first, _ := slices.BinarySearchFunc(marks, at.X-nearest, func(m mark, x float64) int { return cmp.Compare(m.at.X, x) })
		for _, m := range marks[first:] {
			if m.at.X > at.X+nearest {
				break
			}
			if d := m.at.minus(at).length(); d <= nearest && (e.near(m.at, reach) || f.near(m.at, reach)) {
				to, nearest = m.at, d
			}
		}
		if e.course != nil && to != at {
			e.end = e.course.nearest(to, 0, 1, e.end)
			f.begin = e.end
		}
		e.to, f.from = to, to
		*e, *f = e.boxed(), f.boxed()
	}
}

func byPlace(a, b vertex) int {
	return cmp.Or(cmp.Compare(a.at.X, b.at.X), cmp.Compare(a.at.Y, b.at.Y))
}

// distinct joins marks to vertices, the better known first, and numbers each
// mark by its vertex.
func distinct(marks []mark) (vertices []vertex, moved float64) {
	slices.SortFunc(marks, func(a, b mark) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), byPlace(a.vertex, b.vertex))
	})
	var better, same []int // vertices of the ranks before, and of this one, by x
	all := make([]vertex, 0, len(marks))
next:
	for k := range marks {
		m := &marks[k]
		if k > 0 && m.rank != marks[k-1].rank {
			better, same = mergeByX(all, better, same), same[:0]
		}
		first, _ := slices.BinarySearchFunc(better, m.at.X-joining, func(i int, x float64) int { return cmp.Compare(all[i].at.X, x) })
		for _, i := range better[first:] {
			if all[i].at.X > m.at.X+joining {
				break
			}
			if all[i].at.within(m.at, joining) {
				m.number, moved = i, max(moved, all[i].at.minus(m.at).length())
				continue next
			}
		}
		for j := len(same) - 1; j >= 0 && all[same[j]].at.X >= m.at.X-joining; j-- {
			if i := same[j]; all[i].at.within(m.at, joining) {
				m.number, moved = i, max(moved, all[i].at.minus(m.at).length())
				continue next
			}
		}
		m.number = len(all)
		same = append(same, m.number)
		all = append(all, m.vertex)
	}
	order := mergeByX(all, better, same)
	number := make([]int, len(all))
	for rank, i := range order {
		vertices = append(vertices, all[i])
		number[i] = rank
	}
	for k := range marks {
		marks[k].number = number[marks[k].number]
	}
	return vertices, moved
}

func mergeByX(all []vertex, a, b []int) []int {
	merged := slices.Concat(a, b)
	slices.SortFunc(merged, func(i, j int) int { return byPlace(all[i], all[j]) })
	return merged
}
