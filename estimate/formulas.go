package estimate

import "filmbuild/surfaces/quantity"

// Formula is a formula that estimates use.
type Formula struct {
	Quantity string `json:"quantity"`
	Unit     string `json:"unit"`
	Formula  string `json:"formula"`
	Source   string `json:"source"`
}

// Formulas lists the formulas in the working of estimates, each once, in the
// order of their first use.
func Formulas(estimates ...*Estimate) []Formula {
	found := []Formula{}
	seen := map[Formula]bool{}
	add := func(lines []quantity.Working) {
		for _, w := range lines {
			f := Formula{Quantity: w.Quantity, Unit: w.Unit, Formula: w.Formula, Source: w.Source}
			if !seen[f] {
				seen[f] = true
				found = append(found, f)
			}
		}
	}
	for _, e := range estimates {
		for i := range e.Areas {
			add(e.Areas[i].Working)
		}
		for i := range e.Steps {
			add(e.Steps[i].Working)
		}
	}
	return found
}
