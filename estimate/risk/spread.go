package risk

import "math"

// Distributions of a spread.
const (
	PERT       = "pert"
	Triangular = "triangular"
)

// Spread is a number that is not known exactly.
type Spread struct {
	Low          float64 `json:"low"`
	Likely       float64 `json:"likely"`
	High         float64 `json:"high"`
	Distribution string  `json:"distribution"` // pert or triangular
}

// Valid reports whether the three numbers are finite and in order and the
// distribution is known.
func (s Spread) Valid() bool {
	finite := !math.IsInf(s.Low, 0) && !math.IsInf(s.High, 0) && !math.IsInf(s.High-s.Low, 0)
	return finite && s.Low <= s.Likely && s.Likely <= s.High && (s.Distribution == PERT || s.Distribution == Triangular)
}

// Varies reports whether there is anything to draw.
func (s Spread) Varies() bool { return s.Low < s.High }

// Shape returns the two shape parameters of a PERT spread's beta distribution,
// which add up to 6. Low must be below High.
//
//	α = 1 + 4·(likely − low)/(high − low)    β = 1 + 4·(high − likely)/(high − low)
//
// Source: [PERT], reference planning U05 (mark A).
func (s Spread) Shape() (alpha, beta float64) {
	alpha = 1 + 4*(s.Likely-s.Low)/(s.High-s.Low)
	return alpha, 6 - alpha
}

// Mean returns the expected value.
//
//	PERT (low + 4·likely + high)/6    triangular (low + likely + high)/3
//
// Source: reference planning U05 and U04 (mark A).
func (s Spread) Mean() float64 {
	if s.Distribution == Triangular {
		return (s.Low + s.Likely + s.High) / 3
	}
	return (s.Low + 4*s.Likely + s.High) / 6
}

// Variance returns the exact variance. That of PERT is not the ((high − low)/6)²
// of the textbooks, which no beta distribution with this mean has.
//
//	PERT (µ − low)·(high − µ)/7    triangular (a² + m² + b² − a·m − a·b − m·b)/18
//
// Source: reference planning U05, U06 and U04 (marks A and D). The triangular
// form is written with differences, so that large numbers lose no digits.
func (s Spread) Variance() float64 {
	if s.Distribution == Triangular {
		left, right := s.Likely-s.Low, s.High-s.Likely
		return (left*left + left*right + right*right) / 18
	}
	mean := s.Mean()
	return (mean - s.Low) * (s.High - mean) / 7
}

// Quantile returns the value that is not exceeded with the probability that a
// standard normal score z is not exceeded with, from the distribution's own
// formula and not from a table.
//
// Source: the triangular distribution's inverse is an identity; that of the
// beta distribution is mathext.InvRegIncBeta of a general library.
func (s Spread) Quantile(z float64) float64 {
	if !s.Varies() {
		return s.Likely
	}
	if s.Distribution == Triangular {
		return triangular(s, z)
	}
	alpha, _ := s.Shape()
	return s.Low + (s.High-s.Low)*betaAt(alpha, z)
}

// triangular is the inverse of the triangular distribution, from the nearer end
// so that the far tail keeps its digits.
func triangular(s Spread, z float64) float64 {
	width := s.High - s.Low
	if below := lowerTail(z); below*width <= s.Likely-s.Low {
		return s.Low + math.Sqrt(below*width*(s.Likely-s.Low))
	}
	return s.High - math.Sqrt(lowerTail(-z)*width*(s.High-s.Likely))
}

// lowerTail is the probability of a standard normal score below z.
func lowerTail(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
