package climate

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

const (
	psychrometer     = 0.000662 // 1/°C, of a ventilated wet bulb. Source: from memory of the WMO guide; W13 in tests/published
	standardPressure = 1013.25  // hPa. Source: definition of the standard atmosphere
)

// HumidityFromWetBulb returns the relative humidity, as a fraction, that a
// ventilated psychrometer shows.
//
//	h = (e(wet) − 0.000662·1013.25·(air − wet))/e(air)
//
// air and wet are in °C in [−45, 60] and [0, 60]: below 0 °C the wet bulb freezes
// and another formula holds. Outside those ranges it returns a
// *quantity.RangeError, and a plain error for a wet bulb warmer than the air or
// so cold that the air would hold no water. Altitude is left out: at 1,500 m the
// true humidity of dry air is up to 5 % higher.
//
// Source: psychrometer equation of the WMO guide, coefficient from memory; W13
// in tests/published.
func HumidityFromWetBulb(air, wet float64) (float64, error) {
	if err := quantity.Within("air temperature", air, "°C", airLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("wet bulb temperature", wet, "°C", quantity.Limits{High: 60}); err != nil {
		return 0, err
	}
	if wet > air {
		return 0, fmt.Errorf("the wet bulb is %.3g °C, warmer than the air at %.3g °C; a wet bulb is the colder one", wet, air)
	}
	h := (saturation(wet) - psychrometer*standardPressure*(air-wet)) / saturation(air)
	if h <= 0 {
		return 0, fmt.Errorf("a wet bulb of %.3g °C in air of %.3g °C would mean air without water; wet the wick and read again", wet, air)
	}
	return min(h, 1), nil
}
