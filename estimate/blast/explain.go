package blast

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

const (
	sourceAir    = "isentropic flow of an ideal gas; discharge 0.81 fitted to a common compressed-air chart within 5 %"
	sourceFlow   = "70 lb/(h in² psia) fitted to a common abrasive chart for media of 100 lb/ft³, −5.5 to +8.3 %"
	sourceUsed   = "OSHA silica eTool, aluminium oxide example: media used = thrown · breakdown"
	sourceUses   = "OSHA silica eTool: 10 % breakdown is ten uses"
	sourceSpare  = "trade guidance: 50 % reserve over the sum of users"
	sourcePower  = "note of a common compressed-air chart: hp = cfm/4.5"
	identity     = "identity"
	chokedAir    = "N·Cd·π/4·d²·p0·√(γ/(R·T))·(2/(γ+1))^((γ+1)/(2·(γ−1)))·60·R·T/pa"
	subsonicAir  = "N·Cd·π/4·d²·p0·√(2·γ/((γ−1)·R·T)·((pa/p0)^(2/γ) − (pa/p0)^((γ+1)/γ)))·60·R·T/pa"
	mediaFlowLaw = "k·d²·(p + pa)·ρ/ρ0"
)

// working shows how each figure of a result came about. In the formula of the
// air, d is in m and pressures in Pa.
func (b Blasting) working(r Result) []quantity.Working {
	nozzles := float64(b.Nozzles)
	formula := subsonicAir
	if r.Choked {
		formula = chokedAir
	}
	w := make([]quantity.Working, 0, 10)
	w = append(w,
		quantity.Working{Quantity: "air_m3_min", Value: r.AirM3Min, Unit: "m³/min", Formula: formula,
			Terms: map[string]float64{"N": nozzles, "Cd": r.DischargeUsed, "d": b.NozzleBoreMm / 1000, "p0": (b.PressureKPa + b.AmbientPressureKPa) * 1000,
				"pa": b.AmbientPressureKPa * 1000, "γ": heatRatio, "R": gasConstant, "T": airKelvin}, Source: sourceAir},
		quantity.Working{Quantity: "compressor_m3_min", Value: r.CompressorM3Min, Unit: "m³/min", Formula: "Q·reserve",
			Terms: map[string]float64{"Q": r.AirM3Min, "reserve": CompressorReserve}, Source: sourceSpare},
		quantity.Working{Quantity: "compressor_power_kw", Value: r.CompressorPowerKW, Unit: "kW", Formula: "Qc/ft3·hp·kW",
			Terms: map[string]float64{"Qc": r.CompressorM3Min, "ft3": cubicMetresPerCubicFoot, "hp": horsepowerPerCFM, "kW": kilowattsPerHorsepower}, Source: sourcePower},
	)
	if r.MediaFlowAccuracyPercent != nil {
		w = append(w, quantity.Working{Quantity: "media_flow_per_nozzle_kg_h", Value: *r.MediaFlowPerNozzleKgH, Unit: "kg/h", Formula: mediaFlowLaw,
			Terms: map[string]float64{"k": mediaLaw, "d": b.NozzleBoreMm, "p": b.PressureKPa, "pa": b.AmbientPressureKPa,
				"ρ": *b.BulkDensityKgM3, "ρ0": mediaLawDensity}, Source: sourceFlow})
	}
	if r.Hours != nil {
		w = append(w, quantity.Working{Quantity: "hours", Value: *r.Hours, Unit: "h", Formula: "A/(X·N)",
			Terms: map[string]float64{"A": *b.AreaM2, "X": *b.StripRateM2H, "N": nozzles}, Source: identity})
	}
	if r.MediaThrownKg != nil {
		w = append(w, quantity.Working{Quantity: "media_thrown_kg", Value: *r.MediaThrownKg, Unit: "kg", Formula: "A·M/X",
			Terms: map[string]float64{"A": *b.AreaM2, "M": *r.MediaFlowPerNozzleKgH, "X": *b.StripRateM2H}, Source: identity})
	}
	if r.MediaUsedKg != nil && b.Recovered {
		w = append(w, quantity.Working{Quantity: "media_used_kg", Value: *r.MediaUsedKg, Unit: "kg", Formula: "thrown·b",
			Terms: map[string]float64{"thrown": *r.MediaThrownKg, "b": *b.BreakdownPercent / 100}, Source: sourceUsed})
	}
	if r.Uses != nil {
		w = append(w, quantity.Working{Quantity: "uses", Value: *r.Uses, Formula: "1/b",
			Terms: map[string]float64{"b": *b.BreakdownPercent / 100}, Source: sourceUses})
	}
	if r.RemovedFilmKg != nil {
		w = append(w, quantity.Working{Quantity: "removed_film_kg", Value: *r.RemovedFilmKg, Unit: "kg", Formula: "A·t/1000·d",
			Terms: map[string]float64{"A": *b.AreaM2, "t": b.RemovedFilmUm, "d": *b.RemovedFilmDensityKgL}, Source: identity})
	}
	if r.WasteKg != nil {
		film := *r.WasteKg - *r.MediaUsedKg
		w = append(w, quantity.Working{Quantity: "waste_kg", Value: *r.WasteKg, Unit: "kg", Formula: "used + film",
			Terms: map[string]float64{"used": *r.MediaUsedKg, "film": film}, Source: identity})
	}
	return w
}

func (b Blasting) warnings(r Result) []string {
	var said []string
	add := func(when bool, text string) {
		if when {
			said = append(said, text)
		}
	}
	add(r.MediaFlowAccuracyPercent != nil && (b.PressureKPa < chartLeastKPa || b.PressureKPa > chartMostKPa ||
		b.NozzleBoreMm < chartLeastBore || b.NozzleBoreMm > chartMostBore),
		"the law for the flow of media was fitted at 345 to 862 kPa and nozzles of 3.2 to 12.7 mm; here it is extrapolated, so measure the flow")
	add(r.MediaFlowKgH == nil, "the flow of media is unknown: give media_flow_kg_h, or bulk_density_kg_m3 for a pressure feed")
	add(r.WornAirM3Min > r.CompressorM3Min,
		fmt.Sprintf("a nozzle worn by 1.6 mm takes %.3g m³/min of air, and the compressor with its reserve gives %.3g: change nozzles early", r.WornAirM3Min, r.CompressorM3Min))
	add(b.RemovedFilmUm > 0 && b.AreaM2 != nil && b.RemovedFilmDensityKgL == nil,
		"removed_film_density_kg_l is not given, so the waste is without the coating that comes off")
	add(b.RemovedFilmUm > 0 && b.AreaM2 == nil, "removed_film_um is given without area_m2, so no removed film is weighed")
	add(b.Recovered && r.MediaBoughtKg != nil && b.WorkingChargeKg == 0,
		"working_charge_kg is 0: the media that fill the machine are not among those bought")
	add(b.AreaM2 != nil && b.StripRateM2H == nil, "strip_rate_m2_h is not given, so hours and media of the area are left out")
	add(r.RecoveryPercent != nil && *r.RecoveryPercent > 100,
		"more was collected than the figures say can be: weigh again, or mend the strip rate, the flow or the film")
	return said
}
