package estimate

import (
	"filmbuild/estimate/blast"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// explainBlasting takes the workings of a blasting over into its step, with the
// places that their terms come from. Hours and the film have workings of their
// own; what is bought is the step's kilograms.
func (r *run) explainBlasting(p *Blast, s *StepEstimate, b *blast.Blasting, result blast.Result, media *products.Media, pace pace) {
	from := r.blastSymbols(p, s, b, pace)
	for _, w := range result.Working {
		switch w.Quantity {
		case "hours", "removed_film_kg":
			continue
		case "uses":
			if !p.Recovered {
				continue
			}
		case "media_bought_kg":
			w.Quantity, w.Uses = "kilograms", media.ID
		}
		from.link(&w)
		s.Working = append(s.Working, w)
	}
}

// blastSymbols says where the terms of a blasting's workings come from.
func (r *run) blastSymbols(p *Blast, s *StepEstimate, b *blast.Blasting, pace pace) symbols {
	working := func(term, name string) quantity.Link {
		return quantity.From(term, quantity.StepWorking(p.ID, name, ""))
	}
	setting := func(term, name string) quantity.Link { return quantity.From(term, quantity.Setting(p.ID, name)) }
	list := symbols{
		working("A", "area_m2"), working("thrown", "media_thrown_kg"), working("used", "media_used_kg"), working("waste", "waste_kg"),
		working("Q", "air_m3_min"), working("Qc", "compressor_m3_min"), working("uses", "uses"), working("b", "lost_ratio"),
		quantity.Scaled("q", quantity.StepWorking(p.ID, "air_m3_min", ""), 1/float64(p.Nozzles)),
		setting("N", "nozzles"), setting("d", "nozzle_bore_mm"), setting("p", "pressure_kpa"), setting("other", "other_air_m3_min"),
		setting("L", "hose_length_m"), setting("batch", "batch_kg"), quantity.Scaled("control", quantity.Setting(p.ID, "dust_control_percent"), 0.01),
		quantity.From("ρ", valueOf("product", p.Media, "bulk_density_kg_m3")), quantity.Scaled("density", valueOf("product", p.Media, "bulk_density_kg_m3"), 0.001),
		pace.atWork,
	}
	if p.WorkingChargeKg > 0 {
		list = append(list, setting("charge", "working_charge_kg"))
	}
	if p.ChargeDiscarded {
		list = append(list, setting("discarded", "working_charge_kg"))
	}
	if s.RemovedKg > 0 {
		list = append(list, working("film", "removed_film_kg"))
	}
	switch t := r.tested(p.ID); {
	case t.thrownM2 > 0:
		list = append(list, working("M", "media_flow_tested_kg_h"))
	case p.MediaFlowKgH != nil:
		list = append(list, setting("M", "media_flow_kg_h"))
	case b.MediaFlowKgH == nil:
		list = append(list, working("M", "media_flow_per_nozzle_kg_h"))
	}
	return list
}
