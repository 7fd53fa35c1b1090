package estimate

import (
	"strconv"

	"filmbuild/estimate/film"
	"filmbuild/products"
)

// work paints a selection.
func (p *Coat) work(r *run, s *StepEstimate, at string) {
	paint, found := product[*products.Paint](r.checker, p.Product, at, "product", "paint")
	plan, planned := r.filmPlan(&p.StepBase, &p.FilmPlan, at)
	sel, ok := r.surface(&p.StepBase, s, at)
	if !found || !planned || !ok {
		return
	}
	r.paint(&p.StepBase, &p.FilmPlan, plan, s, paint, sel.areaM2, at)
	if r.faults.HasBelow(at) {
		return
	}
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	r.applicationHours(&p.StepBase, s, plan, sel.areaM2*float64(p.Coats))
	r.paintWaste(s)
}

// applied is how a paint is put on: the method and what it loses.
type applied struct {
	method     products.Method
	efficiency float64 // percent
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
	plan := applied{method: method, efficiency: method.TransferEfficiencyPercent.Likely}
	if f.TransferEfficiencyPercent != nil {
		plan.efficiency = *f.TransferEfficiencyPercent
	}
	return plan, true
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
		r.assumed.add(b.ID, "transfer efficiency", c.TransferEfficiencyPercent, "%", "test patch")
	case f.TransferEfficiencyPercent == nil:
		r.assumed.add(b.ID, "transfer efficiency of "+plan.method.Name, plan.efficiency, "%", plan.method.TransferEfficiencyPercent.Text())
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

// paint works out one paint on one area and adds it to the step.
func (r *run) paint(b *StepBase, f *FilmPlan, plan applied, s *StepEstimate, paint *products.Paint, areaM2 float64, at string) {
	coating, ok := r.coating(b, f, plan, paint, areaM2, at)
	if !ok {
		return
	}
	s.unusual(paint, coating.DryFilmUm)
	result, err := coating.Calculate()
	if err != nil {
		r.faults.Add(at, "out_of_range", err.Error())
		return
	}
	for _, w := range result.Working {
		w.Of = paint.ID
		s.Working = append(s.Working, w)
	}
	s.Warnings = append(s.Warnings, result.Warnings...)
	s.Litres += result.TotalL
	s.VOCKg += result.PaintL * valueOr(paint.VOCGL, 0) / 1000
	r.use(s, paint, result.PaintL)
	r.thin(b, s, paint, result.ThinnerL, at)
	if result.DryFilmKg != nil {
		s.DryFilmKg += *result.DryFilmKg
		s.WasteKg += *result.LostSolidsKg
	} else {
		s.Warnings = append(s.Warnings, paint.ID+" has no dry_film_density_kg_l: its film and its waste are not weighed")
	}
	s.Mixing = append(s.Mixing, r.mixing(b, plan, paint, result, coating, at))
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
		s.VOCKg += litres * valueOr(thinner.VOCGL, 0) / 1000
	}
}

// applicationHours notes the time to put a film on.
func (r *run) applicationHours(b *StepBase, s *StepEstimate, plan applied, areaM2 float64) {
	r.hoursAt(b, s, areaM2, plan.method.RateM2H.Likely, "area one person coats in an hour: "+plan.method.Name, noted(plan.method.RateM2H))
}

// paintWaste gives the working of the solids that are not on the part.
func (r *run) paintWaste(s *StepEstimate) {
	s.waste(s.WasteKg, "solids in the paint − solids in the film", map[string]float64{"solids in the paint": s.WasteKg + s.DryFilmKg, "solids in the film": s.DryFilmKg})
	r.assumed.add(s.ID, "weight of tins, rags, tape and solvent in the waste of painting; only paint solids are counted", 0, "kg", "assumption")
}
