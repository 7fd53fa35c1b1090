package estimate

import (
	"cmp"
	"slices"
)

// buyers parts the order into the lists that are sent out: one to each supplier
// and date, with what the supplier takes beside the goods.
func (r *run) buyers() {
	list := []Purchase{}
	for i := range r.estimate.Order {
		line := &r.estimate.Order[i]
		if len(line.Packs) == 0 {
			continue
		}
		k := slices.IndexFunc(list, func(p Purchase) bool { return p.Supplier == line.Supplier && p.OrderBy == line.OrderBy })
		if k < 0 {
			k = len(list)
			zero := r.currency.Zero()
			list = append(list, Purchase{Supplier: line.Supplier, OrderBy: line.OrderBy, Goods: zero, Freight: zero, HazardousFreight: zero, SmallOrderCharge: zero})
		}
		list[k].add(r, line)
	}
	for k := range list {
		r.carriage(&list[k])
	}
	slices.SortStableFunc(list, func(a, b Purchase) int { return cmp.Compare(a.OrderBy, b.OrderBy) })
	r.estimate.OrderBySupplier = list
}

func (p *Purchase) add(r *run, line *OrderLine) {
	for _, pack := range line.Packs {
		cost := r.currency.Cost(float64(pack.Count), pack.Price.Decimal())
		p.Lines = append(p.Lines, PurchaseLine{Product: line.Product, Name: line.Name, Part: pack.Part, Count: pack.Count, Pack: pack.Pack,
			Unit: line.Unit, Price: pack.Price, Cost: cost, Hazardous: line.Hazardous, SameBatch: line.SameBatch})
		p.Goods = p.Goods.Add(cost)
	}
}

// carriage adds what one order costs beside the goods.
func (r *run) carriage(p *Purchase) {
	if terms := r.terms(p.Supplier); terms != nil {
		p.Name = terms.Name
		if free := terms.FreightFreeFrom; free.IsZero() || p.Goods.Decimal().LessThan(free) {
			p.Freight = r.currency.Of(terms.Freight)
		}
		if slices.ContainsFunc(p.Lines, func(l PurchaseLine) bool { return l.Hazardous }) {
			p.HazardousFreight = r.currency.Of(terms.HazardousFreight)
		}
		if short := r.currency.Of(terms.MinimumOrder).Sub(p.Goods); short.Sign() > 0 {
			p.BelowMinimum, p.SmallOrderCharge = &short, r.currency.Of(terms.SmallOrderCharge)
			r.warn("the order from %s is %s %s below its minimum: buy more there, buy elsewhere, or ask", cmp.Or(terms.Name, terms.ID), r.job.Currency, short)
		}
	}
	p.Total = p.Goods.Add(p.Freight).Add(p.HazardousFreight).Add(p.SmallOrderCharge)
}

func (r *run) terms(supplier string) *Supplier {
	for i := range r.job.Suppliers {
		if r.job.Suppliers[i].ID == supplier {
			return &r.job.Suppliers[i]
		}
	}
	return nil
}

// beside is what a purchase costs beside the goods.
func (p *Purchase) key() string {
	switch {
	case p.OrderBy == "":
		return cmp.Or(p.Supplier, "no supplier named")
	}
	return cmp.Or(p.Supplier, "no supplier named") + " " + p.OrderBy
}
