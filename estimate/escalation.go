package estimate

import (
	"slices"
	"strconv"

	"filmbuild/estimate/money"
)

// Escalation carries prices from one time to another by the ratio of a price
// index. Differences of index points are not percent: both values are given.
type Escalation struct {
	Series    string   `json:"series,omitempty" doc:"exact name of the index, so that others can look it up"`
	FromDate  string   `json:"from_date,omitempty" doc:"date of the prices"`
	ToDate    string   `json:"to_date,omitempty" doc:"date to which they are carried; prices of that date or later stand as they are"`
	FromIndex float64  `json:"from_index" limit:"(0,1000000]" doc:"index at the date of the prices"`
	ToIndex   float64  `json:"to_index" limit:"(0,1000000]" doc:"index at the date to which they are carried"`
	Of        []string `json:"of,omitempty" doc:"what is carried: materials, items, contract; materials and items unless given"`
}

// Defaults carries materials and items.
func (e *Escalation) Defaults() { e.Of = []string{"materials", "items"} }

// Escalated are the kinds of price that an index may carry. Wages and the value
// of volunteers are agreed, not indexed.
func Escalated() []string { return []string{"materials", "items", "contract"} }

func (e *Escalation) covers(what string) bool { return slices.Contains(e.Of, what) }

func (c *checker) escalation() {
	e := c.job.Escalation
	if e == nil {
		return
	}
	for i, word := range e.Of {
		c.oneOf(word, "/escalation/of", strconv.Itoa(i), Escalated())
	}
	from, told := c.date(e.FromDate, "/escalation", "from_date")
	to, also := c.date(e.ToDate, "/escalation", "to_date")
	if told && also && to < from {
		c.faults.Addf("/escalation/to_date", "inconsistent", "to_date %s lies before from_date %s; change them over", e.ToDate, e.FromDate)
	}
}

// escalate carries a price from the index of its date to that of the purchase.
//
//	price · to index / from index, rounded to the minor unit
//
// Source: BLS PPI guide, as planning E04.
func (r *run) escalate(price money.Amount, what, date string) money.Amount {
	if !r.escalates(what, date) {
		return price
	}
	return r.currency.CostFromPack(r.job.Escalation.ToIndex, r.job.Escalation.FromIndex, price.Decimal())
}

// escalates reports whether a price of a kind and a date is carried; dates of
// ISO 8601 compare as texts.
func (r *run) escalates(what, date string) bool {
	e := r.job.Escalation
	if e == nil || !e.covers(what) || (date != "" && e.ToDate != "" && date >= e.ToDate) {
		return false
	}
	r.assumed.add("", "prices are carried by the index "+e.Series+" of "+e.FromDate+" to "+e.ToDate, 100*(e.ToIndex/e.FromIndex-1), "%", "the job; price times the ratio of the index (BLS PPI guide)")
	return true
}
