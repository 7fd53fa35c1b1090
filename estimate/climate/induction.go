package climate

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// inductionPer10 is how many times as long a mixed paint must stand for each
// 10 °C that it is colder.
//
// Source: middles of NAVFAC MO-124's table for Navy epoxy, 2 h at 55 °F and
// 1.25 h at 65 °F (reference coating K5, the factor derived there: 0.43).
const inductionPer10 = 1 / 0.43

// Induction returns how long a mixed paint stands before it is used, in h, at a
// temperature other than its data sheet's. Colder paint stands longer; warmer
// paint as long as the data sheet says, since no source lets it be less.
//
//	induction = known · max(1, 2.33^((at − temperature)/10))
//
// known is in h in [0, 24]; at and temperature are in °C in [−10, 60]. Outside
// those ranges it returns a *quantity.RangeError.
//
// Source: reference coating K5; its three bands in tests/published.
func Induction(known, at, temperature float64) (float64, error) {
	if err := quantity.Within("induction time", known, "h", quantity.Limits{High: 24}); err != nil {
		return 0, err
	}
	if err := quantity.Within("temperature of the induction time", at, "°C", mixLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("temperature", temperature, "°C", mixLimits); err != nil {
		return 0, err
	}
	return known * math.Max(1, math.Pow(inductionPer10, (at-temperature)/10)), nil
}
