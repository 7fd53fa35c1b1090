package climate

import "math"

// farthestScaled is how far from a row of its table a time to the next coat is
// still scaled, in °C (common practice).
const farthestScaled = 20.0

// RecoatByRule finds the times to the next coat at a surface temperature that a
// table may not reach: from the nearest row, the least time doubles with every
// 10 °C colder and stays when it is warmer; the most time halves with every
// 10 °C hotter and stays when it is colder. Both err to the safe side. scaled
// says that the rule was used; found is false more than 20 °C from any row.
//
//	least = row · 2^((from − surface)/10), colder;  most = row / 2^((surface − to)/10), hotter
//
// Source: the least times of a published table imply factors of 1.62 to 2.10
// for 10 °C (reference planning C09, in tests/published); for the most times the
// same factor is an assumption.
func RecoatByRule(table []RecoatTime, surface float64) (row RecoatTime, scaled, found bool) {
	if row, found := RecoatAt(table, surface); found {
		return row, false, true
	}
	if len(table) == 0 {
		return RecoatTime{}, false, false
	}
	if row = table[0]; surface < row.FromC {
		if row.LeastH != nil {
			least := *row.LeastH * math.Exp2((row.FromC-surface)/10)
			row.LeastH = &least
			row.MostH = max(row.MostH, least)
		}
		return row, true, row.FromC-surface <= farthestScaled
	}
	row = table[len(table)-1]
	row.MostH /= math.Exp2((surface - row.ToC) / 10)
	if row.LeastH != nil && *row.LeastH > row.MostH {
		row.LeastH = &row.MostH
	}
	return row, true, surface-row.ToC <= farthestScaled
}
