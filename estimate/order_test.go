package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Prices of the catalogue are in USD; in a job of another currency they are left
// out, and said so, while the job's own prices count.
func TestForeignPricesAreLeftOut(t *testing.T) {
	own := doc{"id": "wash-x", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 0.5, "density_kg_l": 1, "packs": []doc{{"pack_l": 2, "price": "300"}, {"pack_l": 5, "price": "700"}}}
	e := work(t, doc{"currency": "JPY", "components": []doc{flat("a", 10, 4)}, "products": []doc{own}, "allowance_percent": 20,
		"labour": doc{"volunteer_rate": "1000.5"},
		"steps":  []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "wash-x", "rate_m2_h": 10}, {"id": "t", "operation": "wash", "on": []string{"a"}, "product": "detergent", "rate_m2_h": 10}}})
	require.Len(t, e.Order, 2)
	assert.InEpsilon(t, 5*1.2, e.Order[0].Needed, 1e-12)
	assert.Equal(t, "900", e.Order[0].Cost.String(), "three of 2 L and not one of each")
	assert.InDelta(t, 0, e.Order[0].LeftOver, 1e-9)
	assert.Equal(t, "0", e.Order[1].Cost.String())
	assert.NotEmpty(t, e.Order[1].Packs, "what to buy is known, its price is not")
	require.Len(t, e.Warnings, 1)
	assert.Contains(t, e.Warnings[0], "detergent has a price in USD only and the job is in JPY")
	assert.Equal(t, "750", e.Steps[0].MaterialCost.String(), "5 of 6 L")
	assert.Equal(t, "1001", e.Steps[0].LabourCost.String(), "half a yen is rounded up")
}

// The product of a job replaces the catalogue's of the same id.
func TestOwnProductsReplaceTheCatalogues(t *testing.T) {
	own := doc{"id": "detergent", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 1, "packs": []doc{{"pack_l": 10, "price": "1.00"}}}
	e := work(t, doc{"components": []doc{flat("a", 10, 4)}, "products": []doc{own}, "steps": []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent"}}})
	assert.Equal(t, "1.00", e.Order[0].Cost.String())
	assert.Empty(t, assumed(e, "prices of the catalogue are invented"))
	assert.Len(t, assumed(e, "density of detergent"), 1, "the catalogue's density is not taken over")
}

func TestALiquidOfAnotherUseIsToldOf(t *testing.T) {
	e := work(t, doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "stripper"}}})
	assert.True(t, strings.HasPrefix(e.Steps[0].Warnings[0], "stripper is a stripper"), e.Steps[0].Warnings[0])
}

// Materials 40 for 8 of 10 L: consumed 32, ordered 40. Hours 5 at 20 in kind, 2 at
// 50 paid. Items 100 cash and 30 in kind. Contingency 10 % of cash, tax 8 % of
// materials and cash items (identity).
func TestBudgetByHand(t *testing.T) {
	own := doc{"id": "wash-x", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 0.4, "density_kg_l": 1, "packs": []doc{{"pack_l": 10, "price": "40.00"}}}
	step := doc{"operation": "wash", "on": []string{"a"}, "product": "wash-x"}
	first, second := doc{"id": "s", "rate_m2_h": 2}, doc{"id": "t", "rate_m2_h": 5, "labour": "paid"}
	for name, value := range step {
		first[name], second[name] = value, value
	}
	e := work(t, doc{"components": []doc{flat("a", 10, 4)}, "products": []doc{own}, "steps": []doc{first, second},
		"labour": doc{"volunteer_rate": "20.00", "paid_rate": 50}, "contingency_percent": 10, "tax_percent": 8,
		"items": []doc{{"id": "hire", "amount": 100, "category": "hire"}, {"id": "room", "amount": "30.00", "funding": "in_kind"}, {"id": "gift", "amount": 0}}})
	b := e.Budget
	assert.Equal(t, "240.00 130.00 24.00 11.20 405.20 275.20 40.00 32.00", strings.Join([]string{b.Cash.String(), b.InKind.String(), b.Contingency.String(),
		b.Tax.String(), b.Total.String(), b.CashNeeded.String(), b.MaterialsOrdered.String(), b.MaterialsConsumed.String()}, " "))
	var heads []string
	for _, c := range b.Categories {
		heads = append(heads, c.Category+" "+c.Total.String())
	}
	assert.Equal(t, []string{"materials 40.00", "labour 200.00", "hire 100.00", "other 30.00", "contingency 24.00", "tax 11.20"}, heads)
}

// A job may consist of items alone.
func TestItemsAlone(t *testing.T) {
	e := work(t, doc{"items": []doc{{"id": "hire", "amount": doc{"low": 10, "likely": 12.5, "high": 20}}}})
	assert.Equal(t, "12.50", e.Budget.Total.String())
	assert.Empty(t, e.Steps)
	assert.Len(t, assumed(e, "likely value of the range"), 1)
}

// A contractor's hours are cash, and a rate that is not given is said to be.
func TestHoursOfAContractor(t *testing.T) {
	step := doc{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent", "rate_m2_h": 5, "labour": "contract"}
	job := doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{step}}
	e := work(t, job)
	require.Len(t, e.Warnings, 1)
	assert.Contains(t, e.Warnings[0], "contract work of 2 h has no price")
	job["labour"] = doc{"contract_rate": "80.00"}
	e = work(t, job)
	assert.Equal(t, "160.00", e.Steps[0].LabourCost.String())
	assert.True(t, e.Budget.InKind.IsZero())
}
