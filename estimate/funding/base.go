package funding

import "filmbuild/estimate/money"

// Cost is one direct cost that is paid in cash.
type Cost struct {
	Class    string
	Amount   money.Amount
	Rented   bool
	Subaward string // what tells the subaward it belongs to; empty for none
}

// Left is an amount that the base does not hold, and why.
type Left struct {
	Amount money.Amount
	Why    string
}

// Base returns the modified total direct cost, on which indirect cost is worked
// out: wages, fringe, materials, supplies, services, travel and the first part of
// each subaward; not equipment, construction and rent.
//
// Source: 2 CFR 200.1, modified total direct cost (planning G10); construction as
// capital expenditure.
func Base(currency money.Currency, costs []Cost, rules Rules) (money.Amount, []Left) {
	base, limit := currency.Zero(), currency.Of(rules.SubawardCap)
	left := []Left{}
	leave := func(amount money.Amount, why string) {
		if amount.IsZero() {
			return
		}
		for i := range left {
			if left[i].Why == why {
				left[i].Amount = left[i].Amount.Add(amount)
				return
			}
		}
		left = append(left, Left{amount, why})
	}
	counted := map[string]money.Amount{}
	for _, c := range costs {
		switch {
		case c.Class == "equipment":
			leave(c.Amount, "equipment is not in the base of indirect cost")
		case c.Class == "construction":
			leave(c.Amount, "construction is not in the base of indirect cost")
		case c.Rented:
			leave(c.Amount, "rent and hire are not in the base of indirect cost")
		case c.Subaward != "":
			within := c.Amount
			if room := limit.Sub(counted[c.Subaward]); within.Cmp(room) > 0 {
				within = room
			}
			counted[c.Subaward] = counted[c.Subaward].Add(within)
			base = base.Add(within)
			leave(c.Amount.Sub(within), "a subaward is in the base to "+rules.SubawardCap.StringFixed(0)+" only")
		default:
			base = base.Add(c.Amount)
		}
	}
	return base, left
}
