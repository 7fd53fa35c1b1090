package blast

import "filmbuild/surfaces/quantity"

const (
	sourceAir   = "isentropic flow of an ideal gas; discharge 0.81 fitted to a common compressed-air chart within 5 %"
	sourceFlow  = "70 lb/(h in² psia) fitted to a common abrasive chart for media of 100 lb/ft³, −5.5 to +8.3 %"
	sourceUsed  = "OSHA silica eTool, aluminium oxide example: media used = thrown · breakdown"
	sourceUses  = "OSHA silica eTool: 10 % breakdown is ten uses"
	sourceSpare = "trade guidance: 50 % reserve over the sum of users"
	sourcePower = "note of a common compressed-air chart: hp = cfm/4.5"
	sourceBatch = "geometric series: a batch that is never topped up"
	sourceDrum  = "definition; 90 % full; 400 kg from memory, the mark on the drum counts"
	sourceDust  = "EPA AP-42 13.2.6 (Sep 1997) Table 13.2.6-1, mild steel in the open"
	sourceHose  = "trade chart: 11.1 psi for 50 ft of 3/4 in hose at 150 cfm and 100 psi, by the fifth power of the bore"
	identity    = "identity"

	chokedAir    = "N·Cd·π/4·(d/1000)²·(p + pa)·√(γ/(R·T))·(2/(γ + 1))^((γ + 1)/(2·(γ − 1)))·60·R·T/pa"
	subsonicAir  = "N·Cd·π/4·(d/1000)²·(p + pa)·√(2·γ/((γ − 1)·R·T)·((pa/(p + pa))^(2/γ) − (pa/(p + pa))^((γ + 1)/γ)))·60·R·T/pa"
	mediaFlowLaw = "k·d²·(p + pa)·ρ/ρ0"
	hoseLaw      = "loss0·L/L0·(q/q0)²·(D0/D)^5·p0/(p + 101.325)"
)

// working shows how each figure of a result came about. A symbol means the same
// in all of them: d is the bore of the nozzle in mm, p its gauge pressure and pa
// that of the air around in kPa, q the air of one nozzle and Q that of all.
func (b Blasting) working(r Result) []quantity.Working {
	w := make([]quantity.Working, 0, 16)
	add := func(name string, value *float64, unit, formula, source string, terms map[string]float64) {
		if value != nil {
			w = append(w, quantity.Working{Quantity: name, Value: *value, Unit: unit, Formula: formula, Terms: terms, Source: source})
		}
	}
	b.explainAir(r, add)
	b.explainMedia(r, add)
	b.explainWaste(r, add)
	return w
}

type adder func(name string, value *float64, unit, formula, source string, terms map[string]float64)

func (b Blasting) explainAir(r Result, add adder) {
	formula := subsonicAir
	if r.Choked {
		formula = chokedAir
	}
	pa := r.AmbientUsedKPa
	add("air_m3_min", &r.AirM3Min, "m³/min", formula, sourceAir,
		map[string]float64{"N": float64(b.Nozzles), "Cd": r.DischargeUsed, "d": b.NozzleBoreMm, "p": b.PressureKPa,
			"pa": pa, "γ": heatRatio, "R": gasConstant, "T": airKelvin})
	add("compressor_m3_min", &r.CompressorM3Min, "m³/min", "(Q + other)·reserve", sourceSpare,
		map[string]float64{"Q": r.AirM3Min, "other": b.OtherAirM3Min, "reserve": CompressorReserve})
	add("compressor_power_kw", &r.CompressorPowerKW, "kW", "Qc/cubic_foot·hp_per_cfm·kw_per_hp", sourcePower,
		map[string]float64{"Qc": r.CompressorM3Min, "cubic_foot": cubicMetresPerCubicFoot, "hp_per_cfm": horsepowerPerCFM, "kw_per_hp": kilowattsPerHorsepower})
	if r.HoseLossKPa != nil {
		add("hose_loss_kpa", r.HoseLossKPa, "kPa", hoseLaw, sourceHose, map[string]float64{
			"loss0": hoseChartLoss, "L": *b.HoseLengthM, "L0": hoseChartLength, "q": r.AirM3Min / float64(b.Nozzles), "q0": hoseChartAir,
			"D0": hoseChartBore, "D": b.hosed(r), "p0": hoseChartPressure, "p": b.PressureKPa})
	}
}

