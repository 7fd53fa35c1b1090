package estimate

import "filmbuild/surfaces/quantity"

// itemWorking notes how the money of an item was found: the total that it is
// counted by, the units, and the amount.
func (r *run) itemWorking(item *Item, e *ItemEstimate, ratio [2]float64) {
	w := quantity.Working{Quantity: "item_amount", Of: item.ID, Value: e.Amount.Float64(), Unit: r.job.Currency, Formula: "amount",
		Terms: map[string]float64{}, Source: "the job: items"}
	if item.Amount != nil {
		w.Terms["amount"] = item.Amount.InexactFloat64()
		w.Links = append(w.Links, itemField("amount", item.ID, "amount"))
	} else {
		w.Formula = "quantity·price"
		w.Terms["quantity"], w.Terms["price"] = e.Quantity, item.UnitPrice.InexactFloat64()
		w.Links = append(w.Links, itemField("price", item.ID, "unit_price"), r.unitsOf(item, e))
	}
	if ratio[0] != ratio[1] {
		w.Formula += "·to_index/from_index"
		w.Terms["to_index"], w.Terms["from_index"] = ratio[0], ratio[1]
		w.Source = "BLS PPI guide: price times the ratio of the index (planning E04)"
	}
	w.Formula = r.rounded(w.Formula)
	r.estimate.Budget.Working = append(r.estimate.Budget.Working, w)
}

func itemField(term, item, field string) quantity.Link {
	return quantity.From(term, quantity.Node{Kind: "item", ID: item, Quantity: field})
}

// unitsOf links the quantity of an item to the job, or to the total that gives it.
func (r *run) unitsOf(item *Item, e *ItemEstimate) quantity.Link {
	if item.Of == "" {
		return itemField("quantity", item.ID, "quantity")
	}
	r.totalWorking(item.Of)
	total := quantity.From("total", quantity.Node{Kind: "budget", Quantity: "total_of", Of: item.Of})
	if item.Holds == nil {
		total.Term = "quantity"
		return total
	}
	r.estimate.Budget.Working = append(r.estimate.Budget.Working, quantity.Working{Quantity: "units", Of: item.ID, Value: e.Quantity, Unit: item.Unit,
		Formula: "⌈total/holds − 0.000000001⌉", Terms: map[string]float64{"total": r.totalOf(item.Of), "holds": *item.Holds}, Links: []quantity.Link{total},
		Source: "identity: whole units"})
	return quantity.From("quantity", quantity.Node{Kind: "budget", Quantity: "units", Of: item.ID})
}

// totalWorking gives the sum over the steps, or the parts, that an item is
// counted by, once.
func (r *run) totalWorking(name string) {
	for _, w := range r.estimate.Budget.Working {
		if w.Quantity == "total_of" && w.Of == name {
			return
		}
	}
	w := quantity.Working{Quantity: "total_of", Of: name, Value: r.totalOf(name), Unit: quantity.UnitOf("_" + name), Formula: "sum of the steps", Terms: map[string]float64{}, Source: "identity"}
	if name == "area_m2" {
		w.Formula = "sum of the parts"
		for _, a := range r.estimate.Areas {
			for _, f := range a.Faces {
				term := a.Component + "/" + f.Face
				w.Terms[term] = f.AreaM2
				w.Links = append(w.Links, quantity.From(term, quantity.Node{Kind: "face", ID: a.Component, Quantity: f.Face}))
			}
		}
	}
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		value, known := map[string]float64{"waste_kg": s.WasteKg, "litres": s.Litres, "kilograms": s.Kilograms, "hours": s.Hours, "sessions": float64(s.Sessions)}[name]
		if !known || value == 0 {
			continue
		}
		w.Terms[s.ID] = value
		if s.has(name) {
			w.Links = append(w.Links, ofStep(s.ID, s.ID, name, ""))
		}
	}
	r.estimate.Budget.Working = append(r.estimate.Budget.Working, orNothing(w))
}

// has reports whether the step has a working of that name for the whole of it.
func (s *StepEstimate) has(name string) bool {
	for _, w := range s.Working {
		if w.Quantity == name && w.Of == "" {
			return true
		}
	}
	return false
}
