package estimate

import (
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// OrderLine is what to buy of one product, in whole packs; one line to a
// delivery, where the product does not keep for all steps.
type OrderLine struct {
	Product       string             `json:"product"`
	Name          string             `json:"name"`
	Supplier      string             `json:"supplier,omitempty"`
	OrderBy       string             `json:"order_by,omitempty"` // last working day to order on
	UseFrom       string             `json:"use_from,omitempty"` // start of the first and of the last step that uses it
	UseTo         string             `json:"use_to,omitempty"`
	Steps         []string           `json:"steps"`
	Needed        float64            `json:"needed"`                   // of these steps, with the job's allowance
	FromStock     float64            `json:"from_stock,omitempty"`     // on hand
	FromDonations float64            `json:"from_donations,omitempty"` // given
	ToBuy         float64            `json:"to_buy"`
	Unit          string             `json:"unit"`
	Packs         []OrderPack        `json:"packs"`
	Bought        float64            `json:"bought"`               // of a paint whose parts are sold apart: what can be mixed of them
	Priced        bool               `json:"priced"`               // false: no price is known, and price and cost stand at 0
	Tax           string             `json:"tax,omitempty"`        // added, included or none
	Hazardous     bool               `json:"hazardous,omitempty"`  // dangerous goods to a carrier
	SameBatch     bool               `json:"same_batch,omitempty"` // ask for one batch number
	Cost          money.Amount       `json:"cost"`
	DonatedValue  money.Amount       `json:"donated_value"` // in kind, of what is given and used
	Basis         string             `json:"basis,omitempty"`
	LeftOver      float64            `json:"left_over"`
	LeftOverNote  string             `json:"left_over_note,omitempty"`
	Working       []quantity.Working `json:"working"`

	drawn  []drawn // what each entry of the stock holds for it
	gift   bool    // an entry of the stock is given
	split  string  // date that tells it from other deliveries of the product
	offers []offer // what it is bought from
	kit    bool    // its packs hold all parts of a mix
	sent   string  // the list of its supplier that it is on
	slack  int     // days that it keeps beyond its last use
}

// OrderPack is a number of packs of one size.
type OrderPack struct {
	Part  string       `json:"part,omitempty"` // base, hardener or activator, where parts are sold apart
	Pack  float64      `json:"pack"`           // its content, in the line's unit
	Count int          `json:"count"`
	Price money.Amount `json:"price"` // of one pack
}

// Purchase is what is ordered from one supplier at one date: a buyer's list.
type Purchase struct {
	Supplier         string         `json:"supplier"` // empty where no supplier is named
	Name             string         `json:"name,omitempty"`
	OrderBy          string         `json:"order_by,omitempty"`
	Lines            []PurchaseLine `json:"lines"`
	Goods            money.Amount   `json:"goods"`
	Freight          money.Amount   `json:"freight"`
	HazardousFreight money.Amount   `json:"hazardous_freight"`
	SmallOrderCharge money.Amount   `json:"small_order_charge"`
	Total            money.Amount   `json:"total"`                   // before tax that is added
	BelowMinimum     *money.Amount  `json:"below_minimum,omitempty"` // what is missing to the minimum order
}

// PurchaseLine is packs of one size of one product.
type PurchaseLine struct {
	Product   string       `json:"product"`
	Name      string       `json:"name"`
	Part      string       `json:"part,omitempty"`
	Count     int          `json:"count"`
	Pack      float64      `json:"pack"`
	Unit      string       `json:"unit"`
	Price     money.Amount `json:"price"`
	Cost      money.Amount `json:"cost"`
	Hazardous bool         `json:"hazardous,omitempty"`
	SameBatch bool         `json:"same_batch,omitempty"`
}

// RoleHours is what one role of a crew takes.
type RoleHours struct {
	Role   string       `json:"role"`   // blast, prepare, mask, spray or helper
	Labour string       `json:"labour"` // volunteer, paid or contract
	Hours  float64      `json:"hours"`  // person-hours
	Cost   money.Amount `json:"cost"`
}

// ItemEstimate is an item priced.
type ItemEstimate struct {
	ID        string       `json:"id"`
	Name      string       `json:"name,omitempty"`
	Category  string       `json:"category"`
	Supplier  string       `json:"supplier,omitempty"`
	Quantity  float64      `json:"quantity"` // 1 for a lump sum
	Unit      string       `json:"unit,omitempty"`
	UnitPrice string       `json:"unit_price,omitempty"` // as given: it may be finer than the smallest coin
	Funding   string       `json:"funding"`              // cash or in_kind
	Basis     string       `json:"basis,omitempty"`
	Tax       string       `json:"tax"` // added, included or none
	Amount    money.Amount `json:"amount"`
}
