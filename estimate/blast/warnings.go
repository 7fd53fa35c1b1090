package blast

import "fmt"

const (
	// LeastStripKPa is the lowest gauge pressure published for blasting anything:
	// 10 psi, for magnesium. Source: FAA AC 43.13-1B p. 6-32 (B-44).
	LeastStripKPa = 10 * kilopascalsPerPSI

	// mostSuctionKPa and mostSuctionBore bound what suction guns are made for.
	// Source: common practice, 100 psi and an air jet of 5/16 in, sold as 8 mm.
	mostSuctionKPa, mostSuctionBore = 100 * kilopascalsPerPSI, 8.0

	// The flow of media per nozzle beyond which organic coatings on steel come off
	// more slowly: 17 kg/min of mineral and 25 of metallic media (A-29, read).
	mostMineralKgH, mostMetallicKgH = 17 * 60.0, 25 * 60.0
	metallicBulk                    = 3000 // kg/m³; garnet 2323, steel grit 3684 (B-38)
)

func (b Blasting) warnings(r Result) []string {
	var said []string
	add := func(when bool, format string, args ...any) {
		if when {
			said = append(said, fmt.Sprintf(format, args...))
		}
	}
	b.warnOfFlow(r, add)
	b.warnOfAir(r, add)
	add(b.RemovedFilmUm > 0 && b.AreaM2 != nil && b.RemovedFilmDensityKgL == nil,
		"removed_film_density_kg_l is not given, so the waste is without the coating that comes off")
	add(b.RemovedFilmUm > 0 && b.AreaM2 == nil, "removed_film_um is given without area_m2, so no removed film is weighed")
	add(b.Recovered && b.BatchPasses == nil && r.MediaBoughtKg != nil && b.WorkingChargeKg == 0,
		"working_charge_kg is 0: the media that fill the machine are not among those bought")
	for _, l := range r.Leachate {
		add(l.MayBeHazardous && !l.MayBeHazardousOnce,
			"recycling the media gathers the %s of the paint: its leachate may reach %.3g mg/L, over the limit of %g, where media thrown once stay below; have the waste tested before it goes anywhere", l.Metal, l.LeachateMostGM3, l.LimitGM3)
		add(l.MayBeHazardous && l.MayBeHazardousOnce, "the leachate of the waste may reach %.3g mg/L of %s, over the limit of %g: have it tested before it goes anywhere", l.LeachateMostGM3, l.Metal, l.LimitGM3)
	}
	add((b.FilmLeadPercent != nil || b.FilmChromiumPercent != nil || b.FilmCadmiumPercent != nil) && r.FilmInWastePercent == nil,
		"metals of the paint are given, and how much paint is in the waste is not known: give area_m2, strip_rate_m2_h, removed_film_um and removed_film_density_kg_l")
	add(b.AreaM2 != nil && b.StripRateM2H == nil, "strip_rate_m2_h is not given, so hours and media of the area are left out")
	add(b.book != nil, "the strip rate is the catalogue's, carried to this nozzle, pressure and film: measure a test patch before you rely on it")
	add(b.RateBasis == Burdened && b.AvailabilityPercent == 100,
		"the strip rate is over the shift and availability_percent is 100: media are counted as if the nozzle never stopped, which is too much; give the share of the shift that it is at work")
	add(r.RecoveryPercent != nil && *r.RecoveryPercent > 100,
		"more was collected than the figures say can be: weigh again, or mend the strip rate, the flow or the film")
	return said
}

func (b Blasting) warnOfFlow(r Result, add func(bool, string, ...any)) {
	add(r.MediaFlowAccuracyPercent != nil && (b.PressureKPa < chartLeastKPa || b.PressureKPa > chartMostKPa ||
		b.NozzleBoreMm < chartLeastBore || b.NozzleBoreMm > chartMostBore),
		"the law for the flow of media was fitted at 345 to 862 kPa and nozzles of 3.2 to 12.7 mm; here it is extrapolated, so measure the flow")
	add(r.MediaFlowKgH == nil, "the flow of media is unknown: give media_flow_kg_h, or bulk_density_kg_m3 for a pressure feed")
	most, kind := mostMineralKgH, "mineral"
	if b.BulkDensityKgM3 != nil && *b.BulkDensityKgM3 >= metallicBulk {
		most, kind = mostMetallicKgH, "metallic"
	}
	add(r.MediaFlowPerNozzleKgH != nil && *r.MediaFlowPerNozzleKgH > most,
		"one nozzle throws more than %.0f kg/h of %s media: beyond that, published trials on painted steel strip less area and not more; close the metering valve", most, kind)
	add(b.PressureKPa < LeastStripKPa, "%.4g kPa is below 69 kPa (10 psi), the lowest pressure published for blasting anything: little paint will come off", b.PressureKPa)
	add(b.Feed == Suction && b.PressureKPa > mostSuctionKPa,
		"%.4g kPa is above the 690 kPa (100 psi) that suction guns are made for: more air draws no more media; take a pressure feed", b.PressureKPa)
	add(b.Feed == Suction && b.NozzleBoreMm > mostSuctionBore,
		"an air jet of %.4g mm is above the 8 mm (5/16 in) of common suction guns: take a pressure feed", b.NozzleBoreMm)
}

func (b Blasting) warnOfAir(r Result, add func(bool, string, ...any)) {
	add(r.WornAirM3Min+b.OtherAirM3Min > r.CompressorM3Min,
		"a nozzle worn by 1.6 mm takes %.3g m³/min of air, and the compressor with its reserve gives %.3g: change nozzles early", r.WornAirM3Min, r.CompressorM3Min)
	if b.CompressorSupplyM3Min != nil {
		supply := *b.CompressorSupplyM3Min
		add(supply < r.AirM3Min+b.OtherAirM3Min,
			"a compressor of %.4g m³/min cannot hold %.4g kPa at these nozzles, which take %.4g: more media, slower work; with its reserve it feeds a bore of %.3g mm",
			supply, b.PressureKPa, r.AirM3Min+b.OtherAirM3Min, *r.LargestBoreMm)
		add(supply >= r.AirM3Min+b.OtherAirM3Min && supply < r.CompressorM3Min,
			"a compressor of %.4g m³/min runs without the reserve of one half: it feeds new nozzles and not worn ones", supply)
	}
	add(r.HoseBoreLeastMm != nil && b.HoseBoreMm != nil && *b.HoseBoreMm < *r.HoseBoreLeastMm*(1-1e-3),
		"a hose of %.4g mm is narrower than the %.4g mm that suit this nozzle (trade chart, four times its bore)", valueOf(b.HoseBoreMm), valueOf(r.HoseBoreLeastMm))
	add(r.HoseBoreLeastMm == nil, "a nozzle of %.4g mm is larger than any that a hose of 76 mm (3 in) feeds", b.NozzleBoreMm)
}

func valueOf(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}
