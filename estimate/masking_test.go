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

// edgeM is the length of the edges that a step tapes, each times its passes.
func edgeM(s estimate.StepEstimate) float64 {
	sum := 0.0
	for _, e := range s.Masking {
		sum += e.LengthM * float64(e.Passes)
	}
	return sum
}

// A cover reaches half an inch beyond the opening (USAF TO 1-1-8 para 2.3, as
// read by others); the film is 4 m wide in the catalogue, the sheet for blasting
// 1.2 m. A tenth of the tape is thrown away unless the job says otherwise
// (common practice).
func TestOpeningsAreCovered(t *testing.T) {
	part := flat("a", 10, 14)
	part["openings"] = []doc{{"area_m2": 1.2, "edge_m": 4.4}}
	e := work(t, doc{"components": []doc{part}, "steps": []doc{
		{"id": "blast", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500},
		{"id": "coat", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "brush", "film": "masking-paper"},
		{"id": "bare", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "brush", "mask": false},
		{"id": "wash", "operation": "wash", "on": []string{"a"}, "product": "detergent"},
		{"id": "covered", "operation": "wash", "on": []string{"a"}, "product": "detergent", "mask": true, "tape": "masking-tape-48", "tape_waste_percent": 0},
		{"id": "strip", "operation": "strip", "on": []string{"a"}, "product": "stripper"},
	}})
	cover := 1.2 + 4.4*0.0127
	assert.InEpsilon(t, cover/1.2, quantityOf(e.Steps[0], "blast-sheet"), 1e-12)
	assert.InEpsilon(t, 1.1*(14+4.4), quantityOf(e.Steps[0], "blast-tape-48"), 1e-12, "the surface ends along 14 m")
	assert.InEpsilon(t, cover/0.9, quantityOf(e.Steps[1], "masking-paper"), 1e-12)
	assert.InEpsilon(t, 1.1*18.4, quantityOf(e.Steps[1], "masking-tape-24"), 1e-12)
	assert.Zero(t, e.Steps[2].MaskingTapeM)
	assert.Zero(t, quantityOf(e.Steps[2], "masking-film"))
	assert.Zero(t, e.Steps[3].MaskingTapeM, "washing is masked on request only")
	assert.InEpsilon(t, 18.4, quantityOf(e.Steps[4], "masking-tape-48"), 1e-12)
	assert.InEpsilon(t, 1.1*18.4, quantityOf(e.Steps[5], "aluminium-tape-50"), 1e-12)
	assert.Len(t, assumed(e, "tape thrown away"), 1)
	require.Len(t, e.Steps[0].Masking, 2)
	assert.Equal(t, [2]string{"a/surface", "open"}, e.Steps[0].Masking[0].Between)
	opening := e.Steps[0].Masking[1]
	assert.Equal(t, "opening", opening.Kind)
	assert.Equal(t, "opening 1", opening.Name)
	assert.InEpsilon(t, cover, opening.CoverM2, 1e-12)
}

// Masking goes by the length of tape laid, in a step of its own and within
// others, and is part of the hours (identity).
func TestMaskingHours(t *testing.T) {
	e := work(t, doc{"components": []doc{flat("a", 10, 30), {"id": "b", "shape": doc{"kind": "sphere", "radius_m": 1}}}, "steps": []doc{
		{"id": "m", "operation": "mask", "on": []string{"a"}, "rate_m_h": 15, "setup_h": 0.5, "crew": 2},
		{"id": "n", "operation": "mask", "on": []string{"b"}},
		{"id": "c", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "brush", "rate_m2_h": 5, "mask_rate_m_h": 10, "setup_h": 0.5, "crew": 2, "mask": true, "edge_rule": "two_sided"},
		{"id": "d", "operation": "strip", "on": []string{"a"}, "product": "stripper", "rate_m2_h": 5, "mask_rate_m_h": 10, "setup_h": 0.5, "crew": 2},
		{"id": "e", "operation": "strip", "on": []string{"a"}, "product": "stripper", "rate_m2_h": 5, "mask": false},
	}})
	assert.InEpsilon(t, 30.0/15+0.5*2, e.Steps[0].Hours, 1e-12, "two people halve the time, not the person-hours")
	require.NotEmpty(t, e.Steps[1].Warnings)
	assert.Contains(t, e.Steps[1].Warnings[0], "no edges")
	assert.Zero(t, e.Steps[1].Hours)
	assert.Zero(t, e.Steps[2].MaskingHours, "the mask step has taped it")
	assert.InEpsilon(t, 30.0/10, e.Steps[3].MaskingHours, 1e-12)
	assert.InEpsilon(t, (10.0/5+0.5)*2+3, e.Steps[3].Hours, 1e-12)
	assert.InEpsilon(t, 10.0/5, e.Steps[4].Hours, 1e-12)
	assert.InEpsilon(t, 33.0, e.Steps[3].MaskingTapeM, 1e-12)
}
