package estimate

import (
	"fmt"

	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// What a coat that has stood too long is treated with where nothing else is
// known; the proposal names them.
const (
	wipeSolvent = "wipe-solvent"
	scuffDisc   = "disc-320" // 320 to 400 grit. Source: USAF TO 1-1-8 5.6.2 (reference planning C11)
)

const (
	tackWetUM   = 38.0 // µm wet, middle of 25 to 50. Source: UFGS 09971 (reference planning C10); NAVFAC MO-124, 1 to 2 mil (coating K7)
	tackThinner = 0.25 // of the unthinned paint. Source: UFGS 09971, thinned about 25 % (reference planning C10)
)

// remedies proposes the work on a coat that has stood too long: a solvent wipe
// first, then what its window asks for.
//
// Source: the works and their order, reference planning C10, C11, C17; which
// products, and the rates, are the catalogue's.
func (r *run) remedies(p *Coat, plan applied, window products.Recoat, paint *products.Paint, areaM2 float64) []Remedy {
	var list []Remedy
	if liquid, ok := r.liquidOf(wipeSolvent); ok {
		list = append(list, Remedy{Work: "wipe", Product: liquid.ID, Quantity: areaM2 * liquid.CoverageLM2, Unit: "L", Hours: areaM2 / r.operation("wipe").Rate.Likely,
			Text: "wipe with solvent and two cloths, the second dry, before the solvent dries"})
	}
	switch window.Missed {
	case "tack_coat":
		rate, _ := r.coatRate(&p.StepBase, plan)
		litres := areaM2 * tackWetUM / (1000 * (1 + tackThinner) * plan.efficiency / 100 * (1 - p.LossPercent/100))
		list = append(list, Remedy{Work: "tack_coat", Product: paint.ID, Quantity: litres, Unit: "L", Hours: areaM2 / rate * float64(p.Crew),
			Text: fmt.Sprintf("wash and dry, then a tack coat of %.0f µm wet, thinned %.0f %%; the full coat follows inside its own window", tackWetUM, 100*tackThinner)})
	default:
		if disc, ok := r.discOf(scuffDisc); ok {
			list = append(list, Remedy{Work: "scuff", Product: disc.ID, Quantity: areaM2 / disc.AreaM2, Unit: disc.Unit(), Hours: areaM2 / r.operation("sand").Rate.Likely,
				Text: "scuff all over to an even matt surface, vacuum and wipe"})
		}
	}
	return list
}

func (r *run) liquidOf(id string) (*products.Liquid, bool) {
	p, _ := r.catalogue.Product(id)
	l, ok := p.(*products.Liquid)
	return l, ok
}

func (r *run) discOf(id string) (*products.Disc, bool) {
	p, _ := r.catalogue.Product(id)
	d, ok := p.(*products.Disc)
	return d, ok
}

// remedy adds work to a step: its material, its hours and its film.
func (r *run) remedy(p *Coat, s *StepEstimate, plan applied, after string, list []Remedy, paint *products.Paint, areaM2 float64) {
	area := quantity.From("A", quantity.StepWorking(p.ID, "area_m2", ""))
	for _, w := range list {
		of := w.Work + " after " + after
		switch w.Work {
		case "wipe":
			liquid, _ := r.liquidOf(w.Product)
			s.Litres += w.Quantity
			r.use(s, liquid, w.Quantity)
			s.note("recoat_l", of, w.Quantity, "L", "A·coverage", map[string]float64{"A": areaM2, "coverage": liquid.CoverageLM2}, r.sourceOf(liquid, "coverage_l_m2"),
				area, quantity.From("coverage", valueOf("product", liquid.ID, "coverage_l_m2")))
			s.Working[len(s.Working)-1].Uses = liquid.ID
			r.remedyHours(p, s, of, w.Hours, areaM2, "wipe", area)
		case "scuff":
			disc, _ := r.discOf(w.Product)
			r.use(s, disc, w.Quantity)
			s.note("recoat_discs", of, w.Quantity, w.Unit, "A/a", map[string]float64{"A": areaM2, "a": disc.AreaM2}, r.sourceOf(disc, "area_m2"),
				area, quantity.From("a", valueOf("product", disc.ID, "area_m2")))
			s.Working[len(s.Working)-1].Uses = disc.ID
			r.remedyHours(p, s, of, w.Hours, areaM2, "sand", area)
		case "tack_coat":
			r.tackCoat(p, s, plan, of, w, paint, areaM2, area)
		}
	}
}

func (r *run) remedyHours(p *Coat, s *StepEstimate, of string, hours, areaM2 float64, operation string, area quantity.Link) {
	s.partHours()
	s.Hours += hours
	rate := r.operation(operation).Rate
	s.note("part_hours", of, hours, "h", "A/rate", map[string]float64{"A": areaM2, "rate": rate.Likely}, noted(rate), area, quantity.From("rate", valueOf("operation", operation, "rate")))
	r.assumed.add(p.ID, "area one person does in an hour: "+r.operation(operation).Name, rate.Likely, "m²/h", noted(rate))
}

// tackCoat adds a thin coat of the step's own paint.
//
//	paint = A · wet / (1000 · (1 + thinner) · TE · (1 − loss))
func (r *run) tackCoat(p *Coat, s *StepEstimate, plan applied, of string, w Remedy, paint *products.Paint, areaM2 float64, area quantity.Link) {
	efficiency, loss := plan.efficiency/100, p.LossPercent/100
	s.note("recoat_l", of, w.Quantity, "L", "A·wet/(1000·(1+x)·TE·(1−L))", map[string]float64{"A": areaM2, "wet": tackWetUM, "x": tackThinner, "TE": efficiency, "L": loss},
		"UFGS 09971 and NAVFAC MO-124: tack coat of 25 to 50 µm wet, thinned about 25 %", area, quantity.Scaled("TE", plan.from, 0.01), quantity.Scaled("L", quantity.Setting(p.ID, "loss_percent"), 0.01))
	s.Working[len(s.Working)-1].Uses = paint.ID
	s.Litres += w.Quantity
	r.use(s, paint, w.Quantity)
	if thinner := r.thinnerOf(paint); thinner != nil {
		s.note("recoat_thinner_l", of, w.Quantity*tackThinner, "L", "P·x", map[string]float64{"P": w.Quantity, "x": tackThinner}, "UFGS 09971: thinned about 25 %", quantity.From("P", quantity.StepWorking(p.ID, "recoat_l", of)))
		s.Working[len(s.Working)-1].Uses = thinner.ID
		s.Litres += w.Quantity * tackThinner
		r.use(s, thinner, w.Quantity*tackThinner)
		r.giveOff(s, "recoat_thinner_l", of, thinner.ID, w.Quantity*tackThinner, thinner.VOCGL, thinner.WaterVolumePercent, thinner.ExemptVolumePercent)
	}
	r.giveOff(s, "recoat_l", of, paint.ID, w.Quantity, paint.VOCGL, paint.WaterVolumePercent, paint.ExemptVolumePercent)
	if paint.DryFilmDensityKgL != nil {
		r.tackFilm(p, s, of, w.Quantity, efficiency*(1-loss), paint)
	}
	s.partHours()
	s.Hours += w.Hours
	rate, from := r.coatRate(&p.StepBase, plan)
	s.note("part_hours", of, w.Hours, "h", "A/rate·crew", map[string]float64{"A": areaM2, "rate": rate, "crew": float64(p.Crew)}, "as the coat itself", area, from, quantity.From("crew", quantity.Setting(p.ID, "crew")))
}

// tackFilm weighs the film of a tack coat, and its paint that is not on the part.
func (r *run) tackFilm(p *Coat, s *StepEstimate, of string, litres, lands float64, paint *products.Paint) {
	solids, density := paint.VolumeSolidsPercent/100, *paint.DryFilmDensityKgL
	all := litres * solids * density
	links := []quantity.Link{quantity.From("P", quantity.StepWorking(p.ID, "recoat_l", of)), quantity.Scaled("VS", valueOf("product", paint.ID, "volume_solids_percent"), 0.01), quantity.From("d", valueOf("product", paint.ID, "dry_film_density_kg_l"))}
	terms := func() map[string]float64 {
		return map[string]float64{"P": litres, "VS": solids, "d": density, "lands": lands}
	}
	s.note("dry_film_kg", of, all*lands, "kg", "P·VS·d·lands", terms(), "identity", links...)
	s.note("lost_solids_kg", of, all*(1-lands), "kg", "P·VS·d·(1 − lands)", terms(), "identity", links...)
	s.DryFilmKg += all * lands
	s.WasteKg += all * (1 - lands)
	r.tack += all * lands
}

// partHours makes the hours of a step the sum of parts: the coating is one.
func (s *StepEstimate) partHours() {
	for i := range s.Working {
		if w := &s.Working[i]; w.Quantity == "hours" && w.Of == "" {
			w.Quantity, w.Of = "part_hours", "coating"
		}
	}
}
