package target

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/products"
)

// loaded is the catalogue, read once: it does not change.
var loaded = sync.OnceValues(products.Load)

func solved(t require.TestingT, question string) (*Answer, error) {
	catalogue, err := loaded()
	require.NoError(t, err)
	return Solve(context.Background(), estimate.NewReader(nil), catalogue, []byte(question))
}

// plain is an invented job of one paint on one measured area: 100 m² at 50 µm.
// Of a litre half is solids and half of that lands, so it takes 20 L.
const plain = `{"name": "invented", "currency": "USD", "contingency_percent": 10,
	"components": [{"id": "hull", "shape": {"kind": "measured", "area_m2": 100, "edge_m": 0}}],
	"products": [{"id": "paint-x", "kind": "paint", "volume_solids_percent": 50, "dry_film_density_kg_l": 1.5, "packs": [{"pack_l": 5, "price": "100.00"}]}],
	"steps": [{"id": "coat", "operation": "coat", "on": ["hull"], "product": "paint-x", "dry_film_um": 50, "method": "brush", "transfer_efficiency_percent": 50, "cleaning_l": 0}],
	"items": [{"id": "hire", "amount": "50.00"}]}`

// The size that a stock covers, by the inverse of the paint's formula: the area
// is litres · 1000 · solids · efficiency / film (identity).
func TestAStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		litres := rapid.Float64Range(0.1, 500).Draw(t, "litres")
		a, err := solved(t, fmt.Sprintf(`{"job": %s, "find": "area", "stock": [{"product": "paint-x", "quantity": %g}]}`, plain, litres))
		require.NoError(t, err)
		assert.InEpsilon(t, litres*1000*0.5*0.5/50, a.AreaM2, 2e-9)
		assert.LessOrEqual(t, a.Held[0].Takes, litres)
		assert.Equal(t, "paint-x", a.LimitedBy)
		assert.Equal(t, 100.0, a.PlanAreaM2)

		a, err = solved(t, fmt.Sprintf(`{"job": %s, "find": "film", "stock": [{"product": "paint-x", "quantity": %g}]}`, plain, litres))
		require.NoError(t, err)
		require.Len(t, a.Films, 1)
		assert.InEpsilon(t, litres*1000*0.5*0.5/100, a.Films[0].DryFilmUM, 2e-9)
		assert.Equal(t, 50.0, a.Films[0].PlanUM)
	})
}

// With whole packs of 5 L at 100.00, 50.00 of hire and 10 % contingency, 400.00
// pay for three packs, (300 + 50)·1.1 = 385.00, and not for four: 15 L, 75 m².
func TestABudget(t *testing.T) {
	a, err := solved(t, `{"job": `+plain+`, "find": "area", "budget": "400.00"}`)
	require.NoError(t, err)
	assert.InEpsilon(t, 75, a.AreaM2, 2e-9)
	assert.Equal(t, "budget", a.LimitedBy)
	assert.Equal(t, "385.00", a.Held[0].Needed.String())
	assert.Equal(t, "400.00", a.Held[0].Budget.String())
	assert.Equal(t, "385.00", a.Estimate.Budget.CashNeeded.String())

	a, err = solved(t, `{"job": `+plain+`, "find": "area", "budget": "385.00", "stock": [{"product": "paint-x", "quantity": 12}]}`)
	require.NoError(t, err)
	assert.InEpsilon(t, 60, a.AreaM2, 2e-9)
	assert.Equal(t, "paint-x", a.LimitedBy, "the stock ends first")

	a, err = solved(t, `{"job": `+plain+`, "find": "area", "budget": "384.99"}`)
	require.NoError(t, err)
	assert.InEpsilon(t, 50, a.AreaM2, 2e-9, "a cent short of three packs")
}

// Parts keep their form: of any example, all lengths together grow with the root
// of the area, and the areas of all components by the one ratio.
func TestPartsKeepTheirForm(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, one := range all {
		catalogue, err := products.Load()
		require.NoError(t, err)
		e, err := estimate.NewReader(nil).Estimate(one.Job, catalogue)
		require.NoError(t, err)
		a, err := solved(t, fmt.Sprintf(`{"job": %s, "find": "area", "money": "total", "budget": "%s"}`, one.Job, e.Budget.Total))
		require.NoError(t, err, one.ID)
		assert.GreaterOrEqual(t, a.Ratio, 1.0, "%s: what the plan costs pays for the plan", one.ID)
		for _, c := range a.Areas {
			assert.InEpsilon(t, a.Ratio, c.AreaM2/c.PlanAreaM2, 1e-6, "%s %s", one.ID, c.Component)
		}
		for i, before := range e.Areas {
			assert.InDelta(t, before.EdgeM*math.Sqrt(a.Ratio), a.Estimate.Areas[i].EdgeM, 1e-6*before.EdgeM, "%s %s", one.ID, before.Component)
		}
		assert.LessOrEqual(t, a.Estimate.Budget.Total.Cmp(e.Budget.Total), 0, "%s: inside the budget", one.ID)
	}
}

func TestFilmsOfTheProduct(t *testing.T) {
	job := `{"name": "invented", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 30, "edge_m": 3}}],
		"steps": [{"id": "prime", "operation": "coat", "on": ["a"], "product": "epoxy-primer", "method": "brush"}, {"id": "white", "operation": "coat", "on": ["a"], "product": "polyurethane-gloss-white", "dry_film_um": 40, "method": "brush"}]}`
	a, err := solved(t, `{"job": `+job+`, "find": "film", "stock": [{"product": "epoxy-primer", "quantity": 1}]}`)
	require.NoError(t, err)
	require.Len(t, a.Films, 2)
	assert.Equal(t, 20.0, a.Films[0].PlanUM, "the catalogue's usual film")
	assert.InEpsilon(t, a.Ratio*40, a.Films[1].DryFilmUM, 1e-12)
	a, err = solved(t, `{"job": `+job+`, "find": "film", "steps": ["prime"], "stock": [{"product": "epoxy-primer", "quantity": 1}]}`)
	require.NoError(t, err)
	assert.Len(t, a.Films, 1)
}

