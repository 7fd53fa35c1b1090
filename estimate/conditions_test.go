package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The weather of a step is held against what is put on: the rule of 3 °C (W14:
// 16 °C, 71 %, surface 13 °C is refused), the product's own limits (W18, W19),
// and wind only where paint is sprayed.
func TestConditionsOfAStep(t *testing.T) {
	warned := func(step doc, conditions doc) []string {
		step["conditions"] = conditions
		var rules []string
		for _, w := range work(t, doc{"components": []doc{flat("a", 4, 4)}, "steps": []doc{step}}).Steps[0].Warnings {
			if rest, ok := strings.CutPrefix(w, "conditions refuse "); ok {
				_, rule, _ := strings.Cut(rest, " (")
				rule, _, _ = strings.Cut(rule, ";")
				rules = append(rules, rule)
			}
		}
		return rules
	}
	good := doc{"air_c": 20, "relative_humidity_percent": 60, "surface_c": 20, "wind_m_s": 3}
	aircraft := func() doc { return coat("s", "a", "epoxy-primer") }
	enamel := func() doc { return coat("s", "a", "alkyd-gloss-white") }
	assert.Empty(t, warned(aircraft(), good))
	assert.Equal(t, []string{"margin"}, warned(enamel(), doc{"air_c": 16, "relative_humidity_percent": 71, "surface_c": 13}))
	assert.Equal(t, []string{"margin", "surface"}, warned(aircraft(), doc{"air_c": 16, "relative_humidity_percent": 71, "surface_c": 13}))
	assert.Equal(t, []string{"humidity"}, warned(aircraft(), doc{"air_c": 20, "relative_humidity_percent": 80, "surface_c": 25}), "W18: at most 75 %")
	assert.Empty(t, warned(enamel(), doc{"air_c": 20, "relative_humidity_percent": 80, "surface_c": 25}))
	assert.Equal(t, []string{"wind"}, warned(aircraft(), doc{"air_c": 20, "relative_humidity_percent": 60, "surface_c": 20, "wind_m_s": "20 mph"}))
	brushed := enamel()
	brushed["method"] = "brush"
	assert.Empty(t, warned(brushed, doc{"air_c": 20, "relative_humidity_percent": 60, "surface_c": 20, "wind_m_s": "20 mph"}))
	blast := doc{"id": "s", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 5}
	assert.Equal(t, []string{"humidity"}, warned(blast, doc{"air_c": 2, "relative_humidity_percent": 86, "surface_c": 5}), "W16: no blasting above 85 %, cold or not")
	wash := doc{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent"}
	assert.Empty(t, warned(wash, doc{"air_c": 2, "relative_humidity_percent": 100, "surface_c": 2}), "water does not mind")
}

// Bad conditions are faults, each at its place.
func TestBadConditions(t *testing.T) {
	step := coat("s", "a", "epoxy-primer")
	step["conditions"] = doc{"air_c": 61, "relative_humidity_percent": 101, "wind_m_s": -1}
	_, err := try(t, doc{"components": []doc{flat("a", 4, 4)}, "steps": []doc{step}})
	for _, at := range []string{"air_c", "relative_humidity_percent", "surface_c", "wind_m_s"} {
		assert.ErrorContains(t, err, "/steps/0/conditions/"+at)
	}
}

// A product of the job's own brings its own limits.
func TestOwnProductAndItsWeather(t *testing.T) {
	step := coat("s", "a", "winter")
	step["conditions"] = doc{"air_c": 2, "relative_humidity_percent": 60, "surface_c": 2}
	paint := doc{"id": "winter", "kind": "paint", "volume_solids_percent": 50, "dry_film_um": 50, "weather": doc{"air_low_c": -5, "surface_low_c": -5}}
	e := work(t, doc{"components": []doc{flat("a", 4, 4)}, "products": []doc{paint}, "steps": []doc{step}})
	for _, w := range e.Steps[0].Warnings {
		assert.NotContains(t, w, "conditions refuse")
	}
	paint["weather"] = doc{"air_low_c": 5, "air_high_c": 1}
	_, err := try(t, doc{"components": []doc{flat("a", 4, 4)}, "products": []doc{paint}, "steps": []doc{step}})
	assert.ErrorContains(t, err, "/products/0/weather/air_high_c")
}
