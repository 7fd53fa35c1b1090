package voc

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// Result is the VOC of a mixture.
type Result struct {
	VOCGL                      float64  `json:"voc_g_l"` // less water and exempt compounds: what limits are about
	VOCTotalG                  float64  `json:"voc_total_g"`
	VOCMaterialGL              float64  `json:"voc_material_g_l"` // of the whole volume, water and exempt compounds in it
	VolumeL                    float64  `json:"volume_l"`
	WaterL                     float64  `json:"water_l"`
	ExemptL                    float64  `json:"exempt_l"`
	WithinLimit                *bool    `json:"within_limit,omitempty"`
	MaxThinnerL                *float64 `json:"max_thinner_l,omitempty"`                 // nil also when no amount reaches the limit
	MaxThinnerPercent          *float64 `json:"max_thinner_percent,omitempty"`           // of the mixture as it is
	ImpliedVolumeSolidsPercent *float64 `json:"implied_volume_solids_percent,omitempty"` // of solvent-borne mixtures; a check on the data sheet

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}

const (
	sourceLessWater = "40 CFR 59.104(a)(1)"
	sourceMixture   = "Metal Finishing Guidebook 2012-2013 App. B"
	sourceImplied   = "30 TAC 115.423(1), solvents of 7.36 lb/gal assumed"
	identity        = "identity"

	// limitSlack forgives the rounding of sums of parts that each sit on the limit.
	limitSlack = 1e-9
)

// Calculate works out a mixture. It expects input that Check finds sound and
// returns an error otherwise.
func (m Mixture) Calculate() (Result, error) {
	if err := m.sound(); err != nil {
		return Result{}, err
	}
	t := m.total()
	less, err := LessWater(t.voc, t.volume, t.water, t.exempt)
	if err != nil {
		return Result{}, err
	}
	r := Result{VOCGL: less, VOCTotalG: t.voc, VOCMaterialGL: t.voc / t.volume, VolumeL: t.volume, WaterL: t.water, ExemptL: t.exempt}
	r.Working = []quantity.Working{
		{Quantity: "voc_total_g", Value: t.voc, Unit: "g", Formula: "sum of the parts", Terms: m.terms(), Source: sourceMixture},
		{Quantity: "voc_g_l", Value: less, Unit: "g/L", Formula: "W/(V − Vw − Ve)",
			Terms: map[string]float64{"W": t.voc, "V": t.volume, "Vw": t.water, "Ve": t.exempt}, Source: sourceLessWater},
		{Quantity: "voc_material_g_l", Value: r.VOCMaterialGL, Unit: "g/L", Formula: "W/V",
			Terms: map[string]float64{"W": t.voc, "V": t.volume}, Source: identity},
	}
	if err := m.hold(&r, t); err != nil {
		return Result{}, err
	}
	m.imply(&r, t)
	return r, nil
}

// sound returns the first fault as an error, so that no number comes of it.
func (m *Mixture) sound() error {
	var first error
	m.Check(func(pointer, _, detail string) {
		if first == nil {
			first = fmt.Errorf("%s: %s", pointer, detail)
		}
	})
	return first
}

// terms is the VOC of each part in g, as part1, part2 and so on.
func (m *Mixture) terms() map[string]float64 {
	terms := make(map[string]float64, len(m.Parts))
	for i, p := range m.Parts {
		terms[fmt.Sprintf("part%d", i+1)] = p.contents().voc
	}
	return terms
}

// hold compares the mixture with its limit and finds the room for thinner.
func (m *Mixture) hold(r *Result, t total) error {
	if m.LimitGL == nil {
		return nil
	}
	limit := *m.LimitGL
	r.WithinLimit = new(r.VOCGL <= limit*(1+limitSlack))
	if m.ThinnerVOCGL == nil {
		return nil
	}
	counted := 1 - (or0(m.ThinnerWaterVolumePercent)+or0(m.ThinnerExemptVolumePercent))/100
	litres, bounded, err := MaxThinner(t.voc, t.rest(), limit, *m.ThinnerVOCGL)
	if err != nil {
		return err
	}
	if counted <= 0 && *r.WithinLimit {
		bounded = false // water and exempt solvent add nothing that counts
	}
	if !bounded {
		r.Warnings = append(r.Warnings, fmt.Sprintf("this thinner has %g g/L, not above the limit of %g g/L, so no amount of it takes the mixture over; the maker's greatest thinning still holds", *m.ThinnerVOCGL, limit))
		return nil
	}
	if litres > 0 {
		litres /= counted // only what is neither water nor exempt counts
	}
	r.MaxThinnerL, r.MaxThinnerPercent = &litres, new(100*litres/t.volume)
	r.Working = append(r.Working, quantity.Working{Quantity: "max_thinner_l", Value: litres, Unit: "L", Formula: "max(0, (L·(V − Vw − Ve) − W)/((T − L)·c))",
		Terms: map[string]float64{"c": counted, "L": limit, "V": t.volume, "Vw": t.water, "Ve": t.exempt, "W": t.voc, "T": *m.ThinnerVOCGL}, Source: sourceMixture})
	return nil
}

// imply gives the solids that the VOC of a solvent-borne mixture implies.
func (m *Mixture) imply(r *Result, t total) {
	if t.water > 0 || t.exempt > 0 {
		return
	}
	solids, err := ImpliedSolids(r.VOCGL, SolventDensity)
	if err != nil {
		r.Warnings = append(r.Warnings, fmt.Sprintf("the VOC is above %.0f g/L, the density rules assume for solvents: this is a thinner, or a figure is wrong", SolventDensity))
		return
	}
	r.ImpliedVolumeSolidsPercent = new(100 * solids)
	r.Working = append(r.Working, quantity.Working{Quantity: "implied_volume_solids_percent", Value: 100 * solids, Unit: "%", Formula: "100·(1 − C/D)",
		Terms: map[string]float64{"C": r.VOCGL, "D": SolventDensity}, Source: sourceImplied})
}
