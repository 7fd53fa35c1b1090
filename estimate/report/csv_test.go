package report

import (
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
)

func rowsOf(t *testing.T, e *estimate.Estimate, table string) (map[string]int, [][]string) {
	t.Helper()
	data, err := CSV(e, table)
	require.NoError(t, err)
	assert.Equal(t, strings.Count(string(data), "\n"), strings.Count(string(data), "\r\n"), "RFC 4180 ends lines with CRLF")
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	require.NoError(t, err)
	require.NotEmpty(t, rows)
	columns := map[string]int{}
	for k, name := range rows[0] {
		columns[name] = k
	}
	require.Len(t, columns, len(rows[0]), "no head stands twice")
	return columns, rows[1:]
}

// Every table of every example is read back by a CSV reader, and its numbers are
// those of the estimate to ten digits; money is exact.
func TestCSVHoldsTheEstimatesNumbers(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, one := range all {
		e := estimateOf(t, one.Job)
		number := func(cell string) float64 {
			value, err := strconv.ParseFloat(cell, 64)
			require.NoError(t, err, cell)
			return value
		}
		columns, rows := rowsOf(t, e, "steps")
		require.Len(t, rows, len(e.Steps))
		for i, s := range e.Steps {
			for name, want := range map[string]float64{"area_m2": s.AreaM2, "litres": s.Litres, "kilograms": s.Kilograms, "masking_tape_m": s.MaskingTapeM,
				"hours": s.Hours, "waste_kg": s.WasteKg, "dry_film_kg": s.DryFilmKg, "removed_film_kg": s.RemovedKg} {
				require.Contains(t, columns, name)
				assert.InDelta(t, want, number(rows[i][columns[name]]), 5.001e-10*want, "%s of %s", name, s.ID)
			}
			assert.Equal(t, s.Cost.String(), rows[i][columns["cost_"+e.Currency]])
		}
		columns, rows = rowsOf(t, e, "masking")
		laid := map[string]float64{}
		for _, row := range rows {
			laid[row[columns["step"]]] += number(row[columns["tape_m"]])
		}
		columns, rows = rowsOf(t, e, "colours")
		litres := map[string]float64{}
		for _, row := range rows {
			litres[row[columns["step"]]] += number(row[columns["litres"]]) + number(row[columns["thinner_l"]])
		}
		for _, s := range e.Steps {
			assert.InDelta(t, s.MaskingTapeM, 1.1*laid[s.ID], 1e-6, "the tape of %s, a tenth of it thrown away", s.ID)
			if s.Operation == "mark" {
				assert.InEpsilon(t, s.Litres, litres[s.ID], 1e-8, "the colours of %s", s.ID)
			}
		}
		columns, rows = rowsOf(t, e, "order")
		total := map[string]float64{}
		for _, row := range rows {
			if cell := row[columns["line_cost_"+e.Currency]]; cell != "" {
				total["cost"] += number(cell)
			}
		}
		assert.InDelta(t, e.Budget.MaterialsOrdered.Float64(), total["cost"], 1e-6, "the column adds up to the order")
		columns, rows = rowsOf(t, e, "areas")
		for _, row := range rows {
			total["area"] += number(row[columns["area_m2"]])
		}
		assert.InEpsilon(t, e.Totals.AreaM2, total["area"], 1e-9)
		columns, rows = rowsOf(t, e, "budget")
		assert.Equal(t, e.Budget.Total.String(), rows[len(rows)-1][columns["total_"+e.Currency]])
		require.Len(t, rows, len(e.Budget.Categories)+1)
	}
	_, err = CSV(&estimate.Estimate{}, "secrets")
	assert.ErrorContains(t, err, "budget")
}

// Ten digits at most, no exponent, and never a longer cell for a shorter number.
func TestNumbersOfATableAreShort(t *testing.T) {
	for value, want := range map[float64]string{0: "0", 0.1 + 0.2: "0.3", 1.0 / 3: "0.3333333333", 2.5: "2.5", 1e15: "1000000000000000", 123456789012.34: "123456789000", -1.5e-7: "-0.00000015"} {
		assert.Equal(t, want, number(value))
	}
	assert.Equal(t, "\xef\xbb\xbfa", string(Marked([]byte("a"))))
}

// No text cell runs as a formula in a spreadsheet (OWASP, CSV injection); no
// number is made text.
func TestNoCellRunsAsAFormula(t *testing.T) {
	for _, bad := range []string{`=1+1`, `+1`, `-1`, `@SUM(A1)`, "\t=1", `  =1`, `=HYPERLINK("x")`, "\u00a0=1", "\n=1", "＝1"} {
		cells, err := strconv.Unquote(strconv.Quote(bad))
		require.NoError(t, err)
		safe := text(cells)
		assert.True(t, strings.HasPrefix(safe, "'"), "%q became %q", bad, safe)
	}
	for _, good := range []string{"", "white", "2 × 5 L", "'quoted", "a=b", "µ"} {
		assert.Equal(t, good, text(good))
	}
	e := estimateOf(t, []byte(`{"name": "x", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 9, "edge_m": 3}}],
		"products": [{"id": "soap-x", "kind": "liquid", "use": "cleaner", "name": "=cmd|' /C calc'!A0", "supplier": "@shop, \"cheap\"", "coverage_l_m2": 1, "packs": [{"pack_l": 5, "price": "3.00"}]}],
		"steps": [{"id": "s", "operation": "wash", "on": ["a"], "product": "soap-x"}], "items": [{"id": "i", "amount": "1.00", "category": "-2+3"}]}`))
	columns, rows := rowsOf(t, e, "order")
	assert.Equal(t, "'=cmd|' /C calc'!A0", rows[0][columns["name"]])
	assert.Equal(t, `'@shop, "cheap"`, rows[0][columns["supplier"]])
	columns, rows = rowsOf(t, e, "budget")
	assert.Equal(t, "'-2+3", rows[2][columns["category"]])
}
