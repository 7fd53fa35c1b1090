package estimate

import (
	"filmbuild/estimate/climate"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// explainBatches adds the workings of how a paint is mixed: its life at the
// temperature of the work, and the batches of all coats.
//
//	batches = coats · ⌈max(1, A/(rate · use), V/(M − g))⌉
//
// which is Batching.Split with V the mixed paint of a coat, M the largest batch
// and g what each leaves in the gun.
func (r *run) explainBatches(b *StepBase, f *FilmPlan, plan applied, s *StepEstimate, paint *products.Paint, made batching, coatL, areaM2 float64, colour string) {
	own := func(name string) quantity.Node { return quantity.StepWorking(b.ID, name, paint.ID) }
	if f.HoseM > 0 {
		s.Working = append(s.Working, quantity.Working{Quantity: "batch_loss_l", Of: paint.ID, Value: made.lossL, Unit: "L", Formula: "g0 + π/4·bore^2·length/1000",
			Terms: map[string]float64{"g0": f.GunLossL, "bore": *f.HoseBoreMM, "length": f.HoseM}, Source: "identity",
			Links: []quantity.Link{quantity.From("g0", quantity.Setting(b.ID, "gun_loss_l")), quantity.From("bore", quantity.Setting(b.ID, "hose_bore_mm")), quantity.From("length", quantity.Setting(b.ID, "hose_m"))}})
	}
	if made.split.Count == 0 {
		return
	}
	use := own("batch_h")
	for _, w := range made.life.Working {
		w.Of = paint.ID
		r.lifeSymbols(b, f, paint, w.Quantity).link(&w)
		s.Working = append(s.Working, w)
		if w.Quantity == "use_h" {
			use = own("use_h")
		}
	}
	paintNode, thinner := own("paint_l"), quantity.Setting(b.ID, "thinner_percent")
	if made.lossL > 0 {
		paintNode = own("paint_before_gun_l")
	}
	if f.ThinnerPercent == nil {
		thinner = valueOf("product", paint.ID, "thinner_percent")
	}
	x := made.thinner
	rate, rateFrom := r.coatRate(b, plan)
	coats := float64(f.Coats)
	s.Working = append(s.Working,
		quantity.Working{Quantity: "coat_l", Of: paint.ID, Value: coatL, Unit: "L", Formula: "P·(1+x)/n", Terms: map[string]float64{"P": coatL * coats / (1 + x), "x": x, "n": coats}, Source: "identity",
			Links: []quantity.Link{quantity.From("P", paintNode), quantity.Scaled("x", thinner, 0.01), quantity.From("n", quantity.Setting(b.ID, "coats"))}},
		quantity.Working{Quantity: "batches", Of: paint.ID, Value: float64(made.times), Formula: "n·⌈max(1, A/(rate·use), V/(M − g)) − 0.000000001⌉",
			Terms:  map[string]float64{"n": coats, "A": areaM2, "rate": rate, "use": made.life.UseH, "V": coatL, "M": climate.LargestBatchL, "g": made.lossL},
			Source: "mix no more than is used in time (TO 1-1-8 6.12.6.3), and a few gallons at a time (MIL-HDBK-1110 7.3.1.1)",
			Links: append(r.gunLink(b, f, paint), rateFrom, quantity.From("n", quantity.Setting(b.ID, "coats")), quantity.From("A", quantity.StepWorking(b.ID, "area_m2", colour)),
				quantity.From("use", use), quantity.From("V", own("coat_l")))})
}

// gunLink says where the loss of one batch comes from, the term g.
func (r *run) gunLink(b *StepBase, f *FilmPlan, paint *products.Paint) []quantity.Link {
	if f.HoseM > 0 {
		return []quantity.Link{quantity.From("g", quantity.StepWorking(b.ID, "batch_loss_l", paint.ID))}
	}
	return []quantity.Link{quantity.From("g", quantity.Setting(b.ID, "gun_loss_l"))}
}

// lifeSymbols says where the terms of the workings of a pot life come from.
func (r *run) lifeSymbols(b *StepBase, f *FilmPlan, paint *products.Paint, of string) symbols {
	own := func(name string) quantity.Node { return quantity.StepWorking(b.ID, name, paint.ID) }
	value := func(name string) quantity.Node { return valueOf("product", paint.ID, name) }
	temperature := value("pot_life_at_c")
	if f.TemperatureC != nil {
		temperature = quantity.Setting(b.ID, "temperature_c")
	} else if b.Conditions != nil {
		temperature = quantity.Setting(b.ID, "conditions/surface_c")
	}
	life := value("pot_life_h")
	if of == "batch_h" {
		life = own("pot_life_h")
	}
	return symbols{
		quantity.From("P", life), quantity.From("P2", value("pot_life_2_h")),
		quantity.From("t", temperature), quantity.From("t1", value("pot_life_at_c")), quantity.From("t2", value("pot_life_2_at_c")),
		quantity.From("I", value("induction_h")),
		quantity.From("batch", own("batch_h")), quantity.From("stand", own("induction_h")),
	}
}

// timesFrom says how often is cleaned up: after batches, or after coats.
func timesFrom(term string, b *StepBase, paint *products.Paint, made batching) quantity.Link {
	if made.split.Count > 0 {
		return quantity.From(term, quantity.StepWorking(b.ID, "batches", paint.ID))
	}
	return quantity.From(term, quantity.Setting(b.ID, "coats"))
}
