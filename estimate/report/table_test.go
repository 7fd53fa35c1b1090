package report

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

func estimateOf(t *testing.T, job []byte) *estimate.Estimate {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	e, err := estimate.NewReader(nil).Estimate(job, catalogue)
	require.NoError(t, err)
	return e
}

func narrow(t *testing.T, text string) {
	t.Helper()
	for i, line := range strings.Split(text, "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), Width, "line %d: %s", i+1, line)
		assert.Equal(t, strings.TrimRight(line, " "), line, "line %d ends in spaces", i+1)
		assert.NotContains(t, line, "%!", "a format went wrong")
	}
}

// No line of any example is wider than a terminal, in either system of units.
func TestTheTableFitsTheTerminal(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, one := range all {
		e := estimateOf(t, one.Job)
		for _, system := range []units.System{units.SI, units.US} {
			narrow(t, Table(e, system))
		}
	}
}

// Names as long as they may be, and figures as large, still fit.
func TestLongNamesAndLargeFiguresFit(t *testing.T) {
	long := strings.Repeat("w", 80)
	words := strings.Repeat("very long words indeed ", 20)
	job := `{"name": "` + words + `", "currency": "USD", "components": [{"id": "` + long + `", "name": "` + words + `", "count": 40, "shape": {"kind": "box", "length_m": 20, "width_m": 9, "height_m": 9}, "existing_film_um": 5000}],
		"products": [{"id": "p-` + long[:78] + `", "kind": "paint", "volume_solids_percent": 50, "dry_film_density_kg_l": 2, "packs": [{"pack_l": 20, "price": "9999999.00"}]}],
		"steps": [{"id": "` + long + `", "operation": "coat", "on": ["` + long + `"], "product": "p-` + long[:78] + `", "dry_film_um": 4000, "method": "conventional", "rate_m2_h": 0.01, "crew": 200},
			{"id": "s", "operation": "strip", "on": ["` + long + `"], "product": "stripper", "coats": 20}],
		"items": [{"id": "i", "amount": "99999999999.00", "category": "` + words + `"}], "labour": {"volunteer_rate": "999.00"}}`
	e := estimateOf(t, []byte(job))
	for _, system := range []units.System{units.SI, units.US} {
		narrow(t, Table(e, system))
	}
}

// What a reader must not miss stands in the table: every warning, every caution,
// every product, every step, the totals of the budget, and who has the last word.
func TestTheTableSaysEverything(t *testing.T) {
	one, err := example.Find("jet-trainer")
	require.NoError(t, err)
	e := estimateOf(t, one.Job)
	text := strings.Join(strings.Fields(Table(e, units.SI)), " ")
	said := func(what string) { t.Helper(); assert.Contains(t, text, strings.Join(strings.Fields(what), " ")) }
	for _, s := range e.Steps {
		said(s.ID + " (" + s.Operation + ")")
		for _, w := range s.Warnings {
			said(w)
		}
	}
	for _, w := range e.Warnings {
		said(w)
	}
	for _, c := range e.Cautions {
		said(c.Text)
	}
	for _, a := range e.Assumptions {
		said(a.Text)
	}
	for _, line := range e.Order {
		said(line.Cost.String())
	}
	said(e.Budget.Total.String())
	said(e.Budget.CashNeeded.String())
	said(e.CatalogueVersion)
	said("safety data sheets")
	said("data sheets of your products and local rules come first")
}

// US units are those of the units package; the value is the same quantity.
func TestTheTableShowsTheReadersUnits(t *testing.T) {
	e := estimateOf(t, []byte(`{"name": "One panel", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 92.90304, "edge_m": 30.48}}],
		"steps": [{"id": "s", "operation": "coat", "on": ["a"], "product": "epoxy-primer", "method": "brush"}]}`))
	si, us := Table(e, units.SI), Table(e, units.US)
	assert.Contains(t, si, "92.90")
	assert.Contains(t, si, "area m²")
	assert.Contains(t, us, "1000.00", "1 ft is 0.3048 m by definition")
	assert.Contains(t, us, "100.0")
	assert.Contains(t, us, "area ft²")
}

// A product without a name goes by its id.
func TestAProductWithoutAName(t *testing.T) {
	e := estimateOf(t, []byte(`{"name": "x", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 9, "edge_m": 3}}],
		"products": [{"id": "soap-x", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 1, "packs": [{"pack_l": 5, "price": "3.00"}]}],
		"steps": [{"id": "s", "operation": "wash", "on": ["a"], "product": "soap-x"}]}`))
	_, after, found := strings.Cut(Table(e, units.SI), "BUY")
	require.True(t, found)
	assert.Contains(t, strings.SplitN(after, "\n\n", 2)[0], "soap-x")
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"one two", "three"}, wrap("one two  three", 7))
	assert.Equal(t, []string{"abcde", "fgh i"}, wrap("abcdefgh i", 5))
	assert.Equal(t, []string{""}, wrap("  ", 5))
	assert.Equal(t, []string{"µµµµµ", "µ"}, wrap("µµµµµµ", 5), "letters are counted, not bytes")
}

// The sheet names the readings, the windows and the weights of every estimate
// that has them (identity with the estimate).
func TestTheTableTellsOfFilmsAndWeights(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, ex := range all {
		e := estimateOf(t, ex.Job)
		printed := Table(e, units.SI)
		for i := range e.Steps {
			if c := e.Steps[i].FilmCheck; c != nil {
				assert.Contains(t, strings.Join(strings.Fields(printed), " "), fmt.Sprintf("%d readings on %d spots", c.Readings, c.Spots), "%s, %s", ex.ID, e.Steps[i].ID)
			}
			for _, w := range e.Steps[i].Recoat {
				assert.Contains(t, printed, e.Steps[i].ID+": over "+w.After, ex.ID)
			}
		}
		for _, w := range e.Weights {
			assert.Contains(t, printed, fmt.Sprintf("%.2f", w.NetEachKg))
		}
	}
}
