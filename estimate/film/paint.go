package film

import (
	"math"

	"filmbuild/surfaces/quantity"
)

// Paint returns the unthinned paint, in L, that leaves film on area.
//
//	paint = area · film / (1000 · volumeSolids · transferEfficiency · (1 − loss))
//
// area is in m² in (0, 100000]; film is everything dry that is wanted there, all
// coats and the filling of the profile, in µm in [0.01, 10⁶]; volumeSolids and
// transferEfficiency are fractions in [0.01, 1], loss in [0, 0.95]. Outside
// those ranges it returns a *quantity.RangeError.
//
// Source: Metal Finishing Guidebook 2013 p. 835 (reference coating F10: area
// times film over solids, divided by transfer efficiency); division by
// (1 − loss), F7. Worked examples E1, E16 in tests/published.
func Paint(area, film, volumeSolids, transferEfficiency, loss float64) (float64, error) {
	if err := quantity.Within("area", area, "m²", areaLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("dry film", film, "µm", totalFilmLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("volume solids", volumeSolids, "", solidsLimits); err != nil {
		return 0, err
	}
	if err := withinLosses(transferEfficiency, loss); err != nil {
		return 0, err
	}
	return area * film / (1000 * volumeSolids * transferEfficiency * (1 - loss)), nil
}

// ProfileFilm returns the even film, in µm, that has the volume of the paint in
// the valleys of a blast profile.
//
//	film = profile · fill
//
// profile is the peak-to-valley height in µm in [0, 500]; fill is the share of
// that depth which is paint, in [0, 1]. Outside those ranges it returns a
// *quantity.RangeError.
//
// Source: fill follows from an unattributed note on application losses, whose
// 10, 35, 60 and 125 µm are 0.40 to 0.56 of the middle of its profile classes
// (reference coating P4 to P7); another published practice charges the whole
// depth. P8 in tests/published.
func ProfileFilm(profile, fill float64) (float64, error) {
	if err := quantity.Within("profile", profile, "µm", profileLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("profile fill", fill, "", fillLimits); err != nil {
		return 0, err
	}
	return profile * fill, nil
}

// HoseContents returns the paint, in L, that stands in a full hose or line: what
// a change of colour throws away at least.
//
//	contents = π/4 · bore² · length / 1000
//
// bore is the inner diameter in mm in (0, 100], length in m in (0, 1000].
// Outside those ranges it returns a *quantity.RangeError.
//
// Source: identity (reference coating W9, derived there).
func HoseContents(bore, length float64) (float64, error) {
	if err := quantity.Within("bore", bore, "mm", boreLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("length", length, "m", hoseLimits); err != nil {
		return 0, err
	}
	return math.Pi / 4 * bore * bore * length / 1000, nil
}
