package film

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// Passes returns how many passes of the gun or brush build a wet film, each of
// them leaving perPass at most.
//
//	passes = ⌈wet / perPass⌉
//
// wet is in µm in [0.1, 10⁷], perPass in µm in [1, 5000]. Outside those ranges
// it returns a *quantity.RangeError.
//
// Source: identity. Topcoat of 43 to 58 µm dry in one wet cross-coat, two passes
// (reference coating S15), in tests/published.
func Passes(wet, perPass float64) (int, error) {
	if err := quantity.Within("wet film", wet, "µm", wetFilmLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("wet film of one pass", perPass, "µm", passLimits); err != nil {
		return 0, err
	}
	return int(math.Ceil(wet/perPass - countSlack)), nil
}

// BatchLoss returns the mixed, thinned paint, in L, that stays in gun, hose and
// cup at the ends of batches.
//
//	loss = batches · each
//
// batches is in [0, 5·10⁶]; each is in L in [0, 1000]. Outside those ranges it
// returns a *quantity.RangeError.
//
// Source: identity. No public figure for what each batch leaves was found
// (reference coating W10); the contents of a hose are geometry (HoseContents).
func BatchLoss(batches int, each float64) (float64, error) {
	if err := quantity.Within("batches", float64(batches), "", batchesLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("loss of a batch", each, "L", batchLossLimits); err != nil {
		return 0, err
	}
	return float64(batches) * each, nil
}

// countSlack forgives the rounding of a quotient that is a whole number.
const countSlack = 1e-9
