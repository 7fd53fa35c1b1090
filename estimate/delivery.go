package estimate

import (
	"math"
	"slices"

	"filmbuild/estimate/calendar"
	"filmbuild/products"
)

// delivery is one purchase of a product: for the steps whose use it covers.
type delivery struct {
	uses     []use
	from, to calendar.Date // first and last use, where dated
	orderBy  calendar.Date
	slack    int // days that it keeps beyond its last use
	dated    bool
	split    string // what tells it from others of the same product
}

// deliveries parts the uses of a product into purchases: one, unless the product
// does not keep from the first use to the last. Each begins with the earliest use
// that the one before cannot cover, which needs the fewest of them.
func (r *run) deliveries(n *need, terms *Supplier) []delivery {
	base := n.product.Base()
	uses := slices.Clone(n.uses)
	if slices.ContainsFunc(uses, func(u use) bool { return !u.dated }) {
		if slices.ContainsFunc(uses, func(u use) bool { return u.dated }) {
			r.warn("%s is used by steps without a start: no date to order it by can be told", base.ID)
		}
		return []delivery{{uses: uses}}
	}
	slices.SortStableFunc(uses, func(a, b use) int { return int(a.start - b.start) })
	keeps := calendar.Date(math.MaxInt32)
	if base.ShelfLifeDays != nil {
		keeps = calendar.Date(*base.ShelfLifeDays)
	}
	var list []delivery
	for _, u := range uses {
		if k := len(list) - 1; k < 0 || (u.start-list[k].from > keeps && !r.alike(base.ID)) {
			list = append(list, delivery{from: u.start, dated: true})
		}
		d := &list[len(list)-1]
		d.uses, d.to = append(d.uses, u), u.start
	}
	for k := range list {
		d := &list[k]
		d.orderBy = r.days.After(d.from, -leadTime(base, terms))
		if len(list) > 1 {
			d.split = d.orderBy.String()
		}
		d.slack = int(keeps - (d.to - d.from))
		if d.to-d.from > keeps {
			r.warn("%s keeps %g days and is used from %s to %s: it is of one batch and cannot be parted into deliveries; move the steps together, or take it out of same_batch", base.ID, *base.ShelfLifeDays, d.from, d.to)
		}
	}
	return list
}

// leadTime is the working days from order to delivery: the product's own, or the
// supplier's.
func leadTime(base *products.Common, terms *Supplier) int {
	switch {
	case base.LeadTimeDays != nil:
		return int(math.Ceil(*base.LeadTimeDays))
	case terms != nil:
		return terms.LeadTimeDays
	}
	return 0
}

// alike reports whether a product is to come from one batch.
func (r *run) alike(id string) bool { return slices.Contains(r.job.SameBatch, id) }

// steps are the ids of the steps that a delivery is for.
func (d *delivery) steps() []string {
	ids := make([]string, len(d.uses))
	for i, u := range d.uses {
		ids[i] = u.step
	}
	return ids
}

func (d *delivery) quantity() float64 {
	sum := 0.0
	for _, u := range d.uses {
		sum += u.quantity
	}
	return sum
}
