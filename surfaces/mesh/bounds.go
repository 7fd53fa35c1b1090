package mesh

import "gonum.org/v1/gonum/stat/distuv"

// shareBounds returns the 95 % confidence bounds of a share of which found of
// number independent draws had the property.
//
// Source: C. Clopper, E. Pearson, "The use of confidence or fiducial limits
// illustrated in the case of the binomial", Biometrika 26 (1934): quantiles of
// the beta distribution.
func shareBounds(found, number int) (low, high float64) {
	const tail = 0.025
	high = 1
	if found > 0 {
		low = distuv.Beta{Alpha: float64(found), Beta: float64(number - found + 1)}.Quantile(tail)
	}
	if found < number {
		high = distuv.Beta{Alpha: float64(found + 1), Beta: float64(number - found)}.Quantile(1 - tail)
	}
	return low, high
}
