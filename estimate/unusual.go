package estimate

import (
	"fmt"

	"filmbuild/products"
)

// unusualFilm is how many times thicker or thinner than the product's usual
// film a coat may be before it looks like a slip (common practice).
const unusualFilm = 3

// unusual warns of a film far from the product's usual one: more often a slip
// of the unit than a plan.
func (s *StepEstimate) unusual(paint *products.Paint, filmUM float64) {
	if paint.DryFilmUM == nil {
		return
	}
	if usual := *paint.DryFilmUM; filmUM > usual*unusualFilm || filmUM < usual/unusualFilm {
		s.Warnings = append(s.Warnings, fmt.Sprintf("a dry film of %.4g µm is far from the usual %.4g µm of %s: look at the unit", filmUM, usual, paint.ID))
	}
}

// unusualRate warns of a strip rate outside the range that the book gives for
// the medium.
func (s *StepEstimate) unusualRate(media *products.Media, rateM2H float64) {
	low, high := media.StripRateLowM2H, media.StripRateHighM2H
	if low != nil && high != nil && (rateM2H < *low || rateM2H > *high) {
		s.Warnings = append(s.Warnings, fmt.Sprintf("%.4g m²/h for one nozzle is outside the usual %.4g to %.4g m²/h of %s: measure a test patch", rateM2H, *low, *high, media.ID))
	}
}

func (s *StepEstimate) warnf(format string, args ...any) {
	s.Warnings = append(s.Warnings, fmt.Sprintf(format, args...))
}
