package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// Tools are what paint is sanded or scraped off with.
func Tools() []string { return []string{"machine", "hand", "scraper"} }

// work abrades with discs or sheets, or scrapes, to bare metal unless it only
// scuffs.
//
//	discs = area / area of one disc
func (p *Sand) work(r *run, s *StepEstimate, at string) {
	r.oneOf(p.Tool, at, "tool", Tools())
	r.rateBasis(&p.StepBase, at)
	scraper := p.Tool == "scraper"
	var disc *products.Disc
	found := scraper && p.Product == ""
	if !found {
		disc, found = product[*products.Disc](r.checker, p.Product, at, "product", "disc")
	}
	switch {
	case scraper && p.Product != "":
		r.faults.Add(at+"/product", "not_applicable", "a scraper takes no disc; leave product out, or sand in a step of its own")
	case scraper && p.Scuff:
		r.faults.Add(at+"/scuff", "inconsistent", "a scraper takes paint off and cannot scuff it; take a sheet by hand")
	}
	sel, ok := r.surface(&p.StepBase, s, at)
	if !found || !ok {
		return
	}
	if disc != nil {
		r.discs(p, s, disc, sel)
		r.grits(p, s, disc, sel, at)
	}
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	if p.Scuff {
		r.roughened(sel)
		r.areaHours(&p.StepBase, s, "sand", sel.areaM2, 1)
		return
	}
	removed, filmUM := r.remove(&p.StepBase, s, sel)
	s.waste(removed, "removed", map[string]float64{"removed": removed}, s.removed()...)
	operation := map[string]string{"machine": "sand_to_metal", "hand": "hand_sand_to_metal", "scraper": "scrape"}[p.Tool]
	s.Removal = &Removal{Means: p.Tool, Product: p.Product, DustReason: noDustFactor}
	r.removalHours(&p.StepBase, s, operation, "sand_burdened", filmUM, sel, 1)
	s.drum(dustBulk)
}

func (r *run) discs(p *Sand, s *StepEstimate, disc *products.Disc, sel selection) {
	one, source, from := disc.AreaM2, r.sourceOf(disc, "area_m2"), valueOf("product", disc.ID, "area_m2")
	switch t := r.tested(p.ID); {
	case t.discs > 0:
		one, source, from = t.wornM2/t.discs, "test patch", patched(p.ID, "disc_area_m2")
	case p.DiscAreaM2 != nil:
		one, source, from = *p.DiscAreaM2, "the job", quantity.Setting(p.ID, "disc_area_m2")
	default:
		r.assumed.add(p.ID, "area one "+disc.ID+" prepares", one, "m²", source)
	}
	count := sel.areaM2 / one
	r.use(s, disc, count)
	s.Working = append(s.Working, quantity.Working{Quantity: "discs", Value: count, Unit: disc.Base().Unit(), Formula: "A/a",
		Terms: map[string]float64{"A": sel.areaM2, "a": one}, Source: source, Uses: disc.ID,
		Links: []quantity.Link{quantity.From("A", quantity.StepWorking(p.ID, "area_m2", "")), quantity.From("a", from)}})
}

// grits holds a disc against what is published for the alloy.
//
// Source: FAA AC 43.13-1B Table 6-1 (reference blasting G-9, read from a scrambled
// copy): no silicon carbide on aluminium; and the grits of the catalogue.
func (r *run) grits(p *Sand, s *StepEstimate, disc *products.Disc, sel selection, at string) {
	check := skinCheck{r: r, s: s, at: at, approvedBy: p.ApprovedBy, work: disc.ID, given: map[string]float64{}, pointers: map[string]string{"grit": "/product"}}
	if disc.Grit != nil && !p.Scuff {
		check.given["grit"] = *disc.Grit
	}
	for _, comp := range r.componentsOf(sel) {
		for _, l := range append(r.catalogue.Limits(disc.ID), r.catalogue.LimitsOfAll()...) {
			if l.Quantity == "grit" && (l.Substrate == "" || l.Substrate == comp.Substrate) {
				check.hold(comp, l)
			}
		}
		if disc.Abrasive == "silicon_carbide" && lightAlloy(comp.Substrate) {
			check.decide(comp, products.Limit{Quantity: "forbidden"}, "/product",
				"silicon carbide is not for "+comp.Substrate+": what stays in it corrodes it; take aluminium oxide (FAA AC 43.13-1B Table 6-1)", true)
		}
		if p.Tool == "machine" && !p.Scuff && lightAlloy(comp.Substrate) && comp.SkinMM != nil && *comp.SkinMM < thinSkinMM {
			check.say(comp, "a powered tool on skin below 1.588 mm (0.0625 in): keep it moving, watch the heat, no rotary files (FAA AC 43.13-1B p. 6-28)")
		}
		if comp.Substrate == "composite" || comp.Substrate == "fibreglass" {
			check.say(comp, "on composite take the topcoat off only and stop at the primer (USAF TO 1-1-8 p. 29)")
		}
	}
}
