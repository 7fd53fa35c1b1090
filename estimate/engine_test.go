package estimate_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// doc is a JSON object of a test's job.
type doc map[string]any

// tester is a test, or a property's draw.
type tester interface {
	require.TestingT
	Helper()
}

// try works a job of USD out that consists of the members given.
func try(t tester, members doc) (*estimate.Estimate, error) {
	t.Helper()
	job := doc{"name": "A job of the tests", "currency": "USD"}
	for name, value := range members {
		job[name] = value
	}
	text, err := json.Marshal(job)
	require.NoError(t, err)
	catalogue, err := products.Load()
	require.NoError(t, err)
	return estimate.NewReader(nil).Estimate(text, catalogue)
}

func work(t tester, members doc) *estimate.Estimate {
	t.Helper()
	e, err := try(t, members)
	require.NoError(t, err)
	return e
}

// line returns a working of a step.
func line(t *testing.T, lines []quantity.Working, name string) quantity.Working {
	t.Helper()
	for _, w := range lines {
		if w.Quantity == name {
			return w
		}
	}
	require.Failf(t, "no such working", "%s", name)
	return quantity.Working{}
}

func assumed(e *estimate.Estimate, about string) []estimate.Assumption {
	var found []estimate.Assumption
	for _, a := range e.Assumptions {
		if strings.Contains(a.Text, about) {
			found = append(found, a)
		}
	}
	return found
}

func flat(id string, areaM2, edgeM float64) doc {
	return doc{"id": id, "shape": doc{"kind": "measured", "area_m2": areaM2, "edge_m": edgeM}}
}

// Run leaves its job as it was, so that one job may be worked out by many.
func TestRunLeavesItsJobAlone(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	text := []byte(`{"name": "A job of the tests", "currency": "USD",
		"components": [{"id": "a", "shape": {"kind": "box", "length_m": 2, "width_m": 1, "height_m": 1}, "existing_film_um": 100, "substrate": "steel"}],
		"regions": [{"id": "some", "of": ["a"], "share_ratio": 0.5, "edge_m": 1}],
		"steps": [{"id": "s", "operation": "strip", "on": ["some"], "product": "stripper"}, {"id": "t", "operation": "strip", "on": ["a"], "product": "stripper"}]}`)
	job, err := estimate.NewReader(nil).Job(text, &fault.List{})
	require.NoError(t, err)
	before := fmt.Sprintf("%+v", *job)
	first, err := estimate.Run(job, catalogue)
	require.NoError(t, err)
	second, err := estimate.Run(job, catalogue)
	require.NoError(t, err)
	assert.Equal(t, first, second)
	assert.Equal(t, before, fmt.Sprintf("%+v", *job))
}

// A working is a formula with every term that it names, and a source.
func TestEveryWorkingHasFormulaTermsAndSource(t *testing.T) {
	e := work(t, doc{
		"components": []doc{{"id": "a", "shape": doc{"kind": "box", "length_m": 2, "width_m": 1, "height_m": 1}, "existing_film_um": 100, "openings": []doc{{"face": "top", "area_m2": 0.1, "edge_m": 1}}}},
		"markings":   []doc{{"id": "m", "kind": "star", "size_m": 0.3, "colour": "white"}},
		"steps": []doc{
			{"id": "1", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500},
			{"id": "2", "operation": "sand", "on": []string{"a"}, "product": "disc-80"},
			{"id": "3", "operation": "strip", "on": []string{"a"}, "product": "stripper"},
			{"id": "4", "operation": "wash", "on": []string{"a"}, "product": "detergent"},
			{"id": "5", "operation": "protect", "on": []string{"a"}, "product": "temporary-protective"},
			{"id": "6", "operation": "pretreat", "on": []string{"a"}, "product": "conversion-coat"},
			{"id": "7", "operation": "mask", "on": []string{"a/top"}},
			{"id": "8", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "hvlp"},
			{"id": "9", "operation": "mark", "markings": []string{"m"}, "method": "brush"},
		},
	})
	require.Len(t, e.Steps, 9)
	for _, s := range e.Steps {
		quantities := map[string]float64{}
		for _, w := range s.Working {
			quantities[w.Quantity] = w.Value
			assert.NotEmpty(t, w.Formula, "%s %s", s.ID, w.Quantity)
			assert.NotEmpty(t, w.Source, "%s %s", s.ID, w.Quantity)
			assert.NotEmpty(t, w.Terms, "%s %s", s.ID, w.Quantity)
		}
		assert.Equal(t, s.AreaM2, quantities["area_m2"], "%s", s.ID)
		assert.Equal(t, s.Hours, quantities["hours"], "%s", s.ID)
		if s.MaskingTapeM > 0 {
			assert.Equal(t, s.MaskingTapeM, quantities["masking_tape_m"], "%s", s.ID)
		}
		assert.Positive(t, s.Hours, "%s", s.ID)
	}
}
