package blast

import "filmbuild/surfaces/quantity"

// The ranges in which the formulas of this package are used: wider than any
// blast machine and narrower than nonsense, so that psi given for kPa in the
// wrong direction is refused and every result is finite (common practice).
var (
	boreLimits        = quantity.Limits{Low: 0.5, High: 50}    // mm; pencil blasters to twice the greatest chart nozzle
	pressureLimits    = quantity.Limits{High: 1400}            // kPa gauge; twice what common machines are built for
	ambientLimits     = quantity.Limits{Low: 50, High: 110}    // kPa absolute; 5500 m above the sea to the Dead Sea
	dischargeLimits   = quantity.Limits{Low: 0.3, High: 1}     // of the ideal orifice
	bulkDensityLimits = quantity.Limits{Low: 100, High: 6000}  // kg/m³; corn cob 560 to steel shot 4485 [reference blasting B-38]
	breakdownLimits   = quantity.Limits{Low: 0.001, High: 1}   // per pass; stainless shot 0.005 [B-8]
	freeAirLimits     = quantity.Limits{High: 5000}            // m³/min
	altitudeLimits    = quantity.Limits{Low: -500, High: 5500} // m; where ambientLimits end
	hoseBoreLimits    = quantity.Limits{Low: 19, High: 80}     // mm; the chart's, and up to 3 in [H-6]
	hoseLengthLimits  = quantity.Limits{High: 200}             // m
	hosePressure      = quantity.Limits{Low: 30, High: 1400}   // kPa gauge
	hoseAirLimits     = quantity.Limits{High: 60}              // m³/min
	flowLimits        = quantity.Limits{Low: 0.1, High: 10000} // kg/h, one nozzle
	stripRateLimits   = quantity.Limits{Low: LeastStripRate, High: MostStripRate}
	areaLimits        = quantity.Limits{Low: 0.0001, High: 100000}
)
