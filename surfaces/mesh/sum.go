package mesh

import "math"

// sum adds float64 values with Neumaier's correction: what each addition
// rounds away is kept and added at the end, so that ten million facets sum as
// exactly as two. Source: A. Neumaier, "Rundungsfehleranalyse einiger
// Verfahren zur Summation endlicher Summen", ZAMM 54 (1974), algorithm IV
// (title and number from memory).
type sum struct{ total, lost float64 }

func (s *sum) add(value float64) {
	t := s.total + value
	if math.Abs(s.total) >= math.Abs(value) {
		s.lost += (s.total - t) + value
	} else {
		s.lost += (value - t) + s.total
	}
	s.total = t
}

func (s sum) value() float64 { return s.total + s.lost }
