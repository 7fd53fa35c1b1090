package blast

import "filmbuild/surfaces/quantity"

// Result is what a blasting takes and leaves. A nil figure could not be given
// because something it follows from was not.
type Result struct {
	AirM3Min           float64 `json:"air_m3_min"`           // free air, all nozzles
	WornAirM3Min       float64 `json:"worn_air_m3_min"`      // the same when each nozzle has worn by 1/16 in
	AirPowerKW         float64 `json:"air_power_kw"`         // of a compressor for air_m3_min alone
	CompressorM3Min    float64 `json:"compressor_m3_min"`    // with the reserve
	CompressorPowerKW  float64 `json:"compressor_power_kw"`  // for compressor_m3_min
	CompressorPowerHP  float64 `json:"compressor_power_hp"`  // the same
	Choked             bool    `json:"choked"`               // whether the air leaves at the speed of sound
	DischargeUsed      float64 `json:"discharge_used_ratio"` // the discharge coefficient that was used
	ChokedFromPressure float64 `json:"choked_from_kpa"`      // gauge

	MediaFlowPerNozzleKgH    *float64 `json:"media_flow_per_nozzle_kg_h,omitempty"`
	MediaFlowKgH             *float64 `json:"media_flow_kg_h,omitempty"`             // all nozzles
	MediaFlowAccuracyPercent *float64 `json:"media_flow_accuracy_percent,omitempty"` // where the flow was found and not given
	Hours                    *float64 `json:"hours,omitempty" unit:"h"`              // at the nozzle, all nozzles working
	MediaThrownKg            *float64 `json:"media_thrown_kg,omitempty"`
	MediaThrownKgM2          *float64 `json:"media_thrown_kg_m2,omitempty"`
	MediaUsedKg              *float64 `json:"media_used_kg,omitempty"` // dust and fines when recovered, else all that was thrown
	Uses                     *float64 `json:"uses,omitempty"`          // passes a grain of these media lasts when recovered
	MediaBoughtKg            *float64 `json:"media_bought_kg,omitempty"`
	RemovedFilmKg            *float64 `json:"removed_film_kg,omitempty"`
	WasteKg                  *float64 `json:"waste_kg,omitempty"` // media used and film removed
	RecoveryPercent          *float64 `json:"recovery_percent,omitempty"`

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}
