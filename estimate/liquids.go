package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// work cleans; what was spread runs off and has to be caught.
func (p *Wash) work(r *run, s *StepEstimate, at string) {
	_, liquid, ok := r.spread(&p.StepBase, &p.Masked, &p.Liquid, s, "cleaner", false, at)
	if !ok {
		return
	}
	density := r.liquidDensity(&p.StepBase, liquid)
	s.waste(s.Litres*density, "V·d", map[string]float64{"V": s.Litres, "d": density}, s.spread(), liquidWeighs(liquid))
	r.assumed.add(p.ID, "rinsing water in the waste; only the cleaner as supplied is counted", 0, "kg", "assumption: catch and dispose of rinsing water as local rules say")
}

// work spreads a temporary protective, which stays on until it is washed off.
func (p *Protect) work(r *run, s *StepEstimate, at string) {
	r.spread(&p.StepBase, &p.Masked, &p.Liquid, s, "protective", false, at)
}

// work spreads a conversion treatment; what is rinsed off is waste.
func (p *Pretreat) work(r *run, s *StepEstimate, at string) {
	_, liquid, ok := r.spread(&p.StepBase, &p.Masked, &p.Liquid, s, "treatment", false, at)
	if !ok {
		return
	}
	density := r.liquidDensity(&p.StepBase, liquid)
	s.waste(s.Litres*density, "V·d", map[string]float64{"V": s.Litres, "d": density}, s.spread(), liquidWeighs(liquid))
}

// spread works out a liquid that is put on by area, and its hours.
func (r *run) spread(b *StepBase, m *Masked, l *Liquid, s *StepEstimate, use string, masked bool, at string) (selection, *products.Liquid, bool) {
	sel, liquid, ok := r.laid(b, m, l, s, use, masked, at)
	if ok {
		r.areaHours(b, s, b.Operation, sel.areaM2, l.Coats)
	}
	return sel, liquid, ok
}

// laid works out the litres of a liquid that is put on by area.
//
//	litres = area · times · coverage
func (r *run) laid(b *StepBase, m *Masked, l *Liquid, s *StepEstimate, use string, masked bool, at string) (selection, *products.Liquid, bool) {
	liquid, found := product[*products.Liquid](r.checker, l.Product, at, "product", use)
	sel, ok := r.surface(b, s, at)
	if !found || !ok {
		return sel, nil, false
	}
	if liquid.Use != use {
		s.Warnings = append(s.Warnings, liquid.ID+" is a "+liquid.Use+"; this step wants a "+use)
	}
	coverage, source, from := 0.0, "the job", quantity.Setting(b.ID, "coverage_l_m2")
	switch t := r.tested(b.ID); {
	case t.litres > 0:
		coverage, source, from = t.litres/t.wettedM2, "test patch", patched(b.ID, "coverage_l_m2")
	case l.CoverageLM2 != nil:
		coverage = *l.CoverageLM2
	default:
		coverage, source, from = liquid.CoverageLM2, r.sourceOf(liquid, "coverage_l_m2"), valueOf("product", liquid.ID, "coverage_l_m2")
		r.assumed.add(b.ID, "litres of "+liquid.ID+" for one square metre, once", coverage, "L/m²", source)
	}
	s.Litres = sel.areaM2 * float64(l.Coats) * coverage
	s.Working = append(s.Working, quantity.Working{Quantity: "litres", Value: s.Litres, Unit: "L", Formula: "A·n·coverage",
		Terms: map[string]float64{"A": sel.areaM2, "n": float64(l.Coats), "coverage": coverage}, Source: source, Uses: liquid.ID,
		Links: []quantity.Link{quantity.From("A", quantity.StepWorking(b.ID, "area_m2", "")), quantity.From("n", quantity.Setting(b.ID, "coats")), quantity.From("coverage", from)}})
	r.use(s, liquid, s.Litres)
	r.mask(m, b, s, sel, masked, at)
	return sel, liquid, !r.faults.HasBelow(at)
}

// spread links the term V to the litres that the step spreads.
func (s *StepEstimate) spread() quantity.Link {
	return quantity.From("V", quantity.StepWorking(s.ID, "litres", ""))
}

func liquidWeighs(l *products.Liquid) quantity.Link {
	return quantity.From("d", valueOf("product", l.ID, "density_kg_l"))
}

// waterDensity stands for a liquid whose density is not given.
const waterDensity = 1.0 // kg/L, by definition of the litre within 0.2 %

func (r *run) liquidDensity(b *StepBase, l *products.Liquid) float64 {
	if l.DensityKgL != nil {
		return *l.DensityKgL
	}
	r.assumed.add(b.ID, "density of "+l.ID+", which is not given", waterDensity, "kg/L", "assumption: that of water")
	return waterDensity
}

// areaHours notes the hours of an operation that goes by area, at the step's
// own rate, a test patch's or the book's.
func (r *run) areaHours(b *StepBase, s *StepEstimate, operation string, areaM2 float64, times int) {
	book := r.operation(operation)
	r.hoursAt(b, s, areaM2, times, book.Rate.Likely, "area one person does in an hour: "+book.Name, book.Rate.Text(), valueOf("operation", operation, "rate"))
}

// hoursAt notes the hours of work that goes over an area a number of times. book
// names the catalogue's rate of one person.
func (r *run) hoursAt(b *StepBase, s *StepEstimate, areaM2 float64, times int, bookRate float64, text, bookSource string, book quantity.Node) {
	rate, source, from := bookRate*float64(b.Crew), bookSource, quantity.Scaled("rate", book, float64(b.Crew))
	switch t := r.tested(b.ID); {
	case t.hours > 0:
		rate, source, from = t.timedM2/t.hours, "test patch", quantity.From("rate", patched(b.ID, "rate_m2_h"))
	case b.RateM2H != nil:
		rate, source, from = *b.RateM2H, "the job", quantity.From("rate", quantity.Setting(b.ID, "rate_m2_h"))
	default:
		r.assumed.add(b.ID, text, bookRate, "m²/h", bookSource)
	}
	n := float64(times)
	s.crewHours(b, areaM2*n/rate, "A·n/rate", map[string]float64{"A": areaM2, "n": n, "rate": rate}, source,
		from, quantity.From("A", quantity.StepWorking(b.ID, "area_m2", "")), quantity.From("n", quantity.Setting(b.ID, "coats")))
}
