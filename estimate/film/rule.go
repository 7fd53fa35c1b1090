package film

import (
	"fmt"
	"math"
	"strings"

	"filmbuild/surfaces/quantity"
)

// Rule says what the dry film that is asked for must be.
type Rule string

const (
	// Mean asks that the film be right on average. The empty Rule means the same.
	Mean Rule = "mean"
	// Min80Of20 lets at most 20 % of the readings fall below the film asked for,
	// as ISO 19840 does; that standard wants none of them below 80 % too, which
	// this factor does not secure.
	Min80Of20 Rule = "min_80_20"
	// Min90Of10 lets at most 10 % of the readings fall below it, as the IMO
	// performance standard for tanks does; that wants none of them below 90 % too.
	Min90Of10 Rule = "min_90_10"
)

// Rules lists the rules by their names on the wire.
func Rules() []Rule { return []Rule{Mean, Min80Of20, Min90Of10} }

// mostFilmFactor is the greatest mean over nominal film that is believed: paint
// makers commonly allow no reading above 3 times the nominal film (reference
// coating A1).
const mostFilmFactor = 3

// MeanFactor returns the mean dry film over the nominal one that a rule forces
// on a painter whose readings scatter.
//
//	factor = 1 / (1 − z · cov)
//
// z is the normal quantile of the share of readings that must reach the nominal
// film: 0 for mean, z(0.8) = 0.8416 and z(0.9) = 1.2816 for the other rules; cov
// is the coefficient of variation of the readings, in [0, 1]. It returns a
// *quantity.RangeError when cov lies outside, or when the factor would be above
// 3 or negative (z·cov of 1 or more: no mean is enough), and a plain error for an
// unknown rule.
//
// Source: mathematics of normally distributed readings (reference coating 7,
// derived there); the rules themselves A1 and A4. Table of section 7 in
// tests/published.
func MeanFactor(rule Rule, cov float64) (float64, error) {
	if err := quantity.Within("coefficient of variation", cov, "", covLimits); err != nil {
		return 0, err
	}
	z, err := rule.quantile()
	if err != nil {
		return 0, err
	}
	factor := 1 / (1 - z*cov)
	if err := quantity.Within("mean over nominal film", factor, "", factorLimits); err != nil {
		return 0, err
	}
	return factor, nil
}

func (r Rule) quantile() (float64, error) {
	switch r {
	case Mean, "":
		return 0, nil
	case Min80Of20:
		return normalQuantile(0.8), nil
	case Min90Of10:
		return normalQuantile(0.9), nil
	}
	return 0, fmt.Errorf("film rule %q is not one of %s", string(r), ruleNames())
}

// LeastReadingFactor returns the mean dry film over the nominal one that keeps
// 99 % of the readings above the least that a rule lets any reading be: 0.8 of
// the nominal film for min_80_20, 0.9 for min_90_10. bounded is false, and the
// factor 0, where the rule bounds no single reading, or where the scatter is so
// great that no mean is enough.
//
//	factor = max(1, least / (1 − z(0.99) · cov))
//
// cov is the coefficient of variation of the readings, in [0, 1]; outside it
// returns a *quantity.RangeError, and a plain error for an unknown rule. The
// share of 1 % is that of the table it is checked against.
//
// Source: mathematics of normally distributed readings (reference coating 7,
// third column, derived there); the bounds A1 and A4. In tests/published.
func LeastReadingFactor(rule Rule, cov float64) (factor float64, bounded bool, err error) {
	if err := quantity.Within("coefficient of variation", cov, "", covLimits); err != nil {
		return 0, false, err
	}
	if _, err := rule.quantile(); err != nil {
		return 0, false, err
	}
	least := rule.LeastReading()
	if room := 1 - normalQuantile(0.99)*cov; least > 0 && room > 0 {
		return max(1, least/room), true, nil
	}
	return 0, false, nil
}

// LeastReading is the share of the nominal film that no reading may fall below,
// 0 where the rule does not say. Source: ISO 19840 (reference coating A1); IMO
// MSC.215(82) (A4).
func (r Rule) LeastReading() float64 {
	switch r {
	case Min80Of20:
		return 0.8
	case Min90Of10:
		return 0.9
	}
	return 0
}

// normalQuantile is exact to rounding. Source: definition of the error function.
func normalQuantile(share float64) float64 { return math.Sqrt2 * math.Erfinv(2*share-1) }

func ruleNames() string {
	names := make([]string, 0, len(Rules()))
	for _, r := range Rules() {
		names = append(names, string(r))
	}
	return strings.Join(names, ", ")
}
