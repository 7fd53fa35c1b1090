// Package outputs compares every form of an estimate with its JSON: table, CSV,
// workbook, PDF and chart say the same numbers.
package outputs

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/ranges"
	"filmbuild/products"
)

func worked(t *testing.T, id string) *estimate.Worked {
	t.Helper()
	ex, err := example.Find(id)
	require.NoError(t, err)
	catalogue, err := products.Load()
	require.NoError(t, err)
	w, err := estimate.NewReader(nil).Work(ex.Job, catalogue)
	require.NoError(t, err)
	require.NoError(t, ranges.Add(t.Context(), w, ranges.Usual()))
	return w
}

func written(t *testing.T, w *estimate.Worked, f forms.Wanted) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, forms.Write(&b, w, f))
	return b.Bytes()
}

// said is what the JSON says.
type said struct {
	Currency string `json:"currency"`
	Steps    []struct {
		ID      string  `json:"id"`
		Name    string  `json:"name"`
		Litres  float64 `json:"litres"`
		Hours   float64 `json:"hours"`
		WasteKg float64 `json:"waste_kg"`
		Cost    string  `json:"cost"`
	} `json:"steps"`
	Order []struct {
		Product string  `json:"product"`
		Name    string  `json:"name"`
		Needed  float64 `json:"needed"`
		Cost    string  `json:"cost"`
	} `json:"order"`
	Budget struct {
		Total      string `json:"total"`
		CashNeeded string `json:"cash_needed"`
		InKind     string `json:"in_kind"`
		Categories []struct {
			Category string `json:"category"`
			Total    string `json:"total"`
		} `json:"categories"`
	} `json:"budget"`
	Range struct {
		Total struct {
			P50 string `json:"p50"`
			P80 string `json:"p80"`
			P90 string `json:"p90"`
		} `json:"total"`
	} `json:"range"`
	Totals struct {
		AreaM2 float64 `json:"area_m2"`
		Hours  float64 `json:"hours"`
	} `json:"totals"`
}

func inJSON(t *testing.T, w *estimate.Worked) said {
	t.Helper()
	var s said
	require.NoError(t, json.Unmarshal(written(t, w, forms.Wanted{Format: "json"}), &s))
	require.NotEmpty(t, s.Steps)
	require.NotEmpty(t, s.Order)
	return s
}

// rows reads a CSV table: its head and its rows by the first cell.
func rows(t *testing.T, text []byte) (map[string]int, map[string][]string) {
	t.Helper()
	all, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	require.NoError(t, err)
	head, found := map[string]int{}, map[string][]string{}
	for i, name := range all[0] {
		head[name] = i
	}
	for _, row := range all[1:] {
		if found[row[0]] == nil { // a product bought in two packs has two rows, its need in the first
			found[row[0]] = row
		}
	}
	return head, found
}

func near(t *testing.T, want float64, text, what string) {
	t.Helper()
	got, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err, "%s: %q", what, text)
	assert.InDelta(t, want, got, 1e-9*max(1, math.Abs(want)), what) // ten digits
}

func TestCSVSaysWhatTheJSONSays(t *testing.T) {
	for _, id := range []string{"jet-trainer", "lock-gate", "one-panel", "airliner"} {
		w := worked(t, id)
		s := inJSON(t, w)
		head, found := rows(t, written(t, w, forms.Wanted{Format: "csv", Table: "steps"}))
		for _, step := range s.Steps {
			row := found[step.ID]
			require.NotNil(t, row, step.ID)
			near(t, step.Litres, row[head["litres"]], "litres")
			near(t, step.Hours, row[head["hours"]], "hours")
			near(t, step.WasteKg, row[head["waste_kg"]], "waste")
			assert.Equal(t, step.Cost, row[head["cost_"+s.Currency]])
		}
		head, found = rows(t, written(t, w, forms.Wanted{Format: "csv", Table: "order"}))
		for _, line := range s.Order {
			row := found[line.Product]
			require.NotNil(t, row, line.Product)
			near(t, line.Needed, row[head["needed"]], "needed")
			assert.Contains(t, row, line.Cost)
		}
		head, found = rows(t, written(t, w, forms.Wanted{Format: "csv", Table: "budget"}))
		for _, c := range s.Budget.Categories {
			assert.Equal(t, c.Total, found[c.Category][head["total_"+s.Currency]], c.Category)
		}
	}
}

