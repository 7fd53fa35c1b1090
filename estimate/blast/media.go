package blast

import "filmbuild/surfaces/quantity"

const (
	kilopascalsPerPSI = 6.894757293 // Source: definition of the pound and the inch
	kilogramsPerPound = 0.45359237  // Source: definition

	// mediaLaw is the mass of media per hour, bore squared and absolute pressure:
	// 70 lb/(h in² psia) for media of 100 lb/ft³. Source: fit to an industry chart of abrasive consumption (reference blasting A-18).
	mediaLaw = 70 * kilogramsPerPound / (25.4 * 25.4 * kilopascalsPerPSI) // kg/(h mm² kPa)
	// mediaLawDensity is the bulk density for which mediaLaw was fitted, 100 lb/ft³.
	mediaLawDensity = 100 * kilogramsPerPound / cubicMetresPerCubicFoot // kg/m³

	// MediaFlowAccuracyPercent is the greatest error of MediaFlow against the
	// 49 cells of the chart it was fitted to (−5.5 to +8.3 %). Source: A-18.
	MediaFlowAccuracyPercent = 8.3

	// The chart that MediaFlow was fitted to spans 50 to 125 psi and 1/8 to 1/2 in.
	chartLeastKPa, chartMostKPa   = 50 * kilopascalsPerPSI, 125 * kilopascalsPerPSI
	chartLeastBore, chartMostBore = 3.175, 12.7 // mm
)

// MediaFlow returns the media, in kg/h, that one nozzle of a pressure-feed
// machine throws with its metering valve set for a normal stream.
//
//	flow = 70 lb/(h in² psia) · bore² · (pressure + ambient) · bulkDensity/(100 lb/ft³)
//
// bore is in mm in [0.5, 50]; pressure in kPa gauge in [0, 1400]; ambient in kPa
// absolute in [50, 110]; bulkDensity in kg/m³ in [100, 6000]. Outside those
// ranges it returns a *quantity.RangeError. The law was fitted at 345 to 862 kPa
// and 3.2 to 12.7 mm; elsewhere it is extrapolated.
//
// Accuracy: −5.5 to +8.3 % of the chart. A metering valve can be set to much
// less, so a measured flow is better.
//
// Source: A-18; the chart gives its figures for media of 100 lb/ft³ and their
// volume too, from which the scaling by bulk density follows. In tests/published.
func MediaFlow(bore, pressure, ambient, bulkDensity float64) (float64, error) {
	if err := withinNozzle(bore, pressure, ambient); err != nil {
		return 0, err
	}
	if err := quantity.Within("bulk density", bulkDensity, "kg/m³", bulkDensityLimits); err != nil {
		return 0, err
	}
	return mediaLaw * bore * bore * (pressure + ambient) * bulkDensity / mediaLawDensity, nil
}

// Uses returns how often a grain of media is thrown on average before it is too
// small, in a mix that is topped up all the time.
//
//	uses = 1 / breakdown
//
// breakdown is the share of the thrown media lost in one pass, a fraction in
// [0.001, 1]. Outside that range it returns a *quantity.RangeError.
//
// Source: OSHA silica eTool, aluminium oxide example: 10 % breakdown, ten reuses
// (C-1, D-1); D-4 to D-6 in tests/published.
func Uses(breakdown float64) (float64, error) {
	if err := quantity.Within("breakdown", breakdown, "", breakdownLimits); err != nil {
		return 0, err
	}
	return 1 / breakdown, nil
}
