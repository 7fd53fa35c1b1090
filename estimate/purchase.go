package estimate

import (
	"cmp"
	"slices"
	"strings"

	"filmbuild/estimate/calendar"
)

// buyers parts the order into the lists that are sent out: one to each supplier
// and date, with what the supplier takes beside the goods. Orders that fall due
// soon after one another go out together, at the earlier date, as far as the
// goods keep.
func (r *run) buyers() {
	r.estimate.OrderBySupplier = []Purchase{}
	due := make([]*OrderLine, 0, len(r.estimate.Order))
	for i := range r.estimate.Order {
		if len(r.estimate.Order[i].Packs) > 0 {
			due = append(due, &r.estimate.Order[i])
		}
	}
	slices.SortStableFunc(due, func(a, b *OrderLine) int { return cmp.Compare(a.OrderBy, b.OrderBy) })
	for _, line := range due {
		r.send(line)
	}
	for k := range r.estimate.OrderBySupplier {
		r.carriage(&r.estimate.OrderBySupplier[k])
	}
}

// send puts a line on the latest list of its supplier, or begins a new one.
func (r *run) send(line *OrderLine) {
	list := r.estimate.OrderBySupplier
	within := combineDays
	if terms := r.terms(line.Supplier); terms != nil {
		within = terms.CombineDays
	}
	for k := len(list) - 1; k >= 0; k-- {
		if list[k].Supplier == line.Supplier && line.early(list[k].OrderBy, within) {
			list[k].add(r, line)
			return
		}
	}
	zero := r.currency.Zero()
	p := Purchase{Supplier: line.Supplier, OrderBy: line.OrderBy, Goods: zero, Freight: zero, HazardousFreight: zero, SmallOrderCharge: zero}
	p.add(r, line)
	r.estimate.OrderBySupplier = append(list, p)
	if line.OrderBy != "" {
		r.assumed.add("", "orders that fall due within so many days of each other go out as one, as far as the goods keep", float64(within), "", "assumption: give combine_days to the supplier")
	}
}

// early reports whether a line may be ordered on a date at or before its own.
func (line *OrderLine) early(on string, within int) bool {
	if on == line.OrderBy {
		return true
	}
	from, dated := calendar.Parse(on)
	due, also := calendar.Parse(line.OrderBy)
	return dated && also && int(due-from) <= min(within, line.slack)
}

func (p *Purchase) add(r *run, line *OrderLine) {
	line.sent = p.key()
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

// key tells a list from the others.
func (p *Purchase) key() string {
	return strings.TrimSpace(cmp.Or(p.Supplier, "no supplier named") + " " + p.OrderBy)
}
