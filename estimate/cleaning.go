package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// gunWash is the solvent that cleans guns and brushes where the step names none.
const gunWash = "gun-wash"

// clean notes the solvent that cleans gun, hose and cup after every batch, and
// after every coat of a paint in one pack. It is collected: it is waste, and is
// not counted as given off.
func (r *run) clean(b *StepBase, f *FilmPlan, plan applied, s *StepEstimate, paint *products.Paint, made batching, at string) (string, float64) {
	each, from, source := plan.method.CleaningL.Likely, valueOf("method", plan.method.ID, "cleaning_l"), plan.method.CleaningL.Text()
	if f.CleaningL != nil {
		each, from, source = *f.CleaningL, quantity.Setting(b.ID, "cleaning_l"), "the job"
	} else {
		r.assumed.add(b.ID, "solvent to clean up after each batch: "+plan.method.Name, each, "L", noted(plan.method.CleaningL))
	}
	if each == 0 {
		return "", 0
	}
	id := f.Cleaning
	if id == "" {
		id = gunWash
		r.assumed.add(b.ID, "solvent for cleaning where the step names none: "+gunWash, 1, "", "common practice: the thinner of the paint does as well; give cleaning")
	}
	solvent, ok := product[*products.Thinner](r.checker, id, at, "cleaning", "thinner")
	if !ok {
		return "", 0
	}
	litres := each * float64(made.times)
	s.Working = append(s.Working, quantity.Working{Quantity: "cleaning_l", Of: paint.ID, Value: litres, Unit: "L", Formula: "n·c",
		Terms: map[string]float64{"n": float64(made.times), "c": each}, Source: source, Uses: id, Links: []quantity.Link{quantity.From("c", from), timesFrom("n", b, paint, made)}})
	r.use(s, solvent, litres)
	r.cleaningWaste(b, s, paint, solvent, litres)
	return id, litres
}

// cleaningWaste notes the weight of the solvent that comes back dirty.
func (r *run) cleaningWaste(b *StepBase, s *StepEstimate, paint *products.Paint, solvent *products.Thinner, litres float64) {
	density, links := waterDensity, []quantity.Link{quantity.From("V", quantity.StepWorking(b.ID, "cleaning_l", paint.ID))}
	if solvent.DensityKgL != nil {
		density = *solvent.DensityKgL
		links = append(links, quantity.From("d", valueOf("product", solvent.ID, "density_kg_l")))
	} else {
		r.assumed.add(b.ID, "density of "+solvent.ID+", which is not given", waterDensity, "kg/L", "assumption: that of water")
	}
	mass := litres * density
	s.WasteKg += mass
	s.Working = append(s.Working, quantity.Working{Quantity: "cleaning_waste_kg", Of: paint.ID, Value: mass, Unit: "kg", Formula: "V·d",
		Terms: map[string]float64{"V": litres, "d": density}, Source: "identity; all of it is collected (assumption)", Links: links})
}