// TestTheTableSaysWhatTheJSONSays looks for the money, which is never rounded
// for people.
func TestTheTableSaysWhatTheJSONSays(t *testing.T) {
	w := worked(t, "jet-trainer")
	s := inJSON(t, w)
	table := strings.ReplaceAll(string(written(t, w, forms.Wanted{Format: "table"})), ",", "")
	for _, amount := range []string{s.Budget.Total, s.Budget.CashNeeded, s.Budget.InKind, s.Range.Total.P50, s.Range.Total.P80, s.Range.Total.P90} {
		require.NotEmpty(t, amount)
		assert.Contains(t, table, amount)
	}
	for _, step := range s.Steps {
		assert.Contains(t, table, step.Cost, step.ID)
	}
}

func TestTheWorkbookSaysWhatTheJSONSays(t *testing.T) {
	w := worked(t, "jet-trainer")
	s := inJSON(t, w)
	f, err := excelize.OpenReader(bytes.NewReader(written(t, w, forms.Wanted{Format: "xlsx"})))
	require.NoError(t, err)
	defer func() { require.NoError(t, f.Close()) }()
	at := func(sheet, key, column string) string {
		all, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		for i, row := range all {
			if len(row) > 0 && row[0] == key {
				value, err := f.GetCellValue(sheet, column+strconv.Itoa(i+1), excelize.Options{RawCellValue: true})
				require.NoError(t, err)
				return value
			}
		}
		require.Fail(t, "no row", "%s %s", sheet, key)
		return ""
	}
	money := func(text string) float64 {
		x, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		return x
	}
	near(t, money(s.Budget.Total), at("Summary", "Total", "B"), "total")
	near(t, money(s.Range.Total.P80), at("Ranges", "Total, USD", "D"), "P80")
	for _, step := range s.Steps {
		near(t, step.Hours, at("Steps", step.ID, "H"), "hours")
		near(t, money(step.Cost), at("Steps", step.ID, "L"), "cost")
	}
}

// pages sends a PDF through pdftotext.
func pages(t *testing.T, pdf []byte) []string {
	t.Helper()
	program, err := exec.LookPath("pdftotext")
	require.NoError(t, err, "pdftotext is needed: tests/run installs poppler-utils on Debian")
	path := filepath.Join(t.TempDir(), "report.pdf")
	require.NoError(t, os.WriteFile(path, pdf, 0o600))
	text, err := exec.CommandContext(t.Context(), program, "-layout", path, "-").Output()
	require.NoError(t, err)
	return strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
}

// one puts a text on one line, so that what is broken over two is found.
func one(pages []string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.Join(pages, " "), ",", "")), " ")
}

func TestThePDFSaysWhatTheJSONSays(t *testing.T) {
	for _, paper := range []string{"a4", "letter"} {
		w := worked(t, "jet-trainer")
		s := inJSON(t, w)
		sheets := pages(t, written(t, w, forms.Wanted{Format: "pdf", Paper: paper, Date: "2026-11-25"}))
		text := one(sheets)
		for _, amount := range []string{s.Budget.Total, s.Budget.CashNeeded, s.Budget.InKind, s.Range.Total.P50, s.Range.Total.P80, s.Range.Total.P90} {
			assert.Contains(t, text, amount)
		}
		for _, step := range s.Steps {
			assert.Contains(t, text, step.Cost, step.ID)
		}
		for _, line := range s.Order {
			assert.Contains(t, text, line.Cost, line.Product)
		}
		assert.Contains(t, text, "2026-11-25")
		assert.Contains(t, text, "m²", "the embedded font has the signs of the trade")
		for i, sheet := range sheets {
			assert.Contains(t, strings.ReplaceAll(sheet, " ", ""), strconv.Itoa(i+1)+"/"+strconv.Itoa(len(sheets)), "page number")
		}
	}
}

func TestJobSheetsHaveAPageForEachStep(t *testing.T) {
	w := worked(t, "jet-trainer")
	sheets := pages(t, written(t, w, forms.Wanted{Format: "pdf", Pages: "job-sheets"}))
	for _, step := range inJSON(t, w).Steps {
		found := 0
		for _, sheet := range sheets {
			if strings.Contains(sheet, step.Name) && strings.Contains(sheet, "step ") {
				found++
			}
		}
		assert.Equal(t, 1, found, step.Name)
	}
	assert.Contains(t, one(sheets), "hardener")
	assert.Contains(t, one(sheets), "What was really done")
}

func TestTheChartIsWellFormed(t *testing.T) {
	w := worked(t, "jet-trainer")
	chart := written(t, w, forms.Wanted{Format: "svg"})
	d := xml.NewDecoder(bytes.NewReader(chart))
	for {
		_, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
	}
	p80, err := strconv.ParseFloat(inJSON(t, w).Range.Total.P80, 64)
	require.NoError(t, err)
	text := strings.NewReplacer(",", "", " ", "", "\u202f", "", "\u00a0", "").Replace(string(chart))
	assert.Contains(t, text, strconv.FormatFloat(math.Floor(p80/1000), 'f', 0, 64), "the P80 is named")
}
