package estimate

import (
	"fmt"

	"filmbuild/estimate/calendar"
	"filmbuild/estimate/money"
)

// drawn is what comes out of one entry of the stock for one line of the order.
type drawn struct {
	stock  *Stock
	before float64 // what entries before it hold for the line
	there  float64 // what it holds
	used   float64
	value  money.Amount // of what is used, where it is a gift
}

// draw takes stock for a need, in the order in which the job lists it. What has
// passed its date by the last use is left where it is.
func (r *run) draw(product string, need float64, d *delivery) []drawn {
	var list []drawn
	before := 0.0
	for i := range r.job.Stock {
		s := &r.job.Stock[i]
		left := s.Quantity - r.taken[i]
		if s.Product != product || left <= 0 {
			continue
		}
		if by, ok := calendar.Parse(s.UseBy); ok && d.dated && d.to > by {
			r.warn("%s in stock is to be used by %s and a step needs it on %s: it is not counted on", product, s.UseBy, d.to)
			continue
		}
		out := drawn{stock: s, before: before, there: left, used: min(max(need-before, 0), left), value: r.currency.Zero()}
		before += left
		r.taken[i] += out.used
		if s.Donated {
			out.value = r.currency.CostFromPack(out.used, s.Quantity, s.Value)
			if s.Value.IsZero() {
				r.warn("%s is given and has no value: it counts for nothing in kind; give value and basis under stock", product)
			}
		}
		list = append(list, out)
	}
	return list
}

// take notes on a line what comes out of stock for it.
func (line *OrderLine) take(list []drawn) {
	line.drawn = list
	for _, out := range list {
		if !out.stock.Donated {
			line.FromStock += out.used
			continue
		}
		line.gift = true
		line.FromDonations += out.used
		line.DonatedValue = line.DonatedValue.Add(out.value)
		if out.used > 0 && out.stock.Basis != "" {
			line.Basis = out.stock.Basis
		}
	}
}

// stockLeft names what stays in stock, and stock that no step uses.
func (r *run) stockLeft() {
	for i := range r.job.Stock {
		s := &r.job.Stock[i]
		left := s.Quantity - r.taken[i]
		p, _ := r.catalogue.Product(s.Product)
		switch {
		case r.taken[i] == 0:
			r.warn("%s in stock is used by no step", s.Product)
		case left > 1e-9*s.Quantity:
			r.assumed.add("", "stock of "+s.Product+" that is left", left, p.Base().Unit(), "the job")
		}
		if s.UseBy == "" {
			r.assumed.add("", fmt.Sprintf("stock of %s is fit to use: look at its date and try it", s.Product), 0, "", "common practice")
		}
	}
}
