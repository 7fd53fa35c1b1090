package estimate

import (
	"fmt"
	"strconv"

	"filmbuild/estimate/film"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// work paints a selection.
func (p *Coat) work(r *run, s *StepEstimate, at string) {
	r.oneOf(p.Recoat, at, "recoat", []string{"in_time", "missed"})
	paint, found := product[*products.Paint](r.checker, p.Product, at, "product", "paint")
	plan, planned := r.filmPlan(&p.StepBase, &p.FilmPlan, at)
	sel, ok := r.surface(&p.StepBase, s, at)
	if !found || !planned || !ok {
		return
	}
	r.spreadOver(sel, r.paint(&p.StepBase, &p.FilmPlan, plan, s, paint, sel.areaM2, "", at))
	if r.faults.HasBelow(at) {
		return
	}
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	r.applicationHours(&p.StepBase, s, plan, sel.areaM2, p.Coats)
	r.recoat(p, s, plan, sel, paint)
	r.spreadOver(sel, r.tack)
	r.tack = 0
	film := float64(p.Coats) * nominal(&p.FilmPlan, paint)
	r.filmCheck(p, s, sel, film, at)
	r.lay(&p.StepBase, s, sel, paint, film)
	r.paintWaste(s)
}

// nominal is the dry film asked for, of one coat.
func nominal(f *FilmPlan, paint *products.Paint) float64 {
	if f.DryFilmUM != nil {
		return *f.DryFilmUM
	}
	return valueOr(paint.DryFilmUM, 0)
}

// applied is how a paint is put on: the method and what it loses.
type applied struct {
	method     products.Method
	book       products.Value // transfer efficiency on parts of the step's size
	efficiency float64        // percent
	from       quantity.Node  // where the efficiency comes from
	told       bool           // the efficiency stands among the assumptions already
}

// filmPlan checks the fields that all paint films share, and finds the method.
func (r *run) filmPlan(b *StepBase, f *FilmPlan, at string) (applied, bool) {
	var rules []string
	for _, rule := range film.Rules() {
		rules = append(rules, string(rule))
	}
	r.oneOf(f.FilmRule, at, "film_rule", rules)
	id := f.Method
	if id == "" {
		id = "brush"
		r.assumed.add(b.ID, "method of application where the step names none: brush", 1, "", "assumption: give method")
	}
	method, ok := r.catalogue.Method(id)
	if !ok {
		var known []string
		for _, m := range r.catalogue.Methods() {
			known = append(known, m.ID)
		}
		r.oneOf(id, at, "method", known)
		return applied{}, false
	}
	if f.PartSize != "" {
		var sizes []string
		for _, size := range r.catalogue.PartSizes() {
			sizes = append(sizes, size.ID)
		}
		r.oneOf(f.PartSize, at, "part_size", sizes)
	}
	book := method.EfficiencyOn(f.PartSize)
	plan := applied{method: method, book: book, efficiency: book.Likely, from: efficiencyNode(method, f.PartSize)}
	if f.TransferEfficiencyPercent != nil {
		plan.efficiency, plan.from = *f.TransferEfficiencyPercent, quantity.Setting(b.ID, "transfer_efficiency_percent")
	}
	return plan, true
}

// efficiencyNode names the transfer efficiency of a method on parts of a size.
func efficiencyNode(method products.Method, partSize string) quantity.Node {
	node := valueOf("method", method.ID, "transfer_efficiency_percent")
	for _, e := range method.PartEfficiencies {
		if e.PartSize == partSize {
			node.Of = partSize
		}
	}
	return node
}

// coating assembles the calculation of one paint on one area.
func (r *run) coating(b *StepBase, f *FilmPlan, plan applied, paint *products.Paint, areaM2 float64, at string) (*film.Coating, bool) {
	c := film.NewCoating()
	c.AreaM2, c.Coats, c.LossPercent = areaM2, f.Coats, f.LossPercent
	c.VolumeSolidsPercent, c.DryFilmDensityKgL = paint.VolumeSolidsPercent, paint.DryFilmDensityKgL
	c.ProfileUm, c.ProfileFillRatio = f.ProfileUM, f.ProfileFillRatio
	c.FilmRule, c.FilmCovRatio = film.Rule(f.FilmRule), f.FilmCovRatio
	switch {
	case f.DryFilmUM != nil:
		c.DryFilmUm = *f.DryFilmUM
	case paint.DryFilmUM != nil:
		c.DryFilmUm = *paint.DryFilmUM
		r.assumed.add(b.ID, "dry film of one coat of "+paint.ID, c.DryFilmUm, "µm", r.sourceOf(paint, "dry_film_um"))
	default:
		r.faults.Addf(at+"/dry_film_um", "required", "dry_film_um is missing, and product %s has no usual film", paint.ID)
		return nil, false
	}
	switch {
	case f.ThinnerPercent != nil:
		c.ThinnerPercent = *f.ThinnerPercent
	case paint.ThinnerPercent != nil && *paint.ThinnerPercent > 0:
		c.ThinnerPercent = *paint.ThinnerPercent
		r.assumed.add(b.ID, "thinner added to "+paint.ID+", of the unthinned paint", c.ThinnerPercent, "%", r.sourceOf(paint, "thinner_percent"))
	}
	c.TransferEfficiencyPercent = plan.efficiency
	switch t := r.tested(b.ID); {
	case t.filmL > 0:
		c.TransferEfficiencyPercent = t.efficiencyPercent(paint.VolumeSolidsPercent)
		if c.TransferEfficiencyPercent > 100 {
			r.faults.Addf(at, "inconsistent", "the test patches of step %s hold more solids than the paint used on them; look at litres and film_um", b.ID)
			return nil, false
		}
		r.assumed.add(b.ID, testedEfficiency, c.TransferEfficiencyPercent, "%", "test patch")
	case f.TransferEfficiencyPercent == nil && !plan.told:
		text := "transfer efficiency of " + plan.method.Name
		if f.PartSize != "" {
			text += ", parts " + f.PartSize
		} else if len(plan.method.PartEfficiencies) > 0 {
			text += ", parts of no stated size (give part_size: small parts and edges take several times the paint)"
		}
		r.assumed.add(b.ID, text, plan.efficiency, "%", fmt.Sprintf("between %g and %g %%: %s", plan.book.Low, plan.book.High, noted(plan.book)))
	}
	c.PassWetFilmUm = f.PassWetFilmUM
	if c.PassWetFilmUm == nil {
		c.PassWetFilmUm = &plan.method.PassWetFilmUM.Likely
	}
	if f.GunLossL == 0 && f.HoseM == 0 {
		r.assumed.add(b.ID, "paint left in gun, hose and cup at the end of each batch, where gun_loss_l is not given", 0, "L", "assumption; no public figure was found, a hose holds what hose_m and hose_bore_mm say: give gun_loss_l")
	}
	if f.LossPercent == 0 {
		r.assumed.add(b.ID, "paint mixed but never sprayed, where loss_percent is not given", 0, "%", "assumption; two-pack residue up to 10 % is usual (common practice): give loss_percent")
	}
	sound := true
	c.Check(func(pointer, code, detail string) {
		sound = false
		r.faults.Add(r.whereGiven(pointer, paint.ID, at), code, detail)
	})
	return c, sound
}

// whereGiven is where the job gives a value that a step's calculation is about:
// the area follows from what is chosen, the solids are the product's.
func (r *run) whereGiven(pointer, product, at string) string {
	switch pointer {
	case "/area_m2":
		return at + "/on"
	case "/volume_solids_percent", "/dry_film_density_kg_l":
		if own, mine := r.productAt[product]; mine {
			return "/products/" + strconv.Itoa(own) + pointer
		}
	}
	return at + pointer
}

// paint works out one paint on one area and adds it to the step; it returns the
// weight of the film. colour tells which of the step's areas that is, where it
// has several.
func (r *run) paint(b *StepBase, f *FilmPlan, plan applied, s *StepEstimate, paint *products.Paint, areaM2 float64, colour, at string) float64 {
	coating, ok := r.coating(b, f, plan, paint, areaM2, at)
	if !ok {
		return 0
	}
	s.unusual(paint, coating.DryFilmUm)
	result, err := coating.Calculate()
	if err != nil {
		r.faults.Add(at, "out_of_range", err.Error())
		return 0
	}
	coatL := result.TotalL / float64(coating.Coats)
	made, ok := r.batch(b, f, plan, paint, coatL, areaM2, at)
	if !ok {
		return 0
	}
	made.thinner = coating.ThinnerPercent / 100
	if made.lossL > 0 {
		coating.Batches, coating.BatchLossL = made.times, made.lossL
		if result, err = coating.Calculate(); err != nil {
			r.faults.Add(at, "out_of_range", err.Error())
			return 0
		}
	}
	r.explain(b, f, plan, s, paint, result, made, colour)
	r.explainBatches(b, f, plan, s, paint, made, coatL, areaM2, colour)
	s.Warnings = append(s.Warnings, result.Warnings...)
	s.Litres += result.TotalL
	r.giveOff(s, "paint_l", paint.ID, paint.ID, result.PaintL, paint.VOCGL, paint.WaterVolumePercent, paint.ExemptVolumePercent)
	r.use(s, paint, result.PaintL)
	r.thin(b, s, paint, result.ThinnerL, at)
	mix := r.mixing(f, paint, result, coating, made)
	mix.CleaningProduct, mix.CleaningL = r.clean(b, f, plan, s, paint, made, at)
	r.holdVOC(f, s, paint, coating.ThinnerPercent, &mix, at)
	s.unmixable(mix, coating.Coats)
	s.Mixing = append(s.Mixing, mix)
	if result.DryFilmKg == nil {
		s.Warnings = append(s.Warnings, paint.ID+" has no dry_film_density_kg_l: its film and its waste are not weighed")
		return 0
	}
	s.DryFilmKg += *result.DryFilmKg
	s.WasteKg += *result.LostSolidsKg
	return *result.DryFilmKg
}

// explain adds the workings of a coating to its step.
func (r *run) explain(b *StepBase, f *FilmPlan, plan applied, s *StepEstimate, paint *products.Paint, result film.Result, made batching, colour string) {
	from := append(r.filmSymbols(b, f, plan, paint, colour), timesFrom("N", b, paint, made), r.gunLink(b, f, paint)[0],
		quantity.From("P0", quantity.StepWorking(b.ID, "paint_before_gun_l", paint.ID)))
	for _, w := range result.Working {
		w.Of = paint.ID
		switch w.Quantity {
		case "paint_l":
			w.Uses = paint.ID
		case "thinner_l":
			w.Uses = paint.Thinner
		}
		from.link(&w)
		s.Working = append(s.Working, w)
	}
}

// thin notes the thinner that goes into a paint.
func (r *run) thin(b *StepBase, s *StepEstimate, paint *products.Paint, litres float64, at string) {
	if litres == 0 {
		return
	}
	if paint.Thinner == "" {
		r.faults.Addf(at+"/thinner_percent", "required", "thinner_percent is above 0 and product %s names no thinner; give the product one, or thin by 0 %%", paint.ID)
		return
	}
	if thinner, ok := product[*products.Thinner](r.checker, paint.Thinner, at, "product", "thinner"); ok {
		r.use(s, thinner, litres)
		r.giveOff(s, "thinner_l", paint.ID, thinner.ID, litres, thinner.VOCGL, thinner.WaterVolumePercent, thinner.ExemptVolumePercent)
	}
}

// giveOff notes the solvent that a paint or thinner gives off: its VOC less water
// and exempt solvent, of the part that is neither.
func (r *run) giveOff(s *StepEstimate, name, paint, product string, litres float64, vocGL, waterPercent, exemptPercent *float64) {
	if vocGL == nil || *vocGL == 0 {
		return
	}
	water, exempt := valueOr(waterPercent, 0)/100, valueOr(exemptPercent, 0)/100
	w := quantity.Working{Quantity: "voc_kg", Of: name + " " + paint, Value: litres * *vocGL * (1 - water - exempt) / 1000, Unit: "kg", Formula: "V·w/1000",
		Terms: map[string]float64{"V": litres, "w": *vocGL}, Source: "identity",
		Links: []quantity.Link{quantity.From("V", quantity.StepWorking(s.ID, name, paint)), quantity.From("w", valueOf("product", product, "voc_g_l"))}}
	if water+exempt > 0 {
		w.Formula, w.Source = "V·w·(1 − h − e)/1000", "40 CFR 59.104(a)(1), turned round: VOC less water and exempt solvent is of the rest only"
		w.Terms["h"], w.Terms["e"] = water, exempt
		w.Links = append(w.Links, quantity.Scaled("h", valueOf("product", product, "water_volume_percent"), 0.01), quantity.Scaled("e", valueOf("product", product, "exempt_volume_percent"), 0.01))
	}
	s.VOCKg += w.Value
	s.Working = append(s.Working, w)
}

// filmSymbols says where the terms of a coating's workings come from.
func (r *run) filmSymbols(b *StepBase, f *FilmPlan, plan applied, paint *products.Paint, colour string) symbols {
	film, thinner, efficiency := quantity.Setting(b.ID, "dry_film_um"), quantity.Setting(b.ID, "thinner_percent"), plan.from
	if f.DryFilmUM == nil {
		film = valueOf("product", paint.ID, "dry_film_um")
	}
	if f.ThinnerPercent == nil {
		thinner = valueOf("product", paint.ID, "thinner_percent")
	}
	if r.tested(b.ID).filmL > 0 {
		efficiency = patched(b.ID, "transfer_efficiency_percent")
	}
	own := func(name string) quantity.Node { return quantity.StepWorking(b.ID, name, paint.ID) }
	return symbols{
		quantity.From("A", quantity.StepWorking(b.ID, "area_m2", colour)),
		quantity.From("n", quantity.Setting(b.ID, "coats")),
		quantity.From("t", film),
		quantity.Scaled("VS", valueOf("product", paint.ID, "volume_solids_percent"), 0.01),
		quantity.Scaled("TE", efficiency, 0.01),
		quantity.Scaled("L", quantity.Setting(b.ID, "loss_percent"), 0.01),
		quantity.Scaled("x", thinner, 0.01),
		quantity.From("p", quantity.Setting(b.ID, "profile_um")),
		quantity.From("q", quantity.Setting(b.ID, "profile_fill_ratio")),
		quantity.From("d", valueOf("product", paint.ID, "dry_film_density_kg_l")),
		quantity.From("S", own("theoretical_spreading_rate_m2_l")),
		quantity.From("tm", own("mean_dry_film_um")),
		quantity.From("P", own("paint_l")),
		quantity.From("m", own("dry_film_kg")),
		quantity.From("wet", own("wet_film_aim_um")),
		quantity.From("pass", passFrom(b, f, plan)),
	}
}

// passFrom names where the wet film of one pass comes from.
func passFrom(b *StepBase, f *FilmPlan, plan applied) quantity.Node {
	if f.PassWetFilmUM != nil {
		return quantity.Setting(b.ID, "pass_wet_film_um")
	}
	return valueOf("method", plan.method.ID, "pass_wet_film_um")
}

// applicationHours notes the time to put a film on.
func (r *run) applicationHours(b *StepBase, s *StepEstimate, plan applied, areaM2 float64, coats int) {
	r.hoursAt(b, s, areaM2, coats, plan.method.RateM2H.Likely, "area one person coats in an hour: "+plan.method.Name, noted(plan.method.RateM2H), valueOf("method", plan.method.ID, "rate_m2_h"))
}

// paintWaste says what the waste of painting is: the solids not on the part, and
// the solvent that cleaned the guns.
func (r *run) paintWaste(s *StepEstimate) {
	r.assumed.add(s.ID, "weight of tins, rags, tape and what evaporates in the waste of painting; only paint solids and the solvent of cleaning are counted", 0, "kg", "assumption")
}
