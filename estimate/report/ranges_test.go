package report

import (
	"context"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/compare"
	"filmbuild/estimate/example"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/target"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

func rangedExample(t *testing.T, id string) *estimate.Estimate {
	t.Helper()
	one, err := example.Find(id)
	require.NoError(t, err)
	catalogue, err := products.Load()
	require.NoError(t, err)
	w, err := estimate.NewReader(nil).Work(one.Job, catalogue)
	require.NoError(t, err)
	require.NoError(t, ranges.Add(context.Background(), w, ranges.Options{Trials: 1000, Seed: 1}))
	return w.Estimate()
}

func TestRangesFitTheTerminal(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, one := range all {
		e := rangedExample(t, one.ID)
		for _, system := range []units.System{units.SI, units.US} {
			text := Table(e, system)
			narrow(t, text)
			assert.Contains(t, text, "RANGE in "+e.Currency)
			assert.Contains(t, text, e.Range.Total.P80.String())
		}
	}
}

// Every figure of the range stands in its table, as a number that reads back.
func TestRangeTables(t *testing.T) {
	e := rangedExample(t, "jet-trainer")
	for table, lines := range map[string]int{"range": 4 + 2*len(e.Steps) + len(e.Order), "drivers": 1 + len(e.Range.Drivers), "curve": 102, "inputs": 1 + len(e.Range.Inputs)} {
		text, err := CSV(e, table)
		require.NoError(t, err)
		rows, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
		require.NoError(t, err)
		assert.Len(t, rows, lines, table)
	}
	drawing, err := Chart(e)
	require.NoError(t, err)
	assert.Contains(t, string(drawing), e.Range.Total.P80.String())
	e.Range = nil
	_, err = Chart(e)
	assert.ErrorIs(t, err, ErrNoRange)
}

func TestComparisonsAndSolutionsFitTheTerminal(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	document, err := compare.Example()
	require.NoError(t, err)
	many := strings.Replace(string(document), `"variants": [`, `"variants": [{"id": "`+strings.Repeat("w", 80)+`", "name": "`+strings.Repeat("very long ", 30)+`", "patch": {"note": "x"}}, {"id": "third", "patch": {"note": "y"}},`, 1)
	require.NotEqual(t, string(document), many)
	for _, text := range []string{string(document), many} {
		r, err := compare.Work(context.Background(), estimate.NewReader(nil), catalogue, []byte(text), ranges.Options{Trials: 1000, Seed: 1})
		require.NoError(t, err)
		for _, system := range []units.System{units.SI, units.US} {
			printed := Comparison(r, system)
			narrow(t, printed)
			for _, w := range r.Ways {
				assert.Contains(t, printed, w.Figures.P80.String(), w.ID)
			}
		}
		table, err := ComparisonCSV(r)
		require.NoError(t, err)
		_, err = csv.NewReader(strings.NewReader(string(table))).ReadAll()
		require.NoError(t, err)
	}
	one, err := example.Find("lock-gate")
	require.NoError(t, err)
	a, err := target.Ask(context.Background(), estimate.NewReader(nil), catalogue, one.Job, map[string]any{"find": "area", "budget": "60000"})
	require.NoError(t, err)
	narrow(t, Solution(a, units.SI))
	assert.Contains(t, Solution(a, units.SI), "TARGETS")
}
