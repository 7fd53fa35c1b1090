package estimate

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"filmbuild/estimate/funding"
)

// Funding asks for the estimate in the headings of a funder's form.
type Funding struct {
	Form       string            `json:"form" doc:"sf-424a: the object classes of Standard Form 424A, section B; free: headings of your own"`
	Date       string            `json:"date,omitempty" doc:"date of the award, by which its rules are chosen"`
	Categories []FundingCategory `json:"categories,omitempty" doc:"headings of a free form; those of the budget unless given"`

	Indirect        string   `json:"indirect,omitempty" doc:"none; de_minimis: up to the rate of the rules, on modified total direct cost; negotiated: a rate agreed on"`
	IndirectPercent *float64 `json:"indirect_percent,omitempty" limit:"[0,200]" doc:"rate of indirect cost; for de_minimis the most that the rules allow unless given"`
	IndirectBase    string   `json:"indirect_base,omitempty" doc:"what a negotiated rate is of: mtdc (modified total direct cost) or direct (all direct cost in cash)"`

	Request       *decimal.Decimal `json:"request,omitempty" doc:"what is asked for; the rest of the cash is the applicant's own"`
	OwnCash       *decimal.Decimal `json:"own_cash,omitempty" doc:"cash that the applicant brings; in place of request"`
	MatchPercent  float64          `json:"match_percent,omitempty" limit:"[0,100]" doc:"share of the whole project that the applicant must bring, in cash or in kind; 50 is one to one"`
	ProgramIncome decimal.Decimal  `json:"program_income,omitempty" doc:"income of the project itself"`

	ExcludeTax         bool `json:"exclude_tax,omitempty" doc:"tax can be reclaimed, and the funder does not pay it"`
	IncludeContingency bool `json:"include_contingency,omitempty" doc:"the funder takes contingency; it stands under other then"`
}

// FundingCategory is one heading of a free form.
type FundingCategory struct {
	ID   string   `json:"id" doc:"short name"`
	Name string   `json:"name,omitempty" doc:"as the form prints it"`
	Of   []string `json:"of,omitempty" doc:"headings of the budget that belong to it: materials, labour, freight, fringe, and categories of items; its own id unless given"`
}

// Defaults asks for no indirect cost.
func (f *Funding) Defaults() { f.Indirect, f.IndirectBase = "none", "mtdc" }

// FundingForms are the sets of headings.
func FundingForms() []string { return []string{"sf-424a", "free"} }

// IndirectMethods are the ways to ask for indirect cost.
func IndirectMethods() []string { return []string{"none", "de_minimis", "negotiated"} }

func (c *checker) funding() {
	f := c.job.Funding
	if f == nil {
		return
	}
	const at = "/funding"
	c.oneOf(f.Form, at, "form", FundingForms())
	c.date(f.Date, at, "date")
	c.fundingRules(f, at)
	c.indirect(f, at)
	for _, money := range []struct {
		name  string
		value *decimal.Decimal
	}{{"request", f.Request}, {"own_cash", f.OwnCash}, {"program_income", &f.ProgramIncome}} {
		if money.value != nil {
			c.notNegative(*money.value, at, money.name)
		}
	}
	if f.Request != nil && f.OwnCash != nil {
		c.faults.Add(at+"/own_cash", "inconsistent", "request and own_cash are both given; one follows from the other: keep one")
	}
	if f.Form == "free" {
		c.freeForm(f, at)
	} else {
		c.classed(f, at)
	}
}

// fundingRules finds the dated rules that the form or the rate needs.
func (c *checker) fundingRules(f *Funding, at string) {
	if f.Form == "sf-424a" && c.job.Currency != "USD" && c.job.Currency != "" {
		c.faults.Addf("/currency", "inconsistent", "the form sf-424a is in USD and the job is in %s; give the job in USD, or take the form free", clip(c.job.Currency))
	}
	if f.Form != "sf-424a" && f.Indirect == "none" {
		return
	}
	if f.Date == "" {
		c.faults.Add(at+"/date", "required", "date is missing; the equipment threshold and the rate of indirect cost depend on the date of the award")
		return
	}
	rules, err := funding.RulesOn(f.Date)
	if err != nil && !c.faults.Has(at+"/date") {
		c.faults.Add(at+"/date", "out_of_range", err.Error())
	}
	c.awardRules = rules
}

