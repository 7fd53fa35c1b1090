package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// work abrades with discs or sheets, to bare metal unless it only scuffs.
//
//	discs = area / area of one disc
func (p *Sand) work(r *run, s *StepEstimate, at string) {
	disc, found := product[*products.Disc](r.checker, p.Product, at, "product", "disc")
	sel, ok := r.surface(&p.StepBase, s, at)
	if !found || !ok {
		return
	}
	one, source, from := disc.AreaM2, r.sourceOf(disc, "area_m2"), valueOf("product", disc.ID, "area_m2")
	if p.DiscAreaM2 != nil {
		one, source, from = *p.DiscAreaM2, "the job", quantity.Setting(p.ID, "disc_area_m2")
	} else {
		r.assumed.add(p.ID, "area one "+disc.ID+" prepares", one, "m²", source)
	}
	count := sel.areaM2 / one
	r.use(s, disc, count)
	s.Working = append(s.Working, quantity.Working{Quantity: "discs", Value: count, Unit: disc.Base().Unit(), Formula: "A/a",
		Terms: map[string]float64{"A": sel.areaM2, "a": one}, Source: source, Uses: disc.ID,
		Links: []quantity.Link{quantity.From("A", quantity.StepWorking(p.ID, "area_m2", "")), quantity.From("a", from)}})
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	operation := "sand"
	if !p.Scuff {
		operation = "sand_to_metal"
		removed, _ := r.remove(&p.StepBase, s, sel)
		s.waste(removed, "removed", map[string]float64{"removed": removed}, s.removed()...)
	}
	r.areaHours(&p.StepBase, s, operation, sel.areaM2, 1)
}
