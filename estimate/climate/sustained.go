package climate

import "math"

// sustainedH is how long a temperature must last to count, in h. Source: UFGS
// 09971 (reference planning C08, read).
const sustainedH = 1.0

// HottestSustained returns the highest temperature that a record reaches and
// does not fall below for an hour or more, and true; or false where the record is
// shorter than an hour.
//
//	hottest = max over all hours of (min within the hour)
//
// at are the hours of the readings, increasing; between two readings the lower
// one holds.
//
// Source: UFGS 09971 (reference planning C08): the highest surface temperature
// sustained for an hour or more picks the row of the recoat table.
func HottestSustained(at, temperature []float64) (float64, bool) {
	hottest, found := math.Inf(-1), false
	for i := range at {
		lowest := temperature[i]
		for k := i + 1; k < len(at); k++ {
			lowest = math.Min(lowest, temperature[k])
			if at[k]-at[i] >= sustainedH-1e-9 {
				hottest, found = math.Max(hottest, lowest), true
				break
			}
		}
	}
	return hottest, found
}
