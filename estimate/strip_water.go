package estimate

import (
	"fmt"

	"filmbuild/estimate/blast"
	"filmbuild/surfaces/quantity"
)

// water takes the old paint off with water under pressure.
//
//	water = flow · area / rate at work
func (p *Strip) water(r *run, s *StepEstimate, at string) {
	p.waterFaults(r, at)
	sel, ok := r.surface(&p.StepBase, s, at)
	if !ok {
		return
	}
	for _, comp := range r.componentsOf(sel) {
		if lightAlloy(comp.Substrate) && (valueOr(p.WaterKPa, 0) > mostWaterKPa*(1+1e-3) || *p.WaterLH > mostWaterLH*(1+1e-3)) {
			s.Warnings = append(s.Warnings, comp.ID+": more than 103 MPa (15,000 psi) or 681 L/h (3 gallons a minute), the most for the outside of an aircraft (USAF TO 1-1-8 para 2.12.2)")
		}
	}
	removed, filmUM := r.remove(&p.StepBase, s, sel)
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	s.Removal = &Removal{Means: "water", DustReason: noDustFactor}
	r.removalHours(&p.StepBase, s, "water_jet", "water_jet_burdened", filmUM, sel, 1)
	rate := s.Removal.RateM2H
	available := 1.0
	if s.Removal.RateBasis == string(blast.Burdened) {
		available = valueOr(r.job.Labour.AvailabilityPercent, 100) / 100
	}
	litres := *p.WaterLH * sel.areaM2 / rate * available
	s.Removal.WaterL = &litres
	s.Working = append(s.Working, quantity.Working{Quantity: "water_l", Value: litres, Unit: "L", Formula: "flow·A/rate·available", Source: "identity",
		Terms: map[string]float64{"flow": *p.WaterLH, "A": sel.areaM2, "rate": rate, "available": available},
		Links: []quantity.Link{quantity.From("flow", quantity.Setting(p.ID, "water_l_h")), quantity.From("A", quantity.StepWorking(p.ID, "area_m2", ""))}})
	s.waste(litres*waterDensity+removed, "V·d + removed", map[string]float64{"V": litres, "d": waterDensity, "removed": removed},
		append(s.removed(), quantity.From("V", quantity.StepWorking(p.ID, "water_l", "")))...)
	s.drum(waterDensity)
	s.Warnings = append(s.Warnings, fmt.Sprintf("all %.3g m³ of water hold old paint: catch it, and have it tested before it goes anywhere", litres/1000))
}

func (p *Strip) waterFaults(r *run, at string) {
	for _, f := range []struct {
		name  string
		given bool
	}{{"product", p.Product != ""}, {"coverage_l_m2", p.CoverageLM2 != nil}, {"wet_film_mm", p.WetFilmMM != nil}, {"dwell_min", p.DwellMin != nil}} {
		if f.given {
			r.faults.Addf(at+"/"+f.name, "not_applicable", "%s is of a stripper, and means is water; leave it out", f.name)
		}
	}
	if p.WaterLH == nil {
		r.faults.Add(at+"/water_l_h", "required", "water_l_h is missing; give the water of one lance in an hour, such as \"3 gal/min\"")
	}
}
