package compare

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/wire"
	"filmbuild/products"
)

const base = `{"name": "invented", "currency": "USD", "labour": {"volunteer_rate": "20"},
	"components": [{"id": "hull", "shape": {"kind": "measured", "area_m2": {"low": 80, "likely": 100, "high": 150}, "edge_m": 0}}],
	"steps": [{"id": "wash", "operation": "wash", "on": ["hull"], "product": "detergent"},
		{"id": "prime", "operation": "coat", "on": ["hull"], "product": "epoxy-primer", "method": "hvlp"}],
	"items": [{"id": "hire", "amount": "100.00"}]}`

func compared(t testing.TB, document string, o ranges.Options) (*Result, error) {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	return Work(context.Background(), estimate.NewReader(nil), catalogue, []byte(document), o)
}

func against1(t testing.TB, patch string) *Result {
	t.Helper()
	r, err := compared(t, `{"base": `+base+`, "variants": [{"id": "v", "patch": `+patch+`}]}`, ranges.Options{Trials: 2000, Seed: 1})
	require.NoError(t, err)
	return r
}

// With shared draws a sum that is added costs that sum more in every trial, and
// nothing else differs; without them the difference would spread as the totals do.
func TestDifferencesAreReal(t *testing.T) {
	r := against1(t, `{"items": [{"id": "more", "amount": "70.00"}]}`)
	a := r.Ways[1].Against
	for _, amount := range []string{a.P10.String(), a.P50.String(), a.P80.String(), a.P90.String(), a.Mean.String()} {
		assert.Equal(t, "70.00", amount)
	}
	assert.Zero(t, a.Cheaper)
	assert.Equal(t, 1.0, r.Ways[0].Cheapest)
	assert.Zero(t, r.Ways[1].Cheapest)
	assert.Equal(t, "70.00", r.Ways[1].Difference.Cost.String())
	assert.Zero(t, r.Ways[1].Difference.Hours)
	assert.Greater(t, r.Ways[0].Range.Total.StandardDeviation.Float64(), 70.0)
}

// A step that enters before others leaves the draws of theirs as they were: they
// are told by ids, not by places.
func TestAnInsertedStepKeepsTheDraws(t *testing.T) {
	r := against1(t, `{"steps": [{"id": "wash"}, {"id": "again", "operation": "wash", "on": ["hull"], "product": "detergent"}], "note": "once more"}`)
	require.Len(t, r.Steps, 3)
	for _, row := range r.Steps {
		if row.Step == "prime" {
			assert.Equal(t, row.Cells[0].Figures.P80, row.Cells[1].Figures.P80)
			assert.Equal(t, row.Cells[0].Figures.Hours, row.Cells[1].Figures.Hours)
		}
		if row.Step == "again" {
			assert.False(t, row.Cells[0].Present)
			assert.True(t, row.Cells[1].Present)
			assert.Equal(t, row.Cells[1].Figures.Cost, row.Cells[1].Difference)
		}
	}
	assert.Equal(t, 0.0, r.Ways[1].Against.Cheaper, "a step more is never cheaper")
}

// The figures are those of the estimates of the two jobs (identity), and the
// base differs from itself by nothing.
func TestFiguresAreTheEstimates(t *testing.T) {
	r := against1(t, `{"steps": {"wash": null}, "items": {"hire": {"amount": "60.00"}}}`)
	catalogue, err := products.Load()
	require.NoError(t, err)
	e, err := estimate.NewReader(nil).Estimate([]byte(base), catalogue)
	require.NoError(t, err)
	f := r.Ways[0].Figures
	assert.Equal(t, e.Budget.Total, f.Cost)
	assert.Equal(t, e.Budget.CashNeeded, f.Cash)
	assert.Equal(t, e.Totals.Hours, f.Hours)
	assert.Equal(t, e.Totals.Litres, f.Litres)
	assert.Equal(t, e.Totals.VOCKg, f.VOCKg)
	assert.Nil(t, r.Ways[0].Difference)
	v := r.Ways[1]
	assert.Equal(t, v.Figures.Cost.Sub(f.Cost), v.Difference.Cost)
	assert.Less(t, v.Figures.Hours, f.Hours)
	assert.Equal(t, 1.0, v.Against.Cheaper)
	sum := 0.0
	for _, w := range r.Ways {
		sum += w.Cheapest
	}
	assert.InDelta(t, 1, sum, 1e-12)
}

// Ways that cost the same share the trials.
func TestTiesAreShared(t *testing.T) {
	r := against1(t, `{"note": "the same work by another name"}`)
	assert.Equal(t, []float64{0.5, 0.5}, []float64{r.Ways[0].Cheapest, r.Ways[1].Cheapest})
	assert.Zero(t, r.Ways[1].Against.Cheaper)
}

