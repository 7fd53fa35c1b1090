package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 4 m² of 250 µm at 1.6 kg/L is 4·0.250·1.6 = 1.6 kg of old paint (identity: m²
// times µm is mL). A quarter of it comes off with the region, the rest with the
// whole, and then there is none.
func TestOldPaintComesOffOnce(t *testing.T) {
	part := flat("a", 4, 8)
	part["existing_film_um"], part["existing_film_density_kg_l"] = 250, 1.6
	strip := func(id, on string) doc {
		return doc{"id": id, "operation": "strip", "on": []string{on}, "product": "stripper", "coverage_l_m2": 1}
	}
	e := work(t, doc{
		"components": []doc{part}, "regions": []doc{{"id": "quarter", "of": []string{"a"}, "share_ratio": 0.25, "edge_m": 1}},
		"steps": []doc{strip("first", "quarter"), strip("second", "a"), strip("third", "a")},
	})
	assert.InEpsilon(t, 0.4, e.Steps[0].RemovedKg, 1e-12)
	assert.InEpsilon(t, 1.2, e.Steps[1].RemovedKg, 1e-12)
	assert.Zero(t, e.Steps[2].RemovedKg)
	assert.InEpsilon(t, 1.6, e.Totals.RemovedKg, 1e-12)
	assert.Contains(t, e.Steps[2].Warnings[0], "earlier steps have taken all the old paint off")
	removed := line(t, e.Steps[1].Working, "removed_film_kg")
	assert.InEpsilon(t, removed.Value, removed.Terms["area"]*removed.Terms["film"]*removed.Terms["density"]/1000, 1e-12, "the working works")
	// what is spread goes to waste too: litres times 1.1 kg/L of the catalogue
	assert.InEpsilon(t, 4*1.1+1.2, e.Steps[1].WasteKg, 1e-12)
}

func TestUnknownOldPaintIsToldAndAssumedDensityToo(t *testing.T) {
	thick := flat("b", 1, 4)
	thick["existing_film_um"] = 100
	e := work(t, doc{
		"components": []doc{flat("a", 1, 4), thick},
		"steps": []doc{{"id": "s", "operation": "sand", "on": []string{"a"}, "product": "disc-80"}, {"id": "t", "operation": "sand", "on": []string{"b"}, "product": "disc-80"},
			{"id": "u", "operation": "sand", "on": []string{"b"}, "product": "disc-320", "scuff": true}},
	})
	assert.Contains(t, e.Steps[0].Warnings[0], "give existing_film_um")
	assert.InEpsilon(t, 0.15, e.Steps[1].RemovedKg, 1e-12, "1 m² · 100 µm · 1.5 kg/L")
	assert.Zero(t, e.Steps[2].RemovedKg, "scuffing takes nothing off")
	require.Len(t, assumed(e, "density of the old paint"), 1)
	assert.Equal(t, []string{"t"}, assumed(e, "density of the old paint")[0].Steps)
}

// Recovered beads: thrown times breakdown are used up, the film is waste too.
// MediaFlow given, so that no law of flow comes in (identity).
func TestBlastWasteIsMediaAndPaint(t *testing.T) {
	part := flat("a", 6, 10)
	part["existing_film_um"], part["existing_film_density_kg_l"] = 200, 1.5
	blast := doc{"id": "s", "operation": "blast", "on": []string{"a"}, "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 380,
		"strip_rate_m2_h": 2, "media_flow_kg_h": 90, "breakdown_percent": 8, "recovered": true, "working_charge_kg": 50, "setup_h": 1, "crew": 2}
	e := work(t, doc{"components": []doc{part}, "steps": []doc{blast}})
	s := e.Steps[0]
	used := 90.0 * 3 * 0.08 // three hours at the nozzle
	assert.InEpsilon(t, used+50, s.Kilograms, 1e-12)
	assert.InEpsilon(t, used+6*0.2*1.5, s.WasteKg, 1e-12)
	assert.InEpsilon(t, (3+1)*2.0, s.Hours-s.MaskingHours, 1e-12)

	blast["recovered"], blast["working_charge_kg"], blast["nozzles"] = false, 0, 3
	s = work(t, doc{"components": []doc{part}, "steps": []doc{blast}}).Steps[0]
	assert.InEpsilon(t, 90.0*3, s.Kilograms, 1e-12, "three nozzles throw three times as much in a third of the time")
	assert.InEpsilon(t, (1+1)*2.0, s.Hours-s.MaskingHours, 1e-12)
}
