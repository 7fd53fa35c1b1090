package estimate

import (
	"filmbuild/surfaces/quantity"
)

// smallPartM2 is the area of one part of a colour below which it counts as
// small: about the square of a spray fan, most of which passes by (assumption;
// the source gives no size).
const smallPartM2 = 0.1

// onFigures is the plan of a step with the efficiency that holds on the parts of
// one paint: spray mostly misses small ones, a brush does not. The mean goes by
// the paint used:
//
//	efficiency = (As + Al) / (As/es + Al/el)
//
// Source: mean by volume, NR 440.48 (reference coating T5); small parts, reference
// coating T9.
func (r *run) onFigures(p *Mark, plan applied, s *StepEstimate, pot *pot) applied {
	book := plan.method.EfficiencyOn("small")
	pot.efficiencies = make([]float64, len(pot.areas))
	for k := range pot.efficiencies {
		pot.efficiencies[k] = plan.efficiency
	}
	if p.TransferEfficiencyPercent != nil || p.PartSize != "" || r.tested(p.ID).filmL > 0 || pot.smallM2 == 0 {
		return plan
	}
	r.assumed.add(p.ID, "area of one part of a colour below which spray mostly misses it", smallPartM2, "m²", "assumption: about the square of a spray fan; the source gives no size (reference coating T9)")
	if !sprayed(plan.method.ID) {
		return plan // a brush loses no more on small parts
	}
	r.assumed.add(p.ID, "transfer efficiency of "+plan.method.Name+" on small parts of figures", book.Likely, "%", noted(book))
	if pot.smallM2 < pot.areaM2 {
		r.assumed.add(p.ID, "transfer efficiency of "+plan.method.Name+" on large parts of figures", plan.efficiency, "%", plan.method.TransferEfficiencyPercent.Text())
	}
	for k, area := range pot.areas {
		pot.efficiencies[k] = area / (pot.smalls[k]/book.Likely + (area-pot.smalls[k])/plan.efficiency)
	}
	large := pot.areaM2 - pot.smallM2
	mean := pot.areaM2 / (pot.smallM2/book.Likely + large/plan.efficiency)
	s.Working = append(s.Working, quantity.Working{Quantity: "transfer_efficiency_percent", Of: pot.name(), Value: mean, Unit: "%", Formula: "(As + Al)/(As/es + Al/el)",
		Terms:  map[string]float64{"As": pot.smallM2, "Al": large, "es": book.Likely, "el": plan.efficiency},
		Source: "mean by the paint used: " + "Wis. Admin. Code NR 440.48 (T5, mark T); small parts: " + book.Text(),
		Links:  []quantity.Link{quantity.From("es", efficiencyNode(plan.method, "small")), quantity.From("el", plan.from)}})
	plan.efficiency, plan.from, plan.told = mean, quantity.StepWorking(p.ID, "transfer_efficiency_percent", pot.name()), true
	return plan
}
