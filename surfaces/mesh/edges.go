package mesh

import "math"

// Open stands for a facet's neighbour where the mesh ends.
const Open = "open"

// Edge is the line between two parts of a mesh, or between a part and Open:
// what has to be masked when one of them is painted. It follows the sides of
// the facets, so that the border of a split by direction is jagged and long.
type Edge struct {
	Between [2]string `json:"between"`
	LengthM float64   `json:"length_m"`
}

// edgeLengths sums the lines between parts. Edges with more than two facets
// belong to no pair and are left out.
type edgeLengths struct {
	names   [3]string
	opened  [3]sum
	crossed [3][3]sum
}

func newEdgeLengths(d *direction) *edgeLengths {
	if d == nil {
		return &edgeLengths{names: [3]string{partRest: Whole}}
	}
	return &edgeLengths{names: d.names}
}

func (e *edgeLengths) open(part uint8, length float64) { e.opened[part].add(length) }

func (e *edgeLengths) between(a, b uint8, length float64) {
	if a != b {
		e.crossed[min(a, b)][max(a, b)].add(length)
	}
}

func (e *edgeLengths) list(metres float64) []Edge {
	edges := []Edge{}
	add := func(a, b string, length sum) {
		if v := length.value(); v > 0 {
			edges = append(edges, Edge{[2]string{a, b}, v * metres})
		}
	}
	for a := range 3 {
		for b := a + 1; b < 3; b++ {
			add(e.names[a], e.names[b], e.crossed[a][b])
		}
		add(e.names[a], Open, e.opened[a])
	}
	return edges
}

func distance(a, b Point) float64 {
	d := b.minus(a)
	return math.Sqrt(d.dot(d))
}
