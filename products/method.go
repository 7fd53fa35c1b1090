package products

// Method is a way to apply paint.
type Method struct {
	ID                        string `json:"id"`
	Name                      string `json:"name"`
	TransferEfficiencyPercent Value  `json:"transfer_efficiency_percent"`                       // share of the solids used that lands
	SmallParts                *Value `json:"small_parts_transfer_efficiency_percent,omitempty"` // the same on parts smaller than the fan; nil where none is published
	RateM2H                   Value  `json:"rate_m2_h"`                                         // area one person coats in an hour, one coat
	Note                      string `json:"note,omitempty"`
}

// Operation is other work done by hand, with the rate of one person.
type Operation struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Rate Value  `json:"rate"` // m²/h, or m/h of tape for mask
}
