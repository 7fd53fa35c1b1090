package planar

import (
	"cmp"
	"slices"
)

// piece is a part of an edge between two neighbouring vertices, low the one of
// the lesser number.
type piece struct {
	low, high int
	edge      int
	forward   bool // the edge runs from low to high
	middle    Point
}

// cutting is a set of edges cut at every vertex.
type cutting struct {
	vertices []vertex
	pieces   []piece // those between the same two vertices side by side
	moved    float64 // how far a piece may be from its edge
}

// cutUp cuts every edge at every vertex on it. Fresh edges are those of
// outlines, in their order.
func cutUp(edges []edge, fresh bool) cutting {
	c := cutting{pieces: make([]piece, 0, 2*len(edges))}
	var ties []tie
	c.vertices, ties, c.moved = verticesOf(edges, fresh)
	var on []int
	for i := range edges {
		e := &edges[i]
		own := 0
		for own < len(ties) && ties[own].edge == i {
			own++
		}
		on = onEdge(e, c.vertices, ties[:own], on[:0])
		ties = ties[own:]
		for k := 1; k < len(on); k++ {
			p := piece{low: on[k-1], high: on[k], edge: i, forward: true}
			if p.low > p.high {
				p.low, p.high, p.forward = p.high, p.low, false
			}
			low, high := c.vertices[p.low].at, c.vertices[p.high].at
			p.middle = e.middle(low, high)
			c.moved = max(c.moved, e.off(low), e.off(high))
			c.pieces = append(c.pieces, p)
		}
	}
	slices.SortFunc(c.pieces, func(p, q piece) int {
		return cmp.Or(cmp.Compare(p.low, q.low), cmp.Compare(p.high, q.high), cmp.Compare(p.edge, q.edge))
	})
	for bundle := range c.bundles {
		for _, p := range bundle[1:] {
			c.moved = max(c.moved, p.middle.minus(bundle[0].middle).length())
		}
	}
	return c
}

// bundles yields the pieces that lie on each other together. An arc and its
// chord share their ends but not their middles, so they stay apart.
func (c *cutting) bundles(yield func([]piece) bool) {
	for rest := c.pieces; len(rest) > 0; {
		first, n := rest[0], 1
		for i := 1; i < len(rest) && rest[i].low == first.low && rest[i].high == first.high; i++ {
			if rest[i].middle.within(first.middle, 4*tolerance) {
				rest[n], rest[i] = rest[i], rest[n]
				n++
			}
		}
		if !yield(rest[:n]) {
			return
		}
		rest = rest[n:]
	}
}

// snapped returns the pieces as edges of their own, those of one bundle in the
// same place.
func (c *cutting) snapped(edges []edge) []edge {
	out := make([]edge, 0, len(c.pieces))
	for bundle := range c.bundles {
		low, high := c.vertices[bundle[0].low], c.vertices[bundle[0].high]
		course := edges[bundle[0].edge]
		if !bundle[0].forward {
			course = course.reversed()
		}
		course = course.between(low.at, high.at)
		course.cutFrom, course.cutTo = low.rank == cut, high.rank == cut
		for _, p := range bundle {
			e := course
			if !p.forward {
				e = e.reversed()
			}
			e.layer = edges[p.edge].layer
			out = append(out, e)
		}
	}
	return out
}
