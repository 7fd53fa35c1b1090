package mesh

import (
	"cmp"
	"context"
	"slices"
)

// Checks is what was looked for with the whole mesh in memory. Edges join
// corners at exactly the same place; facets without area and facets that name
// one corner twice in a row take no part in them.
type Checks struct {
	Vertices         int         `json:"vertices"`
	DuplicateFacets  int64       `json:"duplicate_facets"`   // more copies of a facet, whichever way they face
	DuplicateAreaM2  float64     `json:"duplicate_area_m2"`  // of these copies: counted in the area
	BoundaryEdges    int64       `json:"boundary_edges"`     // with a facet on one side only
	BoundaryM        float64     `json:"boundary_m"`         // their length
	NonManifoldEdges int64       `json:"non_manifold_edges"` // with more than two facets
	WindingConflicts int64       `json:"winding_conflicts"`  // edges whose two facets face opposite ways
	Closed           bool        `json:"closed"`             // none of the three
	Components       int         `json:"components"`         // parts joined by edges
	Largest          []Component `json:"largest_components"` // at most MaxComponents
	Edges            []Edge      `json:"edges"`              // between the parts of a split, and to open
	Tessellation     float64     `json:"tessellation_deficit_percent"`
}

// MaxComponents is how many components a report lists, the largest first.
const MaxComponents = 50

// Component is a set of facets joined by edges.
type Component struct {
	Number int     `json:"component"` // counted from 1, in the order of the file
	Facets int64   `json:"facets"`
	AreaM2 float64 `json:"area_m2"`
	Box    Box     `json:"box"`
}

// edge is one side of one facet.
type edge struct {
	low, high uint32 // vertices, low < high
	facet     uint32
	down      bool // walked from high to low
}

// check looks at the stored mesh.
func check(ctx context.Context, s *store, d *direction, metres float64) (*Checks, error) {
	c := &Checks{Vertices: len(s.points)}
	c.findDuplicates(s, metres)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	edges := s.edges()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	joined := newUnion(s.facets())
	lengths := newEdgeLengths(d)
	for from := 0; from < len(edges); {
		to := from + 1
		for to < len(edges) && edges[to].low == edges[from].low && edges[to].high == edges[from].high {
			to++
		}
		group := edges[from:to]
		for _, e := range group[1:] {
			joined.join(group[0].facet, e.facet)
		}
		c.countEdge(s, group, lengths)
		from = to
	}
	c.BoundaryM *= metres
	c.Closed = c.BoundaryEdges == 0 && c.NonManifoldEdges == 0 && c.WindingConflicts == 0
	c.Edges = lengths.list(metres)
	edges = nil // makes room for the next
	c.Tessellation = newCurve(s).deficitPercent()
	c.listComponents(s, joined, metres)
	return c, ctx.Err()
}

func (c *Checks) countEdge(s *store, group []edge, lengths *edgeLengths) {
	length := distance(s.points[group[0].low], s.points[group[0].high])
	switch len(group) {
	case 1:
		c.BoundaryEdges++
		c.BoundaryM += length
		lengths.open(s.parts[group[0].facet], length)
	case 2:
		if group[0].down == group[1].down {
			c.WindingConflicts++
		}
		lengths.between(s.parts[group[0].facet], s.parts[group[1].facet], length)
	default:
		c.NonManifoldEdges++
	}
}

// edges lists the sides of all facets, those of one pair of vertices together
// and in the order of the file.
func (s *store) edges() []edge {
	edges := make([]edge, 0, len(s.corners))
	var corners []Point
	for i := range s.facets() {
		corners = s.places(i, corners)
		if measurePolygon(corners).area == 0 {
			continue
		}
		f := s.facet(i)
		for k, a := range f {
			b := f[(k+1)%len(f)]
			switch {
			case a < b:
				edges = append(edges, edge{a, b, uint32(i), false})
			case a > b:
				edges = append(edges, edge{b, a, uint32(i), true})
			}
		}
	}
	slices.SortFunc(edges, func(a, b edge) int {
		return cmp.Or(cmp.Compare(a.low, b.low), cmp.Compare(a.high, b.high), cmp.Compare(a.facet, b.facet))
	})
	return edges
}

func (c *Checks) listComponents(s *store, joined union, metres float64) {
	found := map[uint32]int{}
	var list []Component
	var corners []Point
	for i := range s.facets() {
		corners = s.places(i, corners)
		area := measurePolygon(corners).area
		if area == 0 {
			continue
		}
		root := joined.root(uint32(i))
		n, known := found[root]
		if !known {
			n = len(list)
			found[root] = n
			list = append(list, Component{Number: n + 1, Box: emptyBox()})
		}
		list[n].Facets++
		list[n].AreaM2 += area
		for _, p := range corners {
			list[n].Box.add(p)
		}
	}
	c.Components = len(list)
	slices.SortStableFunc(list, func(a, b Component) int { return cmp.Compare(b.AreaM2, a.AreaM2) })
	c.Largest = slices.Clone(list[:min(len(list), MaxComponents)])
	for i := range c.Largest {
		c.Largest[i].AreaM2 *= metres * metres
		c.Largest[i].Box = c.Largest[i].Box.scaled(metres)
	}
}
