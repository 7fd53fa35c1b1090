package blast

import "filmbuild/surfaces/quantity"

// metal is one of the metals of old paint that make waste hazardous.
type metal struct {
	name       string
	limitMgL   float64 // of the leachate: hazardous at it and above
	percentage func(b Blasting) *float64
}

// metals are those that old paint may hold much of.
//
// Source: 40 CFR 261.24 Table 1 (E-7, read): D008, D007, D006.
func metals() []metal {
	return []metal{
		{"lead", 5.0, func(b Blasting) *float64 { return b.FilmLeadPercent }},
		{"chromium", 5.0, func(b Blasting) *float64 { return b.FilmChromiumPercent }},
		{"cadmium", 1.0, func(b Blasting) *float64 { return b.FilmCadmiumPercent }},
	}
}

// Leachate is the most that a metal can reach in the leachate of the waste, were
// all of it to dissolve.
type Leachate struct {
	Metal                string  `json:"metal"`
	InWastePercent       float64 `json:"in_waste_percent"`
	LeachateMostGM3      float64 `json:"leachate_most_g_m3"`            // g/m³ is mg/L
	LeachateSingleUseGM3 float64 `json:"leachate_most_single_use_g_m3"` // were the media thrown once
	LimitGM3             float64 `json:"limit_g_m3"`                    // hazardous at it and above
	MayBeHazardous       bool    `json:"may_be_hazardous"`              // only a laboratory can tell; below the limit it cannot be
	MayBeHazardousOnce   bool    `json:"may_be_hazardous_single_use"`
}

// LeachateMost returns the most of a metal, in mg/L, that the leachate of waste
// can hold: the test takes 20 L of fluid for a kilogram.
//
//	most = total / 20
//
// total is in mg/kg of waste in [0, 1e6]; outside it returns a
// *quantity.RangeError.
//
// Source: SW-846 method 1311 section 1.2 (E-9, from memory); in tests/published.
func LeachateMost(total float64) (float64, error) {
	if err := quantity.Within("metal in the waste", total, "mg/kg", quantity.Limits{High: 1e6}); err != nil {
		return 0, err
	}
	return total / 20, nil
}

// leachate holds the metals of the film against the limits of the leachate, as
// the film is spread in the waste.
func (b Blasting) leachate(r *Result) error {
	if r.FilmInWastePercent == nil {
		return nil
	}
	for _, m := range metals() {
		share := m.percentage(b)
		if share == nil {
			continue
		}
		most, err := LeachateMost(*share * *r.FilmInWastePercent * 100) // percent of percent in mg/kg
		if err != nil {
			return err
		}
		once, err := LeachateMost(*share * *r.FilmInWasteOncePercent * 100)
		if err != nil {
			return err
		}
		r.Leachate = append(r.Leachate, Leachate{Metal: m.name, InWastePercent: *share * *r.FilmInWastePercent / 100, LeachateMostGM3: most, LeachateSingleUseGM3: once,
			LimitGM3: m.limitMgL, MayBeHazardous: most >= m.limitMgL, MayBeHazardousOnce: once >= m.limitMgL})
	}
	return nil
}
