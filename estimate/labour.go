package estimate

import (
	"maps"
	"slices"

	"github.com/shopspring/decimal"
)

// Labour holds money per person-hour, and what a day at work loses.
type Labour struct {
	VolunteerRate decimal.Decimal `json:"volunteer_rate,omitempty" doc:"value of a volunteer hour, counted in kind"`
	PaidRate      decimal.Decimal `json:"paid_rate,omitempty" doc:"cost of a paid hour; the wage alone where fringe_percent is given"`
	ContractRate  decimal.Decimal `json:"contract_rate,omitempty" doc:"price of a contractor's hour"`
	FringePercent float64         `json:"fringe_percent,omitempty" limit:"[0,200]" doc:"of paid wages: social insurance and the like, a line of its own"`
	ContractTax   string          `json:"contract_tax,omitempty" doc:"added to the contractor's price, included in it, or none"`

	VolunteerDayRate decimal.Decimal `json:"volunteer_day_rate,omitempty" doc:"value of a volunteer day; in place of volunteer_rate"`
	VolunteerDayH    float64         `json:"volunteer_day_h,omitempty" limit:"[0,24]" doc:"hours of that day"`
	VolunteerBasis   string          `json:"volunteer_basis,omitempty" doc:"how the value of a volunteer hour was found"`
	VolunteerSource  string          `json:"volunteer_source,omitempty" doc:"who gives that value, and of when: the pay scale, the guidance, the advert"`

	Roles map[string]RoleRates `json:"roles,omitempty" doc:"rates of a role where they differ: blast, prepare, mask, spray, helper"`

	AvailabilityPercent *float64 `json:"availability_percent,omitempty" limit:"(0,100]" doc:"share of the time present that is worked; 100 unless given"`
	EfficiencyPercent   *float64 `json:"efficiency_percent,omitempty" limit:"[5,300]" doc:"what this crew does to what the rates say; 100 unless given"`
	SessionH            float64  `json:"session_h,omitempty" limit:"[0,24]" doc:"length of one session, from coming to going"`
	SessionSetupH       float64  `json:"session_setup_h,omitempty" limit:"[0,24]" doc:"of each session: to open up, dress and lay out"`
	SessionCleanupH     float64  `json:"session_cleanup_h,omitempty" limit:"[0,24]" doc:"of each session: to clear away and shut"`
	BatchH              float64  `json:"batch_h,omitempty" limit:"[0,24]" doc:"of each batch of paint: to mix it and to clean the gun, one person"`
}

// RoleRates are the rates of one role; what is left out is the rate of all.
type RoleRates struct {
	VolunteerRate *decimal.Decimal `json:"volunteer_rate,omitempty" doc:"value of a volunteer hour"`
	PaidRate      *decimal.Decimal `json:"paid_rate,omitempty" doc:"cost of a paid hour"`
	ContractRate  *decimal.Decimal `json:"contract_rate,omitempty" doc:"price of a contractor's hour"`
}

// Roles are what people do in a crew.
func Roles() []string { return []string{"blast", "prepare", "mask", "spray", "helper"} }

// VolunteerBases are the ways to value a volunteer hour: the pay for similar work
// in the organisation or the place, a national average, or a day rate that the
// funder sets.
func VolunteerBases() []string { return []string{"similar_work", "national_average", "funder_rate"} }

func (c *checker) labour() {
	l, at := &c.job.Labour, "/labour"
	for _, r := range []struct {
		name string
		rate decimal.Decimal
	}{{"volunteer_rate", l.VolunteerRate}, {"paid_rate", l.PaidRate}, {"contract_rate", l.ContractRate}, {"volunteer_day_rate", l.VolunteerDayRate}} {
		c.notNegative(r.rate, at, r.name)
	}
	for _, role := range slices.Sorted(maps.Keys(l.Roles)) {
		below := at + "/roles/" + clip(role)
		if !slices.Contains(Roles(), role) {
			c.oneOf(role, at+"/roles", clip(role), Roles())
			continue
		}
		for _, r := range []struct {
			name string
			rate *decimal.Decimal
		}{{"volunteer_rate", l.Roles[role].VolunteerRate}, {"paid_rate", l.Roles[role].PaidRate}, {"contract_rate", l.Roles[role].ContractRate}} {
			if r.rate != nil {
				c.notNegative(*r.rate, below, r.name)
			}
		}
	}
	if l.VolunteerBasis != "" {
		c.oneOf(l.VolunteerBasis, at, "volunteer_basis", VolunteerBases())
	}
	if l.ContractTax != "" {
		c.oneOf(l.ContractTax, at, "contract_tax", []string{"added", "included", "none"})
	}
	switch {
	case !l.VolunteerDayRate.IsZero() && !l.VolunteerRate.IsZero():
		c.faults.Add(at+"/volunteer_day_rate", "inconsistent", "volunteer_rate and volunteer_day_rate are both given; keep one of them")
	case !l.VolunteerDayRate.IsZero() && l.VolunteerDayH == 0:
		c.faults.Add(at+"/volunteer_day_h", "required", "volunteer_day_h is missing; say how many hours the day of volunteer_day_rate has")
	}
	if (l.SessionSetupH > 0 || l.SessionCleanupH > 0) && l.SessionH == 0 {
		c.faults.Add(at+"/session_h", "required", "session_h is missing; what is lost in each session can only be counted with the length of one")
	}
	if l.SessionH > 0 && l.SessionSetupH+l.SessionCleanupH >= l.SessionH {
		c.faults.Add(at+"/session_h", "inconsistent", "setting up and clearing away take the whole session; look at session_h, session_setup_h and session_cleanup_h")
	}
}

// hourRate is money for hours: an amount for so many of them, 1 unless a day rate
// is meant.
type hourRate struct {
	amount decimal.Decimal
	hours  float64
	node   string // the field of the labour that gives it
}

// rate is what an hour of a role costs, done by volunteers, paid people or a
// contractor.
func (l *Labour) rate(role, by string) hourRate {
	own := l.Roles[role]
	at := "roles/" + role + "/"
	switch by {
	case "paid":
		if own.PaidRate != nil {
			return hourRate{*own.PaidRate, 1, at + "paid_rate"}
		}
		return hourRate{l.PaidRate, 1, "paid_rate"}
	case "contract":
		if own.ContractRate != nil {
			return hourRate{*own.ContractRate, 1, at + "contract_rate"}
		}
		return hourRate{l.ContractRate, 1, "contract_rate"}
	}
	if own.VolunteerRate != nil {
		return hourRate{*own.VolunteerRate, 1, at + "volunteer_rate"}
	}
	if !l.VolunteerDayRate.IsZero() {
		return hourRate{l.VolunteerDayRate, l.VolunteerDayH, "volunteer_day_rate"}
	}
	return hourRate{l.VolunteerRate, 1, "volunteer_rate"}
}
