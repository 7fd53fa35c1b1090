package planar

import (
	"cmp"
	"slices"
)

// mostDirect bounds the pairs of lines that are compared.
const mostDirect = 40

// direct finds the borders of a cluster without cutting its edges up, where its
// lines provably neither cross nor come near each other: single convex figures
// and stars, and figures inside each other. The borders are those that cutting
// would find, in the same order. It returns false, and has done nothing, where
// that cannot be proved.
func (a *part) direct(edges []edge, colourOf []int, holds func(int) bool) bool {
	lines, ok := linesOf(edges)
	if !ok {
		return false
	}
	inside, ok := nested(lines)
	if !ok {
		return false
	}
	before := len(a.borders)
	a.borders = slices.Grow(a.borders, len(edges))
	winding := make([]int, len(colourOf))
	a.lines = slices.Grow(a.lines, len(lines))
	for i := range lines {
		clear(winding)
		for k := range lines {
			if inside[k*len(lines)+i] {
				winding[lines[k].layer] += int(lines[k].sense)
			}
		}
		right := top(winding, colourOf, holds)
		winding[lines[i].layer] += int(lines[i].sense)
		left := top(winding, colourOf, holds)
		if left == right {
			continue
		}
		a.lines = append(a.lines, lineCount{inside: left, outside: right})
		if lines[i].sense < 0 {
			left, right = right, left
		}
		for k := range lines[i].edges {
			a.borders = append(a.borders, lines[i].edges[k].asBorder(left, right))
		}
	}
	slices.SortStableFunc(a.borders[before:], func(p, q border) int {
		return cmp.Or(cmp.Compare(p.from.X, q.from.X), cmp.Compare(p.from.Y, q.from.Y), cmp.Compare(p.to.X, q.to.X), cmp.Compare(p.to.Y, q.to.Y))
	})
	return true
}

// linesOf divides the edges of a cluster by their outlines, each of which must
// be a line that does not cross itself.
func linesOf(edges []edge) ([]closed, bool) {
	lines := make([]closed, 0, 8)
	for first := 0; first < len(edges); {
		last := first + 1
		for last < len(edges) && edges[last].outline == edges[first].outline {
			last++
		}
		if len(lines) == mostDirect {
			return nil, false
		}
		line, ok := closedOf(edges[first:last])
		if !ok {
			return nil, false
		}
		lines = append(lines, line)
		first = last
	}
	return lines, true
}

// nested says of each two lines whether the first, as the row, holds the second;
// false where two lie neither apart nor one inside the other.
func nested(lines []closed) (inside []bool, ok bool) {
	n := len(lines)
	inside = make([]bool, n*n)
	for i := range lines {
		for k := range i {
			switch c, d := &lines[i], &lines[k]; {
			case c.apart(d):
			case c.holds(d):
				inside[i*n+k] = true
			case d.holds(c):
				inside[k*n+i] = true
			default:
				return nil, false
			}
		}
	}
	return inside, true
}

// asBorder is the edge as a border that runs to the right, or straight up; left
// and right are the colours beside the edge.
func (e *edge) asBorder(left, right int) border {
	b := border{from: e.from, to: e.to, radius: e.radius, turn: e.turn, left: left, right: right}
	if e.from.X > e.to.X || (e.from.X == e.to.X && e.from.Y > e.to.Y) {
		return b.reversed()
	}
	return b
}
