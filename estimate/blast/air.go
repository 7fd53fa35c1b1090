package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

const (
	heatRatio   = 1.4     // γ of air, cp/cv. Source: tables of dry air (reference blasting 1.2)
	gasConstant = 287.05  // J/(kg K). Source: tables of dry air (reference blasting 1.2)
	airKelvin   = 293.15  // K, 20 °C, before the nozzle and of free air. Source: the chart the flow is compared with (reference blasting 1.2)
	SeaLevelKPa = 101.325 // kPa, standard atmosphere. Source: definition

	PressureDischarge = 0.81 // of a pressure feed with media flowing. Source: fit to 35 chart cells within 5 % (A-13)
	SuctionDischarge  = 1.0  // of a suction feed: the air jet alone. common practice: the ideal orifice, which errs towards a larger compressor
)

// ChokedRatio is the absolute pressure before the nozzle over that behind it
// from which the air leaves at the speed of sound.
//
//	ratio = ((γ + 1)/2)^(γ/(γ−1)) = 1.8929
//
// At sea level it is reached at 90.5 kPa gauge. Source: isentropic flow of an
// ideal gas (reference blasting 1.2: 13.12 psi).
func ChokedRatio() float64 {
	return math.Pow((heatRatio+1)/2, heatRatio/(heatRatio-1))
}

// AirMass returns the air, in kg/s, that flows through a nozzle.
//
//	choked:   m = Cd·A·p0·√(γ/(R·T))·(2/(γ+1))^((γ+1)/(2(γ−1)))
//	subsonic: m = Cd·A·p0·√(2γ/((γ−1)·R·T)·(r^(2/γ) − r^((γ+1)/γ))),  r = pa/p0
//
// bore is in mm in [0.5, 50]; pressure in kPa gauge in [0, 1400]; ambient in kPa
// absolute in [50, 110]; discharge is the coefficient Cd in [0.3, 1]. p0 is
// pressure + ambient. Outside those ranges it returns a *quantity.RangeError.
//
// Source: isentropic flow of an ideal gas; A-19c in tests/published.
func AirMass(bore, pressure, ambient, discharge float64) (float64, error) {
	if err := withinNozzle(bore, pressure, ambient); err != nil {
		return 0, err
	}
	if err := quantity.Within("discharge coefficient", discharge, "", dischargeLimits); err != nil {
		return 0, err
	}
	throat := math.Pi / 4 * bore * bore * 1e-6 // m²
	before := (pressure + ambient) * 1000      // Pa absolute
	return discharge * throat * before * massFlux(before/(ambient*1000)), nil
}

func withinNozzle(bore, pressure, ambient float64) error {
	if err := quantity.Within("nozzle bore", bore, "mm", boreLimits); err != nil {
		return err
	}
	if err := quantity.Within("gauge pressure", pressure, "kPa", pressureLimits); err != nil {
		return err
	}
	return quantity.Within("ambient pressure", ambient, "kPa", ambientLimits)
}

// massFlux is the mass flow per area and per pressure before the nozzle, in s/m.
func massFlux(ratio float64) float64 {
	const g = heatRatio
	if ratio >= ChokedRatio() {
		return math.Sqrt(g/(gasConstant*airKelvin)) * math.Pow(2/(g+1), (g+1)/(2*(g-1)))
	}
	r := 1 / ratio
	return math.Sqrt(2 * g / ((g - 1) * gasConstant * airKelvin) * (math.Pow(r, 2/g) - math.Pow(r, (g+1)/g)))
}

// FreeAir returns the free air, in m³/min, that one nozzle takes.
//
//	Q = 60 · m · R · T / pa
//
// The arguments, their ranges and the error are those of AirMass. Free air is
// counted at the ambient pressure, so the same nozzle takes more of it high up.
//
// Accuracy: with Cd 0.81 within 5 % of a common chart of pressure-blast nozzles
// of 6.35 to 12.7 mm at 345 to 862 kPa, within 8.5 % from 3.2 mm.
//
// Source: ideal gas; and A-19d in tests/published.
func FreeAir(bore, pressure, ambient, discharge float64) (float64, error) {
	mass, err := AirMass(bore, pressure, ambient, discharge)
	if err != nil {
		return 0, err
	}
	return 60 * mass * gasConstant * airKelvin / (ambient * 1000), nil
}
