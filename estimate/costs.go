package estimate

import (
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// supplied is what there is of a product, bought and from stock, and what it
// cost: gifts at their value, stock on hand at nothing.
type supplied struct {
	quantity float64
	paid     money.Amount
}

// supplies adds up the lines of the order by product.
func (r *run) supplied() map[string]supplied {
	all := make(map[string]supplied, len(r.estimate.Order))
	for i := range r.estimate.Order {
		line := &r.estimate.Order[i]
		s := all[line.Product]
		s.quantity += line.Bought + line.FromStock + line.FromDonations
		s.paid = s.paid.Add(line.Cost).Add(line.DonatedValue)
		all[line.Product] = s
	}
	return all
}

// costs gives each step its money: the material it consumes at the average price
// of what there is of it, and its hours.
//
//	material = quantity used · paid / supplied
//	labour   = hours · rate
func (r *run) costs() {
	all := r.supplied()
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		r.materialCost(s, all)
		r.labourCost(s)
		s.Cost = s.MaterialCost.Add(s.LabourCost)
		s.Working = append(s.Working, quantity.Working{Quantity: "cost", Value: s.Cost.Float64(), Unit: r.job.Currency, Formula: "material_cost + labour_cost",
			Terms: map[string]float64{"material_cost": s.MaterialCost.Float64(), "labour_cost": s.LabourCost.Float64()}, Source: "identity",
			Links: []quantity.Link{ofStep("material_cost", s.ID, "material_cost", ""), ofStep("labour_cost", s.ID, "labour_cost", "")}})
	}
}

func ofStep(term, step, name, of string) quantity.Link {
	return quantity.From(term, quantity.Node{Kind: "step", ID: step, Quantity: name, Of: of})
}

func (r *run) materialCost(s *StepEstimate, all map[string]supplied) {
	s.MaterialCost = r.currency.Zero()
	sum := quantity.Working{Quantity: "material_cost", Unit: r.job.Currency, Formula: "sum of the materials", Terms: map[string]float64{}, Source: "identity"}
	for k := range s.Materials {
		m := &s.Materials[k]
		m.Cost = r.currency.Zero()
		have := all[m.Product]
		if have.quantity > 0 {
			m.Cost = r.currency.CostFromPack(m.Quantity, have.quantity, have.paid.Decimal())
		}
		s.MaterialCost = s.MaterialCost.Add(m.Cost)
		one := quantity.Working{Quantity: "material_cost", Of: m.Product, Value: m.Cost.Float64(), Unit: r.job.Currency,
			Formula: r.rounded("used·paid/supplied"), Terms: map[string]float64{"used": m.Quantity, "paid": have.paid.Float64(), "supplied": max(have.quantity, 1e-9)},
			Source: "identity: the average price of what there is of it",
			Links: []quantity.Link{quantity.From("paid", quantity.Node{Kind: "order", ID: m.Product, Quantity: "paid"}),
				quantity.From("supplied", quantity.Node{Kind: "order", ID: m.Product, Quantity: "supplied"})}}
		if node, ok := s.usesOf(m); ok {
			one.Links = append(one.Links, quantity.From("used", node))
		}
		s.Working = append(s.Working, one)
		sum.Terms[m.Product] = m.Cost.Float64()
		sum.Links = append(sum.Links, ofStep(m.Product, s.ID, "material_cost", m.Product))
	}
	sum.Value = s.MaterialCost.Float64()
	s.Working = append(s.Working, orNothing(sum))
}

// usesOf is the working of a step whose value is what it uses of a product; one
// that adds them up where there are several.
func (s *StepEstimate) usesOf(m *Material) (quantity.Node, bool) {
	sum := quantity.Working{Quantity: "used", Of: m.Product, Unit: m.Unit, Value: m.Quantity, Formula: "sum of what it is used for", Terms: map[string]float64{}, Source: "identity"}
	for _, w := range s.Working {
		if w.Uses == m.Product {
			term := w.Quantity + " " + w.Of
			sum.Terms[term] = w.Value
			sum.Links = append(sum.Links, quantity.From(term, quantity.StepWorking(s.ID, w.Quantity, w.Of)))
		}
	}
	switch len(sum.Links) {
	case 0:
		return quantity.Node{}, false
	case 1:
		return sum.Links[0].Node, true
	}
	s.Working = append(s.Working, sum)
	return quantity.StepWorking(s.ID, "used", m.Product), true
}
