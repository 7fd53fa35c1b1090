package estimate

import (
	"fmt"

	"filmbuild/estimate/calendar"
	"filmbuild/estimate/money"
)

// drawn is what comes out of stock for one line of the order.
type drawn struct {
	own, given float64
	value      money.Amount // of what was given and is used
	basis      string
}

// draw takes stock for a need, in the order in which the job lists it. What has
// passed its date by the last use is left where it is.
func (r *run) draw(product string, need float64, d *delivery) drawn {
	out := drawn{value: r.currency.Zero()}
	for i := range r.job.Stock {
		s := &r.job.Stock[i]
		left := s.Quantity - r.taken[i]
		if s.Product != product || left <= 0 || need <= 0 {
			continue
		}
		if by, ok := calendar.Parse(s.UseBy); ok && d.dated && d.to > by {
			r.warn("%s in stock is to be used by %s and a step needs it on %s: it is not counted on", product, s.UseBy, d.to)
			continue
		}
		used := min(left, need)
		r.taken[i] += used
		need -= used
		if !s.Donated {
			out.own += used
			continue
		}
		out.given += used
		out.value = out.value.Add(r.currency.CostFromPack(used, s.Quantity, s.Value))
		if s.Basis != "" {
			out.basis = s.Basis
		} else if s.Value.IsZero() {
			r.warn("%s is given and has no value: it counts for nothing in kind; give value and basis under stock", product)
		}
	}
	return out
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
