package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// BreakdownExponent is the power of the pressure that breakdown goes with:
// 100 psi in place of 60 breaks half as much again, ln 1.5/ln(100/60) = 0.794.
//
// Source: a guidebook on blasting, p. 50 (A-23, D-7).
func BreakdownExponent() float64 { return math.Log(1.5) / math.Log(100.0/60) }

// Breakdown carries the share of the media that one pass breaks from the
// pressure at which it was measured to that of the work.
//
//	b = known · (pressure/pressure0)^0.794, at most 1
//
// known is a fraction in [0.001, 1]; pressures are in kPa gauge in (0, 1400].
// Outside those ranges it returns a *quantity.RangeError.
//
// Accuracy: the power follows from one pair of pressures, 414 and 690 kPa; what
// was measured at 172 kPa is carried further than that by it.
//
// Source: A-23, D-7; in tests/published.
func Breakdown(known, pressureKnown, pressure float64) (float64, error) {
	if err := quantity.Within("breakdown", known, "", breakdownLimits); err != nil {
		return 0, err
	}
	for _, p := range []float64{pressureKnown, pressure} {
		if err := quantity.Within("gauge pressure", p, "kPa", quantity.Limits{High: pressureLimits.High, LowOpen: true}); err != nil {
			return 0, err
		}
	}
	return min(known*math.Pow(pressure/pressureKnown, BreakdownExponent()), 1), nil
}
