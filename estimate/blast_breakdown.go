package estimate

import (
	"fmt"

	"filmbuild/estimate/blast"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// CarryOutPercent is what each pass loses besides what breaks: spilt, or drawn
// off with the dust.
//
// Source: assumption. Beads measured at 172 kPa on aluminium last 48 passes and
// the trade counts on 9 to 12: what is swept up and sifted in practice loses more
// than what a laboratory breaks (reference blasting B-39).
const CarryOutPercent = 5.0

// breakdown returns the share of the media that one pass breaks, and what it
// loses besides, in percent. The job's own comes first, which is what is lost in
// all; then what was measured on the substrate, carried to the pressure of the
// work and held within the band that is published; then the trade's figure.
func (r *run) breakdown(p *Blast, s *StepEstimate, media *products.Media, sel selection) (broken, carried float64) {
	carried = valueOr(p.CarryOutPercent, 0)
	if t := r.tested(p.ID); t.sievedKg > 0 {
		broken = t.breakdownPercent()
		r.explainLoss(p, s, broken, carried, "b0 + carried", map[string]float64{"b0": broken / 100, "carried": carried / 100},
			quantity.Scaled("b0", patched(p.ID, "breakdown_percent"), 0.01))
		return broken, carried
	}
	if p.BreakdownPercent != nil {
		broken = *p.BreakdownPercent
		r.explainLoss(p, s, broken, carried, "b0 + carried", map[string]float64{"b0": broken / 100, "carried": carried / 100},
			quantity.Scaled("b0", quantity.Setting(p.ID, "breakdown_percent"), 0.01))
		return broken, carried
	}
	measured, known := r.measuredBreakdown(media, sel)
	found, bounds, ok := carriedBreakdown(media, measured, p.PressureKPa)
	node := valueOf("product", media.ID, "breakdown_percent")
	if !known || !ok {
		broken = media.BreakdownPercent
		r.explainLoss(p, s, broken, carried, "b0 + carried", map[string]float64{"b0": broken / 100, "carried": carried / 100}, quantity.Scaled("b0", node, 0.01))
		if p.Recovered {
			r.assumed.add(p.ID, "share of "+media.ID+" lost in one pass", broken, "%", r.sourceOf(media, "breakdown_percent"))
		}
		return broken, carried
	}
	broken = found
	if p.CarryOutPercent == nil {
		carried = CarryOutPercent
		if p.Recovered {
			r.assumed.add(p.ID, "share of the media spilt or drawn off with the dust in one pass, where carry_out_percent is not given", carried, "%", "assumption: weigh what you top up")
		}
	}
	r.explainLoss(p, s, broken, carried, "min(max(b0·(p/p0)^n, low), high) + carried", map[string]float64{"b0": measured / 100, "p": p.PressureKPa, "p0": *media.BreakdownAtKPa,
		"n": blast.BreakdownExponent(), "low": bounds[0], "high": bounds[1], "carried": carried / 100},
		quantity.Scaled("b0", node, measured/media.BreakdownPercent/100), quantity.From("p", quantity.Setting(p.ID, "pressure_kpa")))
	if p.Recovered {
		r.assumed.add(p.ID, "share of "+media.ID+" that one pass breaks on this substrate at this pressure", broken, "%",
			fmt.Sprintf("measured on it at %.0f kPa (reference blasting B-3, D-4, D-5), carried by pressure (D-7); the trade counts on %g %%, spilling included", *media.BreakdownAtKPa, media.BreakdownPercent))
	}
	return broken, carried
}

// measuredBreakdown is the mean of what was measured on the substrates of a
// selection, by their areas; false where one of them was not measured.
func (r *run) measuredBreakdown(media *products.Media, sel selection) (percent float64, known bool) {
	var sum, area float64
	for _, patch := range sel.patches {
		surface := &r.surfaces[patch.surface]
		a := surface.faces[patch.face].areaM2 * patch.share
		found := false
		for _, m := range media.Breakdowns {
			if m.Substrate == family(surface.component.Substrate) {
				sum, area, found = sum+m.BreakdownPercent*a, area+a, true
			}
		}
		if !found && a > 0 {
			return 0, false
		}
	}
	if area == 0 {
		return 0, false
	}
	return sum / area, true
}

// family is the substrate whose measurements stand for another: what breaks the
// media is how hard it is.
func family(substrate string) string {
	switch substrate {
	case "clad_aluminium":
		return "aluminium"
	case "stainless_steel", "cast_iron":
		return "steel"
	}
	return substrate
}

// explainLoss shows what each pass loses in all.
func (r *run) explainLoss(p *Blast, s *StepEstimate, broken, carried float64, formula string, terms map[string]float64, links ...quantity.Link) {
	if !p.Recovered {
		return
	}
	links = append(links, quantity.Scaled("carried", quantity.Setting(p.ID, "carry_out_percent"), 0.01))
	s.Working = append(s.Working, quantity.Working{Quantity: "lost_ratio", Value: (broken + carried) / 100, Formula: formula, Terms: terms, Links: links,
		Source: "measured breakdown by substrate and pressure (reference blasting B-3, D-4, D-5, D-7), or the figure given"})
}
