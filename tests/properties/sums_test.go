package properties

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
)

// same asserts that two numbers agree to 1e-9 of the greater.
func same(t *rapid.T, want, got float64, what string) {
	t.Helper()
	if math.Abs(want-got) > 1e-9*max(math.Abs(want), math.Abs(got)) {
		require.Failf(t, "numbers differ", "%s: want %v, got %v", what, want, got)
	}
}

func sameMoney(t *rapid.T, want, got money.Amount, what string) {
	t.Helper()
	require.True(t, want.IsValid() && got.IsValid() && want.Cmp(got) == 0, "%s: want %s, got %s", what, want, got)
}

// Every total equals the sum of its parts, to the cent and to 1e-9.
func TestTotalsAreTheSumsOfTheirParts(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		e := b.run(t, anyJob(t))
		var sum estimate.Totals
		for _, a := range e.Areas {
			sum.AreaM2 += a.AreaM2
			same(t, a.AreaM2, a.EachM2*float64(a.Count), "one part times how many")
			faces := 0.0
			for _, f := range a.Faces {
				faces += f.AreaM2
			}
			same(t, a.AreaM2, faces, "faces of "+a.Component)
		}
		for _, s := range e.Steps {
			sum.Litres += s.Litres
			sum.Kilograms += s.Kilograms
			sum.MaskingTapeM += s.MaskingTapeM
			sum.Hours += s.Hours
			sum.WasteKg += s.WasteKg
			sum.DryFilmKg += s.DryFilmKg
			sum.RemovedKg += s.RemovedKg
			sum.VOCKg += s.VOCKg
			sum.StepsMaterialCost = sum.StepsMaterialCost.Add(s.MaterialCost)
			sum.StepsLabourCost = sum.StepsLabourCost.Add(s.LabourCost)
			sum.StepsCost = sum.StepsCost.Add(s.Cost)
			var materials money.Amount
			for _, m := range s.Materials {
				materials = materials.Add(m.Cost)
			}
			sameMoney(t, materials, s.MaterialCost, "materials of "+s.ID)
			sameMoney(t, s.MaterialCost.Add(s.LabourCost), s.Cost, "cost of "+s.ID)
		}
		got := e.Totals
		for what, pair := range map[string][2]float64{
			"area": {sum.AreaM2, got.AreaM2}, "litres": {sum.Litres, got.Litres}, "kilograms": {sum.Kilograms, got.Kilograms},
			"tape": {sum.MaskingTapeM, got.MaskingTapeM}, "hours": {sum.Hours, got.Hours}, "waste": {sum.WasteKg, got.WasteKg},
			"film": {sum.DryFilmKg, got.DryFilmKg}, "removed": {sum.RemovedKg, got.RemovedKg}, "solvent": {sum.VOCKg, got.VOCKg},
		} {
			same(t, pair[0], pair[1], what)
		}
		sameMoney(t, sum.StepsMaterialCost, got.StepsMaterialCost, "materials")
		sameMoney(t, sum.StepsLabourCost, got.StepsLabourCost, "labour")
		sameMoney(t, sum.StepsCost, got.StepsCost, "cost")
	})
}

// The order holds what the steps take, with the allowance, in whole packs that
// add up; and the budget is built from it.
func TestTheOrderCoversTheNeedAndTheBudgetAddsUp(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		e := b.run(t, job)
		needed := map[string]float64{}
		for _, s := range e.Steps {
			for _, m := range s.Materials {
				needed[m.Product] += m.Quantity
			}
		}
		require.Len(t, e.Order, len(needed))
		var ordered, labour, volunteers, contract money.Amount
		for _, line := range e.Order {
			same(t, needed[line.Product]*(1+job["allowance_percent"].(float64)/100), line.Needed, "need of "+line.Product)
			var cost money.Amount
			bought, parts := 0.0, map[string]float64{}
			for _, p := range line.Packs {
				parts[p.Part] += p.Pack * float64(p.Count)
				require.Positive(t, p.Count)
				bought += p.Pack * float64(p.Count)
				for range p.Count {
					cost = cost.Add(p.Price)
				}
			}
			sameMoney(t, cost, line.Cost, "packs of "+line.Product)
			if _, kits := parts[""]; !kits && len(parts) > 0 { // the waterborne primer is mixed 4 to 1, and sold apart
				bought = min(parts["base"]*5/4, parts["hardener"]*5)
			}
			same(t, bought, line.Bought, "bought of "+line.Product)
			require.GreaterOrEqual(t, line.Bought, line.Needed*(1-1e-9), "%s covers the need", line.Product)
			assert.InDelta(t, max(0, line.Bought-line.Needed), line.LeftOver, 1e-8*line.Bought, "left over of %s", line.Product)
			ordered = ordered.Add(line.Cost)
		}
		for _, s := range e.Steps {
			if s.Labour == "volunteer" {
				volunteers = volunteers.Add(s.LabourCost)
			} else {
				labour = labour.Add(s.LabourCost)
			}
			if s.Labour == "contract" {
				contract = contract.Add(s.LabourCost)
			}
		}
		budget := e.Budget
		sameMoney(t, ordered, budget.MaterialsOrdered, "materials ordered")
		require.LessOrEqual(t, budget.MaterialsConsumed.Float64(), budget.MaterialsOrdered.Float64()+0.02*float64(len(e.Steps)*3), "no more is used than is bought, but for rounding")
		hire := b.currency(t, e).Of(decimalOf(t, job["items"].([]any)[0].(object)["amount"].(string)))
		room := b.currency(t, e).Of(decimalOf(t, "410.05"))
		sameMoney(t, ordered.Add(labour).Add(hire), budget.Cash, "cash")
		sameMoney(t, volunteers.Add(room), budget.InKind, "in kind")
		sameMoney(t, budget.Cash.MulPercent(job["contingency_percent"].(float64)), budget.Contingency, "contingency")
		sameMoney(t, ordered.Add(contract).Add(hire).MulPercent(job["tax_percent"].(float64)), budget.Tax, "tax")
		sameMoney(t, budget.Cash.Add(budget.Contingency).Add(budget.Tax), budget.CashNeeded, "cash needed")
		sameMoney(t, budget.CashNeeded.Add(budget.InKind), budget.Total, "total")
		var cash, kind, total money.Amount
		for _, c := range budget.Categories {
			sameMoney(t, c.Cash.Add(c.InKind), c.Total, c.Category)
			cash, kind, total = cash.Add(c.Cash), kind.Add(c.InKind), total.Add(c.Total)
		}
		sameMoney(t, budget.CashNeeded, cash, "categories, cash")
		sameMoney(t, budget.InKind, kind, "categories, in kind")
		sameMoney(t, budget.Total, total, "categories")
	})
}
