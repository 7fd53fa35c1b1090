package blast

import "filmbuild/surfaces/quantity"

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