func (c *checker) indirect(f *Funding, at string) {
	c.oneOf(f.Indirect, at, "indirect", IndirectMethods())
	c.oneOf(f.IndirectBase, at, "indirect_base", []string{"mtdc", "direct"})
	switch {
	case f.Indirect == "none" && f.IndirectPercent != nil && *f.IndirectPercent > 0:
		c.faults.Add(at+"/indirect", "inconsistent", "indirect_percent is given and indirect is none; say whether the rate is de_minimis or negotiated")
	case f.Indirect == "negotiated" && f.IndirectPercent == nil:
		c.faults.Add(at+"/indirect_percent", "required", "indirect_percent is missing; give the rate that was negotiated")
	case f.Indirect == "de_minimis" && f.IndirectPercent != nil && c.awardRules.DeMinimisPercent > 0 && *f.IndirectPercent > c.awardRules.DeMinimisPercent:
		c.faults.Addf(at+"/indirect_percent", "out_of_range", "indirect_percent is %g %%; without a negotiated rate it is at most %g %% for awards of %s", *f.IndirectPercent, c.awardRules.DeMinimisPercent, f.Date)
	case f.Indirect == "de_minimis" && f.IndirectBase == "direct":
		c.faults.Add(at+"/indirect_base", "inconsistent", "the de minimis rate is of modified total direct cost; leave indirect_base out")
	}
}

// classed notes items whose object class nobody can tell.
func (c *checker) classed(f *Funding, at string) {
	if len(f.Categories) > 0 {
		c.faults.Add(at+"/categories", "not_applicable", "the form sf-424a has headings of its own; leave categories out, or take the form free")
	}
	var names []string
	for _, class := range funding.Classes() {
		names = append(names, class.ID)
	}
	for i := range c.job.Items {
		item, below := &c.job.Items[i], "/items/"+strconv.Itoa(i)
		if item.Class != "" {
			c.oneOf(item.Class, below, "class", names)
		} else if _, known := funding.ClassOf(cmp.Or(item.Category, "other")); !known {
			c.faults.Addf(below+"/class", "required", "nobody can tell the object class of category %q; give class: %s", clip(item.Category), strings.Join(names, ", "))
		}
	}
}

// freeForm checks headings of the job's own: each by itself, and every heading of
// the budget under one of them.
func (c *checker) freeForm(f *Funding, at string) {
	seen, owner := map[string]string{}, map[string]string{}
	for i := range f.Categories {
		category, below := &f.Categories[i], at+"/categories/"+strconv.Itoa(i)
		c.id(category.ID, below, seen)
		for k, of := range category.heads() {
			if other, twice := owner[of]; twice {
				c.faults.Addf(below+"/of/"+strconv.Itoa(k), "duplicate_id", "%q belongs to %s already; it would be asked for twice", clip(of), other)
			}
			owner[of] = category.ID
		}
	}
	for i := range c.job.Items {
		item, below := &c.job.Items[i], "/items/"+strconv.Itoa(i)
		head := cmp.Or(item.Class, item.Category, "other")
		if len(f.Categories) > 0 && owner[head] == "" && !slices.ContainsFunc(f.Categories, func(k FundingCategory) bool { return k.ID == head }) {
			c.faults.Addf(below+"/category", "unknown_reference", "no heading of funding.categories holds %q; add it to one of them", clip(head))
		}
	}
	if len(f.Categories) == 0 || len(c.job.Steps) == 0 {
		return
	}
	for _, head := range []string{"materials", "labour"} {
		if owner[head] == "" {
			c.faults.Addf(at+"/categories", "required", "no heading of funding.categories holds %s; the steps need one", head)
		}
	}
}

// heads are the headings of the budget under one of the form.
func (f *FundingCategory) heads() []string {
	if len(f.Of) == 0 {
		return []string{f.ID}
	}
	return f.Of
}
