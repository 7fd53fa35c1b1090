package estimate

import (
	"slices"

	"filmbuild/products"
	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// maskMarkings tapes the edges of the figures in the order of painting; or, where
// the step names a film, cuts a stencil instead.
func (r *run) maskMarkings(p *Mark, s *StepEstimate, fs figures, at string) {
	if !r.job.masks(p) {
		return
	}
	if p.Film != "" {
		r.stencil(p, s, fs, at)
		return
	}
	y, ok := r.laying(&p.Masked, &p.StepBase, at)
	if !ok {
		return
	}
	var edges []edge
	for _, f := range fs {
		edges = append(edges, f.edges(y.twoSided, y.marginM)...)
	}
	if !y.twoSided && len(fs.colours()) > 1 {
		r.assumed.add(p.ID, "edges between two colours are taped once: each colour runs over the edge of the next, which is cut in over it", 1, "", "common practice (light colours first); edge_rule two_sided tapes each colour on its own")
	}
	r.layTape(y, s, edges)
}

// edges lists the borders of a figure by the order in which its colours are put
// down. Once: a border is taped for the later of its two colours, the outline for
// the colour at it, or for the colour under all. Two-sided: each colour has its
// whole perimeter taped, one under all the outline.
func (f figure) edges(twoSided bool, marginM float64) []edge {
	order := make([]string, len(f.one.Painted))
	for i, c := range f.one.Painted {
		order[i] = c.Colour
	}
	under := ""
	if len(order) > 0 && f.under == order[0] {
		under = order[0]
	}
	var list []edge
	for _, e := range f.one.Edges {
		a, b := e.Between[0], e.Between[1]
		for _, colour := range inside(order, a, b, under, twoSided) {
			m := MaskedEdge{Kind: "marking", Name: f.id, Between: [2]string{a, b}, Colour: colour, LengthM: e.LengthM * f.count}
			if colour == b {
				m.Between = [2]string{b, a}
			}
			list = append(list, edge{MaskedEdge: m, straight: !f.curved, key: "marking " + f.id + " " + colour + " " + a + "|" + b})
		}
	}
	if marginM > 0 {
		f.sheets(list, order, under, marginM)
	}
	return list
}

// inside are the colours that are sprayed inside a tape along a border.
func inside(order []string, a, b, under string, twoSided bool) []string {
	if a == planar.Base {
		a, b = b, a
	}
	switch {
	case b == planar.Base && under != "" && twoSided && a != under:
		return []string{under, a}
	case b == planar.Base && under != "":
		return []string{under}
	case b == planar.Base:
		return []string{a}
	case twoSided && a == under:
		return []string{b}
	case twoSided && b == under:
		return []string{a}
	case twoSided:
		return []string{a, b}
	case slices.Index(order, a) > slices.Index(order, b):
		return []string{a}
	}
	return []string{b}
}

// sheets adds the film round each colour that is sprayed, to the first of its
// edges: all of the figure's box with a margin, less the colour.
//
//	film = (width + 2·margin) · (height + 2·margin) − colour
func (f figure) sheets(list []edge, order []string, under string, marginM float64) {
	box := (f.one.WidthM + 2*marginM) * (f.one.HeightM + 2*marginM)
	for i, colour := range order {
		k := slices.IndexFunc(list, func(e edge) bool { return e.Colour == colour })
		if k < 0 {
			continue // it lies under or within others, and runs over to them
		}
		area := f.one.Painted[i].AreaM2
		if colour == under {
			area = f.one.AreaM2
		}
		list[k].areaM2 = max(0, box-area) * f.count
	}
}

// stencil cuts the figures out of film, all colours out of one.
func (r *run) stencil(p *Mark, s *StepEstimate, fs figures, at string) {
	film, ok := product[*products.Film](r.checker, p.Film, at, "film", "film or paper")
	if !ok {
		return
	}
	area := 0.0
	for _, f := range fs {
		one := f.one.StencilFilmM2 * f.count
		area += one
		s.Masking = append(s.Masking, MaskedEdge{Kind: "marking", Name: f.id, Between: [2]string{f.id, planar.Base}, LengthM: f.one.OutlineM * f.count, Passes: 1, CoverM2: one, Note: "cut from film, no tape"})
	}
	length := area / (film.WidthMM / 1000)
	r.use(s, film, length)
	s.Working = append(s.Working, quantity.Working{Quantity: "stencil_film_m", Value: length, Unit: "m", Formula: "film/width",
		Terms: map[string]float64{"film": area, "width": film.WidthMM / 1000}, Uses: film.ID, Source: "identity: the box of each figure with a margin all round"})
	r.assumed.add(p.ID, "time to cut stencils and lay them: in no figure", 0, "h", "assumption; no published value was found: give setup_h")
}
