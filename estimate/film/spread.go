package film

import "filmbuild/surfaces/quantity"

// TheoreticalSpreadingRate returns the area, in m², that one litre of unthinned
// paint covers at dryFilm when nothing is lost.
//
//	rate = 1000 · volumeSolids / dryFilm
//
// volumeSolids is a fraction in [0.01, 1], dryFilm in µm in [0.1, 5000].
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: volume identity; in print as 10·VS%/DFT, Ask-the-Expert July 2010
// (reference coating F1); worked examples E3, E4, E6 in tests/published.
func TheoreticalSpreadingRate(volumeSolids, dryFilm float64) (float64, error) {
	if err := quantity.Within("volume solids", volumeSolids, "", solidsLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("dry film", dryFilm, "µm", filmLimits); err != nil {
		return 0, err
	}
	return 1000 * volumeSolids / dryFilm, nil
}

// PracticalSpreadingRate returns the area, in m², that one litre of unthinned
// paint covers when part of it misses the surface or is never sprayed.
//
//	practical = theoretical · transferEfficiency · (1 − loss)
//
// theoretical is in m²/L, transferEfficiency the fraction of the sprayed solids
// that lands, in [0.01, 1], loss the fraction of the mixed paint that is never
// sprayed, in [0, 0.95]. Outside those ranges it returns a *quantity.RangeError.
//
// Source: coverage·(1 − loss), a public definition of practical coverage
// (reference coating F7); with transfer efficiency, Ask-the-Expert October 2003
// (E1). Worked examples in tests/published.
func PracticalSpreadingRate(theoretical, transferEfficiency, loss float64) (float64, error) {
	if err := quantity.Within("theoretical spreading rate", theoretical, "m²/L", rateLimits); err != nil {
		return 0, err
	}
	if err := withinLosses(transferEfficiency, loss); err != nil {
		return 0, err
	}
	return theoretical * transferEfficiency * (1 - loss), nil
}

func withinLosses(transferEfficiency, loss float64) error {
	if err := quantity.Within("transfer efficiency", transferEfficiency, "", efficiencyLimits); err != nil {
		return err
	}
	return quantity.Within("loss", loss, "", lossLimits)
}
