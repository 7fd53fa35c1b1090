package estimate

import (
	"fmt"

	"github.com/shopspring/decimal"

	"filmbuild/estimate/funding"
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// indirectCost finds the cost of running the organisation that the form asks for.
//
//	indirect = rate · base
//
// Source: 2 CFR 200.414 (planning G08, G11).
func (r *run) indirectCost(v *FundingView, costs []funding.Cost) {
	f := r.job.Funding
	v.IndirectBase, v.Indirect = r.currency.Zero(), r.currency.Zero()
	switch {
	case f.Indirect == "none":
		return
	case f.IndirectPercent != nil:
		v.IndirectPercent = *f.IndirectPercent
	default:
		v.IndirectPercent = r.awardRules.DeMinimisPercent
		r.assumed.add("", "rate of indirect cost without a negotiated one", v.IndirectPercent, "%", "2 CFR 200.414(f) on the date of the award (planning G08 [A])")
	}
	v.IndirectBase = v.DirectCash
	if f.IndirectBase == "mtdc" || f.Indirect == "de_minimis" {
		base, left := funding.Base(r.currency, costs, r.awardRules)
		v.IndirectBase = base
		for _, l := range left {
			v.Excluded = append(v.Excluded, FundingExclusion{What: "direct cost", Amount: &l.Amount, Why: l.Why, From: "indirect_base"})
		}
	}
	v.Indirect = v.IndirectBase.MulPercent(v.IndirectPercent)
}

// rows fills the form: every heading, the total of direct cost, indirect cost and
// the total. The applicant's own cash is spread over the headings in proportion
// to their cash, to the last coin.
func (r *run) rows(v *FundingView, heads []FundingNarrative) {
	f := r.job.Funding
	cash := v.DirectCash.Add(v.Indirect)
	v.OwnCash = r.ownCash(f, cash)
	v.Requested = cash.Sub(v.OwnCash)
	weights := make([]float64, 0, len(heads)+1)
	for _, h := range heads {
		weights = append(weights, h.Cash.Float64())
	}
	shares, err := money.Split(v.OwnCash, append(weights, v.Indirect.Float64()))
	if err != nil { // no cash at all
		shares = make([]money.Amount, len(heads)+1)
		for i := range shares {
			shares[i] = r.currency.Zero()
		}
	}
	zero := r.currency.Zero()
	total := FundingRow{ID: "total_direct", Category: "Total direct cost", Requested: zero, OwnCash: zero, InKind: zero, Total: zero}
	for i, h := range heads {
		row := fundingRow(h.ID, h.Category, h.Cash, shares[i], h.InKind)
		row.Row = fmt.Sprint(i + 1)
		v.Rows = append(v.Rows, row)
		total.add(row)
	}
	v.InKind = total.InKind
	indirect := fundingRow("indirect", "Indirect cost", v.Indirect, shares[len(heads)], zero)
	all := FundingRow{ID: "total", Category: "Total", Requested: zero, OwnCash: zero, InKind: zero, Total: zero}
	all.add(total)
	all.add(indirect)
	v.Total = all.Total
	v.Match = v.OwnCash.Add(v.InKind)
	v.MatchPercent = 100 * v.Match.Ratio(v.Total)
	v.MatchShort = zero
	if short := v.Total.MulPercent(v.MatchRequired).Sub(v.Match); short.Sign() > 0 {
		v.MatchShort = short
		r.warn("the applicant brings %s %s of the %s %s that a match of %g %% asks for: %s is missing", r.job.Currency, v.Match, r.job.Currency, v.Match.Add(short), v.MatchRequired, short)
	}
	if f.Form == "sf-424a" {
		r.federalRows(v, total, indirect, all)
	} else {
		v.Rows = append(v.Rows, total, indirect, all)
	}
	r.perSquareMetre(v)
	r.fundingWorking(v)
}

// federalRows numbers the rows as the form does, and adds its last ones.
func (r *run) federalRows(v *FundingView, total, indirect, all FundingRow) {
	for i, class := range funding.Classes() {
		v.Rows[i].Row = class.Row
	}
	total.Row, total.Category = "6i", "Total Direct Charges (sum of 6a-6h)"
	indirect.Row, indirect.Category = "6j", "Indirect Charges"
	all.Row, all.Category = "6k", "TOTALS (sum of 6i and 6j)"
	zero := r.currency.Zero()
	income := FundingRow{Row: "7", ID: "program_income", Category: "Program Income", Requested: zero, OwnCash: zero, InKind: zero, Total: r.currency.Of(r.job.Funding.ProgramIncome)}
	v.Rows = append(v.Rows, total, indirect, all, income)
}

func fundingRow(id, category string, cash, own, inKind money.Amount) FundingRow {
	return FundingRow{ID: id, Category: category, Requested: cash.Sub(own), OwnCash: own, InKind: inKind, Total: cash.Add(inKind)}
}

func (row *FundingRow) add(other FundingRow) {
	row.Requested, row.OwnCash = row.Requested.Add(other.Requested), row.OwnCash.Add(other.OwnCash)
	row.InKind, row.Total = row.InKind.Add(other.InKind), row.Total.Add(other.Total)
}

// ownCash is what the applicant pays: as given, or what the request leaves.
func (r *run) ownCash(f *Funding, cash money.Amount) money.Amount {
	own := decimal.Zero
	switch {
	case f.OwnCash != nil:
		own = *f.OwnCash
	case f.Request != nil:
		own = cash.Decimal().Sub(*f.Request)
	}
	amount := r.currency.Of(own)
	switch {
	case amount.Sign() < 0:
		r.warn("the request is %s %s more than the cash that the project takes: it is taken down to that", r.job.Currency, r.currency.Of(own.Neg()))
		return r.currency.Zero()
	case amount.Cmp(cash) > 0:
		r.warn("own cash is more than the cash that the project takes, %s %s: nothing need be asked for", r.job.Currency, cash)
		return cash
	}
	return amount
}

func (r *run) perSquareMetre(v *FundingView) {
	area := r.estimate.Totals.AreaM2
	if area <= 0 {
		return
	}
	total, cash := r.currency.CostFromPack(1, area, v.Total.Decimal()), r.currency.CostFromPack(1, area, v.Requested.Add(v.OwnCash).Decimal())
	v.CostPerM2, v.CashPerM2 = &total, &cash
}

func (r *run) fundingWorking(v *FundingView) {
	node := func(term string) quantity.Link {
		return quantity.From(term, quantity.Node{Kind: "funding", Quantity: term})
	}
	one := func(name string, value float64, unit, formula, source string, terms map[string]float64, links ...quantity.Link) {
		v.Working = append(v.Working, quantity.Working{Quantity: name, Value: value, Unit: unit, Formula: formula, Terms: terms, Links: links, Source: source})
	}
	v.Working = []quantity.Working{}
	coin := r.job.Currency
	one("direct_cash", v.DirectCash.Float64(), coin, "by adding the cash of the headings", "identity", map[string]float64{"budget": r.estimate.Budget.CashNeeded.Float64()})
	one("indirect_base", v.IndirectBase.Float64(), coin, "by the rules of the base", "2 CFR 200.1, modified total direct cost (planning G10)", map[string]float64{"direct_cash": v.DirectCash.Float64()}, node("direct_cash"))
	one("indirect", v.Indirect.Float64(), coin, r.rounded("indirect_base·rate"), "2 CFR 200.414 (planning G08)", map[string]float64{"indirect_base": v.IndirectBase.Float64(), "rate": v.IndirectPercent / 100}, node("indirect_base"))
	one("in_kind", v.InKind.Float64(), coin, "by adding what is in kind under the headings", "identity", map[string]float64{"in_kind": r.estimate.Budget.InKind.Float64()})
	one("total", v.Total.Float64(), coin, "direct_cash + indirect + in_kind", "identity", map[string]float64{"direct_cash": v.DirectCash.Float64(), "indirect": v.Indirect.Float64(), "in_kind": v.InKind.Float64()},
		node("direct_cash"), node("indirect"), node("in_kind"))
	if !v.Total.IsZero() {
		one("match_percent", v.MatchPercent, "%", "100·(own_cash + in_kind)/total", "identity", map[string]float64{"own_cash": v.OwnCash.Float64(), "in_kind": v.InKind.Float64(), "total": v.Total.Float64()}, node("in_kind"), node("total"))
	}
}
