package workbook

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"filmbuild/estimate"
	"filmbuild/estimate/workbook"
)

// cells reads the numbers of a sheet by the text of another column.
func number(t *testing.T, f *excelize.File, sheet, keyColumn, key, column string) float64 {
	t.Helper()
	rows, err := f.GetRows(sheet)
	require.NoError(t, err)
	for i := range rows {
		cell, err := f.GetCellValue(sheet, keyColumn+strconv.Itoa(i+1))
		require.NoError(t, err)
		if cell != key {
			continue
		}
		return raw(t, f, sheet, column+strconv.Itoa(i+1))
	}
	require.Fail(t, "no row", "%s has no %q in column %s", sheet, key, keyColumn)
	return 0
}

func raw(t *testing.T, f *excelize.File, sheet, cell string) float64 {
	t.Helper()
	text, err := f.GetCellValue(sheet, cell, excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err, "%s!%s holds %q", sheet, cell, text)
	return x
}

// agrees asserts that a workbook says what an estimate says: money to the cent,
// quantities to 1e-9.
func agrees(t *testing.T, f *excelize.File, e *estimate.Estimate) {
	t.Helper()
	near := func(want, got float64, what string) {
		t.Helper()
		assert.InDelta(t, want, got, 1e-9*max(1, math.Abs(want)), what)
	}
	cent := func(want, got float64, what string) {
		t.Helper()
		assert.InDelta(t, want, got, 0.001, what)
	}
	cent(e.Budget.Total.Float64(), number(t, f, "Summary", "A", "Total", "B"), "total")
	cent(e.Budget.CashNeeded.Float64(), number(t, f, "Summary", "A", "Cash needed", "B"), "cash needed")
	cent(e.Budget.InKind.Float64(), number(t, f, "Summary", "A", "In kind", "B"), "in kind")
	cent(e.Budget.Tax.Float64(), number(t, f, "Summary", "A", "Tax", "B"), "tax")
	cent(e.Budget.Total.Float64(), number(t, f, "Budget", "A", "Total", "D"), "sum of the lines")
	for _, c := range e.Budget.Categories {
		cent(c.Total.Float64(), number(t, f, "Budget", "A", c.Category, "F"), c.Category)
	}
	for i := range e.Steps {
		s := &e.Steps[i]
		cent(s.Cost.Float64(), number(t, f, "Steps", "A", s.ID, "L"), s.ID+" cost")
		near(s.Litres, number(t, f, "Steps", "A", s.ID, "E"), s.ID+" litres")
		near(s.Kilograms, number(t, f, "Steps", "A", s.ID, "F"), s.ID+" kilograms")
		near(s.MaskingTapeM, number(t, f, "Steps", "A", s.ID, "G"), s.ID+" tape")
		near(s.Hours, number(t, f, "Steps", "A", s.ID, "H"), s.ID+" hours")
		near(s.WasteKg, number(t, f, "Steps", "A", s.ID, "I"), s.ID+" waste")
	}
	for i := range e.Order {
		o := &e.Order[i]
		near(o.Needed, number(t, f, "Order", "A", o.Product, "D"), o.Product+" needed")
		near(o.Bought, number(t, f, "Order", "A", o.Product, "H"), o.Product+" bought")
		near(o.LeftOver, number(t, f, "Order", "A", o.Product, "I"), o.Product+" left over")
		cent(o.Cost.Float64(), number(t, f, "Order", "A", o.Product, "J"), o.Product+" cost")
	}
	if len(e.Steps) > 0 {
		near(e.Totals.Hours, number(t, f, "Summary", "A", "Person-hours", "B"), "hours")
		near(e.Totals.WasteKg, number(t, f, "Summary", "A", "Waste", "B"), "waste")
	}
	if len(e.Areas) > 0 {
		near(e.Totals.AreaM2, number(t, f, "Summary", "A", "Area of all parts", "B"), "area")
	}
}

// change multiplies an input of a workbook, found by what the sheet Inputs calls it.
func change(t *testing.T, f *excelize.File, what string, factor float64) (now float64) {
	t.Helper()
	rows, err := f.GetRows("Inputs")
	require.NoError(t, err)
	for i, row := range rows {
		if len(row) > 1 && row[0] == what {
			cell := "B" + strconv.Itoa(i+1)
			now = math.Round(raw(t, f, "Inputs", cell)*factor*1e4) / 1e4
			require.NoError(t, f.SetCellValue("Inputs", cell, now))
			return now
		}
	}
	require.Fail(t, "no input", "%q", what)
	return 0
}

// with returns a job document with numbers replaced by their pointers.
func with(t *testing.T, job []byte, numbers map[string]any) []byte {
	t.Helper()
	var doc any
	require.NoError(t, json.Unmarshal(job, &doc))
	for pointer, value := range numbers {
		at := doc
		path := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
		for _, name := range path[:len(path)-1] {
			if list, ok := at.([]any); ok {
				i, err := strconv.Atoi(name)
				require.NoError(t, err)
				at = list[i]
				continue
			}
			at = at.(map[string]any)[name]
		}
		at.(map[string]any)[path[len(path)-1]] = value
	}
	text, err := json.Marshal(doc)
	require.NoError(t, err)
	return text
}

