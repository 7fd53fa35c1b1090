package estimate

import (
	"cmp"
	"fmt"

	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// budget adds up the order, the freight, the hours and the items, line by line.
// Contingency and management reserve are shares of the cash; tax a share of what
// is bought at prices that do not hold it.
func (r *run) budget() {
	book := &ledger{currency: r.currency, categories: []Category{}, lines: []BudgetLine{}}
	b := &r.estimate.Budget
	r.bookOrder(book)
	r.bookFreight(book)
	r.bookLabour(book)
	r.bookItems(book)
	b.Cash, b.InKind = book.sum(cash), book.sum(inKind)
	b.Working = append(b.Working, book.working("cash", "the cash lines", r.job.Currency, cash), book.working("in_kind", "the lines in kind", r.job.Currency, inKind))
	b.Contingency = r.shareOfCash(book, "contingency", "contingency for unknowns within the scope", "contingency_percent", r.job.ContingencyPercent)
	b.ManagementReserve = r.shareOfCash(book, "management_reserve", "management reserve, kept by the owner", "management_reserve_percent", r.job.ReservePercent)
	r.tax(book)
	r.bookTax(book)
	b.CashNeeded = b.Cash.Add(b.Contingency).Add(b.ManagementReserve).Add(b.Tax)
	b.Total = b.CashNeeded.Add(b.InKind)
	r.sumUp()
	b.Categories, b.Lines = book.categories, book.lines
	r.moneyAssumed()
}

// shareOfCash enters a percentage of the cash as a line of its own.
func (r *run) shareOfCash(book *ledger, name, text, field string, percent float64) money.Amount {
	b := &r.estimate.Budget
	share := b.Cash.MulPercent(percent)
	b.Working = append(b.Working, quantity.Working{Quantity: name, Value: share.Float64(), Unit: r.job.Currency, Formula: r.rounded("cash·share"),
		Terms: map[string]float64{"cash": b.Cash.Float64(), "share": percent / 100}, Source: "the job: " + field,
		Links: []quantity.Link{quantity.From("cash", quantity.Node{Kind: "budget", Quantity: "cash"}), quantity.Scaled("share", quantity.Node{Kind: "job", Quantity: field}, 0.01)}})
	if !share.IsZero() {
		book.add(BudgetLine{ID: name, Text: text, Category: name, Funding: "cash", Amount: share, taxing: "none", node: quantity.Node{Kind: "budget", Quantity: name}})
	}
	return share
}

func (r *run) bookTax(book *ledger) {
	b := &r.estimate.Budget
	sum := quantity.Working{Quantity: "tax", Value: b.Tax.Float64(), Unit: r.job.Currency, Formula: "sum of the tax that comes on top", Terms: map[string]float64{}, Source: "the job: tax_percent"}
	single := false
	for _, w := range b.Working {
		if w.Quantity == "tax" {
			single = single || w.Of == ""
			sum.Terms[w.Of] = w.Value
			sum.Links = append(sum.Links, quantity.From(w.Of, quantity.Node{Kind: "budget", Quantity: "tax", Of: w.Of}))
		}
	}
	if !single {
		b.Working = append(b.Working, orNothing(sum))
	}
	if !b.Tax.IsZero() {
		book.add(BudgetLine{ID: "tax", Text: fmt.Sprintf("tax of %g %% on prices that do not hold it", r.job.TaxPercent), Category: "tax", Funding: "cash",
			Amount: b.Tax, taxing: "none", node: quantity.Node{Kind: "budget", Quantity: "tax"}})
	}
}

// sumUp gives the workings of the totals of the budget.
func (r *run) sumUp() {
	b := &r.estimate.Budget
	of := func(name string, value money.Amount, formula string, terms map[string]money.Amount) {
		w := quantity.Working{Quantity: name, Value: value.Float64(), Unit: r.job.Currency, Formula: formula, Terms: map[string]float64{}, Source: "identity"}
		for term, amount := range terms {
			w.Terms[term] = amount.Float64()
		}
		for _, term := range []string{"cash", "contingency", "management_reserve", "tax", "cash_needed", "in_kind"} {
			if _, has := terms[term]; has {
				w.Links = append(w.Links, quantity.From(term, quantity.Node{Kind: "budget", Quantity: term}))
			}
		}
		b.Working = append(b.Working, w)
	}
	of("cash_needed", b.CashNeeded, "cash + contingency + management_reserve + tax",
		map[string]money.Amount{"cash": b.Cash, "contingency": b.Contingency, "management_reserve": b.ManagementReserve, "tax": b.Tax})
	of("total", b.Total, "cash_needed + in_kind", map[string]money.Amount{"cash_needed": b.CashNeeded, "in_kind": b.InKind})
}

func (r *run) moneyAssumed() {
	r.assumed.add("", "contingency, of the cash", r.job.ContingencyPercent, "%", "the job; for unknowns within the scope, not for additions to it (DOE G 430.1-1 ch. 11)")
	if r.job.ReservePercent > 0 {
		r.assumed.add("", "management reserve, of the cash, beside contingency", r.job.ReservePercent, "%", "the job; the owner's, for what lies outside the estimate (DOE, contingency and management reserve)")
	}
	r.assumed.add("", "tax, of materials, freight, contract work and cash items, not of wages or contingency", r.job.TaxPercent, "%", "the job")
	rounding := map[string]string{"line": "each line", "invoice": "each supplier's invoice"}[r.job.TaxRounding]
	r.assumed.add("", "money is rounded half away from zero to the smallest coin, each line once; tax on "+cmp.Or(rounding, "all that is taxed, once"), float64(r.currency.MinorUnits()), "", "ISO 4217 for the places; tax rounding as the job says")
	if !r.estimate.Budget.TaxIncluded.IsZero() {
		r.assumed.add("", "prices that include tax are counted as they stand; the tax in them is told apart", r.estimate.Budget.TaxIncluded.Float64(), r.job.Currency, "the job")
	}
	if len(r.priceDates) > 0 {
		first, last := r.priceDates[0], r.priceDates[0]
		for _, date := range r.priceDates { // dates of ISO 8601 sort as texts
			first, last = min(first, date), max(last, date)
		}
		r.assumed.add("", "prices that have a date are of "+first+" to "+last, 0, "", "the job")
	}
}
