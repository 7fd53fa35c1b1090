package estimate

import (
	"slices"

	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// ledger holds the lines of the budget, and adds them up by category in the order
// of first use.
type ledger struct {
	currency   money.Currency
	lines      []BudgetLine
	categories []Category
}

// add enters a line. What is in kind bears no tax.
func (l *ledger) add(line BudgetLine) {
	line.Tax = l.currency.Zero()
	if line.Funding == "in_kind" {
		line.taxing = "none"
	}
	l.lines = append(l.lines, line)
	k := slices.IndexFunc(l.categories, func(c Category) bool { return c.Category == line.Category })
	if k < 0 {
		zero := l.currency.Zero()
		k = len(l.categories)
		l.categories = append(l.categories, Category{Category: line.Category, Cash: zero, InKind: zero, Total: zero})
	}
	c := &l.categories[k]
	if line.Funding == "in_kind" {
		c.InKind = c.InKind.Add(line.Amount)
	} else {
		c.Cash = c.Cash.Add(line.Amount)
	}
	c.Total = c.Total.Add(line.Amount)
}

func (l *ledger) sum(choose func(*BudgetLine) bool) money.Amount {
	total := l.currency.Zero()
	for i := range l.lines {
		if choose(&l.lines[i]) {
			total = total.Add(l.lines[i].Amount)
		}
	}
	return total
}

// working is the sum of the lines chosen, with where each comes from.
func (l *ledger) working(name, of, unit string, choose func(*BudgetLine) bool) quantity.Working {
	w := quantity.Working{Quantity: name, Value: l.sum(choose).Float64(), Unit: unit, Formula: "sum of " + of, Terms: map[string]float64{}, Source: "identity"}
	for i := range l.lines {
		if line := &l.lines[i]; choose(line) {
			w.Terms[line.ID] = line.Amount.Float64()
			if line.node.Kind != "" {
				w.Links = append(w.Links, quantity.From(line.ID, line.node))
			}
		}
	}
	return orNothing(w)
}

func cash(line *BudgetLine) bool { return line.Funding == "cash" }

func inKind(line *BudgetLine) bool { return line.Funding == "in_kind" }

func untaxedYet(line *BudgetLine) bool { return line.taxing == "added" }
