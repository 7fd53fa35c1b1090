package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

// sprayed is a job of one invented two-pack paint on 100 m²: 6.667 L a coat at
// 50 % efficiency and 60 % solids, 10 % thinner, at 10 m²/h (identity).
func sprayed() (job, step, paint doc) {
	step = doc{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "paint", "coats": 2, "dry_film_um": 20, "method": "hvlp",
		"transfer_efficiency_percent": 50, "thinner_percent": 10, "rate_m2_h": 10}
	paint = doc{"id": "paint", "kind": "paint", "volume_solids_percent": 60, "dry_film_density_kg_l": 1.5, "mix": doc{"base": 4, "hardener": 1}, "thinner": "thinner-epoxy",
		"pot_life_h": 8, "pot_life_at_c": 21, "packs": []doc{{"pack_l": 5, "price": "100.00"}}}
	return doc{"components": []doc{flat("a", 100, 40)}, "products": []doc{paint}, "steps": []doc{step}}, step, paint
}

const sprayedCoatL = 100 * 20 / (1000 * 0.6 * 0.5)

func used(e *estimate.Estimate, product string) float64 {
	for _, m := range e.Steps[0].Materials {
		if m.Product == product {
			return m.Quantity
		}
	}
	return 0
}

// What a batch leaves in gun and hose is mixed on top: 3 batches a coat of 0.2 L
// and a hose of 10 mm and 5 m, which holds π/4·10²·5/1000 = 0.393 L (identity).
func TestEveryBatchLeavesPaintInTheGun(t *testing.T) {
	job, step, _ := sprayed()
	before := work(t, job)
	step["gun_loss_l"], step["hose_m"], step["hose_bore_mm"] = 0.2, 5, 10
	after := work(t, job)
	left := 0.2 + math.Pi/4*10*10*5/1000
	m := after.Steps[0].Mixing[0]
	assert.Equal(t, 2*3, m.Batches)
	assert.InEpsilon(t, 6*left, m.LeftInGunL, 1e-12)
	assert.InEpsilon(t, used(before, "paint")+6*left/1.1, used(after, "paint"), 1e-12)
	assert.InEpsilon(t, before.Steps[0].Litres+6*left, after.Steps[0].Litres, 1e-12)
	assert.Equal(t, before.Steps[0].DryFilmKg, after.Steps[0].DryFilmKg, "what is left in the gun is on no part")
	assert.InEpsilon(t, before.Steps[0].WasteKg+6*left/1.1*0.6*1.5, after.Steps[0].WasteKg, 1e-12, "its solids are waste")
	assert.InEpsilon(t, after.Steps[0].Litres, float64(m.Batches)*m.EvenBatchL, 1e-12, "the batches are what is mixed")
	assert.InEpsilon(t, m.EvenBatchL, m.Parts[0].BatchL+m.Parts[1].BatchL+m.BatchThinnerL, 1e-12)
	assert.InEpsilon(t, m.PaintL, m.Parts[0].Litres+m.Parts[1].Litres, 1e-12, "base and hardener are the mix")
}

func TestAGunThatSwallowsEveryBatchIsRefused(t *testing.T) {
	job, step, _ := sprayed()
	step["gun_loss_l"] = 20
	assert.Equal(t, map[string]string{"/steps/0/product": "inconsistent"}, faultsOf(t, job))
	step["gun_loss_l"], step["hose_m"] = 0, 5
	assert.Equal(t, map[string]string{"/steps/0/hose_bore_mm": "required"}, faultsOf(t, job))
}

