package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/products"
)

func improvement(e *estimate.Estimate, input string) *estimate.Improvement {
	for i := range e.Improve {
		if e.Improve[i].Input == input {
			return &e.Improve[i]
		}
	}
	return nil
}

// What one number does to the cost of the work is what the engine itself says
// when it is given both ends of its range.
func TestAnImprovementIsWhatTheEngineSays(t *testing.T) {
	job := func(field string, x any) doc {
		spray := coat("s", "a", "polyurethane-gloss-white")
		spray["setup_h"], spray["crew"] = 2, 2
		if field != "" {
			spray[field] = x
		}
		return doc{"components": []doc{flat("a", 200, 0)}, "steps": []doc{spray}, "labour": doc{"volunteer_rate": "24.00"}}
	}
	e := work(t, job("", nil))
	catalogue, err := products.Load()
	require.NoError(t, err)
	hvlp, _ := catalogue.Method("hvlp")
	for input, field := range map[string]string{"method/hvlp/transfer_efficiency_percent": "transfer_efficiency_percent", "method/hvlp/rate_m2_h": "rate_m2_h"} {
		i := improvement(e, input)
		require.NotNil(t, i, input)
		book, times := hvlp.TransferEfficiencyPercent, 1.0
		if field == "rate_m2_h" {
			book, times = hvlp.RateM2H, 2 // a job's rate is that of the crew
		}
		assert.Equal(t, [3]float64{book.Low, book.Likely, book.High}, [3]float64{i.Low, i.Value, i.High})
		low, high := work(t, job(field, book.Low*times)), work(t, job(field, book.High*times))
		off := 0.011 // two costs, each rounded to a cent
		if field == "transfer_efficiency_percent" {
			off = 0.01 * i.Effect.Float64() // other litres are bought in other packs, at another mean price
		}
		assert.InDelta(t, low.Steps[0].Cost.Float64()-high.Steps[0].Cost.Float64(), i.Effect.Float64(), off, input)
		assert.Equal(t, []string{"s"}, i.Steps)
		assert.Contains(t, i.Text, "do a test patch for s")
	}
}

// A trial takes its number off the list of what nobody has tried; what is left of
// its uncertainty stands there as a patch.
func TestATrialImprovesTheEstimate(t *testing.T) {
	wash := doc{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent"}
	job := doc{"components": []doc{flat("a", 500, 0)}, "steps": []doc{wash}, "labour": doc{"volunteer_rate": "24.00"}}
	before := improvement(work(t, job), "operation/wash/rate")
	require.NotNil(t, before)
	job["test_patches"] = []doc{{"for": []string{"s"}, "area_m2": 9, "minutes": 36}} // 15 m²/h, as the book says
	e := work(t, job)
	assert.Nil(t, improvement(e, "operation/wash/rate"))
	after := improvement(e, "patches/s/rate_m2_h")
	require.NotNil(t, after)
	assert.Less(t, after.Effect.Float64(), before.Effect.Float64())
	assert.Contains(t, after.Text, "larger test patch")
}

// The list is in the order of its effects, each with its source.
func TestImprovementsOfTheExamples(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	catalogue, err := products.Load()
	require.NoError(t, err)
	for _, ex := range all {
		e, err := estimate.NewReader(nil).Estimate(ex.Job, catalogue)
		require.NoError(t, err)
		require.NotEmpty(t, e.Improve, ex.ID)
		for k, i := range e.Improve {
			assert.NotEmpty(t, i.Source, i.Input)
			assert.NotEmpty(t, i.Steps, i.Input)
			assert.LessOrEqual(t, i.Low, i.Value, i.Input)
			assert.GreaterOrEqual(t, i.High, i.Value, i.Input)
			assert.True(t, strings.Contains(i.Text, i.Effect.String()), i.Text)
			if k > 0 {
				assert.GreaterOrEqual(t, e.Improve[k-1].Effect.Cmp(i.Effect), 0)
			}
		}
	}
}
