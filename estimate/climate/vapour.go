package climate

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// Source of the first three: WMO guide (Sonntag's form over water, −45 to
// 60 °C), as cited in reference planning 1. The two over ice are from memory;
// they reproduce a published frost point table to 0.08 °C.
const (
	saturationAtZero = 6.112  // hPa
	waterSlope       = 17.62  // over water
	waterOffset      = 243.12 // °C
	iceSlope         = 22.46  // over ice
	iceOffset        = 272.62 // °C

	zeroCelsius = 273.15 // K. Source: definition
	waterVapour = 216.74 // g K/(m³ hPa): 100/R of water vapour. Source: reference planning W10
)

// The ranges in which the formulas of this package hold.
var (
	airLimits      = quantity.Limits{Low: -45, High: 60} // °C. Source: WMO guide
	humidityLimits = quantity.Limits{High: 1, LowOpen: true}
)

// Saturation returns the pressure, in hPa, of water vapour over a plane of water.
//
//	e = 6.112 · exp(17.62·t/(243.12 + t))
//
// temperature is in °C in [−45, 60]. Outside it returns a *quantity.RangeError.
//
// Source: WMO guide (Sonntag's form).
func Saturation(temperature float64) (float64, error) {
	if err := quantity.Within("temperature", temperature, "°C", airLimits); err != nil {
		return 0, err
	}
	return saturation(temperature), nil
}

func saturation(t float64) float64 {
	return saturationAtZero * math.Exp(waterSlope*t/(waterOffset+t))
}

// DewPointOverWater returns the temperature, in °C, at which air becomes
// saturated over water when it cools.
//
//	Td = 243.12·g/(17.62 − g),  g = ln(humidity) + 17.62·t/(243.12 + t)
//
// air is in °C in [−45, 60], humidity a fraction in (0, 1]. Outside those ranges
// it returns a *quantity.RangeError. It is never above air.
//
// Accuracy: 0.14 °C against a published table; five sets of coefficients agree
// within 0.03 °C from 5 °C up (reference planning W08).
//
// Source: WMO guide (Sonntag's form); W01 to W07 in tests/published.
func DewPointOverWater(air, humidity float64) (float64, error) {
	g, err := vapour(air, humidity)
	if err != nil {
		return 0, err
	}
	return min(waterOffset*g/(waterSlope-g), air), nil
}

// FrostPoint returns the temperature, in °C, at which frost forms when air
// cools. It is meant for dew points below 0 °C, where it lies above the dew
// point and can lie above the air's own temperature.
//
//	Tf = 272.62·g/(22.46 − g),  g as in DewPointOverWater
//
// The arguments, their ranges and the error are those of DewPointOverWater.
//
// Source: from memory; reproduces a published table to 0.08 °C (reference
// planning 1).
func FrostPoint(air, humidity float64) (float64, error) {
	g, err := vapour(air, humidity)
	if err != nil {
		return 0, err
	}
	return iceOffset * g / (iceSlope - g), nil
}

// vapour is ln(e/6.112 hPa) of the water vapour in the air. The logarithm is
// taken before anything is multiplied, so that no humidity is too small for it.
func vapour(air, humidity float64) (float64, error) {
	if err := quantity.Within("air temperature", air, "°C", airLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("relative humidity", humidity, "", humidityLimits); err != nil {
		return 0, err
	}
	return math.Log(humidity) + waterSlope*air/(waterOffset+air), nil
}

// WaterContent returns the water, in g/m³, in saturated air.
//
//	w = 216.74 · e/(273.15 + t)
//
// temperature is in °C in [−45, 60]. Outside it returns a *quantity.RangeError.
//
// Source: gas law for water vapour; W10 in tests/published.
func WaterContent(temperature float64) (float64, error) {
	e, err := Saturation(temperature)
	if err != nil {
		return 0, err
	}
	return waterVapour * e / (zeroCelsius + temperature), nil
}

// SurfaceHumidity returns the relative humidity, a fraction, of the air that
// touches a surface: 1 when water condenses on it.
//
//	h = min(1, humidity · e(air)/e(surface))
//
// air and surface are in °C in [−45, 60], humidity is a fraction in (0, 1].
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: same vapour pressure at both temperatures (identity); W31 in
// tests/published.
func SurfaceHumidity(air, humidity, surface float64) (float64, error) {
	if _, err := vapour(air, humidity); err != nil {
		return 0, err
	}
	if err := quantity.Within("surface temperature", surface, "°C", airLimits); err != nil {
		return 0, err
	}
	return min(1, humidity*saturation(air)/saturation(surface)), nil
}