// Pot life halves with 10 °C more; a second point of the data sheet that gives
// less is taken instead; at most 4 h in any case (C01, S17).
func TestPotLifeGoesByTheTemperature(t *testing.T) {
	job, step, paint := sprayed()
	step["temperature_c"] = 31
	m := work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 4, m.PotLifeH, 1e-12)
	assert.Equal(t, 31.0, m.PotLifeAtC)
	paint["pot_life_2_h"], paint["pot_life_2_at_c"] = 2, 31
	m = work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 2, m.PotLifeH, 1e-12, "by the two points")
	assert.Equal(t, 2*5, m.Batches, "ten hours a coat, two hours a batch")
	step["temperature_c"] = 11
	m = work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 16, m.PotLifeH, 1e-12, "the halving rule is the shorter in the cold: 16 h, not 32")
	assert.InEpsilon(t, 4, m.UseWithinH, 1e-12)
	paint["pot_life_2_h"] = 9
	assert.Equal(t, map[string]string{"/products/0/pot_life_2_h": "inconsistent"}, faultsOf(t, job), "longer when warmer")
}

// Standing time comes off the life: 0.5 h at 21 °C and 0.5·2.33 = 1.163 h at 11 °C.
func TestStandingTimeComesOffTheLife(t *testing.T) {
	job, step, paint := sprayed()
	paint["induction_h"], paint["pot_life_h"] = 0.5, 2.5
	m := work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 0.5, m.InductionH, 1e-12)
	assert.Equal(t, 2*5, m.Batches, "two hours of ten are left")
	step["temperature_c"] = 11
	m = work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 0.5/0.43, m.InductionH, 1e-12)
	paint["pot_life_h"], paint["induction_h"] = 0.4, 0.5
	step["temperature_c"] = 21
	assert.Equal(t, map[string]string{"/products/0/induction_h": "inconsistent"}, faultsOf(t, job), "it stands longer than it lives")
	delete(paint, "induction_h")
	delete(step, "temperature_c")
	step["conditions"] = doc{"air_c": -20, "relative_humidity_percent": 50, "surface_c": -20}
	assert.Equal(t, map[string]string{"/steps/0/conditions/surface_c": "out_of_range"}, faultsOf(t, job), "no rule reaches so far")
}

// A batch is cleaned up after with solvent of its own, which is bought and is
// waste, and is not paint: 6 batches of 0.3 L at 0.85 kg/L.
func TestEveryBatchIsCleanedUpAfter(t *testing.T) {
	job, step, _ := sprayed()
	step["cleaning_l"] = 0
	bare := work(t, job)
	assert.Zero(t, used(bare, "gun-wash"))
	step["cleaning_l"] = 0.3
	e := work(t, job)
	assert.InEpsilon(t, 6*0.3, used(e, "gun-wash"), 1e-12)
	assert.InEpsilon(t, bare.Steps[0].WasteKg+6*0.3*0.85, e.Steps[0].WasteKg, 1e-12)
	assert.Equal(t, bare.Steps[0].Litres, e.Steps[0].Litres)
	assert.Equal(t, bare.Steps[0].VOCKg, e.Steps[0].VOCKg, "it is collected")
	ordered := false
	for _, line := range e.Order {
		ordered = ordered || line.Product == "gun-wash" && line.Bought >= 1.8
	}
	assert.True(t, ordered)
	step["cleaning"] = "thinner-epoxy"
	assert.InEpsilon(t, 2*sprayedCoatL*0.1+6*0.3, used(work(t, job), "thinner-epoxy"), 1e-12)
	step["cleaning"] = "masking-film"
	assert.Equal(t, map[string]string{"/steps/0/cleaning": "not_applicable"}, faultsOf(t, job))
	delete(step, "cleaning")
	delete(step, "cleaning_l")
	assert.InEpsilon(t, 6*0.5, used(work(t, job), "gun-wash"), 1e-12, "the catalogue's 0.5 L for HVLP")
}

