package estimate

import "filmbuild/estimate/money"

// budget adds up the order, the hours and the items. Contingency is a share of
// the cash; tax a share of what is bought: materials, contract work, cash items.
func (r *run) budget() {
	book := ledger{currency: r.currency, categories: []Category{}}
	b := &r.estimate.Budget
	taxed := r.currency.Zero()
	b.MaterialsOrdered, b.MaterialsConsumed = r.currency.Zero(), r.estimate.Totals.StepsMaterialCost
	for _, line := range r.estimate.Order {
		b.MaterialsOrdered = b.MaterialsOrdered.Add(line.Cost)
		book.add("materials", line.Cost, false)
	}
	taxed = taxed.Add(b.MaterialsOrdered)
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		book.add("labour", s.LabourCost, s.Labour == "volunteer")
		if s.Labour == "contract" {
			taxed = taxed.Add(s.LabourCost)
		}
	}
	for _, item := range r.job.Items {
		category := item.Category
		if category == "" {
			category = "other"
		}
		amount := r.currency.Of(*item.Amount)
		book.add(category, amount, item.Funding == "in_kind")
		if item.Funding != "in_kind" {
			taxed = taxed.Add(amount)
		}
	}
	b.Cash, b.InKind = book.sums()
	b.Contingency = b.Cash.MulPercent(r.job.ContingencyPercent)
	b.Tax = taxed.MulPercent(r.job.TaxPercent)
	if !b.Contingency.IsZero() {
		book.add("contingency", b.Contingency, false)
	}
	if !b.Tax.IsZero() {
		book.add("tax", b.Tax, false)
	}
	b.CashNeeded = b.Cash.Add(b.Contingency).Add(b.Tax)
	b.Total = b.CashNeeded.Add(b.InKind)
	b.Categories = book.categories
	r.assumed.add("", "contingency, of the cash", r.job.ContingencyPercent, "%", "the job; for unknowns within the scope, not for additions to it (DOE G 430.1-1 ch. 11)")
	r.assumed.add("", "tax, of materials, contract work and cash items, not of wages or contingency", r.job.TaxPercent, "%", "the job")
}

// ledger adds amounts up by category, in the order of first use.
type ledger struct {
	currency   money.Currency
	categories []Category
}

func (l *ledger) add(category string, amount money.Amount, inKind bool) {
	k := 0
	for k < len(l.categories) && l.categories[k].Category != category {
		k++
	}
	if k == len(l.categories) {
		zero := l.currency.Zero()
		l.categories = append(l.categories, Category{Category: category, Cash: zero, InKind: zero, Total: zero})
	}
	c := &l.categories[k]
	if inKind {
		c.InKind = c.InKind.Add(amount)
	} else {
		c.Cash = c.Cash.Add(amount)
	}
	c.Total = c.Total.Add(amount)
}

func (l *ledger) sums() (cash, inKind money.Amount) {
	cash, inKind = l.currency.Zero(), l.currency.Zero()
	for _, c := range l.categories {
		cash, inKind = cash.Add(c.Cash), inKind.Add(c.InKind)
	}
	return cash, inKind
}
