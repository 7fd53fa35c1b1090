package estimate

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// Means are the ways of a strip step.
func Means() []string { return []string{"chemical", "water"} }

// The brushed coat of a stripper and the weather it works in.
//
// Source: Navy structural mechanic text, 1/32 to 1/16 in and 10 to 40 min (G-1,
// read); TM 55-1500-345-23, best at 50 to 100 °F, slower below 60 °F (G-3, read).
const (
	leastWetMM, mostWetMM       = 25.4 / 32, 25.4 / 16 // mm
	leastDwellMin, mostDwellMin = 10, 40               // min
	coldestC, slowC, hottestC   = 10.0, 15.6, 37.8     // °C
)

// The most that water on the outside of an aircraft may have, with soda in it:
// 15,000 psi and 3 gallons a minute.
//
// Source: USAF TO 1-1-8 para 2.12.2 (B-35, read).
const mostWaterKPa, mostWaterLH = 103421.4, 681.4

// work takes the old paint off with a stripper that is spread, or with water.
func (p *Strip) work(r *run, s *StepEstimate, at string) {
	r.oneOf(p.Means, at, "means", Means())
	r.rateBasis(&p.StepBase, at)
	if p.Means == "water" {
		p.water(r, s, at)
		return
	}
	p.chemicalFaults(r, at)
	spread := p.Liquid
	if p.WetFilmMM != nil {
		spread.CoverageLM2 = p.WetFilmMM // a film of 1 mm is 1 L/m²
	}
	sel, liquid, ok := r.laid(&p.StepBase, &p.Masked, &spread, s, "stripper", true, at)
	if !ok {
		return
	}
	if p.WetFilmMM != nil {
		s.relink("litres", quantity.Setting(p.ID, "coverage_l_m2"), quantity.Setting(p.ID, "wet_film_mm"))
	}
	check := skinCheck{r: r, s: s, at: at, approvedBy: p.ApprovedBy, work: liquid.ID}
	for _, comp := range r.componentsOf(sel) {
		for _, l := range r.catalogue.Limits(liquid.ID) {
			if l.Substrate == comp.Substrate {
				check.hold(comp, l)
			}
		}
	}
	p.warnOfChemistry(s)
	removed, filmUM := r.remove(&p.StepBase, s, sel)
	density := r.liquidDensity(&p.StepBase, liquid)
	s.waste(s.Litres*density+removed, "V·d + removed", map[string]float64{"V": s.Litres, "d": density, "removed": removed}, append(s.removed(), s.spread(), liquidWeighs(liquid))...)
	r.assumed.add(p.ID, "rinsing water in the waste of stripping; only the stripper and the paint are counted", 0, "kg", "assumption: catch and dispose of rinsing water as local rules say")
	s.Removal = &Removal{Means: "chemical", Product: liquid.ID, DustReason: noDustFactor}
	if p.DwellMin != nil {
		s.Removal.DwellH = new(*p.DwellMin / 60 * float64(p.Coats))
	}
	r.removalHours(&p.StepBase, s, "strip", "strip_burdened", filmUM, sel, p.Coats)
	s.drum(sludgeKgL)
}

func (p *Strip) chemicalFaults(r *run, at string) {
	if p.WetFilmMM != nil && p.CoverageLM2 != nil {
		r.faults.Add(at+"/wet_film_mm", "inconsistent", "wet_film_mm and coverage_l_m2 both say how much stripper goes on a square metre (1 mm is 1 L/m²); give one of them")
	}
	if p.WaterLH != nil || p.WaterKPa != nil {
		r.faults.Add(at+"/means", "inconsistent", "water_l_h and water_pressure_kpa are of stripping with water; set means to water, or leave them out")
	}
}

// warnOfChemistry tells what is outside the way a brushed stripper is used.
func (p *Strip) warnOfChemistry(s *StepEstimate) {
	add := func(when bool, format string, args ...any) {
		if when {
			s.Warnings = append(s.Warnings, fmt.Sprintf(format, args...))
		}
	}
	film := valueOr(p.WetFilmMM, valueOr(p.CoverageLM2, 0))
	add(film > 0 && (film < leastWetMM*0.99 || film > mostWetMM*1.01),
		"a coat of %.3g mm is outside the 0.8 to 1.6 mm (1/32 to 1/16 in) that strippers are brushed on in: thinner dries out, thicker runs (Navy structural mechanic text)", film)
	if p.DwellMin != nil {
		add(*p.DwellMin < leastDwellMin || *p.DwellMin > mostDwellMin,
			"%.3g min is outside the usual 10 to 40 min: keep it wet, lay on a fresh coat where it dries, go by the product's own sheet (Navy structural mechanic text)", *p.DwellMin)
	}
	if p.AirC == nil {
		return
	}
	t := *p.AirC
	add(t < coldestC || t > hottestC, "%.3g °C is outside the 10 to 38 °C (50 to 100 °F) that strippers work in (TM 55-1500-345-23)", t)
	add(t >= coldestC && t < slowC, "below 16 °C (60 °F) strippers work noticeably slower: count on longer and more coats (TM 55-1500-345-23)")
}

// relink points the terms of a working that came from one node at another.
func (s *StepEstimate) relink(name string, from, to quantity.Node) {
	for i := range s.Working {
		if s.Working[i].Quantity != name {
			continue
		}
		for k := range s.Working[i].Links {
			if s.Working[i].Links[k].Node == from {
				s.Working[i].Links[k].Node = to
			}
		}
	}
}
