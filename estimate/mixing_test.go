package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 100 m² of 20 µm at 60 % solids and 50 % efficiency: 100·20/(1000·0.6·0.5) =
// 6.667 L a coat (identity), which at 10 m²/h takes 10 h. Mixed 4 to 1, with 10 %
// thinner; never more than is used in 4 h.
func TestBatchesLastNoLongerThanThePotLife(t *testing.T) {
	step := doc{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "paint", "coats": 2, "dry_film_um": 20, "method": "hvlp",
		"transfer_efficiency_percent": 50, "thinner_percent": 10, "rate_m2_h": 10}
	paint := doc{"id": "paint", "kind": "paint", "volume_solids_percent": 60, "mix": doc{"base": 4, "hardener": 1}, "thinner": "thinner-epoxy",
		"pot_life_h": 8, "pot_life_at_c": 21, "packs": []doc{{"pack_l": 5, "price": "100.00"}}}
	job := doc{"components": []doc{flat("a", 100, 40)}, "products": []doc{paint}, "steps": []doc{step}}
	coat := 100 * 20 / (1000 * 0.6 * 0.5)

	e := work(t, job)
	m := e.Steps[0].Mixing[0]
	require.Len(t, m.Parts, 2)
	assert.InEpsilon(t, 2*coat*4/5, m.Parts[0].Litres, 1e-12)
	assert.InEpsilon(t, 2*coat*1/5, m.Parts[1].Litres, 1e-12)
	assert.InEpsilon(t, 2*coat*0.1, m.ThinnerL, 1e-12)
	assert.InEpsilon(t, 1.1*coat*4/10, m.BatchL, 1e-12, "four hours of ten, though the paint would last eight")
	assert.Equal(t, 2*3, m.Batches, "2.5 batches a coat are three")

	paint["pot_life_h"] = 2
	assert.Equal(t, 2*5, work(t, job).Steps[0].Mixing[0].Batches)

	step["rate_m2_h"] = 50 // two hours a coat
	m = work(t, job).Steps[0].Mixing[0]
	assert.Equal(t, 2, m.Batches)
	assert.InEpsilon(t, 1.1*coat, m.BatchL, 1e-12)

	// a test patch is slower than the step says: 1 m² in 12 min is 5 m²/h
	job["test_patches"] = []doc{{"for": []string{"s"}, "area_m2": 1, "minutes": 12}}
	e = work(t, job)
	assert.Equal(t, 2*10, e.Steps[0].Mixing[0].Batches)
	assert.InEpsilon(t, 200.0/5, e.Steps[0].Hours-e.Steps[0].MaskingHours, 1e-12)

	paint["mix"] = doc{"base": 3, "hardener": 2, "activator": 1}
	m = work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 2*coat/6, m.Parts[2].Litres, 1e-12)
	assert.Equal(t, "activator", m.Parts[2].Part)
}

func TestAPaintOfOnePackHasNoBatches(t *testing.T) {
	paint := doc{"id": "paint", "kind": "paint", "volume_solids_percent": 50}
	e := work(t, doc{"components": []doc{flat("a", 10, 4)}, "products": []doc{paint},
		"steps": []doc{{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "paint", "dry_film_um": 30, "method": "brush", "transfer_efficiency_percent": 100}}})
	m := e.Steps[0].Mixing[0]
	assert.Empty(t, m.Parts)
	assert.Zero(t, m.Batches)
	assert.InEpsilon(t, 10*30/(1000*0.5), e.Steps[0].Litres, 1e-12)
	assert.Zero(t, e.Steps[0].DryFilmKg)
	assert.Contains(t, e.Steps[0].Warnings, "paint has no dry_film_density_kg_l: its film and its waste are not weighed")
	assert.Contains(t, e.Warnings[0], "sold in no packs")
}
