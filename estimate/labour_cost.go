package estimate

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// labourCost prices the hours of a step, role by role.
//
//	cost = hours · rate, rounded once to each role
func (r *run) labourCost(s *StepEstimate) {
	s.LabourCost = r.currency.Zero()
	sum := quantity.Working{Quantity: "labour_cost", Unit: r.job.Currency, Formula: "sum of the roles", Terms: map[string]float64{}, Source: "identity"}
	for k := range s.HoursByRole {
		h := &s.HoursByRole[k]
		rate := r.job.Labour.rate(h.Role, h.Labour)
		h.Cost = r.currency.CostFromPack(h.Hours, rate.hours, rate.amount)
		s.LabourCost = s.LabourCost.Add(h.Cost)
		s.Working = append(s.Working, r.roleWorking(s, h, rate, len(s.HoursByRole) == 1))
		sum.Terms[h.Role] = h.Cost.Float64()
		sum.Links = append(sum.Links, ofStep(h.Role, s.ID, "labour_cost", h.Role))
		if h.Hours > 0 && rate.amount.IsZero() {
			r.unpaid(s, h)
		}
	}
	sum.Value = s.LabourCost.Float64()
	s.Working = append(s.Working, orNothing(sum))
}

// orNothing gives a sum of nothing its one term, so that it reads as 0.
func orNothing(sum quantity.Working) quantity.Working {
	if len(sum.Terms) == 0 {
		sum.Terms["nothing"] = 0
	}
	return sum
}

func (r *run) roleWorking(s *StepEstimate, h *RoleHours, rate hourRate, alone bool) quantity.Working {
	w := quantity.Working{Quantity: "labour_cost", Of: h.Role, Value: h.Cost.Float64(), Unit: r.job.Currency, Formula: r.rounded("hours·rate"),
		Terms: map[string]float64{"hours": h.Hours, "rate": rate.amount.InexactFloat64()}, Source: "identity",
		Links: []quantity.Link{quantity.From("rate", quantity.Node{Kind: "job", ID: "labour", Quantity: rate.node})}}
	if rate.hours != 1 {
		w.Formula = r.rounded("hours·rate/day")
		w.Terms["day"] = rate.hours
	}
	if alone {
		w.Links = append(w.Links, ofStep("hours", s.ID, "hours", ""))
	} else {
		w.Links = append(w.Links, ofStep("hours", s.ID, "role_hours", h.Role))
	}
	return w
}

// rounded wraps a formula of money in the rounding to the minor unit.
func (r *run) rounded(formula string) string {
	return fmt.Sprintf("round(%s, %d)", formula, r.currency.MinorUnits())
}

// unpaid tells of hours that have no rate.
func (r *run) unpaid(s *StepEstimate, h *RoleHours) {
	switch h.Labour {
	case "contract":
		r.warn("%s: contract work of %.3g h has no price: give labour.contract_rate, or the contractor's sum under items", s.ID, h.Hours)
	case "paid":
		r.warn("%s: paid work of %.3g h has no wage: give labour.paid_rate", s.ID, h.Hours)
	default:
		r.assumed.add(s.ID, "rate of a "+h.Labour+" hour, which the job does not give", 0, r.job.Currency+"/h", "assumption: give labour."+h.Labour+"_rate")
	}
}
