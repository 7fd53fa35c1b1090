package estimate

import (
	"slices"
)

// patchAssumptions lists what the test patches gave in place of the book, and
// how far it may be off.
func (r *run) patchAssumptions() {
	for _, step := range r.job.Steps {
		id := step.base().ID
		if len(r.patches[id]) == 0 {
			continue
		}
		t := r.tested(id)
		for _, f := range r.patchFigures(step, t) {
			figure, measured := t.off(f.name)
			if !measured {
				continue
			}
			if f.value > 0 {
				r.assumed.add(id, f.text, f.value, f.unit, "test patch")
			}
			for i := range r.assumed.list {
				a := &r.assumed.list[i]
				if a.Text == f.text && a.Source == "test patch" && slices.Contains(a.Steps, id) {
					low, high := patchEnds(figure, f.name, a.Value)
					a.Low, a.High, a.Spread = &low, &high, figure.Text()
				}
			}
		}
		if t.wholeCrew {
			r.assumed.add(id, "who did the test patches that do not say so: the whole crew of the step, or all its nozzles", 1, "", "assumption: give crew or nozzles to the test patch")
		}
	}
}

// testedEfficiency is what the assumption of a measured film is called; its value
// depends on the solids of each paint too.
const testedEfficiency = "transfer efficiency"

// patchFigure is what a test patch can give to a step. Of some the step itself
// tells the value, as it depends on more than the patch: value is 0 then.
type patchFigure struct {
	name, text, unit string
	value            float64
}

func (r *run) patchFigures(step Step, t tested) []patchFigure {
	rate := patchFigure{"rate_m2_h", "area the crew does in an hour", "m²/h", t.timedM2 / t.hours}
	switch p := step.(type) {
	case *Blast:
		return []patchFigure{
			{"strip_rate_m2_h", "area one nozzle strips in an hour", "m²/h", t.timedM2 / t.hours / float64(p.Nozzles)},
			{"media_kg_m2", "media thrown at one square metre", "kg/m²", t.mediaKg / t.thrownM2},
			{"breakdown_percent", "share of " + p.Media + " lost in one pass", "%", t.breakdownPercent()}}
	case *Coat, *Mark:
		return []patchFigure{rate, {"transfer_efficiency_percent", testedEfficiency, "%", 0}}
	case *Sand:
		return []patchFigure{rate, {"disc_area_m2", "area one " + p.Product + " prepares", "m²", t.wornM2 / t.discs}}
	case interface{ liquid() *Liquid }:
		return []patchFigure{rate, {"coverage_l_m2", "litres of " + p.liquid().Product + " for one square metre, once", "L/m²", t.litres / t.wettedM2}}
	}
	return nil
}
