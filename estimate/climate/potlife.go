package climate

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

var (
	potLifeLimits = quantity.Limits{Low: 0.05, High: 200} // h; 3 min to a week (common practice)
	mixLimits     = quantity.Limits{Low: -10, High: 60}   // °C of mixed paint (common practice)
)

const (
	// leastApart is how far two data-sheet temperatures must lie apart for a line
	// through them to say anything (common practice).
	leastApart = 5.0 // °C
	// mostPer10 is the greatest factor per 10 °C that is believed of a paint; the
	// trade's rule is 2 (common practice).
	mostPer10 = 5.0
)

// HalvedPotLife returns the pot life, in h, by the trade's rule of temperature:
// it halves with every 10 °C more and doubles with every 10 °C less.
//
//	life = known · 2^((at − temperature)/10)
//
// known is in h in [0.05, 200]; at and temperature are in °C in [−10, 60].
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: UFGS 09971 3.7.1.3 (reference planning C01); C03 and K1 in
// tests/published.
func HalvedPotLife(known, at, temperature float64) (float64, error) {
	if err := withinPot(known, at); err != nil {
		return 0, err
	}
	if err := quantity.Within("temperature", temperature, "°C", mixLimits); err != nil {
		return 0, err
	}
	return known * math.Exp2((at-temperature)/10), nil
}

// FittedPotLife returns the pot life, in h, by the exponential through two
// points of a data sheet.
//
//	life = life1 · (life2/life1)^((temperature − at1)/(at2 − at1))
//
// lives are in h in [0.05, 200], temperatures in °C in [−10, 60]. Outside those
// ranges it returns a *quantity.RangeError, and a plain error for points less
// than 5 °C apart, for a life that grows with temperature, and for one that
// changes more than fivefold in 10 °C.
//
// Source: exponential dependence, as in HalvedPotLife with the factor left free
// (identity at both points).
func FittedPotLife(life1, at1, life2, at2, temperature float64) (float64, error) {
	if err := withinPot(life1, at1); err != nil {
		return 0, err
	}
	if err := withinPot(life2, at2); err != nil {
		return 0, err
	}
	if err := quantity.Within("temperature", temperature, "°C", mixLimits); err != nil {
		return 0, err
	}
	if said := twoPointFault(life1, at1, life2, at2); said != "" {
		return 0, fmt.Errorf("%s", said)
	}
	return life1 * math.Pow(life2/life1, (temperature-at1)/(at2-at1)), nil
}

func withinPot(life, at float64) error {
	if err := quantity.Within("pot life", life, "h", potLifeLimits); err != nil {
		return err
	}
	return quantity.Within("temperature of the pot life", at, "°C", mixLimits)
}

// twoPointFault says why two points give no rule, and nothing when they do.
func twoPointFault(life1, at1, life2, at2 float64) string {
	if math.Abs(at2-at1) < leastApart {
		return fmt.Sprintf("the two pot lives are given for temperatures %.3g °C apart; they must be at least 5 °C apart", math.Abs(at2-at1))
	}
	per10 := math.Pow(life1/life2, 10/(at2-at1))
	switch {
	case per10 < 1:
		return "the pot life at the higher temperature is the longer one; it must be the shorter"
	case per10 > mostPer10:
		return fmt.Sprintf("the two pot lives differ by a factor of %.3g for 10 °C; paints have about 2 and at most 5", per10)
	}
	return ""
}
