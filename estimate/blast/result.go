package blast

import "filmbuild/surfaces/quantity"

// Result is what a blasting takes and leaves. A nil figure could not be given
// because something it follows from was not.
type Result struct {
	AirM3Min            float64 `json:"air_m3_min"`                // free air, all nozzles
	WornAirM3Min        float64 `json:"worn_air_m3_min"`           // the same when each nozzle has worn by 1/16 in
	AirPowerKW          float64 `json:"air_power_kw"`              // of a compressor for air_m3_min alone
	CompressorM3Min     float64 `json:"compressor_m3_min"`         // of all users, with the reserve
	WornCompressorM3Min float64 `json:"worn_compressor_m3_min"`    // the same with worn nozzles
	CompressorPowerKW   float64 `json:"compressor_power_kw"`       // for compressor_m3_min
	CompressorPowerHP   float64 `json:"compressor_power_hp"`       // the same
	Choked              bool    `json:"choked"`                    // whether the air leaves at the speed of sound
	DischargeUsed       float64 `json:"discharge_used_ratio"`      // the discharge coefficient that was used
	ChokedFromPressure  float64 `json:"choked_from_kpa"`           // gauge
	AmbientUsedKPa      float64 `json:"ambient_pressure_used_kpa"` // absolute

	HoseBoreLeastMm           *float64 `json:"hose_bore_least_mm,omitempty"`           // of the hose to one nozzle
	HoseLossKPa               *float64 `json:"hose_loss_kpa,omitempty"`                // taken by the hose to one nozzle
	CompressorPressureKPa     *float64 `json:"compressor_pressure_kpa,omitempty"`      // gauge, at the inlet of that hose
	HoseProductionLossPercent *float64 `json:"hose_production_loss_percent,omitempty"` // of the work, where the compressor gives no more than pressure_kpa
	LargestBoreMm             *float64 `json:"largest_bore_mm,omitempty"`              // of as many nozzles, that compressor_supply_m3_min feeds with the reserve

	MediaFlowPerNozzleKgH    *float64 `json:"media_flow_per_nozzle_kg_h,omitempty"`
	MediaFlowKgH             *float64 `json:"media_flow_kg_h,omitempty"`             // all nozzles
	MediaFlowAccuracyPercent *float64 `json:"media_flow_accuracy_percent,omitempty"` // where the flow was found and not given

	StripRateUsedM2H     *float64 `json:"strip_rate_used_m2_h,omitempty"`     // of one nozzle at work
	StripRateBurdenedM2H *float64 `json:"strip_rate_burdened_m2_h,omitempty"` // of all nozzles over the shift
	StripRateLowM2H      *float64 `json:"strip_rate_low_m2_h,omitempty"`      // where the rate is the catalogue's
	StripRateHighM2H     *float64 `json:"strip_rate_high_m2_h,omitempty"`
	StripRateFrom        string   `json:"strip_rate_from,omitempty"` // given, or the source of the catalogue's

	Hours           *float64 `json:"hours,omitempty" unit:"h"`       // at the nozzle, all nozzles working
	ShiftHours      *float64 `json:"shift_hours,omitempty" unit:"h"` // hours over availability_percent
	MediaThrownKg   *float64 `json:"media_thrown_kg,omitempty"`
	MediaThrownKgM2 *float64 `json:"media_thrown_kg_m2,omitempty"`
	MediaUsedKg     *float64 `json:"media_used_kg,omitempty"` // dust and fines when recovered, else all that was thrown
	Uses            *float64 `json:"uses,omitempty"`          // passes a grain of these media lasts when recovered
	Batches         *float64 `json:"batches,omitempty"`       // that are thrown until spent, whole where batch_kg is given
	MediaBoughtKg   *float64 `json:"media_bought_kg,omitempty"`

	RemovedFilmKg          *float64   `json:"removed_film_kg,omitempty"`
	WasteKg                *float64   `json:"waste_kg,omitempty"` // media used and film removed
	RecoveryPercent        *float64   `json:"recovery_percent,omitempty"`
	FilmInWastePercent     *float64   `json:"film_in_waste_percent,omitempty"`            // by mass
	FilmInWasteOncePercent *float64   `json:"film_in_waste_single_use_percent,omitempty"` // were the media thrown once
	ConcentrationRatio     *float64   `json:"concentration_ratio,omitempty"`              // of the two: how much more metal of the paint a kilogram of waste holds
	Leachate               []Leachate `json:"leachate,omitempty"`                         // of the metals that were given
	DrumKg                 *float64   `json:"drum_kg,omitempty"`                          // waste that one drum holds
	Drums                  *int       `json:"drums,omitempty"`
	DustKg                 *float64   `json:"dust_kg,omitempty"`
	DustPM10Kg             *float64   `json:"dust_pm10_kg,omitempty"`
	DustPM25Kg             *float64   `json:"dust_pm25_kg,omitempty"`
	DustReason             string     `json:"dust_reason,omitempty"` // why no dust is given

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}
