package estimate

import (
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// FundingView is the estimate in the headings of a funder's form. Tax stands with
// what it is paid on. The rows and what is excluded, less indirect cost, add up to
// the budget.
type FundingView struct {
	Form      string             `json:"form"`
	Title     string             `json:"title"`
	Date      string             `json:"date,omitempty"`
	Rows      []FundingRow       `json:"rows"`      // exactly those of the form, in its order
	Narrative []FundingNarrative `json:"narrative"` // of each heading that has money, in plain words

	DirectCash      money.Amount `json:"direct_cash"`
	IndirectBase    money.Amount `json:"indirect_base"`
	IndirectPercent float64      `json:"indirect_percent"`
	Indirect        money.Amount `json:"indirect"`

	Requested     money.Amount `json:"requested"`
	OwnCash       money.Amount `json:"own_cash"`
	InKind        money.Amount `json:"in_kind"`
	Match         money.Amount `json:"match"`         // own cash and in kind
	MatchPercent  float64      `json:"match_percent"` // of the whole project
	MatchRequired float64      `json:"match_required_percent"`
	MatchShort    money.Amount `json:"match_short"` // what is missing to it
	Total         money.Amount `json:"total"`

	CostPerM2 *money.Amount      `json:"cost_per_m2,omitempty"` // total over the area of the components
	CashPerM2 *money.Amount      `json:"cash_per_m2,omitempty"`
	Excluded  []FundingExclusion `json:"excluded"` // from the form, or from the base of indirect cost
	Notes     []string           `json:"notes"`    // what the rules behind the form ask
	Working   []quantity.Working `json:"working"`
}

// FundingRow is one row of the form.
type FundingRow struct {
	Row       string       `json:"row"` // its number or letter on the form
	ID        string       `json:"id"`
	Category  string       `json:"category"`
	Requested money.Amount `json:"requested"`
	OwnCash   money.Amount `json:"own_cash"`
	InKind    money.Amount `json:"in_kind"`
	Total     money.Amount `json:"total"`
}

// FundingNarrative is one heading in plain words. Its lines add up to its row.
type FundingNarrative struct {
	ID       string          `json:"id"`
	Category string          `json:"category"`
	Lines    []NarrativeLine `json:"lines"`
	Cash     money.Amount    `json:"cash"`
	InKind   money.Amount    `json:"in_kind"`

	booked []bookedLine
}

// NarrativeLine is one cost in plain words.
type NarrativeLine struct {
	Text    string       `json:"text"`
	Funding string       `json:"funding"` // cash or in_kind
	Amount  money.Amount `json:"amount"`
}

// FundingExclusion is what a form or a base does not hold, and why. Amount is
// absent where there is no money to tell.
type FundingExclusion struct {
	What   string        `json:"what"`
	Amount *money.Amount `json:"amount,omitempty"`
	Why    string        `json:"why"`
	From   string        `json:"from"` // form or indirect_base
}
