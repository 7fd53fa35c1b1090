package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

func quantityOf(s estimate.StepEstimate, product string) float64 {
	for _, m := range s.Materials {
		if m.Product == product {
			return m.Quantity
		}
	}
	return 0
}

// A cover reaches half an inch beyond the opening (USAF TO 1-1-8 para 2.3, as
// read by others), and its film is 4 m wide in the catalogue.
func TestOpeningsAreCovered(t *testing.T) {
	part := flat("a", 10, 14)
	part["openings"] = []doc{{"area_m2": 1.2, "edge_m": 4.4}}
	e := work(t, doc{"components": []doc{part}, "steps": []doc{
		{"id": "blast", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500},
		{"id": "coat", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "brush", "film": "masking-paper"},
		{"id": "bare", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "brush", "mask": false},
		{"id": "wash", "operation": "wash", "on": []string{"a"}, "product": "detergent"},
		{"id": "covered", "operation": "wash", "on": []string{"a"}, "product": "detergent", "mask": true, "tape": "masking-tape-48"},
	}})
	cover := 1.2 + 4.4*0.0127
	assert.InEpsilon(t, cover/4, quantityOf(e.Steps[0], "masking-film"), 1e-12)
	assert.InEpsilon(t, 14+4.4, quantityOf(e.Steps[0], "blast-tape-48"), 1e-12, "the surface ends along 14 m")
	assert.InEpsilon(t, cover/0.9, quantityOf(e.Steps[1], "masking-paper"), 1e-12)
	assert.InEpsilon(t, 18.4, quantityOf(e.Steps[1], "masking-tape-24"), 1e-12)
	assert.Zero(t, e.Steps[2].MaskingTapeM)
	assert.Zero(t, quantityOf(e.Steps[2], "masking-film"))
	assert.Zero(t, e.Steps[3].MaskingTapeM, "washing is masked on request only")
	assert.InEpsilon(t, 18.4, quantityOf(e.Steps[4], "masking-tape-48"), 1e-12)
	assert.Len(t, assumed(e, "waste of masking tape"), 1)
}

// Masking as a step of its own goes by the length of tape.
func TestMaskingHours(t *testing.T) {
	e := work(t, doc{"components": []doc{flat("a", 10, 30), {"id": "b", "shape": doc{"kind": "sphere", "radius_m": 1}}}, "steps": []doc{
		{"id": "m", "operation": "mask", "on": []string{"a"}, "rate_m_h": 15, "setup_h": 0.5, "crew": 2},
		{"id": "n", "operation": "mask", "on": []string{"b"}},
	}})
	assert.InEpsilon(t, 30.0/15+0.5*2, e.Steps[0].Hours, 1e-12, "two people halve the time, not the person-hours")
	require.NotEmpty(t, e.Steps[1].Warnings)
	assert.Contains(t, e.Steps[1].Warnings[0], "no edges")
}
