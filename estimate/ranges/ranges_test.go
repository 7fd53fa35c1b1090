package ranges

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/risk"
	"filmbuild/products"
)

func traced(t testing.TB, job string) *estimate.Graph {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	g, err := estimate.NewReader(nil).Trace([]byte(job), catalogue)
	require.NoError(t, err)
	return g
}

func worked(t testing.TB, job string, o Options) (*estimate.Range, *Trials) {
	t.Helper()
	r, trials, err := Work(context.Background(), traced(t, job), o)
	require.NoError(t, err)
	return r, trials
}

// The same bytes for any number of goroutines, of every example; another seed
// gives others.
func TestTheSameBytes(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, one := range all {
		g := traced(t, string(one.Job))
		var first []byte
		for _, workers := range []int{1, 2, 5} {
			r, _, err := Work(context.Background(), g, Options{Trials: 3000, Seed: 7, Workers: workers})
			require.NoError(t, err)
			text, err := json.Marshal(r)
			require.NoError(t, err)
			if first == nil {
				first = text
			}
			assert.Equal(t, string(first), string(text), one.ID)
		}
		r, _, err := Work(context.Background(), g, Options{Trials: 3000, Seed: 8})
		require.NoError(t, err)
		text, err := json.Marshal(r)
		require.NoError(t, err)
		assert.NotEqual(t, string(first), string(text), one.ID)
	}
}

// What a range promises: percentiles in order, shares that add up to 1, a chance
// that is one, a step and a need for each of the estimate's.
func TestARangeIsInOrder(t *testing.T) {
	one, err := example.Find("jet-trainer")
	require.NoError(t, err)
	g := traced(t, string(one.Job))
	r, _, err := Work(context.Background(), g, Usual())
	require.NoError(t, err)
	money := func(m estimate.MoneyRange) {
		t.Helper()
		assert.LessOrEqual(t, m.P10.Cmp(m.P50), 0)
		assert.LessOrEqual(t, m.P50.Cmp(m.P80), 0)
		assert.LessOrEqual(t, m.P80.Cmp(m.P90), 0)
	}
	money(r.Total)
	money(r.CashNeeded)
	require.Len(t, r.Steps, len(g.Estimate.Steps))
	for i, s := range r.Steps {
		assert.Equal(t, g.Estimate.Steps[i].ID, s.Step)
		money(s.Cost)
		assert.LessOrEqual(t, s.Hours.P10, s.Hours.P90)
		assert.Greater(t, s.Cost.StandardDeviation.Sign(), 0, s.Step)
	}
	require.Len(t, r.Order, len(g.Estimate.Order))
	assert.Greater(t, r.Total.StandardDeviation.Sign(), 0)
	assert.Greater(t, r.Holds, 0.0)
	assert.Less(t, r.Holds, 1.0)
	sum := 0.0
	for k, d := range r.Drivers {
		sum += d.Share
		assert.NotEmpty(t, d.Name)
		if k > 0 {
			assert.LessOrEqual(t, d.Share, r.Drivers[k-1].Share)
		}
	}
	assert.InDelta(t, 1, sum, 1e-9)
	sum = 0
	for _, b := range r.Histogram {
		sum += b.Share
	}
	assert.InDelta(t, 1, sum, 1e-9)
	for _, u := range r.Inputs {
		assert.True(t, u.Valid(), u.Input)
		assert.NotEmpty(t, u.Source, u.Input)
	}
	assert.Equal(t, g.Estimate.Budget.Total, r.SingleFigure)
}

// A trial is the engine's own answer for the numbers drawn: with one input that
// has two values, the totals are those of two jobs (identity).
func TestATrialIsAnEstimate(t *testing.T) {
	job := func(film string) string {
		return `{"name": "x", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": {"low": 40, "likely": 40, "high": 40}, "edge_m": 0}}],
			"products": [{"id": "p", "kind": "paint", "volume_solids_percent": 50, "dry_film_density_kg_l": 1.5, "packs": [{"pack_l": 1, "price": "31.00"}]}],
			"steps": [{"id": "s", "operation": "coat", "on": ["a"], "product": "p", "method": "brush", "dry_film_um": ` + film + `}], "contingency_percent": 7}`
	}
	g := traced(t, job(`{"low": 30, "likely": 30, "high": 90}`))
	r, trials, err := Work(context.Background(), g, Options{Trials: 1000, Seed: 1})
	require.NoError(t, err)
	totals := sorted(trials.Total)
	for _, total := range []float64{totals[0], totals[500], totals[999]} {
		packs := (total - r.SingleFigure.Float64()) / 1.07 / 31
		assert.InDelta(t, math.Round(packs), packs, 1e-3, "whole packs more, rounded to the cent")
		assert.GreaterOrEqual(t, packs, -1e-3, "no film is thinner than the likely one")
	}
	assert.InDelta(t, r.Total.P50.Float64(), totals[499], 40)
}