// 20 µm of 60 % solids with 10 % thinner is 36.7 µm wet; by 80/20 with a scatter
// of 0.2 the mean is 1.2024 times that.
func TestTheWetFilmToAimFor(t *testing.T) {
	job, step, _ := sprayed()
	m := work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 20*1.1/0.6, m.WetFilmUM, 1e-12)
	assert.Equal(t, 1, m.Passes, "50 µm a pass with HVLP")
	step["film_rule"], step["cup_l"] = "min_80_20", 0.6
	e := work(t, job)
	m = e.Steps[0].Mixing[0]
	assert.InEpsilon(t, 20*1.1/0.6/(1-0.8416212*0.2), m.WetFilmUM, 1e-7)
	assert.Contains(t, e.Steps[0].Warnings[0], "least reading")
	assert.Equal(t, int(math.Ceil(m.EvenBatchL/0.6)), m.CupFillings)
	step["pass_wet_film_um"] = 20
	assert.Equal(t, 3, work(t, job).Steps[0].Mixing[0].Passes)
}

// Small parts take several times the paint of large ones with the same gun (T9).
func TestPartSizeMovesTheEfficiency(t *testing.T) {
	job, step, _ := sprayed()
	delete(step, "transfer_efficiency_percent")
	litres := map[string]float64{}
	for _, size := range []string{"large", "medium", "edges", "small"} {
		step["part_size"] = size
		litres[size] = work(t, job).Steps[0].Litres
	}
	assert.InEpsilon(t, litres["large"]*65/8.5, litres["small"], 1e-12, "T9: 65 % and 7 to 10 %")
	assert.Less(t, litres["medium"], litres["edges"])
	step["part_size"] = "tiny"
	assert.Equal(t, map[string]string{"/steps/0/part_size": "unknown_kind"}, faultsOf(t, job))
	step["part_size"], step["transfer_efficiency_percent"] = "small", 50
	assert.InEpsilon(t, 2*sprayedCoatL*1.1, work(t, job).Steps[0].Litres, 1e-12, "the step's own figure counts")
}

// 340 g/L with 10 % of a thinner of 860 g/L is (340 + 86)/1.1 = 387.3 g/L as
// applied; up to (420 − 340)/(860 − 420) = 18.2 % may be added under 420 g/L
// (guidebook App. B arithmetic, V10).
func TestVOCAsAppliedAgainstTheLimit(t *testing.T) {
	job, step, paint := sprayed()
	paint["voc_g_l"], job["voc_limit_g_l"] = 340, 420
	m := work(t, job).Steps[0].Mixing[0]
	require.NotNil(t, m.VOCGL)
	assert.InEpsilon(t, 426/1.1, *m.VOCGL, 1e-12)
	assert.InEpsilon(t, 100*80.0/440, *m.MaxThinnerPercent, 1e-12)
	step["thinner_percent"] = 20
	assert.Equal(t, map[string]string{"/steps/0/thinner_percent": "inconsistent"}, faultsOf(t, job))
	paint["thinner"] = "thinner-exempt"
	m = work(t, job).Steps[0].Mixing[0]
	assert.InEpsilon(t, 340, *m.VOCGL, 1e-12, "L9: exempt thinner changes nothing")
	step["voc_limit_g_l"] = 300
	assert.Equal(t, map[string]string{"/steps/0/voc_limit_g_l": "inconsistent"}, faultsOf(t, job), "the step's limit goes before the job's")
}

// Of a waterborne paint only what is not water gives off its VOC: 340·(1 − 0.3)
// g from each litre (definition, 40 CFR 59.104).
func TestWaterGivesOffNothing(t *testing.T) {
	job, step, paint := sprayed()
	step["thinner_percent"] = 0
	paint["voc_g_l"] = 340
	solvent := work(t, job)
	paint["water_volume_percent"] = 30
	water := work(t, job)
	assert.InEpsilon(t, 2*sprayedCoatL*0.34, solvent.Steps[0].VOCKg, 1e-12)
	assert.InEpsilon(t, 0.7*solvent.Steps[0].VOCKg, water.Steps[0].VOCKg, 1e-12)
	assert.InEpsilon(t, 340, *water.Steps[0].Mixing[0].VOCGL, 1e-12, "less water it is the same")
	paint["water_volume_percent"] = 50
	assert.Contains(t, faultsOf(t, job), "/products/0/water_volume_percent")
}

