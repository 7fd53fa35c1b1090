package risk

import "math"

// hermiteTerms is how many terms the series of a quantile function has here. For
// PERT and triangular spreads what is left out is below 10^-4 of the variance.
const hermiteTerms = 16

// hermite returns the coefficients of a spread's quantile function in normalised
// Hermite polynomials of the score; their squares add up to the variance.
//
//	c[k] = ∫ quantile(z)·He[k](z)/√k!·φ(z) dz,  k = 1, 2, …
//
// Source: identity (the polynomials are orthonormal under the normal density).
func hermite(s Spread) [hermiteTerms]float64 {
	var c [hermiteTerms]float64
	const step = 1.0 / tablePieces
	for z := -tableEnd; z <= tableEnd; z += step {
		weight := s.Quantile(z) * math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) * step
		before, here := 1.0, z
		for k := range c {
			c[k] += weight * here
			before, here = here, (z*here-math.Sqrt(float64(k+1))*before)/math.Sqrt(float64(k+2))
		}
	}
	return c
}

// scoreRatio returns the correlation that two scores need so that the values
// drawn by them have the correlation wanted, which is somewhat less than that of
// the scores. A correlation that no two such values can have gives −1 or 1.
//
//	corr(values) = Σ a[k]·b[k]·r^k / √(Σ a[k]² · Σ b[k]²)
//
// Source: Mehler's formula (identity of the bivariate normal density).
func scoreRatio(a, b Spread, wanted float64) float64 {
	if !a.Varies() || !b.Varies() || wanted == 0 {
		return wanted
	}
	ca, cb := hermite(a), hermite(b)
	var squaresA, squaresB float64
	for k := range ca {
		squaresA += ca[k] * ca[k]
		squaresB += cb[k] * cb[k]
	}
	values := func(r float64) float64 {
		sum, power := 0.0, r
		for k := range ca {
			sum += ca[k] * cb[k] * power
			power *= r
		}
		return sum / math.Sqrt(squaresA*squaresB)
	}
	low, high := -1.0, 1.0
	for range 60 {
		if middle := (low + high) / 2; values(middle) < wanted {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
