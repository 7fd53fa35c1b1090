package film

import "filmbuild/surfaces/quantity"

// Mass returns the mass, in kg, of a dry film.
//
//	mass = area · film · density / 1000
//
// area is in m² in (0, 100000], film in µm in [0.01, 10⁶], density of the dry
// film in kg/L in [0.5, 10]. Outside those ranges it returns a
// *quantity.RangeError.
//
// Source: identity (reference blasting E-11); in tests/published.
func Mass(area, film, density float64) (float64, error) {
	if err := quantity.Within("area", area, "m²", areaLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("dry film", film, "µm", totalFilmLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("dry film density", density, "kg/L", densityLimits); err != nil {
		return 0, err
	}
	return area * film * density / 1000, nil
}

// SolidsDensity returns the density, in kg/L, of the dry film of a paint, from
// what a data sheet gives of the liquid.
//
//	density = weightSolids · liquidDensity / volumeSolids
//
// weightSolids and volumeSolids are fractions in [0.01, 1];
// liquidDensity in kg/L in [0.5, 10]. Outside those ranges it returns a
// *quantity.RangeError.
//
// Source: Ask-the-Expert October 2006 (reference coating W1).
func SolidsDensity(weightSolids, liquidDensity, volumeSolids float64) (float64, error) {
	if err := quantity.Within("weight solids", weightSolids, "", weightLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("liquid density", liquidDensity, "kg/L", densityLimits); err != nil {
		return 0, err
	}
	if err := quantity.Within("volume solids", volumeSolids, "", solidsLimits); err != nil {
		return 0, err
	}
	return weightSolids * liquidDensity / volumeSolids, nil
}