// What paint adds and blasting takes off hangs on the component: 100 m² of
// 200 µm at 1.5 kg/L are 30 kg off, two coats of 20 µm at 1.5 kg/L 6 kg on
// (identity), and a marking adds to the component it is on.
func TestWeightsByComponent(t *testing.T) {
	job, step, _ := sprayed()
	a, b := flat("a", 100, 40), flat("b", 300, 40)
	a["count"], a["existing_film_um"], a["existing_film_density_kg_l"] = 2, 100, 1.5
	a["shape"] = doc{"kind": "measured", "area_m2": 50, "edge_m": 40}
	job["components"] = []doc{a, b}
	step["on"] = []string{"a", "b"}
	strip := doc{"id": "strip", "operation": "strip", "on": []string{"a"}, "product": "stripper"}
	mark := doc{"id": "mark", "operation": "mark", "markings": []string{"m"}, "method": "brush", "paints": doc{"white": "paint"}, "dry_film_um": 20, "transfer_efficiency_percent": 100}
	job["markings"] = []doc{{"id": "m", "kind": "rectangle", "width_m": 2, "height_m": 1, "colour": "white", "on": "b/surface"}}
	job["steps"] = []doc{strip, step, mark}
	e := work(t, job)
	require.Len(t, e.Weights, 2)
	assert.InEpsilon(t, 100*0.1*1.5, e.Weights[0].RemovedKg, 1e-12)
	assert.InEpsilon(t, 100*0.04*1.5, e.Weights[0].AddedKg, 1e-12)
	assert.InEpsilon(t, (6-15)/2.0, e.Weights[0].NetEachKg, 1e-12)
	assert.InEpsilon(t, 300*0.04*1.5+2*0.02*1.5, e.Weights[1].AddedKg, 1e-12)
	assert.InEpsilon(t, e.Totals.DryFilmKg, e.Weights[0].AddedKg+e.Weights[1].AddedKg, 1e-12)
	assert.InEpsilon(t, e.Totals.RemovedKg, e.Weights[0].RemovedKg, 1e-12)
	delete(job["markings"].([]doc)[0], "on")
	e = work(t, job)
	require.Len(t, e.Weights, 3)
	assert.Empty(t, e.Weights[0].Component)
	assert.InEpsilon(t, e.Totals.DryFilmKg, e.Weights[0].AddedKg+e.Weights[1].AddedKg+e.Weights[2].AddedKg, 1e-12)
}

// Two colours out of one pot are mixed and cleaned up after once, and the film
// hangs on the component once (identity).
func TestColoursOfOnePaintShareAPot(t *testing.T) {
	mark := doc{"id": "mark", "operation": "mark", "markings": []string{"m"}, "method": "brush", "dry_film_um": 20, "cleaning_l": 0.3, "transfer_efficiency_percent": 100,
		"paints": doc{"orange": "epoxy-primer", "white": "epoxy-primer"}}
	job := doc{"components": []doc{flat("a", 100, 40)}, "steps": []doc{mark},
		"markings": []doc{{"id": "m", "kind": "roundel", "size_m": 2, "on": "a", "rings": []doc{{"ratio": 1, "colour": "orange"}, {"ratio": 2, "colour": "white"}}}}}
	e := work(t, job)
	require.Len(t, e.Steps[0].Mixing, 1)
	assert.InEpsilon(t, math.Pi*20/(1000*0.6), e.Steps[0].Litres, 1e-9, "π m² of 20 µm at 60 % solids")
	assert.InEpsilon(t, 0.3, used(e, "gun-wash"), 1e-12)
	assert.InEpsilon(t, e.Totals.DryFilmKg, e.Weights[0].AddedKg, 1e-12)
}
