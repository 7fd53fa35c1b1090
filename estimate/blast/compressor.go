package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

const (
	// CompressorReserve is the free air a compressor should deliver over what its
	// users take. Source: trade guidance, 50 % reserve (H-2).
	CompressorReserve = 1.5

	cubicMetresPerCubicFoot = 0.0283168466 // Source: definition of the foot
	horsepowerPerCFM        = 1 / 4.5      // hp per ft³/min near 700 kPa. Source: note of a common compressed-air chart (A-19b, H-1)
	kilowattsPerHorsepower  = 0.745699872  // Source: definition of the mechanical horsepower

	wearStep = 25.4 / 16 // mm; one nozzle size. Source: chart of nozzle sizes (H-3)
)

// CompressorPower returns the power, in kW, that a compressor needs for freeAir.
//
//	hp = ft³/min / 4.5
//
// freeAir is in m³/min in [0, 5000]; outside it returns a *quantity.RangeError.
// The rule is that of machines working near 700 kPa; below, less is needed.
//
// Source: A-19b, H-1; in tests/published.
func CompressorPower(freeAir float64) (float64, error) {
	if err := quantity.Within("free air", freeAir, "m³/min", freeAirLimits); err != nil {
		return 0, err
	}
	return compressorKilowatts(freeAir), nil
}

func compressorKilowatts(freeAir float64) float64 {
	return freeAir / cubicMetresPerCubicFoot * horsepowerPerCFM * kilowattsPerHorsepower
}

// WornBore returns the bore, in mm, of a nozzle that has worn by one size, which
// is when it is usually replaced.
//
//	worn = bore + 1/16 in
//
// bore is in mm in [0.5, 50]; outside it returns a *quantity.RangeError.
//
// Source: H-3: from 3/8 in to 7/16 in at 100 psi the air grows by 29.6 % in a
// chart and by (7/6)² − 1 = 36.1 % ideally.
func WornBore(bore float64) (float64, error) {
	if err := quantity.Within("nozzle bore", bore, "mm", boreLimits); err != nil {
		return 0, err
	}
	return bore + wearStep, nil
}

// HoseLoss returns the pressure, in kPa, that an air hose takes.
//
//	loss = 76.5 kPa · (length/15.24 m) · (freeAir/4.2475 m³/min)² · (19.05 mm/bore)⁵ · 790.8 kPa/(pressure + 101.325 kPa)
//
// bore is the inner diameter in mm in [19, 32]; length in m in [0, 200]; freeAir
// in m³/min in [0, 15]; pressure at the inlet in kPa gauge in [200, 1400].
// Outside those ranges, or when the loss would be more than half the pressure
// (the formula takes it for small), it returns a *quantity.RangeError.
//
// Accuracy: 25 % of the chart it starts from.
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
	const chartLoss, chartPressure = 11.1 * kilopascalsPerPSI, 100*kilopascalsPerPSI + SeaLevelKPa // kPa (H-4)
	const chartLength, chartBore, chartAir = 50 * 0.3048, 19.05, 150 * cubicMetresPerCubicFoot     // m, mm, m³/min (H-4)
	loss := chartLoss * (length / chartLength) * math.Pow(freeAir/chartAir, 2) *
		math.Pow(chartBore/bore, 5) * chartPressure / (pressure + SeaLevelKPa)
	if err := quantity.Within("hose loss", loss, "kPa", quantity.Limits{High: pressure / 2}); err != nil {
		return 0, err
	}
	return loss, nil
}
