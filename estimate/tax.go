package estimate

import (
	"slices"

	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// tax finds the tax that comes on top of prices, rounded as the job says, and
// parts it among the lines so that nothing of it is lost; and what is held by
// prices that include it.
//
//	on top   = rate · sum of what one rounding is for
//	included = price · rate / (1 + rate)
//
// Source: planning M07, M08: rounding of lines and of totals differ.
func (r *run) tax(book *ledger) {
	b := &r.estimate.Budget
	b.Tax, b.TaxIncluded = r.currency.Zero(), r.currency.Zero()
	rate := r.job.TaxPercent
	if rate == 0 {
		return
	}
	for _, group := range r.taxGroups(book) {
		var sum money.Amount = r.currency.Zero()
		weights := make([]float64, len(group))
		for i, k := range group {
			sum = sum.Add(book.lines[k].Amount)
			weights[i] = book.lines[k].Amount.Float64()
		}
		tax := sum.MulPercent(rate)
		b.Tax = b.Tax.Add(tax)
		shares, err := money.Split(tax, weights)
		if err != nil {
			continue // no money, no tax; or amounts out of bounds, which the total tells
		}
		for i, k := range group {
			book.lines[k].Tax = shares[i]
		}
		r.taxWorking(book, group, tax)
	}
	for i := range book.lines {
		if book.lines[i].taxing == "included" {
			held := r.currency.CostFromPack(rate, 100+rate, book.lines[i].Amount.Decimal())
			book.lines[i].held = held
			b.TaxIncluded = b.TaxIncluded.Add(held)
		}
	}
}

// taxGroups are the lines that one rounding of tax is for, by their places.
func (r *run) taxGroups(book *ledger) [][]int {
	var groups [][]int
	var keys []string
	for i := range book.lines {
		line := &book.lines[i]
		if !untaxedYet(line) {
			continue
		}
		key := "total"
		switch r.job.TaxRounding {
		case "line":
			key = line.ID
		case "invoice":
			key = line.invoice
		}
		k := slices.Index(keys, key)
		if k < 0 {
			k = len(keys)
			keys, groups = append(keys, key), append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	return groups
}

func (r *run) taxWorking(book *ledger, group []int, tax money.Amount) {
	of := ""
	if r.job.TaxRounding == "line" || r.job.TaxRounding == "invoice" {
		of = book.lines[group[0]].ID
	}
	taxed := book.working("taxed", "the lines that tax is added to", r.job.Currency, func(line *BudgetLine) bool {
		return slices.ContainsFunc(group, func(k int) bool { return &book.lines[k] == line })
	})
	taxed.Of = of
	w := quantity.Working{Quantity: "tax", Of: of, Value: tax.Float64(), Unit: r.job.Currency, Formula: r.rounded("taxed·rate"),
		Terms: map[string]float64{"taxed": taxed.Value, "rate": r.job.TaxPercent / 100}, Source: "the job: tax_percent",
		Links: []quantity.Link{quantity.From("taxed", quantity.Node{Kind: "budget", Quantity: "taxed", Of: of}),
			quantity.Scaled("rate", quantity.Node{Kind: "job", Quantity: "tax_percent"}, 0.01)}}
	r.estimate.Budget.Working = append(r.estimate.Budget.Working, taxed, w)
}
