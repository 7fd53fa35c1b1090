package estimate

import (
	"cmp"
	"fmt"
	"slices"

	"filmbuild/estimate/funding"
	"filmbuild/estimate/money"
)

// fund puts the lines of the budget under the headings of the funder's form.
func (r *run) fund() {
	f := r.job.Funding
	if f == nil {
		return
	}
	v := &FundingView{Form: f.Form, Date: f.Date, Title: "Budget by headings of the funder", Excluded: []FundingExclusion{}, Notes: []string{}, MatchRequired: f.MatchPercent}
	if f.Form == "sf-424a" {
		v.Title = "Standard Form 424A, section B: budget categories"
	}
	r.estimate.Funding = v
	heads := r.heads(f)
	costs := []funding.Cost{}
	direct := r.currency.Zero()
	for i := range r.estimate.Budget.Lines {
		line := &r.estimate.Budget.Lines[i]
		head, why := r.headOf(line)
		amount := r.fundable(line)
		if line.ID == "tax" {
			continue // stands with what it is paid on
		}
		if why != "" {
			r.leaveOut(v, line.Text, line.Amount, why)
			continue
		}
		k := slices.IndexFunc(heads, func(h FundingNarrative) bool { return h.ID == head })
		if k < 0 {
			heads = append(heads, FundingNarrative{ID: head, Category: head, Lines: []NarrativeLine{}, Cash: r.currency.Zero(), InKind: r.currency.Zero()})
			k = len(heads) - 1
		}
		heads[k].add(line, amount)
		if line.Funding == "cash" {
			direct = direct.Add(amount)
			costs = append(costs, funding.Cost{Class: head, Amount: amount, Rented: funding.Rented(line.Category), Subaward: r.subaward(line)})
		}
	}
	r.taxLeftOut(v)
	v.DirectCash = direct
	r.indirectCost(v, costs)
	r.rows(v, heads)
	r.narrate(v, heads)
	r.fundingNotes(v)
}

// heads are the headings of the form, in its order.
func (r *run) heads(f *Funding) []FundingNarrative {
	var list []FundingNarrative
	if f.Form == "sf-424a" {
		for _, class := range funding.Classes() {
			list = append(list, FundingNarrative{ID: class.ID, Category: class.Name})
		}
	}
	for _, c := range f.Categories {
		list = append(list, FundingNarrative{ID: c.ID, Category: cmp.Or(c.Name, c.ID)})
	}
	for i := range list {
		list[i].Lines, list[i].Cash, list[i].InKind = []NarrativeLine{}, r.currency.Zero(), r.currency.Zero()
	}
	return list
}

// fundable is what a line costs the project: with the tax on it, or without any
// where tax can be reclaimed.
func (r *run) fundable(line *BudgetLine) money.Amount {
	if r.job.Funding.ExcludeTax {
		return line.Amount.Sub(line.held)
	}
	return line.Amount.Add(line.Tax)
}

// headOf is the heading that a line belongs to; or why it belongs to none.
func (r *run) headOf(line *BudgetLine) (head, why string) {
	f := r.job.Funding
	switch line.ID {
	case "management_reserve":
		return "", "a reserve of the owner is no cost of the project"
	case "contingency":
		if !f.IncludeContingency {
			return "", "the form has no line for contingency; set include_contingency where the funder takes it"
		}
		if f.Form == "sf-424a" {
			return "other", ""
		}
	}
	if f.Form == "sf-424a" {
		return r.classOf(line), ""
	}
	head = line.Category
	if item := r.itemOf(line); item != nil {
		head = cmp.Or(item.Class, head)
	}
	for i := range f.Categories {
		if slices.Contains(f.Categories[i].heads(), head) || f.Categories[i].ID == head {
			return f.Categories[i].ID, ""
		}
	}
	return head, ""
}

// classOf is the object class of a line. A thing is equipment from the threshold
// up, if it lasts longer than a year, and supplies below.
//
// Source: 2 CFR 200.1, 200.439 (planning G09, G12).
func (r *run) classOf(line *BudgetLine) string {
	item := r.itemOf(line)
	switch {
	case item == nil && line.Category == "labour" && line.invoiced:
		return "contractual"
	case item == nil:
		class, _ := funding.ClassOf(line.Category)
		return cmp.Or(class, "other")
	}
	class, _ := funding.ClassOf(cmp.Or(item.Category, "other"))
	class = cmp.Or(item.Class, class, "other")
	one := item.Amount
	if item.UnitPrice != nil {
		one = item.UnitPrice
	}
	durable := item.UsefulLifeYears > 1 || (class == "equipment" && item.UsefulLifeYears == 0)
	large := durable && one.GreaterThanOrEqual(r.awardRules.EquipmentThreshold)
	switch {
	case class == "supplies" && large:
		return "equipment"
	case class == "equipment" && !large:
		return "supplies"
	}
	return class
}

func (r *run) itemOf(line *BudgetLine) *Item {
	for i := range r.job.Items {
		if line.ID == "item/"+r.job.Items[i].ID {
			return &r.job.Items[i]
		}
	}
	return nil
}

func (r *run) subaward(line *BudgetLine) string {
	if item := r.itemOf(line); item != nil && item.Subaward {
		return cmp.Or(item.Supplier, item.ID)
	}
	return ""
}

func (r *run) leaveOut(v *FundingView, what string, amount money.Amount, why string) {
	v.Excluded = append(v.Excluded, FundingExclusion{What: what, Amount: &amount, Why: why, From: "form"})
}

// taxLeftOut tells the tax that the form does not hold.
func (r *run) taxLeftOut(v *FundingView) {
	b := &r.estimate.Budget
	if tax := b.Tax.Add(b.TaxIncluded); r.job.Funding.ExcludeTax && !tax.IsZero() {
		r.leaveOut(v, fmt.Sprintf("tax of %g %%", r.job.TaxPercent), tax, "it is reclaimed")
	}
}

func (n *FundingNarrative) add(line *BudgetLine, amount money.Amount) {
	if line.Funding == "in_kind" {
		n.InKind = n.InKind.Add(amount)
	} else {
		n.Cash = n.Cash.Add(amount)
	}
	n.booked = append(n.booked, bookedLine{line, amount})
}
