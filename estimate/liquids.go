package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// work spreads a stripper and takes the old paint off.
func (p *Strip) work(r *run, s *StepEstimate, at string) {
	sel, liquid, ok := r.spread(&p.StepBase, &p.Masked, &p.Liquid, s, "stripper", true, at)
	if !ok {
		return
	}
	removed, _ := r.remove(&p.StepBase, s, sel)
	mass := s.Litres * r.liquidDensity(&p.StepBase, liquid)
	s.waste(mass+removed, "liquid + removed", map[string]float64{"liquid": mass, "removed": removed})
}

// work cleans; what was spread runs off and has to be caught.
func (p *Wash) work(r *run, s *StepEstimate, at string) {
	_, liquid, ok := r.spread(&p.StepBase, &p.Masked, &p.Liquid, s, "cleaner", false, at)
	if !ok {
		return
	}
	mass := s.Litres * r.liquidDensity(&p.StepBase, liquid)
	s.waste(mass, "liquid", map[string]float64{"liquid": mass})
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
	mass := s.Litres * r.liquidDensity(&p.StepBase, liquid)
	s.waste(mass, "liquid", map[string]float64{"liquid": mass})
}

// spread works out a liquid that is put on by area.
//
//	litres = area · times · coverage
func (r *run) spread(b *StepBase, m *Masked, l *Liquid, s *StepEstimate, use string, masked bool, at string) (selection, *products.Liquid, bool) {
	liquid, found := product[*products.Liquid](r.checker, l.Product, at, "product", use)
	sel, ok := r.surface(b, s, at)
	if !found || !ok {
		return sel, nil, false
	}
	if liquid.Use != use {
		s.Warnings = append(s.Warnings, liquid.ID+" is a "+liquid.Use+"; this step wants a "+use)
	}
	coverage, source := 0.0, "the job"
	switch t := r.tested(b.ID); {
	case t.litres > 0:
		coverage, source = t.litres/t.wettedM2, "test patch"
	case l.CoverageLM2 != nil:
		coverage = *l.CoverageLM2
	default:
		coverage, source = liquid.CoverageLM2, r.sourceOf(liquid, "coverage_l_m2")
		r.assumed.add(b.ID, "litres of "+liquid.ID+" for one square metre, once", coverage, "L/m²", source)
	}
	s.Litres = sel.areaM2 * float64(l.Coats) * coverage
	s.Working = append(s.Working, quantity.Working{Quantity: "litres", Value: s.Litres, Unit: "L", Formula: "A·n·coverage",
		Terms: map[string]float64{"A": sel.areaM2, "n": float64(l.Coats), "coverage": coverage}, Source: source})
	r.use(s, liquid, s.Litres)
	r.mask(m, b, s, sel, masked, at)
	r.areaHours(b, s, b.Operation, sel.areaM2*float64(l.Coats))
	return sel, liquid, !r.faults.HasBelow(at)
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
func (r *run) areaHours(b *StepBase, s *StepEstimate, operation string, areaM2 float64) {
	book := r.operation(operation)
	r.hoursAt(b, s, areaM2, book.Rate.Likely, "area one person does in an hour: "+book.Name, book.Rate.Text())
}

func (r *run) hoursAt(b *StepBase, s *StepEstimate, areaM2, bookRate float64, text, bookSource string) {
	rate, source := bookRate*float64(b.Crew), bookSource
	switch t := r.tested(b.ID); {
	case t.hours > 0:
		rate, source = t.timedM2/t.hours, "test patch"
	case b.RateM2H != nil:
		rate, source = *b.RateM2H, "the job"
	default:
		r.assumed.add(b.ID, text, bookRate, "m²/h", bookSource)
	}
	s.crewHours(b, areaM2/rate, "A·n/rate", map[string]float64{"A·n": areaM2, "rate": rate}, source)
}
