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

// piecesOf cuts every edge at every vertex on it. Pieces between the same two
// vertices stand side by side in the result.
func piecesOf(edges []edge, vertices []vertex) []piece {
	pieces := make([]piece, 0, 2*len(edges))
	var on []int
	for i := range edges {
		on = onEdge(&edges[i], vertices, on[:0])
		for k := 1; k < len(on); k++ {
			p := piece{low: on[k-1], high: on[k], edge: i, forward: true}
			if p.low > p.high {
				p.low, p.high, p.forward = p.high, p.low, false
			}
			p.middle = edges[i].middle(vertices[p.low].at, vertices[p.high].at)
			pieces = append(pieces, p)
		}
	}
	slices.SortFunc(pieces, func(p, q piece) int {
		return cmp.Or(cmp.Compare(p.low, q.low), cmp.Compare(p.high, q.high), cmp.Compare(p.edge, q.edge))
	})
	return pieces
}

// nextBundle moves the pieces that lie on the first one to the front and
// returns their number. An arc and its chord share their ends but not their
// middles, so they stay apart.
func nextBundle(pieces []piece) int {
	first, n := pieces[0], 1
	for i := 1; i < len(pieces) && pieces[i].low == first.low && pieces[i].high == first.high; i++ {
		if pieces[i].middle.within(first.middle, 4*tolerance) {
			pieces[n], pieces[i] = pieces[i], pieces[n]
			n++
		}
	}
	return n
}