func TestTheBuiltInComparison(t *testing.T) {
	document, err := Example()
	require.NoError(t, err)
	r, err := compared(t, string(document), ranges.Options{Trials: 1000, Seed: 1, Workers: 1})
	require.NoError(t, err)
	require.Len(t, r.Ways, 3)
	again, err := compared(t, string(document), ranges.Options{Trials: 1000, Seed: 1, Workers: 3})
	require.NoError(t, err)
	one, err := json.Marshal(r)
	require.NoError(t, err)
	two, err := json.Marshal(again)
	require.NoError(t, err)
	assert.Equal(t, string(one), string(two), "for any number of processors")
	operations := map[string]string{}
	for _, row := range r.Steps {
		if row.Step == "bare" {
			for _, c := range row.Cells {
				operations[c.Way] = c.Operation
			}
		}
	}
	assert.Equal(t, map[string]string{"base": "blast", "chemical": "strip", "by-hand": "sand"}, operations)
}

func TestRefusedComparisons(t *testing.T) {
	variants := func(text string) string { return `{"base": ` + base + `, "variants": ` + text + `}` }
	for _, c := range []struct{ document, pointer, code string }{
		{`{"variants": []}`, "/base", "required"},
		{`[]`, "", "wrong_type"},
		{variants(`[]`), "/variants", "required"},
		{variants(`3`), "/variants", "wrong_type"},
		{`{"base": ` + base + `}`, "/variants", "required"},
		{variants(`[{"id": "v", "patch": {}}]`), "/variants/0/patch", "inconsistent"},
		{variants(`[{"id": "v", "patch": {"name": "invented", "items": [{"id": "hire", "amount": "100.00"}]}}]`), "/variants/0/patch", "inconsistent"},
		{variants(`[{"id": "v", "patch": {"steps": {"nobody": null}}}]`), "/variants/0/patch/steps/nobody", "unknown_reference"},
		{variants(`[{"id": "v", "patch": {"tax_percent": null}}]`), "/variants/0/patch/tax_percent", "unknown_reference"},
		{variants(`[{"id": "v"}]`), "/variants/0/patch", "required"},
		{variants(`[{"id": "v", "patch": [1]}]`), "/variants/0/patch", "wrong_type"},
		{variants(`[{"patch": {"note": "x"}}]`), "/variants/0/id", "required"},
		{variants(`[{"id": "base", "patch": {"note": "x"}}]`), "/variants/0/id", "duplicate_id"},
		{variants(`[{"id": "v", "patch": {"note": "x"}}, {"id": "v", "patch": {"note": "y"}}]`), "/variants/1/id", "duplicate_id"},
		{variants(`[{"id": "v", "patch": {"steps": [{"id": "prime", "product": "nothing"}]}}]`), "/variants/0/patch/steps/1/product", "unknown_reference"},
		{variants(`[{"id": "v", "patch": {"currency": "EUR"}}]`), "/variants/0/patch/currency", "inconsistent"},
		{variants(`[{"id": "v", "patch": {"colour": "red"}}]`), "/variants/0/patch/colour", "unknown_field"},
		{variants(`[{"id": "v", "patch": {"note": "x"}, "wish": 1}]`), "/variants/0/wish", "unknown_field"},
		{`{"base": {"name": "x"}, "variants": [{"id": "v", "patch": {"note": "x"}}]}`, "/base/currency", "required"},
		{`{"base": 3, "variants": [{"id": "v", "patch": {"note": "x"}}]}`, "/base", "wrong_type"},
	} {
		_, err := compared(t, c.document, ranges.Usual())
		var list *fault.Error
		if assert.True(t, errors.As(err, &list), "%s: %v", c.document, err) {
			said := make([]string, len(list.Faults))
			for i, f := range list.Faults {
				said[i] = f.Pointer + " " + f.Code
			}
			assert.Contains(t, said, c.pointer+" "+c.code, c.document)
		}
	}
	many := ""
	for i := range MostVariants + 1 {
		many += fmt.Sprintf(`%s{"id": "v%d", "patch": {"note": "x"}}`, map[bool]string{true: "", false: ","}[i == 0], i)
	}
	_, err := compared(t, variants("["+many+"]"), ranges.Usual())
	assert.ErrorContains(t, err, "too_many")
	_, err = compared(t, variants(`[{"id": "v", "patch": {"note": "x"}}]`), ranges.Options{})
	assert.ErrorContains(t, err, "/trials")
}

// No text makes the reader of comparisons fail other than by its own faults, and
// what it reads is a base and at most one way for each variant.
func FuzzRead(f *testing.F) {
	f.Add(`{"base": ` + base + `, "variants": [{"id": "v", "patch": {"steps": {"wash": null}}}]}`)
	f.Add(`{"base": {}, "variants": [{"id": "v", "patch": {"steps": [{"id": "a"}]}}, null]}`)
	f.Add(`{"base": {"items": [{"id": "a"}, {"id": "b"}]}, "variants": [{"id": "v", "patch": {"items": {"a": null, "b": {"x": [1, {"id": 2}]}, "c": {}}}}]}`)
	reader := estimate.NewReader(nil)
	f.Fuzz(func(t *testing.T, document string) {
		faults := &fault.List{}
		c, ways, err := read(reader, []byte(document), faults)
		if err != nil {
			var syntax *wire.SyntaxError
			require.ErrorAs(t, err, &syntax)
			return
		}
		require.LessOrEqual(t, len(ways), 1+len(c.Variants))
		for _, w := range ways {
			require.NotNil(t, w.job)
		}
	})
}
