package voc

import "fmt"

// Part is one thing that goes into the pot: base, hardener, thinner, water. It
// is described by volume (voc_g_l) or by weight (density_kg_l and
// solids_weight_percent), never both.
type Part struct {
	VolumeL float64 `json:"volume_l" limit:"[0.0001,100000]" doc:"how much of it goes in"`

	VOCGL               *float64 `json:"voc_g_l,omitempty" limit:"[0,1500]" doc:"by volume: its VOC less water and exempt compounds"`
	WaterVolumePercent  *float64 `json:"water_volume_percent,omitempty" limit:"[0,100]" doc:"by volume: share of the part that is water; 0 unless given"`
	ExemptVolumePercent *float64 `json:"exempt_volume_percent,omitempty" limit:"[0,100]" doc:"by volume: share of the part that is exempt compounds; 0 unless given"`

	DensityKgL          *float64 `json:"density_kg_l,omitempty" limit:"[0.5,5]" doc:"by weight: density of the part"`
	SolidsWeightPercent *float64 `json:"solids_weight_percent,omitempty" limit:"[0,100]" doc:"by weight: share that stays"`
	WaterWeightPercent  *float64 `json:"water_weight_percent,omitempty" limit:"[0,100]" doc:"by weight: share that is water; 0 unless given"`
	ExemptWeightPercent *float64 `json:"exempt_weight_percent,omitempty" limit:"[0,100]" doc:"by weight: share that is exempt compounds; 0 unless given"`
	ExemptDensityKgL    *float64 `json:"exempt_density_kg_l,omitempty" limit:"[0.5,3]" doc:"by weight: density of the exempt compounds; needed where there are any"`
}

// Mixture is a coating as it is applied: its parts, and what it is held against.
type Mixture struct {
	Parts        []Part   `json:"parts" doc:"everything that is mixed, 1 to 50"`
	LimitGL      *float64 `json:"limit_g_l,omitempty" limit:"[1,1500]" doc:"the limit of the rule that holds where the coating is used"`
	ThinnerVOCGL *float64 `json:"thinner_voc_g_l,omitempty" limit:"[0,1500]" doc:"VOC of a thinner, to see how much of it may be added; needs limit_g_l"`

	ThinnerWaterVolumePercent  *float64 `json:"thinner_water_volume_percent,omitempty" limit:"[0,100]" doc:"share of that thinner that is water"`
	ThinnerExemptVolumePercent *float64 `json:"thinner_exempt_volume_percent,omitempty" limit:"[0,100]" doc:"share of that thinner that is exempt solvent; its VOC is less both"`
}

// NewMixture returns a mixture without parts or limit; both are the user's.
func NewMixture() *Mixture { return &Mixture{} }

// mostParts is more than any pot holds.
const mostParts = 50

// contents is what a part brings, in g and L.
type contents struct{ voc, water, exempt float64 }

func or0(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}

func (p Part) byVolume() bool {
	return p.VOCGL != nil || p.WaterVolumePercent != nil || p.ExemptVolumePercent != nil
}

func (p Part) byWeight() bool {
	return p.DensityKgL != nil || p.SolidsWeightPercent != nil || p.WaterWeightPercent != nil ||
		p.ExemptWeightPercent != nil || p.ExemptDensityKgL != nil
}

// contents of a part that is sound. Volumes found from rounded densities are
// held within the part.
func (p Part) contents() contents {
	var c contents
	if p.byVolume() {
		c.water = p.VolumeL * or0(p.WaterVolumePercent) / 100
		c.exempt = p.VolumeL * or0(p.ExemptVolumePercent) / 100
		c.voc = or0(p.VOCGL) * max(p.VolumeL-c.water-c.exempt, 0)
		return c
	}
	mass := p.VolumeL * or0(p.DensityKgL) // kg
	water, exempt := or0(p.WaterWeightPercent)/100, or0(p.ExemptWeightPercent)/100
	c.voc = 1000 * mass * max(1-or0(p.SolidsWeightPercent)/100-water-exempt, 0)
	c.water = min(mass*water/waterDensity, p.VolumeL)
	if exempt > 0 {
		c.exempt = min(mass*exempt/or0(p.ExemptDensityKgL), p.VolumeL-c.water)
	}
	return c
}

// fault says what keeps a part from being reckoned, in one sentence.
func (p Part) fault() (pointer, code, detail string) {
	switch {
	case p.byVolume() && p.byWeight():
		return "", "inconsistent", "this part is described by volume and by weight; give voc_g_l, or density_kg_l with solids_weight_percent"
	case p.byVolume():
		return p.faultByVolume()
	}
	return p.faultByWeight()
}

func (p Part) faultByVolume() (pointer, code, detail string) {
	if p.VOCGL == nil {
		return "/voc_g_l", "required", "voc_g_l is missing; of water it is 0"
	}
	if sum := or0(p.WaterVolumePercent) + or0(p.ExemptVolumePercent); sum > 100 {
		return "", "inconsistent", fmt.Sprintf("water and exempt compounds are %g %% of this part; together they must be at most 100 %%", sum)
	}
	return "", "", ""
}

func (p Part) faultByWeight() (pointer, code, detail string) {
	switch {
	case p.DensityKgL == nil && p.SolidsWeightPercent == nil:
		return "", "required", "this part has no VOC; give voc_g_l, or density_kg_l with solids_weight_percent"
	case p.DensityKgL == nil:
		return "/density_kg_l", "required", "density_kg_l is missing; a part by weight needs it"
	case p.SolidsWeightPercent == nil:
		return "/solids_weight_percent", "required", "solids_weight_percent is missing; a part by weight needs it, and of a thinner it is 0"
	case or0(p.ExemptWeightPercent) > 0 && p.ExemptDensityKgL == nil:
		return "/exempt_density_kg_l", "required", "exempt_density_kg_l is missing; the volume of the exempt compounds follows from it"
	}
	sum := *p.SolidsWeightPercent + or0(p.WaterWeightPercent) + or0(p.ExemptWeightPercent)
	if sum > 100+1e-9 {
		return "", "inconsistent", fmt.Sprintf("solids, water and exempt compounds are %.4g %% of this part; together they must be at most 100 %%", sum)
	}
	volume := *p.DensityKgL * or0(p.WaterWeightPercent) / 100 / waterDensity
	if e := or0(p.ExemptWeightPercent); e > 0 {
		volume += *p.DensityKgL * e / 100 / *p.ExemptDensityKgL
	}
	if volume > 1+densitySlack {
		return "", "inconsistent", fmt.Sprintf("at this density the water and exempt compounds alone would fill %.0f %% of the part; look at density_kg_l and exempt_density_kg_l", 100*volume)
	}
	return "", "", ""
}
