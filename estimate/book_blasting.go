package estimate

import (
	"filmbuild/estimate/blast"
	"filmbuild/products"
)

// BookStripRate is the strip rate of a medium of the catalogue with its band,
// carried to a nozzle, a pressure and a film (0 where it is not known); false
// where the medium has none, or the pressure is below any that strips.
func BookStripRate(media *products.Media, boreMM, pressureKPa, filmUM float64, feed blast.Feed) (blast.BookRate, bool) {
	p := &Blast{NozzleBoreMM: boreMM, PressureKPa: pressureKPa, Feed: string(feed)}
	known, work, ok := conditions(p, media, filmUM)
	if !ok || media.StripRateM2H == nil || pressureKPa < blast.LeastStripKPa {
		return blast.BookRate{}, false
	}
	carry := func(rate *float64) float64 {
		if rate == nil {
			return 0
		}
		carried, err := blast.StripRate(*rate, known, work)
		if err != nil {
			ok = false
		}
		return carried * feedFactor(p)
	}
	rate := blast.BookRate{LowM2H: carry(media.StripRateLowM2H), LikelyM2H: carry(media.StripRateM2H), HighM2H: carry(media.StripRateHighM2H), Source: "the product " + media.ID}
	return rate, ok
}

// BreakdownPercent is the share of a medium that one pass breaks on a substrate
// at a pressure, where it was measured on that (true), and the trade's figure of
// what is lost in all elsewhere.
func BreakdownPercent(media *products.Media, substrate string, pressureKPa float64) (percent float64, measured bool) {
	for _, m := range media.Breakdowns {
		if m.Substrate == family(substrate) {
			if broken, _, ok := carriedBreakdown(media, m.BreakdownPercent, pressureKPa); ok {
				return broken, true
			}
		}
	}
	return media.BreakdownPercent, false
}

// carriedBreakdown carries a measured breakdown to a pressure and holds it within
// the band that is published for the medium, in percent; bounds are fractions.
func carriedBreakdown(media *products.Media, measured, pressureKPa float64) (percent float64, bounds [2]float64, ok bool) {
	if media.BreakdownAtKPa == nil {
		return 0, bounds, false
	}
	bounds = [2]float64{valueOr(media.BreakdownLowPercent, 0) / 100, valueOr(media.BreakdownHighPercent, 100) / 100}
	raw, err := blast.Breakdown(measured/100, *media.BreakdownAtKPa, pressureKPa)
	if err != nil {
		return 0, bounds, false
	}
	return 100 * min(max(raw, bounds[0]), bounds[1]), bounds, true
}
