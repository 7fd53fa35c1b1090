package products

import "fmt"

// Thinner is the solvent that a paint is thinned with.
type Thinner struct {
	Common
	VOCGL      *float64 `json:"voc_g_l,omitempty" limit:"[0,1500]" doc:"volatile organic compounds, less water and exempt; 0 for an exempt solvent and for water"`
	DensityKgL *float64 `json:"density_kg_l,omitempty" limit:"[0.5,3]" doc:"density"`

	WaterVolumePercent  *float64 `json:"water_volume_percent,omitempty" limit:"[0,100]" doc:"share that is water"`
	ExemptVolumePercent *float64 `json:"exempt_volume_percent,omitempty" limit:"[0,100]" doc:"share that is VOC-exempt solvent"`
}

// Check reports every fault in the thinner.
func (t *Thinner) Check(report func(pointer, code, detail string)) {
	check(t, report)
	if t.VOCGL != nil && t.DensityKgL != nil && *t.VOCGL > 1000**t.DensityKgL {
		report("/voc_g_l", "inconsistent", "voc_g_l is more than the whole mass of a litre by density_kg_l; mend one of them")
	}
	if sum := orZero(t.WaterVolumePercent) + orZero(t.ExemptVolumePercent); sum > 100 {
		report("/water_volume_percent", "inconsistent", fmt.Sprintf("water and exempt solvent are %.4g %% of the thinner; together they must be at most 100 %%", sum))
	}
}

// MaterialVOCGL is the VOC of a litre as it is, in g/L; nil where it is not known.
func (t *Thinner) MaterialVOCGL() *float64 {
	if t.VOCGL == nil {
		return nil
	}
	material := *t.VOCGL * (1 - (orZero(t.WaterVolumePercent)+orZero(t.ExemptVolumePercent))/100)
	return &material
}
