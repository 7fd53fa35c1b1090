package placing

import (
	"cmp"
	"math"
	"strconv"
)

// Measure is one distance to tape when the figure goes back to its place: from
// a known point, or square from an edge, to the anchor.
type Measure struct {
	From      string  `json:"from"` // what the point or edge is
	FromXM    float64 `json:"from_x_m"`
	FromYM    float64 `json:"from_y_m"`
	DistanceM float64 `json:"distance_m"`
	Edge      bool    `json:"edge,omitempty"` // square from an edge, at whose foot the point is
}

// measures are the distances that lead to a fix. A place by stations has none:
// its lines are found from the datum.
func (p *Place) measures(f Fix) []Measure {
	var list []Measure
	for i, t := range p.Tapes {
		list = append(list, Measure{From: cmp.Or(t.Name, "point "+strconv.Itoa(i+1)), FromXM: t.XM, FromYM: t.YM})
	}
	if o := p.Offsets; o != nil {
		sin, cos := o.sincos()
		along := f.XM*cos + f.YM*sin // on edge B, from where the edges meet
		list = append(list,
			Measure{From: cmp.Or(o.EdgeA, "edge A"), FromXM: f.XM, Edge: true},
			Measure{From: cmp.Or(o.EdgeB, "edge B"), FromXM: along * cos, FromYM: along * sin, Edge: true})
	}
	for i := range list {
		list[i].DistanceM = math.Hypot(f.XM-list[i].FromXM, f.YM-list[i].FromYM)
	}
	return list
}

// mirrored are the same measures on the other side.
func mirrored(list []Measure) []Measure {
	var out []Measure
	for _, m := range list {
		m.FromXM = opposite(m.FromXM)
		out = append(out, m)
	}
	return out
}
