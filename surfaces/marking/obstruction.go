package marking

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// ObstructionBands is the number and width of the level bands of an obstacle to
// flight, by its longest dimension. Their number is odd, so that both end bands
// are of the dark colour.
//
//	width = longest/7, or 30 m if that is less
//
// longest is in m, above 1.5 and at most 2000; outside it returns a
// *quantity.RangeError. Source: ICAO Annex 14, 6.2.4 (table 6-1 sets narrower
// bands for tall obstacles, which comes to the same).
func ObstructionBands(longest float64) (bands int, width float64, err error) {
	if err := quantity.Within("longest dimension", longest, "m", quantity.Limits{Low: 1.5, High: 2000}); err != nil {
		return 0, 0, err
	}
	most := min(longest/7, 30)
	bands = int(math.Ceil(longest/most - 1e-9))
	if bands%2 == 0 {
		bands++
	}
	return bands, longest / float64(bands), nil
}

// ContrastEnough reports whether a band round an emergency exit stands out from
// the skin, by the reflectance of both in percent.
//
//	darker ≤ 15: lighter ≥ 45;  else: lighter − darker ≥ 30
//
// Both lie from 0 to 100; outside that it returns a *quantity.RangeError.
// Source: 14 CFR 135.178(g).
func ContrastEnough(first, second float64) (bool, error) {
	for _, x := range []float64{first, second} {
		if err := quantity.Within("reflectance", x, "%", quantity.Limits{High: 100}); err != nil {
			return false, err
		}
	}
	darker, lighter := min(first, second), max(first, second)
	if darker <= 15 {
		return lighter >= 45, nil
	}
	return lighter-darker >= 30, nil
}