func TestACertainJob(t *testing.T) {
	r, _ := worked(t, `{"name": "x", "currency": "JPY", "items": [{"id": "a", "amount": "700"}], "contingency_percent": 10}`, Usual())
	assert.Equal(t, "770", r.Total.P10.String())
	assert.Equal(t, "770", r.Total.P90.String())
	assert.Equal(t, 1.0, r.Holds)
	assert.Empty(t, r.Drivers)
	assert.Empty(t, r.Inputs)
	assert.Contains(t, strings.Join(r.Method, "\n"), "nothing in this job varies")
}

func TestOptionsOutOfBounds(t *testing.T) {
	g := traced(t, `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": "700"}]}`)
	for _, o := range []Options{{Trials: 0}, {Trials: 999}, {Trials: 1_000_001}, {Trials: 1000, Seed: MostSeed + 1}} {
		_, _, err := Work(context.Background(), g, o)
		var list *fault.Error
		require.True(t, errors.As(err, &list), "%+v", o)
		assert.Equal(t, "out_of_range", list.Faults[0].Code)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, _, err := Work(ctx, g, Usual())
	assert.ErrorIs(t, err, context.Canceled)
}

// Items of a group rise and fall together, those that are correlated in part do
// so in part: the standard deviation of the total is the closed form's.
//
//	√(σ₁² + σ₂² + 2·ρ·σ₁·σ₂)
//
// Source: identity.
func TestCorrelatedItems(t *testing.T) {
	job := func(group, correlations string) string {
		return `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": {"low": 1000, "likely": 2000, "high": 6000}` + group + `}, {"id": "b", "amount": {"low": 1000, "likely": 2000, "high": 6000}` + group + `}]` + correlations + `}`
	}
	one := math.Sqrt(risk.Spread{Low: 1000, Likely: 2000, High: 6000, Distribution: risk.PERT}.Variance())
	for _, c := range []struct {
		job string
		rho float64
	}{{job("", ""), 0}, {job(`, "correlation_group": "g"`, ""), 1}, {job("", `, "correlations": [{"a": "a", "b": "b", "ratio": 0.4}]`), 0.4}, {job("", `, "correlations": [{"a": "a", "b": "b", "ratio": -0.4}]`), -0.4}} {
		r, _ := worked(t, c.job, Options{Trials: 200_000, Seed: 1})
		assert.InEpsilon(t, one*math.Sqrt(2+2*c.rho), r.Total.StandardDeviation.Float64(), 0.01, "ρ %g", c.rho)
	}
	r, _ := worked(t, job(`, "correlation_group": "g"`, ""), Usual())
	require.Len(t, r.Drivers, 1)
	assert.Equal(t, "items of the group g", r.Drivers[0].Name)
}

// A job so large that its trials would take minutes is told how many it may have,
// and that many are taken.
func TestTooMuchEffort(t *testing.T) {
	g := traced(t, `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": "700"}]}`)
	large := slices.Repeat([]*estimate.Graph{g}, 1+MostEffort/Effort(g, risk.MostTrials))
	err := Bearable(risk.MostTrials, large...)
	var list *fault.Error
	require.True(t, errors.As(err, &list))
	assert.Equal(t, "too_many", list.Faults[0].Code)
	var trials, most int
	_, err = fmt.Sscanf(list.Faults[0].Detail, "%d trials of a job as large as this take too long; ask for at most %d", &trials, &most)
	require.NoError(t, err)
	assert.Less(t, most, risk.MostTrials)
	assert.NoError(t, Bearable(most, large...))
}

func TestProgress(t *testing.T) {
	g := traced(t, `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": {"low": 1, "likely": 2, "high": 3}}]}`)
	var seen []int
	_, _, err := Work(context.Background(), g, Options{Trials: 2000, Seed: 1, Progress: func(done, total int) {
		assert.Equal(t, 2000, total)
		seen = append(seen, done)
	}})
	require.NoError(t, err)
	assert.True(t, slices.IsSorted(seen))
	assert.Equal(t, 2000, seen[len(seen)-1])
}
