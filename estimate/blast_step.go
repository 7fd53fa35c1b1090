package estimate

import (
	"filmbuild/estimate/blast"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// work blasts a selection to bare metal.
func (p *Blast) work(r *run, s *StepEstimate, at string) {
	media, found := product[*products.Media](r.checker, p.Media, at, "media", "medium")
	r.oneOf(p.Feed, at, "feed", []string{string(blast.Pressure), string(blast.Suction)})
	r.rateBasis(&p.StepBase, at)
	sel, ok := r.surface(&p.StepBase, s, at)
	if !found || !ok {
		return
	}
	r.skinLimits(p, s, media, sel, at)
	removed, filmUM := r.remove(&p.StepBase, s, sel)
	pace, known := r.stripping(p, s, media, filmUM, at)
	if !known {
		return
	}
	b := r.blasting(p, s, media, sel, pace)
	if removed > 0 {
		density := removed / (sel.areaM2 * filmUM / 1000)
		b.RemovedFilmUm, b.RemovedFilmDensityKgL = filmUM, &density
	}
	b.Check(r.faults.At(at))
	if r.faults.HasBelow(at) {
		return
	}
	result, err := b.Calculate()
	if err != nil {
		r.faults.Add(at, "out_of_range", err.Error())
		return
	}
	s.Warnings = append(s.Warnings, result.Warnings...)
	s.Kilograms, s.WasteKg = *result.MediaBoughtKg, *result.WasteKg
	r.explainBlasting(p, s, b, result, media, pace)
	r.use(s, media, s.Kilograms)
	r.mask(&p.Masked, &p.StepBase, s, sel, true, at)
	r.demandMasking(p, s, sel)
	r.blastHours(p, s, sel, pace)
	s.Removal = &Removal{Means: "blast", Product: media.ID, RateM2H: pace.rateM2H * float64(p.Nozzles), RateBasis: pace.basis, RateSource: pace.source,
		AirM3Min: &result.AirM3Min, CompressorM3Min: &result.CompressorM3Min, CompressorPowerKW: &result.CompressorPowerKW, HoseBoreMM: result.HoseBoreLeastMm,
		MediaThrownKg: result.MediaThrownKg, WasteDrums: result.Drums, DrumKg: result.DrumKg, FilmInWastePercent: result.FilmInWastePercent,
		ConcentrationRatio: result.ConcentrationRatio, DustKg: result.DustKg, DustReason: result.DustReason}
}

// blasting assembles the calculation; what the step leaves out comes from a
// test patch or the book, and is listed among the assumptions.
func (r *run) blasting(p *Blast, s *StepEstimate, media *products.Media, sel selection, pace pace) *blast.Blasting {
	b := blast.NewBlasting()
	b.AreaM2, b.NozzleBoreMm, b.Nozzles, b.PressureKPa = &sel.areaM2, p.NozzleBoreMM, p.Nozzles, p.PressureKPa
	b.Feed, b.DischargeCoefficient, b.AmbientPressureKPa, b.AltitudeM = blast.Feed(p.Feed), p.DischargeCoef, p.AmbientKPa, p.AltitudeM
	b.Recovered, b.WorkingChargeKg, b.ChargeDiscarded, b.BatchPasses, b.BatchKg, b.CollectedDebrisKg = p.Recovered, p.WorkingChargeKg, p.ChargeDiscarded, p.BatchPasses, p.BatchKg, p.CollectedKg
	b.BulkDensityKgM3, b.MediaFlowKgH, b.StripRateM2H = &media.BulkDensityKgM3, p.MediaFlowKgH, new(pace.atWorkM2H)
	b.DustAs, b.WindMS, b.DustControlPercent, b.Substrate = blast.DustClass(media.DustAs), p.WindMS, p.DustControlPercent, r.oneSubstrate(sel)
	b.HoseLengthM, b.HoseBoreMm, b.OtherAirM3Min, b.CompressorSupplyM3Min = p.HoseLengthM, p.HoseBoreMM, p.OtherAirM3Min, p.CompressorSupplyM3Min
	if t := r.tested(p.ID); t.thrownM2 > 0 {
		b.MediaFlowKgH = new(r.testedFlow(p, s, t, pace))
	}
	broken, carried := r.breakdown(p, s, media, sel)
	b.BreakdownPercent, b.CarryOutPercent = &broken, &carried
	r.mediaAssumptions(p, media, broken+carried)
	return b
}

// mediaAssumptions lists what is taken for granted of the life of the media.
func (r *run) mediaAssumptions(p *Blast, media *products.Media, lossPercent float64) {
	switch {
	case !p.Recovered && lossPercent < 100:
		r.assumed.add(p.ID, "times "+media.ID+" is thrown: once, because recovered is not set", 1, "", "the job; collected and cleaned it could be thrown again")
	case !p.Recovered || p.BatchPasses != nil:
	case p.WorkingChargeKg > 0 && !p.ChargeDiscarded:
		r.assumed.add(p.ID, "media that fill the machine: not in the waste, though they are when the work is done and they are thrown away (charge_discarded)", p.WorkingChargeKg, "kg", "the job")
	case p.WorkingChargeKg == 0:
		r.assumed.add(p.ID, "media that fill the machine, where working_charge_kg is not given", 0, "kg", "assumption: add the fill of your machine, or give working_charge_kg")
	}
	if p.OtherAirM3Min == 0 {
		r.assumed.add(p.ID, "air of helmets and tools in the size of the compressor, where other_air_m3_min is not given", 0, "m³/min", "assumption; a supplied-air helmet takes 0.2 to 0.4 m³/min (from memory)")
	}
}

// blastHours notes the hours: at the nozzle, or over the shift where the rate is
// burdened.
func (r *run) blastHours(p *Blast, s *StepEstimate, sel selection, pace pace) {
	area := quantity.From("A", quantity.StepWorking(p.ID, "area_m2", ""))
	if pace.crewRate {
		s.crewHours(&p.StepBase, sel.areaM2 / *p.RateM2H, "A/rate", map[string]float64{"A": sel.areaM2, "rate": *p.RateM2H}, "the job",
			area, quantity.From("rate", quantity.Setting(p.ID, "rate_m2_h")))
		return
	}
	nozzles := float64(p.Nozzles)
	link := pace.link
	link.Term = "rate"
	s.crewHours(&p.StepBase, sel.areaM2/(pace.rateM2H*nozzles), "A/(rate·nozzles)",
		map[string]float64{"A": sel.areaM2, "rate": pace.rateM2H, "nozzles": nozzles}, "identity",
		area, link, quantity.From("nozzles", quantity.Setting(p.ID, "nozzles")))
	if pace.basis == string(blast.NozzleOn) {
		r.assumed.add(p.ID, "time not at the nozzle (moving, checking, sweeping) beyond setup_h in the hours of blasting", 0, "h",
			"assumption: give availability_percent and sessions of labour, or a burdened rate; published burdened rates are a small part of those with the nozzle on (reference planning L04)")
	}
}
