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
	from := r.blastSymbols(p, b, media)
	for _, w := range result.Working {
		from.link(&w)
		if w.Quantity != "hours" && w.Quantity != "removed_film_kg" && (w.Quantity != "uses" || p.Recovered) { // both have a line of their own
			s.Working = append(s.Working, w)
		}
	}
	s.Kilograms, s.WasteKg = *result.MediaBoughtKg, *result.MediaUsedKg+removed
	terms, links := map[string]float64{"thrown": *result.MediaThrownKg, "charge": p.WorkingChargeKg}, []quantity.Link{
		quantity.From("thrown", quantity.StepWorking(p.ID, "media_thrown_kg", "")), quantity.From("charge", quantity.Setting(p.ID, "working_charge_kg"))}
	bought := "thrown + charge"
	if p.Recovered {
		bought, terms["b"] = "thrown·b + charge", *b.BreakdownPercent/100
		links = append(links, r.breakdownLink(p, media))
	}
	s.Working = append(s.Working, quantity.Working{Quantity: "kilograms", Value: s.Kilograms, Unit: "kg", Formula: bought, Terms: terms, Links: links, Uses: media.ID, Source: "identity"})
	r.use(s, media, s.Kilograms)
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	r.blastHours(p, s, sel, b, media)
	r.skinLimits(p, s, media, sel)
}

func (r *run) breakdownLink(p *Blast, media *products.Media) quantity.Link {
	if p.BreakdownPercent != nil {
		return quantity.Scaled("b", quantity.Setting(p.ID, "breakdown_percent"), 0.01)
	}
	return quantity.Scaled("b", valueOf("product", media.ID, "breakdown_percent"), 0.01)
}

// blastSymbols says where the terms of a blasting's workings come from.
func (r *run) blastSymbols(p *Blast, b *blast.Blasting, media *products.Media) symbols {
	list := symbols{
		quantity.From("A", quantity.StepWorking(p.ID, "area_m2", "")),
		r.strippingRate("X", p, media),
		quantity.From("thrown", quantity.StepWorking(p.ID, "media_thrown_kg", "")),
		quantity.From("N", quantity.Setting(p.ID, "nozzles")),
		quantity.Scaled("d", quantity.Setting(p.ID, "nozzle_bore_mm"), 0.001),
		quantity.From("D", quantity.Setting(p.ID, "nozzle_bore_mm")),
		r.breakdownLink(p, media),
	}
	used := "media_thrown_kg"
	if p.Recovered {
		used = "media_used_kg"
	}
	list = append(list, quantity.From("used", quantity.StepWorking(p.ID, used, "")))
	switch t := r.tested(p.ID); {
	case t.thrownM2 > 0:
		list = append(list, quantity.From("M", patched(p.ID, "media_flow_kg_h")))
	case p.MediaFlowKgH != nil:
		list = append(list, quantity.From("M", quantity.Setting(p.ID, "media_flow_kg_h")))
	case b.MediaFlowKgH == nil:
		list = append(list, quantity.From("M", quantity.StepWorking(p.ID, "media_flow_per_nozzle_kg_h", "")))
	}
	return list
}

// strippingRate links the term of the area that one nozzle strips in an hour.
func (r *run) strippingRate(term string, p *Blast, media *products.Media) quantity.Link {
	switch {
	case r.tested(p.ID).hours > 0:
		return quantity.From(term, patched(p.ID, "strip_rate_m2_h"))
	case p.StripRateM2H != nil:
		return quantity.From(term, quantity.Setting(p.ID, "strip_rate_m2_h"))
	case p.RateM2H != nil:
		return quantity.Scaled(term, quantity.Setting(p.ID, "rate_m2_h"), 1/float64(p.Nozzles))
	}
	return quantity.From(term, valueOf("product", media.ID, "strip_rate_m2_h"))
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
func (r *run) blastHours(p *Blast, s *StepEstimate, sel selection, b *blast.Blasting, media *products.Media) {
	if p.RateM2H != nil && r.tested(p.ID).hours == 0 {
		s.crewHours(&p.StepBase, sel.areaM2 / *p.RateM2H, "A/rate", map[string]float64{"A": sel.areaM2, "rate": *p.RateM2H}, "the job",
			quantity.From("A", quantity.StepWorking(p.ID, "area_m2", "")), quantity.From("rate", quantity.Setting(p.ID, "rate_m2_h")))
		return
	}
	rate := *b.StripRateM2H
	s.crewHours(&p.StepBase, sel.areaM2/(rate*float64(p.Nozzles)), "A/(rate·nozzles)",
		map[string]float64{"A": sel.areaM2, "rate": rate, "nozzles": float64(p.Nozzles)}, "identity",
		quantity.From("A", quantity.StepWorking(p.ID, "area_m2", "")), r.strippingRate("rate", p, media), quantity.From("nozzles", quantity.Setting(p.ID, "nozzles")))
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
