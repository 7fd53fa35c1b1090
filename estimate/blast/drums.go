package blast

import (
	"math"

	"filmbuild/surfaces/quantity"
)

const (
	DrumLitres     = 208.198 // L, 55 US gallons. Source: definition (E-12)
	DrumFill       = 0.9     // share that is filled. Source: E-12
	DrumMostKg     = 400     // kg that one drum may hold. Source: from memory, common steel drums; the mark on the drum counts
	drumRoundingUp = 1e-9    // so that three full drums are three in spite of rounding
)

// Drum is what waste is put into.
type Drum struct {
	Litres float64 // its whole content
	Fill   float64 // share that is filled, in (0, 1]
	MostKg float64 // it may weigh
}

// Kilograms returns what one drum holds of waste of a bulk density.
//
//	kilograms = min(litres · fill · density, most)
//
// density is in kg/L in [0.05, 6]. Outside that range, or for a drum that is
// none, it returns a *quantity.RangeError.
//
// Source: definition (E-12); in tests/published.
func (d Drum) Kilograms(density float64) (float64, error) {
	for _, g := range []struct {
		name, unit string
		value      float64
		limits     quantity.Limits
	}{
		{"drum content", "L", d.Litres, quantity.Limits{Low: 1, High: 20000}},
		{"drum fill", "", d.Fill, quantity.Limits{High: 1, LowOpen: true}},
		{"drum weight", "kg", d.MostKg, quantity.Limits{Low: 1, High: 20000}},
		{"bulk density of the waste", "kg/L", density, quantity.Limits{Low: 0.05, High: 6}},
	} {
		if err := quantity.Within(g.name, g.value, g.unit, g.limits); err != nil {
			return 0, err
		}
	}
	return min(d.Litres*d.Fill*density, d.MostKg), nil
}

// Drums returns the whole drums for waste, in kg, of which each holds each.
//
//	drums = ⌈waste / each⌉
//
// waste is in [0, 1e9]; each is in [0.01, 20000]. Outside those ranges it returns a
// *quantity.RangeError. Source: identity.
func Drums(waste, each float64) (int, error) {
	if err := quantity.Within("waste", waste, "kg", quantity.Limits{High: 1e9}); err != nil {
		return 0, err
	}
	if err := quantity.Within("content of a drum", each, "kg", quantity.Limits{Low: 0.01, High: 20000}); err != nil {
		return 0, err
	}
	return int(math.Ceil(waste/each - drumRoundingUp)), nil
}
