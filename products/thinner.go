package products

// Thinner is the solvent that a paint is thinned with.
type Thinner struct {
	Common
	VOCGL      *float64 `json:"voc_g_l,omitempty" limit:"[0,1500]" doc:"volatile organic compounds; 0 for an exempt solvent"`
	DensityKgL *float64 `json:"density_kg_l,omitempty" limit:"[0.5,3]" doc:"density"`
}

// Check reports every fault in the thinner.
func (t *Thinner) Check(report func(pointer, code, detail string)) {
	check(t, report)
	if t.VOCGL != nil && t.DensityKgL != nil && *t.VOCGL > 1000**t.DensityKgL {
		report("/voc_g_l", "inconsistent", "voc_g_l is more than the whole mass of a litre by density_kg_l; mend one of them")
	}
}
