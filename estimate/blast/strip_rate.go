package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// Conditions are those under which a strip rate holds.
type Conditions struct {
	BoreMM      float64 // of the nozzle
	PressureKPa float64 // gauge, at the nozzle
	FilmUM      float64 // of the coating that comes off
}

const (
	// PressureExponent is that of the pressure in StripRate.
	//
	// Source: assumption, between two published figures that disagree: 100 psi in
	// place of 60 saves 5 % of the time (A-23, an exponent of 0.1), and a psi less
	// near 100 psi costs 1.5 % of the work (H-4, an exponent of 1.5).
	PressureExponent = 1.0

	// ThinnestShare is the share of the film of the book below which a thinner
	// film comes off no faster: the nozzle still has to pass every spot
	// (common practice).
	ThinnestShare = 0.5

	// SuctionRate is the strip rate of a suction feed over that of a pressure feed
	// of the same bore and pressure. Source: from memory, pressure feed works three
	// to four times as fast; that it is the more aggressive of the two is S-24.
	SuctionRate = 0.3

	LeastStripRate, MostStripRate = 0.001, 500.0 // m²/h of one nozzle; what StripRate holds its result to
)

// StripRate carries a strip rate from the conditions under which it is known to
// those of the work.
//
//	rate = known · (bore/bore0)² · (pressure/pressure0)^1 · film0/film
//
// known is in m²/h of one nozzle in [0.001, 500]; bores, pressures (above 0) and
// films (above 0, at most 20000 µm) as in Conditions. A film below half of film0
// counts as half of it. The result is held to [0.001, 500] m²/h. Outside those
// ranges it returns a *quantity.RangeError.
//
// Accuracy: an estimate from an estimate; a test patch is better.
//
// Source: the flow of media goes with bore²; rates are published
// for each mil of film (L04), so they go with 1/film; the pressure is
// PressureExponent's.
func StripRate(known float64, at, work Conditions) (float64, error) {
	if err := quantity.Within("strip rate", known, "m²/h", stripRateLimits); err != nil {
		return 0, err
	}
	for _, c := range []Conditions{at, work} {
		if err := c.within(); err != nil {
			return 0, err
		}
	}
	film := max(work.FilmUM, ThinnestShare*at.FilmUM)
	rate := known * math.Pow(work.BoreMM/at.BoreMM, 2) * math.Pow(work.PressureKPa/at.PressureKPa, PressureExponent) * (at.FilmUM / film)
	return min(max(rate, LeastStripRate), MostStripRate), nil
}

func (c Conditions) within() error {
	if err := quantity.Within("nozzle bore", c.BoreMM, "mm", boreLimits); err != nil {
		return err
	}
	if err := quantity.Within("gauge pressure", c.PressureKPa, "kPa", quantity.Limits{High: pressureLimits.High, LowOpen: true}); err != nil {
		return err
	}
	return quantity.Within("film", c.FilmUM, "µm", quantity.Limits{High: 20000, LowOpen: true})
}
