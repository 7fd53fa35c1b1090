package estimate

import (
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// Budget is the money asked for. It is built from the order, so that it holds
// what will be paid, not what is used up.
type Budget struct {
	Cash              money.Amount       `json:"cash"`
	InKind            money.Amount       `json:"in_kind"`
	Contingency       money.Amount       `json:"contingency"`
	ManagementReserve money.Amount       `json:"management_reserve"`
	Tax               money.Amount       `json:"tax"`          // that comes on top of prices
	TaxIncluded       money.Amount       `json:"tax_included"` // within cash: held by prices that include it
	Total             money.Amount       `json:"total"`
	CashNeeded        money.Amount       `json:"cash_needed"`        // cash, contingency, management reserve and tax
	MaterialsOrdered  money.Amount       `json:"materials_ordered"`  // the order, within cash
	MaterialsConsumed money.Amount       `json:"materials_consumed"` // what the steps use up, gifts at their value
	Categories        []Category         `json:"categories"`
	Lines             []BudgetLine       `json:"lines"`
	Unpriced          []string           `json:"unpriced"` // products whose cost is in no figure
	Working           []quantity.Working `json:"working"`
}

// Category is one heading of the budget. The headings add up to the total.
type Category struct {
	Category string       `json:"category"`
	Cash     money.Amount `json:"cash"`
	InKind   money.Amount `json:"in_kind"`
	Total    money.Amount `json:"total"`
}

// BudgetLine is one line of the budget: cash or in kind, and of one category.
// The lines add up to the total.
type BudgetLine struct {
	ID       string       `json:"id"` // what it is for: order/epoxy-primer, labour/prime/spray, item/hire
	Text     string       `json:"text"`
	Category string       `json:"category"`
	Funding  string       `json:"funding"` // cash or in_kind
	Supplier string       `json:"supplier,omitempty"`
	Basis    string       `json:"basis,omitempty"` // of the value of what is in kind
	Amount   money.Amount `json:"amount"`
	Tax      money.Amount `json:"tax"` // that comes on top, within the line of tax; its share where tax is rounded on more than this line

	hours    *RoleHours // of a line of labour
	ordered  *OrderLine // of a line of materials
	step     string
	held     money.Amount // tax that the amount holds
	invoiced bool         // contract work

	taxing  string // added, included or none
	node    quantity.Node
	invoice string // what tells the invoice it is on
}