func (b Blasting) explainMedia(r Result, add adder) {
	if r.MediaFlowAccuracyPercent != nil {
		add("media_flow_per_nozzle_kg_h", r.MediaFlowPerNozzleKgH, "kg/h", mediaFlowLaw, sourceFlow,
			map[string]float64{"k": mediaLaw, "d": b.NozzleBoreMm, "p": b.PressureKPa, "pa": r.AmbientUsedKPa, "ρ": *b.BulkDensityKgM3, "ρ0": mediaLawDensity})
	}
	if r.StripRateUsedM2H == nil {
		return
	}
	rate := *r.StripRateUsedM2H
	if r.Hours != nil {
		add("hours", r.Hours, "h", "A/(X·N)", identity, map[string]float64{"A": *b.AreaM2, "X": rate, "N": float64(b.Nozzles)})
	}
	if r.MediaThrownKg != nil {
		add("media_thrown_kg", r.MediaThrownKg, "kg", "A·M/X", identity, map[string]float64{"A": *b.AreaM2, "M": *r.MediaFlowPerNozzleKgH, "X": rate})
	}
	loss, known := b.loss()
	switch {
	case !known:
	case b.BatchPasses != nil:
		add("uses", r.Uses, "", "(1 − (1 − b)^n)/b", sourceBatch, map[string]float64{"b": loss, "n": float64(*b.BatchPasses)})
	default:
		add("uses", r.Uses, "", "1/b", sourceUses, map[string]float64{"b": loss})
	}
	b.explainUse(r, loss, add)
}

// explainUse shows what is used up and bought.
func (b Blasting) explainUse(r Result, loss float64, add adder) {
	if r.MediaUsedKg == nil {
		return
	}
	thrown, used := *r.MediaThrownKg, *r.MediaUsedKg
	switch {
	case !b.Recovered:
		add("media_used_kg", r.MediaUsedKg, "kg", "thrown", "identity: thrown once", map[string]float64{"thrown": thrown})
	case b.BatchPasses != nil:
		add("media_used_kg", r.MediaUsedKg, "kg", "thrown/uses", sourceBatch, map[string]float64{"thrown": thrown, "uses": *r.Uses})
	default:
		add("media_used_kg", r.MediaUsedKg, "kg", "thrown·b", sourceUsed, map[string]float64{"thrown": thrown, "b": min(loss, 1)})
	}
	if r.Batches != nil {
		add("media_bought_kg", r.MediaBoughtKg, "kg", "max(⌈used/batch − rounding⌉·batch, used)", "identity: whole batches",
			map[string]float64{"used": used, "batch": *b.BatchKg, "rounding": wholeBatches})
		return
	}
	add("media_bought_kg", r.MediaBoughtKg, "kg", "used + charge", identity, map[string]float64{"used": used, "charge": b.WorkingChargeKg})
}

func (b Blasting) explainWaste(r Result, add adder) {
	if r.RemovedFilmKg != nil {
		add("removed_film_kg", r.RemovedFilmKg, "kg", "A·t/1000·density", identity,
			map[string]float64{"A": *b.AreaM2, "t": b.RemovedFilmUm, "density": *b.RemovedFilmDensityKgL})
	}
	if r.WasteKg == nil {
		return
	}
	film := 0.0
	if r.RemovedFilmKg != nil {
		film = *r.RemovedFilmKg
	}
	add("waste_kg", r.WasteKg, "kg", "used + discarded + film", identity, map[string]float64{"used": *r.MediaUsedKg, "discarded": b.discarded(), "film": film})
	if r.ConcentrationRatio != nil {
		add("concentration_ratio", r.ConcentrationRatio, "", "(thrown + film)/waste", "identity: share of paint in the waste over that of media thrown once",
			map[string]float64{"thrown": *r.MediaThrownKg, "film": film, "waste": *r.WasteKg})
	}
	if r.Drums != nil {
		add("drums", new(float64(*r.Drums)), "", "⌈waste/min(V·fill·density, most) − rounding⌉", sourceDrum, map[string]float64{"waste": *r.WasteKg, "V": b.DrumL,
			"fill": b.DrumFillPercent / 100, "density": *b.BulkDensityKgM3 / 1000, "most": b.DrumMostKg, "rounding": drumRoundingUp})
	}
	if r.DustKg != nil {
		add("dust_kg", r.DustKg, "kg", "thrown/1000·factor·(1 − control)", sourceDust, map[string]float64{"thrown": *r.MediaThrownKg,
			"factor": windDust(*b.WindMS) * b.DustAs.ofSand(), "control": b.DustControlPercent / 100})
	}
}
