package voc

import "filmbuild/surfaces/quantity"

// The ranges in which the formulas of this package are used: wider than any
// coating and narrower than nonsense (common practice).
var (
	volumeLimits  = quantity.Limits{Low: 0.0001, High: 100000} // L
	withinLimits  = quantity.Limits{High: 1e7}                 // L of water or exempt compounds, and of mixtures of many parts
	contentLimits = quantity.Limits{High: 1500}                // g/L; no common solvent is denser
	massLimits    = quantity.Limits{High: 1e11}                // g
	densityLimits = quantity.Limits{Low: 0.5, High: 5}         // kg/L; zinc-rich paint has about 3
	exemptLimits  = quantity.Limits{Low: 0.5, High: 3}         // kg/L
	shareLimits   = quantity.Limits{High: 1}
	solventLimits = quantity.Limits{Low: 500, High: 2000} // g/L
)

const (
	// waterDensity is 8.33 lb/gal at 20 °C. Source: reference coating V6 (0.99816),
	// and 0.9982 from memory.
	waterDensity = 0.9982 // kg/L

	// SolventDensity is the density, in g/L, that rules assume for the solvents of a
	// paint: 7.36 lb/gal. Source: 30 TAC 115.423(1) (reference coating V2).
	SolventDensity = 7.36 * 453.59237 / 3.785411784

	// leastRest is the least share of a mixture that must be neither water nor
	// exempt. Below it the quotient says nothing (common practice).
	leastRest = 0.01

	// densitySlack is how far water and exempt volumes found from rounded densities
	// may exceed the part that holds them before it is called a fault.
	densitySlack = 0.01
)
