package estimate

import (
	"cmp"
	"fmt"
	"strings"

	"filmbuild/surfaces/quantity"
)

// bookOrder enters what is bought and what is given, line by line.
func (r *run) bookOrder(book *ledger) {
	b := &r.estimate.Budget
	b.MaterialsOrdered, b.MaterialsConsumed = r.currency.Zero(), r.estimate.Totals.StepsMaterialCost
	for i := range r.estimate.Order {
		line := &r.estimate.Order[i]
		b.MaterialsOrdered = b.MaterialsOrdered.Add(line.Cost)
		id := cmp.Or(line.Name, line.Product)
		if line.ToBuy > 0 || len(line.drawn) > 0 { // with other needs, stock may not be enough
			book.add(BudgetLine{ID: "order/" + line.key(), Text: id, Category: "materials", Funding: "cash", Supplier: line.Supplier, Amount: line.Cost, ordered: line,
				taxing: cmp.Or(line.Tax, "added"), invoice: "order/" + line.sent, node: line.node("cost")})
		}
		if line.gift {
			book.add(BudgetLine{ID: "gift/" + line.key(), Text: id + ", given", Category: "materials", Funding: "in_kind", Basis: line.Basis, Amount: line.DonatedValue, ordered: line, node: line.node("donated_value")})
		}
	}
}

// key tells a line of the order from the others.
func (line *OrderLine) key() string {
	if line.split == "" {
		return line.Product
	}
	return line.Product + " " + line.split
}

// node names a working of the line.
func (line *OrderLine) node(name string) quantity.Node {
	return quantity.Node{Kind: "order", ID: line.Product, Quantity: name, Of: line.split}
}

// bookFreight enters what each order costs beside the goods.
//
//	freight, unless the goods reach free_from; + hazardous; + charge below the minimum
func (r *run) bookFreight(book *ledger) {
	for i := range r.estimate.OrderBySupplier {
		p := &r.estimate.OrderBySupplier[i]
		terms := r.terms(p.Supplier)
		if terms == nil || terms.Freight.IsZero() && terms.SmallOrderCharge.IsZero() && p.HazardousFreight.IsZero() {
			continue
		}
		key := p.key()
		goods := quantity.Working{Quantity: "goods", Of: key, Value: p.Goods.Float64(), Unit: r.job.Currency, Formula: "sum of what is ordered", Terms: map[string]float64{}, Source: "identity"}
		for k := range r.estimate.Order {
			if line := &r.estimate.Order[k]; line.sent == key {
				goods.Terms[line.key()] = line.Cost.Float64()
				goods.Links = append(goods.Links, quantity.From(line.key(), line.node("cost")))
			}
		}
		freight := p.Freight.Add(p.HazardousFreight).Add(p.SmallOrderCharge)
		w := quantity.Working{Quantity: "freight", Of: key, Value: freight.Float64(), Unit: r.job.Currency, Formula: "freight", Source: "the job: terms of the supplier",
			Terms: map[string]float64{"freight": r.currency.Of(terms.Freight).Float64(), "hazardous_freight": p.HazardousFreight.Float64()}}
		if !terms.FreightFreeFrom.IsZero() {
			w.Formula = "if(goods < free_from, freight, 0)"
			w.Terms["free_from"] = terms.FreightFreeFrom.InexactFloat64()
		}
		w.Formula += " + hazardous_freight"
		if !terms.SmallOrderCharge.IsZero() {
			w.Formula += " + if(goods < minimum, charge, 0)"
			w.Terms["minimum"], w.Terms["charge"] = r.currency.Of(terms.MinimumOrder).Float64(), r.currency.Of(terms.SmallOrderCharge).Float64()
		}
		if len(w.Terms) > 2 {
			w.Terms["goods"] = goods.Value
			w.Links = append(w.Links, quantity.From("goods", quantity.Node{Kind: "budget", Quantity: "goods", Of: key}))
		}
		r.estimate.Budget.Working = append(r.estimate.Budget.Working, goods, w)
		book.add(BudgetLine{ID: "freight/" + key, Text: p.freightText(), Category: "freight", Funding: "cash", Supplier: p.Supplier,
			Amount: freight, taxing: r.taxOf("", true), invoice: "order/" + key, node: quantity.Node{Kind: "budget", Quantity: "freight", Of: key}})
	}
}

