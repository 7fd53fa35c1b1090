package estimate

import (
	"math"

	"filmbuild/estimate/climate"
	"filmbuild/estimate/weather"
	"filmbuild/products"
)

// Conditions are the weather in which a step is done.
type Conditions struct {
	AirC                    *float64 `json:"air_c" limit:"[-45,60]" doc:"temperature of the air at the work"`
	RelativeHumidityPercent float64  `json:"relative_humidity_percent" limit:"(0,100]" doc:"of the air at the work"`
	SurfaceC                *float64 `json:"surface_c" limit:"[-45,60]" doc:"temperature of the coldest surface worked on"`
	WindMS                  *float64 `json:"wind_m_s,omitempty" limit:"[0,60]" doc:"wind at the work; judged where paint is sprayed"`
}

// conditioned notes what is missing in the conditions of a step.
func (c *checker) conditioned(w *Conditions, at string) {
	if w == nil {
		return
	}
	if w.AirC == nil {
		c.faults.Add(at+"/conditions/air_c", "required", "air_c is missing; measure the temperature of the air at the work")
	}
	if w.SurfaceC == nil {
		c.faults.Add(at+"/conditions/surface_c", "required", "surface_c is missing; measure the coldest surface that is worked on")
	}
}

// conditions holds what is put on in a step, and blasting, against the weather
// that the step gives.
func (r *run) conditions() {
	for i, step := range r.job.Steps {
		w := step.base().Conditions
		if w == nil {
			continue
		}
		s := &r.estimate.Steps[i]
		now := climate.Weather{AirC: *w.AirC, HumidityPercent: w.RelativeHumidityPercent, SurfaceC: *w.SurfaceC}
		if painted, ok := step.(interface{ film() *FilmPlan }); ok && sprays(painted.film().Method) {
			now.WindMS = w.WindMS
		}
		told := map[string]bool{}
		for _, a := range r.demanding(step, s) {
			rulings, err := a.Demands.Judge(now)
			if err != nil {
				continue // within the limits of Conditions every formula holds
			}
			for _, rule := range rulings {
				text := "conditions refuse " + a.ID + ": " + rule.Detail + " (" + rule.Rule + "; " + rule.Source + ")"
				if !rule.Passes && !told[text] {
					told[text] = true
					s.Warnings = append(s.Warnings, text)
				}
			}
			for _, note := range a.Notes {
				r.assumed.add(s.ID, "weather limits of "+a.ID+": general rules", 1, "", note)
			}
		}
	}
}

// demanding lists what asks something of the weather in a step: the paints and
// liquids that it puts on, as far as they ask anything, and blasting.
func (r *run) demanding(step Step, s *StepEstimate) []weather.Applied {
	var list []weather.Applied
	if _, ok := step.(*Blast); ok { // IMO guidelines for protective coatings: no blasting either when damp
		general := climate.General()
		open := climate.Bound{Low: math.Inf(-1), High: math.Inf(1)}
		general.AirC, general.SurfaceC = open, open
		list = append(list, weather.Applied{ID: "blasting", Demands: general})
	}
	for _, m := range s.Materials {
		p, _ := r.catalogue.Product(m.Product)
		if liquid, ok := p.(*products.Liquid); ok && liquid.Weather == nil {
			continue // washing and the like ask nothing unless the product does
		}
		if a, ok := weather.For(p, r.catalogue); ok {
			list = append(list, a)
		}
	}
	return list
}

// sprays says whether a method throws paint through the air.
func sprays(method string) bool { return method != "" && method != "brush" && method != "roller" }
