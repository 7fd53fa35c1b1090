package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
)

// skin is a part of a substrate with old paint.
func skin(id, substrate string, areaM2, filmUM float64) doc {
	part := flat(id, areaM2, 4)
	part["substrate"], part["existing_film_um"], part["existing_film_density_kg_l"] = substrate, filmUM, 1.5
	return part
}

func beads(on string, members doc) doc {
	step := doc{"id": "s", "operation": "blast", "on": []string{on}, "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 240, "mask": false}
	for name, value := range members {
		step[name] = value
	}
	return step
}

func blasted(t *testing.T, part, step doc) estimate.StepEstimate {
	t.Helper()
	return work(t, doc{"components": []doc{part}, "steps": []doc{step}}).Steps[0]
}

// The book's rate holds for a bore, a pressure and a film; twice the film takes
// twice the time, twice the bore a quarter (identity of StripRate), and the rate
// says that it is an assumption.
func TestTheBooksRateIsCarriedToTheWork(t *testing.T) {
	at := blasted(t, skin("a", "clad_aluminium", 12, 250), beads("a", nil))
	assert.InEpsilon(t, 12/3.0, at.Hours, 1e-12, "3 m²/h as in the catalogue")
	assert.Contains(t, at.Removal.RateSource, "assumption")
	assert.Equal(t, "nozzle_on", at.Removal.RateBasis)
	thick := blasted(t, skin("a", "clad_aluminium", 12, 500), beads("a", nil))
	assert.InEpsilon(t, 2*at.Hours, thick.Hours, 1e-12)
	wide := blasted(t, skin("a", "clad_aluminium", 12, 250), beads("a", doc{"nozzle_bore_mm": 12.7}))
	assert.InEpsilon(t, at.Hours/4, wide.Hours, 1e-12)
	hair := blasted(t, skin("a", "clad_aluminium", 12, 10), beads("a", nil))
	assert.InEpsilon(t, at.Hours/2, hair.Hours, 1e-12, "a thin film still has to be passed over")
}

// Published burdened rates are another rate, for 1 mil, and are not mixed with
// those of the nozzle (planning L04): 0.457 m²/h over 10 mil.
func TestBurdenedRatesAreKeptApart(t *testing.T) {
	burdened := blasted(t, skin("a", "clad_aluminium", 1, 254), beads("a", doc{"rate_basis": "burdened"}))
	assert.Equal(t, "burdened", burdened.Removal.RateBasis)
	assert.InEpsilon(t, 0.0457, burdened.Removal.RateM2H, 1e-9)
	assert.InEpsilon(t, 1/0.0457, burdened.Hours, 1e-9)
	assert.Contains(t, burdened.Removal.RateSource, "L04")
	atNozzle := blasted(t, skin("a", "clad_aluminium", 1, 254), beads("a", nil))
	assert.InEpsilon(t, *atNozzle.Removal.MediaThrownKg, *burdened.Removal.MediaThrownKg, 1e-12, "media fly only while the nozzle is on")

	strip := doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper", "rate_basis": "burdened", "crew": 2, "mask": false}
	chemical := blasted(t, skin("a", "aluminium", 1, 25.4), strip)
	assert.InEpsilon(t, 1/0.0555, chemical.Hours, 1e-9, "person-hours do not change with the crew")
	assert.InEpsilon(t, 0.5/0.0555, chemical.Removal.ElapsedH, 1e-9)
}

// A rate over the shift holds idle time, in which no media are thrown: with the
// nozzle at work half of the time half as much is thrown (identity).
func TestMediaGoByTheTimeAtTheNozzle(t *testing.T) {
	step := beads("a", doc{"strip_rate_m2_h": 2, "rate_basis": "burdened", "media_flow_kg_h": 100})
	job := doc{"components": []doc{skin("a", "clad_aluminium", 10, 250)}, "steps": []doc{step}, "labour": doc{"availability_percent": 50}}
	s := work(t, job).Steps[0]
	assert.InEpsilon(t, 5, s.Hours, 1e-12, "what is burdened is not burdened again")
	assert.InEpsilon(t, 250, *s.Removal.MediaThrownKg, 1e-12)
	delete(job, "labour")
	full := work(t, job).Steps[0]
	assert.InEpsilon(t, 500, *full.Removal.MediaThrownKg, 1e-12)
	assert.True(t, contains(full.Warnings, "never stopped"))
}

func contains(warnings []string, part string) bool {
	for _, w := range warnings {
		if strings.Contains(w, part) {
			return true
		}
	}
	return false
}

// Beads last longer on aluminium than on steel, and the less the harder they are
// thrown; what is spilt comes on top (D-4, D-5, D-7; 5 % is an assumption).
func TestBreakdownGoesBySubstrateAndPressure(t *testing.T) {
	lost := func(substrate string, members doc) float64 {
		members["recovered"], members["strip_rate_m2_h"] = true, 3
		return line(t, blasted(t, skin("a", substrate, 10, 250), beads("a", members)).Working, "lost_ratio").Value
	}
	assert.InEpsilon(t, 0.021+0.05, lost("aluminium", doc{"pressure_kpa": 172.37}), 1e-9)
	assert.InEpsilon(t, 0.035+0.05, lost("steel", doc{"pressure_kpa": 172.37}), 1e-9)
	assert.InEpsilon(t, 0.035, lost("steel", doc{"pressure_kpa": 172.37, "carry_out_percent": 0}), 1e-9)
	assert.Greater(t, lost("aluminium", doc{"pressure_kpa": 300}), lost("aluminium", doc{"pressure_kpa": 200}))
	assert.InEpsilon(t, 0.10, lost("titanium", doc{}), 1e-9, "not measured: the trade's figure, spilling included (B-8)")
	assert.InEpsilon(t, 0.08, lost("aluminium", doc{"breakdown_percent": 8}), 1e-9, "the job's own is what is lost in all")
}

func TestMorePressureNeverMeansMoreHoursOrLessAir(t *testing.T) {
	part := skin("a", "clad_aluminium", 10, 250)
	rapid.Check(t, func(rt *rapid.T) {
		low := rapid.Float64Range(70, 270).Draw(rt, "pressure")
		high := rapid.Float64Range(low, 275).Draw(rt, "more pressure")
		a, b := blasted(t, part, beads("a", doc{"pressure_kpa": low})), blasted(t, part, beads("a", doc{"pressure_kpa": high}))
		assert.LessOrEqual(rt, b.Hours, a.Hours*(1+1e-12))
		assert.GreaterOrEqual(rt, *b.Removal.AirM3Min, *a.Removal.AirM3Min*(1-1e-12))
	})
}

// A batch is bought whole, is waste whole, and is never mixed with a charge that
// is topped up.
func TestBatchesInAJob(t *testing.T) {
	batch := doc{"strip_rate_m2_h": 2, "media_flow_kg_h": 100, "breakdown_percent": 10, "recovered": true, "batch_passes": 10, "batch_kg": 25}
	s := blasted(t, skin("a", "clad_aluminium", 10, 250), beads("a", batch))
	thrown, uses := 500.0, 6.5132155990 // (1 − 0.9¹⁰)/0.1, geometric series
	assert.InEpsilon(t, thrown/uses, line(t, s.Working, "media_used_kg").Value, 1e-9)
	assert.Equal(t, 100.0, s.Kilograms, "four batches of 25 kg hold 76.8 kg")
	batch["working_charge_kg"] = 50
	_, err := try(t, doc{"components": []doc{skin("a", "clad_aluminium", 10, 250)}, "steps": []doc{beads("a", batch)}})
	require.ErrorContains(t, err, "/steps/0/working_charge_kg")
}
