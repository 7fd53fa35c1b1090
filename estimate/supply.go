package estimate

import "github.com/shopspring/decimal"

// Supplier is somebody who sells products, with what an order costs beside the
// goods and how long it takes.
type Supplier struct {
	ID               string          `json:"id" doc:"short name that products use"`
	Name             string          `json:"name,omitempty" doc:"what people call it"`
	Note             string          `json:"note,omitempty" doc:"free text; not used in any figure"`
	Products         []string        `json:"products,omitempty" doc:"ids of products bought here that do not name a supplier themselves"`
	Freight          decimal.Decimal `json:"freight,omitempty" doc:"carriage of one order"`
	FreightFreeFrom  decimal.Decimal `json:"freight_free_from,omitempty" doc:"worth of goods from which that carriage is free"`
	HazardousFreight decimal.Decimal `json:"hazardous_freight,omitempty" doc:"added to one order that holds dangerous goods"`
	MinimumOrder     decimal.Decimal `json:"minimum_order,omitempty" doc:"least worth of goods in one order"`
	SmallOrderCharge decimal.Decimal `json:"small_order_charge,omitempty" doc:"added to one order below the minimum"`
	LeadTimeDays     int             `json:"lead_time_days,omitempty" limit:"[0,1000]" doc:"working days from order to delivery; a product's own comes first"`
	CombineDays      int             `json:"combine_days,omitempty" limit:"[0,1000]" doc:"orders that fall due within so many days of each other go out as one, as far as the goods keep"`
}

// Defaults combines the orders of a fortnight.
func (s *Supplier) Defaults() { s.CombineDays = combineDays }

// combineDays is how far apart orders may fall due and still go out as one, for a
// supplier that says nothing (assumption).
const combineDays = 14

// Stock is a quantity of a product that need not be bought: it is on hand, or
// somebody gives it.
type Stock struct {
	Product  string          `json:"product" doc:"id of the product"`
	Note     string          `json:"note,omitempty" doc:"free text; not used in any figure"`
	Quantity float64         `json:"quantity" limit:"(0,1000000]" doc:"how much there is, in the unit the product is sold in"`
	Donated  bool            `json:"donated,omitempty" doc:"a gift: what is used of it counts in kind at its value"`
	Value    decimal.Decimal `json:"value,omitempty" doc:"fair value of all of it, for a gift"`
	Basis    string          `json:"basis,omitempty" doc:"how that value was found, for the funder"`
	UseBy    string          `json:"use_by,omitempty" doc:"last date it may be used; not taken for a step that starts later"`
}

// Workdays say on which days people work and suppliers deliver.
type Workdays struct {
	Free     []string `json:"free,omitempty" doc:"free days of the week; saturday and sunday unless given"`
	Holidays []string `json:"holidays,omitempty" doc:"dates without work"`
}
