package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// The entry of the chart that hose losses start from. Source: trade chart (H-4).
const (
	hoseChartLoss     = 11.1 * kilopascalsPerPSI            // kPa
	hoseChartPressure = 100*kilopascalsPerPSI + SeaLevelKPa // kPa absolute
	hoseChartLength   = 50 * 0.3048                         // m
	hoseChartBore     = 19.05                               // mm
	hoseChartAir      = 150 * cubicMetresPerCubicFoot       // m³/min
)

// HoseLoss returns the pressure, in kPa, that an air hose takes.
//
//	loss = 76.5 kPa · (length/15.24 m) · (freeAir/4.2475 m³/min)² · (19.05 mm/bore)⁵ · 790.8 kPa/(pressure + 101.325 kPa)
//
// bore is the inner diameter in mm in [19, 80]; length in m in [0, 200]; freeAir
// in m³/min in [0, 60]; pressure in kPa gauge in [30, 1400], that at the nozzle
// where that at the inlet is not known yet, which errs towards more loss.
// Outside those ranges, or when the loss would be more than half the pressure
// (the formula takes it for small), it returns a *quantity.RangeError.
//
// Accuracy: 25 % of the chart it starts from up to 32 mm; at 38 mm it says
// 0.35 psi where the chart prints 0.2 (H-5), and so errs towards more loss.
//
// Source: 11.1 psi for 50 ft of 3/4 in hose at 150 ft³/min and 100 psi in a
// trade chart (H-4), scaled by the fifth power of the bore (H-5) and by the law
// of turbulent pipe flow.
func HoseLoss(bore, length, freeAir, pressure float64) (float64, error) {
	if err := quantity.Within("hose bore", bore, "mm", hoseBoreLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("hose length", length, "m", hoseLengthLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("free air", freeAir, "m³/min", hoseAirLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("inlet pressure", pressure, "kPa", hosePressure); err != nil {
		return 0, err
	}
	loss := hoseChartLoss * (length / hoseChartLength) * math.Pow(freeAir/hoseChartAir, 2) *
		math.Pow(hoseChartBore/bore, 5) * hoseChartPressure / (pressure + SeaLevelKPa)
	if err := quantity.Within("hose loss", loss, "kPa", quantity.Limits{High: pressure / 2}); err != nil {
		return 0, err
	}
	return loss, nil
}

// hoseSizes are the bores that air hose is sold in, in mm: 1, 1 1/4, 1 1/2, 2,
// 2 1/2 and 3 in. Source: trade chart (H-6).
func hoseSizes() []float64 { return []float64{25.4, 31.75, 38.1, 50.8, 63.5, 76.2} }

// HoseBore returns the least inner diameter, in mm, of the air hose to one
// nozzle.
//
//	bore = the least size sold that is at least 4 · nozzle bore
//
// nozzleBore is in mm in [0.5, 19.05]; beyond, no hose is large enough and it
// returns a *quantity.RangeError.
//
// Source: rule that gives every row of a trade chart (H-6); in tests/published.
func HoseBore(nozzleBore float64) (float64, error) {
	if err := quantity.Within("nozzle bore", nozzleBore, "mm", quantity.Limits{Low: boreLimits.Low, High: 76.2 / 4}); err != nil {
		return 0, err
	}
	sizes := hoseSizes()
	for _, size := range sizes {
		if size >= 4*nozzleBore {
			return size, nil
		}
	}
	return sizes[len(sizes)-1], nil
}

// lossOfProduction is the share of the work that is lost for each kPa that the
// nozzle lacks: 1.5 % for a psi near 100 psi. Source: trade chart (H-4).
const lossOfProduction = 0.015 / kilopascalsPerPSI // 1/kPa
