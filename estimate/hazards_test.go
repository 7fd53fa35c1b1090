package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A product of the job's own that is silent about its hazards does not make
// them go away (common practice: unknown counts as present).
func TestSilenceIsNoSafety(t *testing.T) {
	job := func(product doc) doc {
		return doc{"components": []doc{{"id": "deck", "shape": doc{"kind": "measured", "area_m2": 10}}}, "products": []doc{product},
			"steps": []doc{{"id": "c", "operation": "coat", "on": []string{"deck"}, "product": product["id"], "dry_film_um": 40, "method": "hvlp", "mask": false}}}
	}
	codes := func(product doc) []string {
		var list []string
		for _, c := range work(t, job(product)).Steps[0].Cautions {
			list = append(list, c.Code)
		}
		return list
	}
	packs := []doc{{"pack_l": 1, "price": "10.00"}}
	white := doc{"id": "polyurethane-gloss-white", "kind": "paint", "volume_solids_percent": 50, "packs": packs}
	assert.Contains(t, codes(white), "isocyanate", "those of the catalogue's product of that id")
	two := doc{"id": "mine", "kind": "paint", "volume_solids_percent": 50, "mix": doc{"base": 2, "hardener": 1}, "packs": packs}
	assert.Contains(t, codes(two), "isocyanate", "a paint of two parts")
	assert.NotContains(t, codes(doc{"id": "mine", "kind": "paint", "volume_solids_percent": 50, "hazards": []string{"solvent"}, "packs": packs}), "isocyanate", "the job says what it is")
	e := work(t, job(white))
	assert.NotEmpty(t, e.Warnings)
}
