package products

// Liquid is spread over an area and leaves no paint film: stripper, cleaner,
// treatment or temporary protective.
type Liquid struct {
	Common
	Use         string   `json:"use,omitempty" doc:"stripper, cleaner, treatment or protective"`
	CoverageLM2 float64  `json:"coverage_l_m2" limit:"(0,50]" doc:"liquid for one square metre, spread once"`
	DensityKgL  *float64 `json:"density_kg_l,omitempty" limit:"[0.5,3]" doc:"density"`
	Weather     *Weather `json:"weather,omitempty" doc:"what its data sheet asks of the weather"`
}

// LiquidUses lists what a liquid may be for.
func LiquidUses() []string { return []string{"stripper", "cleaner", "treatment", "protective"} }

// Check reports every fault in the liquid.
func (l *Liquid) Check(report func(pointer, code, detail string)) {
	check(l, report)
	oneOf("/use", l.Use, LiquidUses(), report)
	l.Weather.check(report)
}