func (p *Purchase) freightText() string {
	text := "freight of the order from " + cmp.Or(p.Name, p.Supplier)
	if p.OrderBy != "" {
		text += " by " + p.OrderBy
	}
	return text
}

func (r *run) bookLabour(book *ledger) {
	l := &r.job.Labour
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		for k := range s.HoursByRole {
			h := &s.HoursByRole[k]
			line := BudgetLine{ID: "labour/" + s.ID + "/" + h.Role, Text: fmt.Sprintf("%s, %s: %s of %s", cmp.Or(s.Name, s.ID), h.Role, measure(h.Hours, "h"), workOf(h.Labour)),
				Category: "labour", Funding: "cash", hours: h, step: s.ID, invoiced: h.Labour == "contract", Amount: h.Cost, taxing: "none", invoice: "contract", node: quantity.StepWorking(s.ID, "labour_cost", h.Role)}
			switch h.Labour {
			case "volunteer":
				line.Funding, line.Basis = "in_kind", l.basis()
			case "contract":
				line.taxing = r.taxOf(l.ContractTax, true)
			}
			book.add(line)
			if h.Labour == "paid" && l.FringePercent > 0 {
				r.bookFringe(book, s, h)
			}
		}
	}
}

func workOf(labour string) string {
	return map[string]string{"volunteer": "volunteers", "paid": "paid work", "contract": "contract work"}[labour]
}

// basis is how the value of a volunteer hour was found, in words.
func (l *Labour) basis() string {
	words := map[string]string{"similar_work": "pay for similar work", "national_average": "national average", "funder_rate": "rate of the funder"}[l.VolunteerBasis]
	switch {
	case words == "":
		return l.VolunteerSource
	case l.VolunteerSource == "":
		return words
	}
	return words + ": " + l.VolunteerSource
}

func (r *run) bookFringe(book *ledger, s *StepEstimate, h *RoleHours) {
	id := s.ID + "/" + h.Role
	fringe := h.Cost.MulPercent(r.job.Labour.FringePercent)
	r.estimate.Budget.Working = append(r.estimate.Budget.Working, quantity.Working{Quantity: "fringe", Of: id, Value: fringe.Float64(), Unit: r.job.Currency, Formula: r.rounded("wages·share"),
		Terms: map[string]float64{"wages": h.Cost.Float64(), "share": r.job.Labour.FringePercent / 100}, Source: "the job: labour.fringe_percent",
		Links: []quantity.Link{ofStep("wages", s.ID, "labour_cost", h.Role), quantity.Scaled("share", quantity.Node{Kind: "job", ID: "labour", Quantity: "fringe_percent"}, 0.01)}})
	book.add(BudgetLine{ID: "fringe/" + id, Text: "fringe benefits, " + cmp.Or(s.Name, s.ID), Category: "fringe", Funding: "cash", Amount: fringe,
		taxing: "none", node: quantity.Node{Kind: "budget", Quantity: "fringe", Of: id}})
}

func (r *run) bookItems(book *ledger) {
	for i := range r.estimate.Items {
		e := &r.estimate.Items[i]
		book.add(BudgetLine{ID: "item/" + e.ID, Text: e.text(), Category: e.Category, Funding: e.Funding, Supplier: e.Supplier, Basis: e.Basis, Amount: e.Amount,
			taxing: e.Tax, invoice: cmp.Or(e.Supplier, "item/"+e.ID), node: quantity.Node{Kind: "budget", Quantity: "item_amount", Of: e.ID}})
	}
}

// text names an item with its quantity.
func (e *ItemEstimate) text() string {
	name := cmp.Or(e.Name, e.ID)
	if e.UnitPrice == "" {
		return name
	}
	return fmt.Sprintf("%s: %s at %s", name, measure(e.Quantity, several(e.Quantity, e.Unit)), e.UnitPrice)
}

// several gives the word for a unit its plural; signs of units have none.
func several(n float64, unit string) string {
	if n == 1 || len(unit) < 3 || strings.HasSuffix(unit, "s") || strings.ContainsFunc(unit, func(r rune) bool { return r < 'a' || r > 'z' }) {
		return unit
	}
	return unit + "s"
}
