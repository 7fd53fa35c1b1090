package estimate

import (
	"filmbuild/estimate/risk"
	"filmbuild/estimate/trial"
	"filmbuild/surfaces/quantity"
)

// tested adds up what the test patches of a step measured. Several patches are
// weighted by their size: amounts are added before they are divided.
type tested struct {
	timedM2, hours     float64 // area and time, of the whole crew or of all nozzles, of the patches that were timed
	thrownM2, mediaKg  float64 // of those whose media was weighed
	brokenKg, sievedKg float64 // of those whose media was sieved: lost, and thrown
	wettedM2, litres   float64 // of those whose liquid was measured
	filmM2UM, filmL    float64 // area times film, and paint, of those whose film was measured
	wornM2, discs      float64 // of those whose discs were counted

	trials    map[string][]trial.Patch // by the quantity that they are of
	wholeCrew bool                     // some patch does not say who did it, and the step has several
}

// tested gathers the test patches of a step.
func (r *run) tested(step string) tested {
	var t tested
	for _, p := range r.patches[step] {
		note := func(name string, weight, amount float64) {
			if t.trials == nil {
				t.trials = map[string][]trial.Patch{}
			}
			t.trials[name] = append(t.trials[name], trial.Patch{AreaM2: p.AreaM2, Weight: weight, Amount: amount})
		}
		if p.Minutes != nil {
			share, said := r.crewShare(step, p)
			hours := *p.Minutes / 60 * share
			t.timedM2 += p.AreaM2
			t.hours += hours
			t.wholeCrew = t.wholeCrew || !said
			note("rate_m2_h", p.AreaM2, hours)
		}
		if p.MediaKg != nil {
			t.thrownM2 += p.AreaM2
			t.mediaKg += *p.MediaKg
			note("media_kg_m2", p.AreaM2, *p.MediaKg)
			if p.UsableMediaKg != nil {
				t.sievedKg += *p.MediaKg
				t.brokenKg += *p.MediaKg - *p.UsableMediaKg
				note("breakdown_percent", *p.MediaKg, *p.MediaKg-*p.UsableMediaKg)
			}
		}
		if p.Litres != nil {
			t.wettedM2 += p.AreaM2
			t.litres += *p.Litres
			note("coverage_l_m2", p.AreaM2, *p.Litres)
			if p.FilmUM != nil {
				t.filmM2UM += p.AreaM2 * *p.FilmUM
				t.filmL += *p.Litres
				note("transfer_efficiency_percent", p.AreaM2**p.FilmUM, *p.Litres)
			}
		}
		if p.Discs != nil {
			t.wornM2 += p.AreaM2
			t.discs += *p.Discs
			note("disc_area_m2", p.AreaM2, *p.Discs)
		}
	}
	return t
}

// crewShare is what part of the step's crew (of its nozzles, in blasting) did a
// patch; said is false where the patch does not say so and it matters.
func (r *run) crewShare(step string, p *TestPatch) (share float64, said bool) {
	of, did := 1, p.Crew
	switch s := r.stepOf[step].(type) {
	case nil:
	case *Blast:
		of, did = s.Nozzles, p.Nozzles
	default:
		of = s.base().Crew
	}
	if did == nil || of < 1 {
		return 1, of <= 1
	}
	return float64(*did) / float64(of), true
}

// efficiencyPercent is the share of the solids used that the measured film
// holds.
//
//	efficiency = area · film / (1000 · litres · volume solids)
//
// Source: identity, the film that lands over the film that the paint could give.
func (t tested) efficiencyPercent(volumeSolidsPercent float64) float64 {
	return 100 * t.filmM2UM / (1000 * t.filmL * volumeSolidsPercent / 100)
}

// breakdownPercent is the share of the abrasive that one pass broke.
func (t tested) breakdownPercent() float64 { return 100 * t.brokenKg / t.sievedKg }

// off is how far a figure of the test patches may be off; ok is false where they
// do not measure it. The rate of one nozzle is that of all, shared out.
func (t tested) off(name string) (trial.Figure, bool) {
	if name == "strip_rate_m2_h" {
		name = "rate_m2_h"
	}
	f, err := trial.Combine(t.trials[name])
	return f, err == nil // amounts and areas are within limits that are above 0
}

// patchSpread is the range of a figure that test patches gave.
func (r *run) patchSpread(n quantity.Node, value float64) (risk.Spread, string, bool) {
	f, ok := r.tested(n.ID).off(n.Quantity)
	if !ok {
		return risk.Spread{}, "", false
	}
	low, high := patchEnds(f, n.Quantity, value)
	return risk.Spread{Low: low, Likely: value, High: high, Distribution: risk.PERT}, f.Text(), true
}

// testedFlow is what one nozzle throws so that each square metre takes what the
// test patches took.
//
//	flow = media of one square metre · rate
func (r *run) testedFlow(p *Blast, s *StepEstimate, t tested, pace pace) float64 {
	each := t.mediaKg / t.thrownM2
	rate := pace.atWork
	rate.Term = "rate"
	s.Working = append(s.Working, quantity.Working{Quantity: "media_flow_tested_kg_h", Value: each * pace.atWorkM2H, Unit: "kg/h", Formula: "k·rate",
		Terms: map[string]float64{"k": each, "rate": pace.atWorkM2H}, Source: "test patch", Links: []quantity.Link{quantity.From("k", patched(p.ID, "media_kg_m2")), rate}})
	return each * pace.atWorkM2H
}

// patchEnds are the ends of the range of a figure; no share is above the whole.
func patchEnds(f trial.Figure, name string, value float64) (low, high float64) {
	low, high = value/(1+f.Off), value*(1+f.Off)
	if quantity.SuffixOf(name) == "percent" {
		high = min(high, 100)
	}
	return low, high
}
