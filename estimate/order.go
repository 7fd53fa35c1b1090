package estimate

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"filmbuild/products"
)

// order turns needs into whole packs: the cheapest cover of each. Prices of the
// catalogue are in its own currency; in a job of another they are left out, and
// a warning says so.
func (r *run) order(catalogueCurrency string) {
	allowance := 1 + r.job.AllowancePercent/100
	r.assumed.add("", "allowance on every need in the order", r.job.AllowancePercent, "%", "the job")
	r.estimate.Order, r.estimate.Budget.Unpriced = make([]OrderLine, 0, len(r.needs.lines)), []string{}
	for _, n := range r.needs.lines {
		base := n.product.Base()
		line := OrderLine{Product: base.ID, Name: base.Name, Supplier: base.Supplier, Needed: n.quantity * allowance, Unit: base.Unit(), Packs: []OrderPack{}, Cost: r.currency.Zero()}
		offers := r.offers(base, catalogueCurrency)
		line.Priced = slices.ContainsFunc(offers, func(o products.PackOffer) bool { return o.Price != nil })
		if !line.Priced {
			r.estimate.Budget.Unpriced = append(r.estimate.Budget.Unpriced, base.ID)
		}
		if len(offers) == 0 {
			r.warn("%s is sold in no packs known here: its line in the order has no packs and no cost", base.ID)
		} else if bought, err := products.Cover(line.Needed, offers); err != nil {
			r.faults.Addf("", "too_many", "no order of %s can be worked out: %s", base.ID, err)
		} else {
			r.fill(&line, bought)
		}
		r.estimate.Order = append(r.estimate.Order, line)
	}
}

func (r *run) warn(format string, args ...any) {
	r.estimate.Warnings = append(r.estimate.Warnings, fmt.Sprintf(format, args...))
}

func (r *run) offers(base *products.Common, catalogueCurrency string) []products.PackOffer {
	foreign := catalogueCurrency != r.job.Currency && !r.ownProduct(base.ID)
	offers := base.Offers()
	priced := false
	for i := range offers {
		if foreign {
			offers[i].Price = nil
		}
		priced = priced || offers[i].Price != nil
	}
	switch {
	case foreign:
		r.warn("%s has a price in %s only and the job is in %s: its cost is not in any figure; give it a price under products", base.ID, catalogueCurrency, r.job.Currency)
	case !priced && len(offers) > 0:
		r.warn("%s has no price: its cost is not in any figure", base.ID)
	case !r.ownProduct(base.ID):
		r.assumed.add("", "prices of the catalogue are invented, typical figures: put your own quotes under products", 0, "", "invented, for the demonstration")
	}
	return offers
}

func (r *run) ownProduct(id string) bool {
	for _, p := range r.job.Products {
		if p != nil && p.Base().ID == id {
			return true
		}
	}
	return false
}

func (r *run) fill(line *OrderLine, p products.Purchase) {
	for _, pack := range p.Packs {
		price := r.currency.Zero()
		if pack.Price != nil {
			price = r.currency.Of(*pack.Price)
		}
		line.Packs = append(line.Packs, OrderPack{Pack: pack.Pack, Count: pack.Count, Price: price})
		line.Cost = line.Cost.Add(r.currency.Cost(float64(pack.Count), price.Decimal()))
	}
	line.Bought, line.LeftOver = p.Bought, p.LeftOver
}

// costs gives each step its money: the material it consumes at the price of the
// packs in the order, and its hours.
func (r *run) costs() {
	lines := map[string]*OrderLine{}
	for i := range r.estimate.Order {
		lines[r.estimate.Order[i].Product] = &r.estimate.Order[i]
	}
	rates := map[string]decimal.Decimal{"volunteer": r.job.Labour.VolunteerRate, "paid": r.job.Labour.PaidRate, "contract": r.job.Labour.ContractRate}
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		s.MaterialCost = r.currency.Zero()
		for k := range s.Materials {
			m := &s.Materials[k]
			m.Cost = r.currency.Zero()
			if line := lines[m.Product]; line.Bought > 0 {
				m.Cost = r.currency.CostFromPack(m.Quantity, line.Bought, line.Cost.Decimal())
			}
			s.MaterialCost = s.MaterialCost.Add(m.Cost)
		}
		s.LabourCost = r.currency.Cost(s.Hours, rates[s.Labour])
		s.Cost = s.MaterialCost.Add(s.LabourCost)
		switch {
		case s.Hours == 0 || !rates[s.Labour].IsZero():
		case s.Labour == "contract":
			r.warn("%s: contract work of %.3g h has no price: give labour.contract_rate, or the contractor's sum under items", s.ID, s.Hours)
		case s.Labour == "paid":
			r.warn("%s: paid work of %.3g h has no wage: give labour.paid_rate", s.ID, s.Hours)
		default:
			r.assumed.add(s.ID, "rate of a "+s.Labour+" hour, which the job does not give", 0, r.job.Currency+"/h", "assumption: give labour."+s.Labour+"_rate")
		}
	}
}
