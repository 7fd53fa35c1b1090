package report

import (
	"strconv"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
)

// buyerRows are what is ordered from whom: one row to a size of pack, and what an
// order costs beside the goods in rows of its own. The cost column adds up.
func buyerRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"supplier", "order_by", "product", "name", "part", "count", "pack", "unit", "price_" + e.Currency, "cost_" + e.Currency, "note"}}
	for i := range e.OrderBySupplier {
		p := &e.OrderBySupplier[i]
		for _, l := range p.Lines {
			rows = append(rows, []string{text(p.Supplier), p.OrderBy, text(l.Product), text(l.Name), l.Part, strconv.Itoa(l.Count), number(l.Pack), l.Unit, l.Price.String(), l.Cost.String(), buyerNote(l)})
		}
		beside := func(name, cost string) {
			rows = append(rows, []string{text(p.Supplier), p.OrderBy, "", name, "", "", "", "", "", cost, ""})
		}
		if !p.Freight.IsZero() {
			beside("freight", p.Freight.String())
		}
		if !p.HazardousFreight.IsZero() {
			beside("freight of dangerous goods", p.HazardousFreight.String())
		}
		if !p.SmallOrderCharge.IsZero() {
			beside("charge on a small order", p.SmallOrderCharge.String())
		}
	}
	return rows
}

func buyerNote(l estimate.PurchaseLine) string {
	switch {
	case l.Hazardous && l.SameBatch:
		return "dangerous goods; all of one batch"
	case l.Hazardous:
		return "dangerous goods"
	case l.SameBatch:
		return "all of one batch"
	}
	return ""
}

// lineRows are the lines of the budget, which add up to its total.
func lineRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"line", "text", "category", "supplier", "cash_" + e.Currency, "in_kind_" + e.Currency, "tax_on_it_" + e.Currency, "basis"}}
	for _, l := range e.Budget.Lines {
		cash, kind := l.Amount.String(), ""
		if l.Funding == "in_kind" {
			cash, kind = "", l.Amount.String()
		}
		rows = append(rows, []string{text(l.ID), text(l.Text), text(l.Category), text(l.Supplier), cash, kind, l.Tax.String(), text(l.Basis)})
	}
	return rows
}

// hourRows are the hours of each step by role.
func hourRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"step", "role", "labour", "hours", "cost_" + e.Currency}}
	for i := range e.Steps {
		for _, h := range e.Steps[i].HoursByRole {
			rows = append(rows, []string{text(e.Steps[i].ID), h.Role, h.Labour, number(h.Hours), h.Cost.String()})
		}
	}
	return rows
}

// fundingRows are exactly the rows of the funder's form, in its order.
func fundingRows(e *estimate.Estimate) ([][]string, error) {
	if e.Funding == nil {
		var faults fault.List
		faults.Add("/funding", "required", `the job asks for no form; give funding, such as {"form": "sf-424a", "date": "2026-10-01"}`)
		return nil, faults.Err()
	}
	rows := [][]string{{"row", "category", "requested_" + e.Currency, "own_cash_" + e.Currency, "in_kind_" + e.Currency, "total_" + e.Currency}}
	for _, r := range e.Funding.Rows {
		rows = append(rows, []string{r.Row, text(r.Category), r.Requested.String(), r.OwnCash.String(), r.InKind.String(), r.Total.String()})
	}
	return rows, nil
}

// narrativeRows are the costs under each heading of the form in plain words.
func narrativeRows(e *estimate.Estimate) ([][]string, error) {
	if _, err := fundingRows(e); err != nil {
		return nil, err
	}
	rows := [][]string{{"category", "text", "cash_" + e.Currency, "in_kind_" + e.Currency}}
	for _, n := range e.Funding.Narrative {
		for _, l := range n.Lines {
			cash, kind := l.Amount.String(), ""
			if l.Funding == "in_kind" {
				cash, kind = "", l.Amount.String()
			}
			rows = append(rows, []string{text(n.Category), text(l.Text), cash, kind})
		}
	}
	return rows, nil
}
