package estimate

import (
	"fmt"

	"filmbuild/estimate/blast"
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
// the medium, carried to the nozzle, pressure and film of the work.
func (r *run) unusualRate(p *Blast, s *StepEstimate, media *products.Media, own pace, filmUM float64) {
	low, high := media.StripRateLowM2H, media.StripRateHighM2H
	if low == nil || high == nil || own.basis != string(blast.NozzleOn) || own.source == "test patch" {
		return
	}
	least, most := *low, *high
	if known, work, ok := conditions(p, media, filmUM); ok {
		least, _ = blast.StripRate(*low, known, work)
		most, _ = blast.StripRate(*high, known, work)
		least, most = least*feedFactor(p), most*feedFactor(p)
	}
	if own.rateM2H < least*(1-1e-9) || own.rateM2H > most*(1+1e-9) {
		s.Warnings = append(s.Warnings, fmt.Sprintf("%.4g m²/h for one nozzle is outside the %.3g to %.3g m²/h of %s at this nozzle, pressure and film: measure a test patch", own.rateM2H, least, most, media.ID))
	}
}

func (s *StepEstimate) warnf(format string, args ...any) {
	s.Warnings = append(s.Warnings, fmt.Sprintf(format, args...))
}