func TestRefusedQuestions(t *testing.T) {
	for _, c := range []struct{ question, pointer, code, word string }{
		{`{"find": "area", "budget": "9"}`, "/job", "required", "job"},
		{`{"job": ` + plain + `, "budget": "900"}`, "/find", "required", "area"},
		{`{"job": ` + plain + `, "find": "price", "budget": "900"}`, "/find", "unknown_kind", "film"},
		{`{"job": ` + plain + `, "find": "area"}`, "/budget", "required", "stock"},
		{`{"job": ` + plain + `, "find": "area", "budget": "-1"}`, "/budget", "out_of_range", "negative"},
		{`{"job": ` + plain + `, "find": "area", "budget": "54.99"}`, "/budget", "inconsistent", "fixed costs"},
		{`{"job": ` + plain + `, "find": "area", "budget": "100"}`, "/budget", "inconsistent", "fixed costs"},
		{`{"job": ` + plain + `, "find": "area", "budget": "99999999999"}`, "/budget", "inconsistent", "the job is refused"},
		{`{"job": ` + plain + `, "find": "area", "budget": "900", "money": "gold"}`, "/money", "unknown_kind", "total"},
		{`{"job": ` + plain + `, "find": "area", "budget": "900", "components": ["wing"]}`, "/components/0", "unknown_reference", "wing"},
		{`{"job": ` + plain + `, "find": "film", "budget": "900", "steps": ["wash"]}`, "/steps/0", "unknown_reference", "wash"},
		{`{"job": ` + plain + `, "find": "area", "budget": "900", "steps": ["coat"]}`, "/steps", "not_applicable", "components"},
		{`{"job": ` + plain + `, "find": "film", "budget": "900", "components": ["hull"]}`, "/components", "not_applicable", "steps"},
		{`{"job": ` + plain + `, "find": "area", "stock": [{"product": "epoxy-primer", "quantity": 5}]}`, "/stock/0/product", "unknown_reference", "epoxy-primer"},
		{`{"job": ` + plain + `, "find": "area", "stock": [{"product": "paint-x", "quantity": 0}]}`, "/stock/0/quantity", "out_of_range", "above 0"},
		{`{"job": ` + plain + `, "find": "area", "stock": [{"product": "paint-x", "quantity": 1}, {"product": "paint-x", "quantity": 1}]}`, "/stock/1/product", "duplicate_id", "twice"},
		{`{"job": ` + plain + `, "find": "area", "budget": "900", "wish": 1}`, "/wish", "unknown_field", "wish"},
		{`{"job": {"name": "x", "currency": "USD", "steps": [{"id": "s", "operation": "wash", "on": ["nobody"]}]}, "find": "area", "budget": "900"}`, "/job/steps/0/on/0", "unknown_reference", "nobody"},
		{`{"job": {"name": "x", "currency": "USD", "items": [{"id": "i", "amount": "5"}]}, "find": "area", "budget": "900"}`, "/job/components", "required", "no components"},
		{`{"job": {"name": "x", "currency": "USD", "items": [{"id": "i", "amount": "5"}]}, "find": "film", "budget": "900"}`, "/job/steps", "required", "no film"},
		{`{"job": ` + strings.Replace(plain, `"100.00"`, `"0"`, 1) + `, "find": "film", "budget": "900"}`, "/budget", "inconsistent", "5000"},
		{`{"job": 3, "find": "area", "budget": "900"}`, "/job", "wrong_type", "object"},
		{`[]`, "", "wrong_type", "object"},
	} {
		a, err := solved(t, c.question)
		assert.Nil(t, a)
		var list *fault.Error
		if !assert.True(t, errors.As(err, &list), "%s: %v", c.question, err) {
			continue
		}
		found := false
		for _, f := range list.Faults {
			if f.Pointer == c.pointer && f.Code == c.code {
				found = true
				assert.Contains(t, f.Detail, c.word, c.question)
			}
		}
		assert.True(t, found, "%s: %v", c.question, list)
	}
}

// A search that is told to stop does.
func TestStop(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	catalogue, err := products.Load()
	require.NoError(t, err)
	_, err = Solve(ctx, estimate.NewReader(nil), catalogue, []byte(`{"job": `+plain+`, "find": "area", "budget": "900"}`))
	assert.ErrorIs(t, err, context.Canceled)
}

// No text makes a question fail other than by its own faults, and no answer takes
// more than there is.
func FuzzSolve(f *testing.F) {
	f.Add(`{"job": ` + plain + `, "find": "area", "budget": "900"}`)
	f.Add(`{"job": ` + plain + `, "find": "film", "steps": ["coat"], "stock": [{"product": "paint-x", "quantity": 3}]}`)
	f.Add(`{"job": {"name": "x", "currency": "USD"}, "find": "area", "budget": {"low": 1, "likely": 2, "high": 3}}`)
	f.Fuzz(func(t *testing.T, question string) {
		a, err := solved(t, question)
		if err != nil {
			require.Nil(t, a)
			return
		}
		_, err = json.Marshal(a)
		require.NoError(t, err)
		for _, h := range a.Held {
			require.LessOrEqual(t, h.Takes, h.Most)
		}
	})
}
