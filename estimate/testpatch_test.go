package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Several patches are weighted by size: amounts are added before they are
// divided (identity). 1 m² in 10 min and 3 m² in 50 min are 4 m²/h.
func TestPatchesAreWeightedByTheirSize(t *testing.T) {
	e := work(t, doc{"components": []doc{flat("a", 20, 4)},
		"steps":        []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent", "coats": 2}},
		"test_patches": []doc{{"for": []string{"s"}, "area_m2": 1, "minutes": 10, "litres": 0.2}, {"for": []string{"s"}, "area_m2": 3, "minutes": 50, "litres": 0.2}}})
	assert.InEpsilon(t, 20*2/4.0, e.Steps[0].Hours, 1e-12)
	assert.InEpsilon(t, 20*2*0.1, e.Steps[0].Litres, 1e-12)
	assert.Equal(t, "test patch", line(t, e.Steps[0].Working, "litres").Source)
}

// The film measured gives the share that lands: 2 m² of 30 µm hold 0.06 L of
// solids, 0.3 L at 50 % have 0.15 L: 40 % (identity).
func TestAMeasuredFilmGivesTheTransferEfficiency(t *testing.T) {
	paint := doc{"id": "paint", "kind": "paint", "volume_solids_percent": 50}
	e := work(t, doc{"components": []doc{flat("a", 8, 4)}, "products": []doc{paint},
		"steps":        []doc{{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "paint", "dry_film_um": 25, "method": "hvlp"}},
		"test_patches": []doc{{"for": []string{"s"}, "area_m2": 2, "litres": 0.3, "film_um": 30}}})
	assert.InEpsilon(t, 8*25/(1000*0.5*0.4), e.Steps[0].Litres, 1e-12)
	found := assumed(e, "transfer efficiency")
	require.Len(t, found, 1)
	assert.InEpsilon(t, 40.0, found[0].Value, 1e-12)
	assert.Equal(t, "test patch", found[0].Source)
}

// What a patch took to blast is what every square metre takes, timed or not:
// 12 kg on 0.5 m² are 24 kg/m².
func TestMediaWeighedOnAPatch(t *testing.T) {
	blast := doc{"id": "s", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 5, "nozzles": 2}
	job := doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{blast}, "test_patches": []doc{{"for": []string{"s"}, "area_m2": 0.5, "media_kg": 12}}}
	s := work(t, job).Steps[0]
	assert.InEpsilon(t, 240.0, s.Kilograms, 1e-12)
	assert.InEpsilon(t, 10/(5.0*2), s.Hours, 1e-12)

	job["test_patches"] = []doc{{"for": []string{"s"}, "area_m2": 0.5, "media_kg": 12, "minutes": 6}}
	s = work(t, job).Steps[0]
	assert.InEpsilon(t, 240.0, s.Kilograms, 1e-12)
	assert.InEpsilon(t, 10/5.0, s.Hours, 1e-12, "5 m²/h of both nozzles together")
}
