package film

import "filmbuild/surfaces/quantity"

// WetFilm returns the wet film thickness, in µm, that dries to dryFilm.
//
//	wet = dryFilm · (1 + thinner) / volumeSolids
//
// dryFilm is in µm in [0.1, 5000]; volumeSolids is a fraction in [0.01, 1];
// thinner is the volume of thinner per volume of unthinned paint, in [0, 3].
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: coating-school slide deck (reference coating F9); E13, E14 in
// tests/published.
func WetFilm(dryFilm, volumeSolids, thinner float64) (float64, error) {
	if err := quantity.Within("dry film", dryFilm, "µm", filmLimits); err != nil {
		return 0, err
	}
	solids, err := ThinnedSolids(volumeSolids, thinner)
	if err != nil {
		return 0, err
	}
	return dryFilm / solids, nil
}

// DryFilm returns the dry film thickness, in µm, that a wet film leaves: what a
// comb gauge reading becomes.
//
//	dry = wetFilm · volumeSolids / (1 + thinner)
//
// wetFilm is in µm in [0.1, 10⁷]; volumeSolids and thinner as in WetFilm.
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: MIL-HDBK-1110 2.1.5 (reference coating F6); E13 in tests/published.
func DryFilm(wetFilm, volumeSolids, thinner float64) (float64, error) {
	if err := quantity.Within("wet film", wetFilm, "µm", wetFilmLimits); err != nil {
		return 0, err
	}
	solids, err := ThinnedSolids(volumeSolids, thinner)
	if err != nil {
		return 0, err
	}
	return wetFilm * solids, nil
}

// ThinnedSolids returns the volume solids, a fraction, of paint with thinner in it.
//
//	thinned = volumeSolids / (1 + thinner)
//
// volumeSolids is a fraction in [0.01, 1]; thinner is the volume of thinner per
// volume of unthinned paint, in [0, 3]. Outside those ranges it returns a
// *quantity.RangeError.
//
// Source: coating-school slide deck (reference coating F9); E18 in tests/published.
func ThinnedSolids(volumeSolids, thinner float64) (float64, error) {
	if err := quantity.Within("volume solids", volumeSolids, "", solidsLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("thinner", thinner, "", thinnerLimits); err != nil {
		return 0, err
	}
	return volumeSolids / (1 + thinner), nil
}
