package blast

import (
	"fmt"
	"slices"

	"filmbuild/surfaces/quantity"
)

// Check reports every fault of the input: fields outside their limits, fields
// that contradict each other, and fields that are needed for the figures that
// the others ask for. Media that are named must have been looked up before.
func (b *Blasting) Check(report func(pointer, code, detail string)) {
	if b.Recovered && b.BreakdownPercent != nil && *b.BreakdownPercent == 0 {
		report("/breakdown_percent", "out_of_range", "breakdown_percent is 0, and no medium lasts for ever: the best, stainless shot, loses 0.5 % in a pass; weigh what you top up, or leave it out for the medium's own")
	}
	quantity.Check(b, report)
	b.checkWords(report)
	b.checkLife(report)
	b.checkHose(report)
	if b.AltitudeM != nil && b.AmbientPressureKPa != SeaLevelKPa {
		report("/altitude_m", "inconsistent", "altitude_m and ambient_pressure_kpa both say what the air around is; give one of them")
	}
	if b.Feed != "" && b.Feed != Pressure && b.Feed != Suction {
		return
	}
	if b.AreaM2 == nil || b.StripRateM2H == nil {
		b.checkCollected(report)
		return
	}
	switch {
	case b.MediaFlowKgH != nil:
	case b.Feed == Suction:
		report("/media_flow_kg_h", "required", "the flow of media of a suction feed follows no law known here; measure media_flow_kg_h over a few minutes and give it")
	case b.BulkDensityKgM3 == nil:
		report("/bulk_density_kg_m3", "required", "the flow of media follows from bulk_density_kg_m3; give it, the media, or a measured media_flow_kg_h")
	}
	if b.Recovered && b.BreakdownPercent == nil {
		report("/breakdown_percent", "required", "what recovered media use up follows from breakdown_percent; give it or the media")
	}
}

func (b *Blasting) checkWords(report func(pointer, code, detail string)) {
	if b.Feed != "" && b.Feed != Pressure && b.Feed != Suction {
		report("/feed", "unknown_kind", fmt.Sprintf("feed %q is not one of pressure, suction", string(b.Feed)))
	}
	if b.RateBasis != "" && b.RateBasis != NozzleOn && b.RateBasis != Burdened {
		report("/rate_basis", "unknown_kind", fmt.Sprintf("rate_basis %q is not one of nozzle_on, burdened", string(b.RateBasis)))
	}
	if b.DustAs != "" && !slices.Contains(DustClasses(), b.DustAs) {
		report("/dust_as", "unknown_kind", fmt.Sprintf("dust_as %q is not one of sand, grit, shot; leave it out for other media, whose dust no factor is published for", string(b.DustAs)))
	}
}

// checkLife reports what cannot be said of one lot of media at once: it is
// thrown once, topped up, or thrown as a batch until it is spent.
func (b *Blasting) checkLife(report func(pointer, code, detail string)) {
	if out := b.carriedOut(); b.BreakdownPercent != nil && *b.BreakdownPercent <= 100 && *b.BreakdownPercent+out > 100 && out <= 99 {
		report("/carry_out_percent", "inconsistent", fmt.Sprintf("breakdown_percent of %g and carry_out_percent of %g lose more than is thrown; together they are at most 100", *b.BreakdownPercent, out))
	}
	if b.BatchPasses == nil {
		if b.BatchKg != nil {
			report("/batch_passes", "required", "batch_kg is the size of a batch that is thrown until it is spent; say with batch_passes how often, or give working_charge_kg for media that are topped up")
		}
		return
	}
	if b.WorkingChargeKg > 0 {
		report("/working_charge_kg", "inconsistent", "batch_passes throws a batch until it is spent, and working_charge_kg is topped up all the time: these are two models with two answers; give one of them")
	}
	if !b.Recovered {
		report("/recovered", "inconsistent", "batch_passes throws media again, so they have to be gathered: set recovered")
	}
}

// checkHose reports a hose that takes too much pressure or is out of range.
func (b *Blasting) checkHose(report func(pointer, code, detail string)) {
	if b.HoseLengthM == nil {
		if b.HoseBoreMm != nil {
			report("/hose_length_m", "required", "the pressure that a hose takes follows from its length too; give hose_length_m")
		}
		return
	}
	sound := true
	quantity.Check(b, func(_, _, _ string) { sound = false })
	if !sound || (b.AltitudeM == nil && !ambientLimits.Contain(b.AmbientPressureKPa)) {
		return
	}
	var r Result
	if err := b.air(&r); err == nil {
		if err := b.hose(&r); err != nil {
			report("/hose_bore_mm", "out_of_range", err.Error()+": take a wider or a shorter hose")
		}
	}
}

func (b *Blasting) checkCollected(report func(pointer, code, detail string)) {
	if b.CollectedDebrisKg == nil {
		return
	}
	const why = "recovery_percent compares collected_debris_kg with the waste, which follows from area_m2 and strip_rate_m2_h; give both"
	if b.AreaM2 == nil {
		report("/area_m2", "required", why)
	}
	if b.StripRateM2H == nil {
		report("/strip_rate_m2_h", "required", why)
	}
}