// TestCachedValuesAreTheEstimates: what a reader sees before anything is worked
// out anew (identity).
func TestCachedValuesAreTheEstimates(t *testing.T) {
	for _, id := range []string{"jet-trainer", "one-panel", "lock-gate", "airliner"} {
		t.Run(id, func(t *testing.T) {
			g := trace(t, exampleJob(t, id))
			agrees(t, written(t, g), g.Estimate)
		})
	}
}

// TestLibreOfficeWorksOutTheSame recalculates every workbook, as it is and with
// inputs changed, and compares with the engine's estimate of the changed job:
// money to the cent, quantities to 1e-9 (identity; LibreOffice is the oracle of
// the formulas).
func TestLibreOfficeWorksOutTheSame(t *testing.T) {
	files := map[string]*excelize.File{}
	want := map[string]*estimate.Estimate{}
	for _, id := range []string{"jet-trainer", "one-panel", "lock-gate", "airliner"} {
		g := trace(t, exampleJob(t, id))
		files[id], want[id] = written(t, g), g.Estimate
	}

	changed := written(t, trace(t, exampleJob(t, "jet-trainer")))
	job := map[string]any{}
	factor := 1.07
	for _, u := range trace(t, exampleJob(t, "jet-trainer")).InputsOfJob() {
		if factor *= 0.97; !strings.Contains(u.Pointer, "/crew") && !strings.Contains(u.Pointer, "coats") && !strings.Contains(u.Pointer, "nozzles") && !strings.Contains(u.Pointer, "helpers") {
			job[u.Pointer] = change(t, changed, u.Name, factor)
		}
		if factor < 0.8 {
			factor = 1.2
		}
	}
	require.Greater(t, len(job), 10, "inputs changed")
	files["changed"], want["changed"] = changed, trace(t, with(t, exampleJob(t, "jet-trainer"), job)).Estimate

	for id, f := range recalculated(t, files) {
		t.Run(id, func(t *testing.T) { agrees(t, f, want[id]) })
	}
}

// TestAnAreaAPriceAndAnEfficiency changes the inputs that people change most, so
// that another purchase becomes the cheapest (invented products; identity).
func TestAnAreaAPriceAndAnEfficiency(t *testing.T) {
	job := func(area, efficiency float64, price string) []byte {
		text, err := json.Marshal(map[string]any{
			"name": "=1+1", "currency": "KWD", "tax_percent": 7, "contingency_percent": 12.5, "allowance_percent": 5,
			"components": []any{map[string]any{"id": "deck", "shape": map[string]any{"kind": "measured", "area_m2": area}}},
			"products": []any{map[string]any{"id": "p", "kind": "paint", "name": "Invented primer", "volume_solids_percent": 55, "packs": []any{
				map[string]any{"pack_l": 5, "price": price}, map[string]any{"pack_l": 1, "price": "34.125"}, map[string]any{"pack_l": 0.4, "price": "16.050"}}}},
			"steps":  []any{map[string]any{"id": "c", "operation": "coat", "on": []any{"deck"}, "product": "p", "dry_film_um": 40, "coats": 2, "transfer_efficiency_percent": efficiency, "method": "hvlp"}},
			"labour": map[string]any{"volunteer_rate": "3.275"},
		})
		require.NoError(t, err)
		return text
	}
	f := written(t, trace(t, job(60, 65, "140.000")))
	set := func(what string, value float64) {
		rows, err := f.GetRows("Inputs")
		require.NoError(t, err)
		for i, row := range rows {
			if len(row) > 1 && row[0] == what {
				require.NoError(t, f.SetCellValue("Inputs", "B"+strconv.Itoa(i+1), value))
				return
			}
		}
		require.Fail(t, "no input", what)
	}
	set("area of deck, face surface", 83.3)
	set("transfer efficiency of step c", 50)
	set("price of 5 L of p", 190)
	after := recalculated(t, map[string]*excelize.File{"after": f})["after"]
	agrees(t, after, trace(t, job(83.3, 50, "190.000")).Estimate)
	title, err := after.GetCellValue("Summary", "A1")
	require.NoError(t, err)
	assert.Equal(t, "=1+1", title, "a text is never a formula")
	formula, err := after.GetCellFormula("Summary", "A1")
	require.NoError(t, err)
	assert.Empty(t, formula)
}

// TestNoCellIsAnError: no cell of a recalculated workbook holds an error.
func TestNoCellIsAnError(t *testing.T) {
	f := recalculated(t, map[string]*excelize.File{"jet-trainer": written(t, trace(t, exampleJob(t, "jet-trainer")))})["jet-trainer"]
	seen := 0
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		require.NoError(t, err)
		for i, row := range rows {
			for k, cell := range row {
				seen++
				assert.False(t, strings.HasPrefix(cell, "#"), "%s row %d column %d holds %s", sheet, i+1, k+1, cell)
				assert.NotContains(t, cell, "Err:")
			}
		}
	}
	assert.Greater(t, seen, 1000)
}

// TestAWorkbookIsTheSameEachTime: same job, same bytes.
func TestAWorkbookIsTheSameEachTime(t *testing.T) {
	var one, two bytes.Buffer
	require.NoError(t, workbook.Write(&one, trace(t, exampleJob(t, "jet-trainer"))))
	require.NoError(t, workbook.Write(&two, trace(t, exampleJob(t, "jet-trainer"))))
	require.True(t, bytes.Equal(one.Bytes(), two.Bytes()))
}
