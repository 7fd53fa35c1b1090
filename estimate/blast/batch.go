package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// UntoppedCharge returns what becomes of a charge of media that goes round
// without being topped up: the share of it that is left after passes, and the
// mass thrown in them per mass of the charge.
//
//	left = (1 − breakdown)^passes,  thrown = (1 − left)/breakdown
//
// breakdown is a fraction in [0.001, 1], passes in [0, 10000]. Outside those
// ranges it returns a *quantity.RangeError. Published examples of cost all top up
// instead (D-1), so Blasting uses this model only where batch_passes asks for it,
// and never both at once.
//
// Source: geometric series; D-4 to D-6 in tests/published.
func UntoppedCharge(breakdown float64, passes int) (left, thrown float64, err error) {
	if err := quantity.Within("breakdown", breakdown, "", breakdownLimits); err != nil {
		return 0, 0, err
	}
	if err := quantity.Within("passes", float64(passes), "", quantity.Limits{High: 10000}); err != nil {
		return 0, 0, err
	}
	left = math.Pow(1-breakdown, float64(passes))
	return left, (1 - left) / breakdown, nil
}
