package estimate

import (
	"fmt"

	"filmbuild/estimate/blast"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// work blasts a selection to bare metal.
func (p *Blast) work(r *run, s *StepEstimate, at string) {
	media, found := product[*products.Media](r.checker, p.Media, at, "media", "medium")
	r.oneOf(p.Feed, at, "feed", []string{string(blast.Pressure), string(blast.Suction)})
	sel, ok := r.surface(&p.StepBase, s, at)
	if !found || !ok {
		return
	}
	removed, filmUM := r.remove(&p.StepBase, s, sel)
	b := r.blasting(p, media, sel)
	if removed > 0 {
		density := removed / (sel.areaM2 * filmUM / 1000)
		b.RemovedFilmUm, b.RemovedFilmDensityKgL = filmUM, &density
	}
	b.Check(r.faults.At(at))
	if b.StripRateM2H == nil {
		r.faults.Addf(at+"/strip_rate_m2_h", "required", "strip_rate_m2_h is missing, and %s has none: give it, rate_m2_h of the whole crew, or a test patch with minutes", media.ID)
	}
	if r.faults.HasBelow(at) {
		return
	}
	result, err := b.Calculate()
	if err != nil {
		r.faults.Add(at, "out_of_range", err.Error())
		return
	}
	s.Warnings = append(s.Warnings, result.Warnings...)
	s.unusualRate(media, *b.StripRateM2H)
	for _, w := range result.Working {
		if w.Quantity != "hours" && w.Quantity != "removed_film_kg" && (w.Quantity != "uses" || p.Recovered) { // both have a line of their own
			s.Working = append(s.Working, w)
		}
	}
	s.Kilograms, s.WasteKg = *result.MediaBoughtKg, *result.MediaUsedKg+removed
	r.use(s, media, s.Kilograms)
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	r.blastHours(p, s, sel, b)
	r.skinLimits(p, s, media, sel)
}

// blasting assembles the calculation; what the step leaves out comes from a
// test patch or the book, and is listed among the assumptions.
func (r *run) blasting(p *Blast, media *products.Media, sel selection) *blast.Blasting {
	b := blast.NewBlasting()
	b.AreaM2, b.NozzleBoreMm, b.Nozzles, b.PressureKPa = &sel.areaM2, p.NozzleBoreMM, p.Nozzles, p.PressureKPa
	b.Feed, b.DischargeCoefficient, b.AmbientPressureKPa = blast.Feed(p.Feed), p.DischargeCoef, p.AmbientKPa
	b.Recovered, b.WorkingChargeKg, b.CollectedDebrisKg = p.Recovered, p.WorkingChargeKg, p.CollectedKg
	b.BulkDensityKgM3, b.MediaFlowKgH, b.StripRateM2H, b.BreakdownPercent = &media.BulkDensityKgM3, p.MediaFlowKgH, p.StripRateM2H, p.BreakdownPercent
	nozzles := float64(p.Nozzles)
	t := r.tested(p.ID)
	if t.hours > 0 {
		rate := t.timedM2 / t.hours / nozzles
		b.StripRateM2H = &rate
		r.assumed.add(p.ID, "area one nozzle strips in an hour", rate, "m²/h", "test patch")
	}
	if b.StripRateM2H == nil {
		rate := p.RateM2H // the crew's own rate is the best there is
		if rate == nil {
			rate = media.StripRateM2H
		}
		if rate != nil {
			each := *rate
			if p.RateM2H != nil {
				each /= nozzles
			}
			b.StripRateM2H = &each
		}
		if p.RateM2H == nil && rate != nil {
			r.assumed.add(p.ID, "area one nozzle strips in an hour with "+media.ID, *rate, "m²/h", r.sourceOf(media, "strip_rate_m2_h"))
		}
	}
	if t.thrownM2 > 0 && b.StripRateM2H != nil {
		flow := t.mediaKg / t.thrownM2 * *b.StripRateM2H // so that each m² takes what the patches took
		b.MediaFlowKgH = &flow
		r.assumed.add(p.ID, "media one nozzle throws", flow, "kg/h", "test patch")
	}
	if b.BreakdownPercent == nil {
		b.BreakdownPercent = &media.BreakdownPercent
		if p.Recovered {
			r.assumed.add(p.ID, "share of "+media.ID+" lost in one pass", media.BreakdownPercent, "%", r.sourceOf(media, "breakdown_percent"))
		}
	}
	switch {
	case !p.Recovered && *b.BreakdownPercent < 100:
		r.assumed.add(p.ID, "times "+media.ID+" is thrown: once, because recovered is not set", 1, "", "the job; collected and cleaned it could be thrown again")
	case p.Recovered && p.WorkingChargeKg > 0:
		r.assumed.add(p.ID, "media that fill the machine: not in the waste, though they are when the work is done", p.WorkingChargeKg, "kg", "the job")
	case p.Recovered:
		r.assumed.add(p.ID, "media that fill the machine, where working_charge_kg is not given", 0, "kg", "assumption: add the fill of your machine, or give working_charge_kg")
	}
	return b
}

// blastHours notes the hours: time at the nozzle, or at the crew's own rate
// where rate_m2_h is given.
func (r *run) blastHours(p *Blast, s *StepEstimate, sel selection, b *blast.Blasting) {
	if p.RateM2H != nil && r.tested(p.ID).hours == 0 {
		s.crewHours(&p.StepBase, sel.areaM2 / *p.RateM2H, "A/rate", map[string]float64{"A": sel.areaM2, "rate": *p.RateM2H}, "the job")
		return
	}
	rate := *b.StripRateM2H
	s.crewHours(&p.StepBase, sel.areaM2/(rate*float64(p.Nozzles)), "A/(rate·nozzles)",
		map[string]float64{"A": sel.areaM2, "rate": rate, "nozzles": float64(p.Nozzles)}, "identity")
	r.assumed.add(p.ID, "time not at the nozzle (moving, checking, sweeping) beyond setup_h in the hours of blasting", 0, "h", "assumption: give rate_m2_h for the whole crew's day")
}

// thinSkinMM is the thickness below which blasting an aircraft's skin needs
// engineering approval.
//
// Source: FAA AC 43.13-1B ch. 6 p. 6-28, 0.0625 in (read).
const thinSkinMM = 1.5875

// skinLimits warns where the pressure or the thickness is outside what is
// published for the substrate.
func (r *run) skinLimits(p *Blast, s *StepEstimate, media *products.Media, sel selection) {
	warned := map[int]bool{}
	for _, patch := range sel.patches {
		if warned[patch.surface] {
			continue
		}
		warned[patch.surface] = true
		comp := r.surfaces[patch.surface].component
		light := comp.Substrate == "aluminium" || comp.Substrate == "clad_aluminium" || comp.Substrate == "magnesium"
		if light && comp.SkinMM != nil && *comp.SkinMM < thinSkinMM {
			s.Warnings = append(s.Warnings, fmt.Sprintf("%s: skin of %.4g mm is below 1.588 mm (0.0625 in): engineering approval is required before blasting (FAA AC 43.13-1B p. 6-28)", comp.ID, *comp.SkinMM))
		}
		for _, l := range r.catalogue.Limits(media.ID) {
			if l.Quantity == "pressure_kpa" && (l.Substrate == "" || l.Substrate == comp.Substrate) && outside(p.PressureKPa, l) {
				s.Warnings = append(s.Warnings, fmt.Sprintf("%s: %.4g kPa is outside %s for %s on %s; %s", comp.ID, p.PressureKPa, limitText(l), media.ID, named(comp.Substrate), l.Text()))
			}
		}
	}
}

func outside(value float64, l products.Limit) bool {
	return (l.Low != nil && value < *l.Low*(1-1e-9)) || (l.High != nil && value > *l.High*(1+1e-9))
}

func limitText(l products.Limit) string {
	return quantity.Limits{Low: valueOr(l.Low, 0), High: valueOr(l.High, 1e9)}.Text(l.Unit)
}

func named(substrate string) string {
	if substrate == "" {
		return "this substrate"
	}
	return substrate
}
