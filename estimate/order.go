package estimate

import (
	"fmt"
	"slices"

	"filmbuild/products"
)

// order turns needs into whole packs: stock comes off first, then the cheapest
// cover of what is left.
func (r *run) order(catalogueCurrency string) {
	r.assumed.add("", "allowance on every need in the order", r.job.AllowancePercent, "%", "the job")
	r.estimate.Order, r.estimate.Budget.Unpriced = make([]OrderLine, 0, len(r.needs.lines)), []string{}
	r.taken = make([]float64, len(r.job.Stock))
	r.dateUses()
	for i := range r.needs.lines {
		n := &r.needs.lines[i]
		base := n.product.Base()
		_, terms := r.supplierOf(base)
		offers := r.offers(base, catalogueCurrency)
		for _, d := range r.deliveries(n, terms) {
			r.orderLine(n.product, d, offers)
		}
	}
	r.supplyWorking()
	r.stockLeft()
	r.buyers()
}

func (r *run) warn(format string, args ...any) {
	r.estimate.Warnings = append(r.estimate.Warnings, fmt.Sprintf(format, args...))
}

// orderLine covers the need of one delivery.
func (r *run) orderLine(p products.Product, d delivery, offers []offer) {
	base := p.Base()
	line := OrderLine{Product: base.ID, Name: base.Name, Unit: base.Unit(), Steps: d.steps(), split: d.split, slack: d.slack, Packs: []OrderPack{}, Cost: r.currency.Zero()}
	line.Supplier, _ = r.supplierOf(base)
	if d.dated {
		line.OrderBy, line.UseFrom, line.UseTo = d.orderBy.String(), d.from.String(), d.to.String()
	}
	line.Needed = d.quantity() * (1 + r.job.AllowancePercent/100)
	line.DonatedValue = r.currency.Zero()
	line.take(r.draw(base.ID, line.Needed, &d))
	line.ToBuy = max(0, line.Needed-line.FromStock-line.FromDonations)
	if line.ToBuy < 1e-9*line.Needed {
		line.ToBuy = 0 // what a difference of two floats leaves of nothing
	}
	line.Priced = line.ToBuy == 0 || hasPrice(offers)
	line.Hazardous, line.SameBatch = line.ToBuy > 0 && dangerous(base), r.alike(base.ID)
	if paint, ok := p.(*products.Paint); ok {
		line.kit = paint.Mix != nil && !paint.SoldApart()
	}
	if len(offers) > 0 {
		line.Tax = offers[0].tax
	}
	switch {
	case line.ToBuy == 0:
	case len(offers) == 0:
		r.warn("%s is sold in no packs known here: its line in the order has no packs and no cost", base.ID)
	default:
		line.offers = offers
		if err := r.buy(&line, p, offers); err != nil {
			r.faults.Addf("", "too_many", "no order of %s can be worked out: %s", line.Product, err)
		}
	}
	if !line.Priced && !slices.Contains(r.estimate.Budget.Unpriced, base.ID) {
		r.estimate.Budget.Unpriced = append(r.estimate.Budget.Unpriced, base.ID)
	}
	line.LeftOverNote = leftOver(&line)
	line.Working = r.orderWorking(&line, &d)
	r.estimate.Order = append(r.estimate.Order, line)
}
