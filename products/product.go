package products

// Product is something that is bought: one struct for each kind, all with
// Common. Values of the catalogue are shared: read them, never change them.
type Product interface {
	// Base returns what all kinds have.
	Base() *Common
	// Check reports every fault in the product's own fields. Pointers are JSON
	// pointers below the product. The form of the id and references to other
	// products are checked by whoever holds the list.
	Check(report func(pointer, code, detail string))
}

// Common is what all kinds of product have.
type Common struct {
	ID       string   `json:"id" doc:"short name that steps use; unique"`
	Kind     string   `json:"kind" doc:"paint, thinner, liquid, media, tape, film, disc or item"`
	Name     string   `json:"name,omitempty" doc:"plain description"`
	Packs    []Pack   `json:"packs,omitempty" doc:"sizes it is sold in"`
	Supplier string   `json:"supplier,omitempty" doc:"who sells it"`
	Hazards  []string `json:"hazards,omitempty" doc:"codes of what it can do to people and metal"`
	Source   string   `json:"source,omitempty" doc:"where its values come from, with the confidence mark"`
	Note     string   `json:"note,omitempty" doc:"what else to know before it is used or its values are trusted"`

	ShelfLifeDays    *float64 `json:"shelf_life_days,omitempty" limit:"[1,10000]" doc:"days it keeps unopened, from delivery"`
	LeadTimeDays     *float64 `json:"lead_time_days,omitempty" limit:"[0,1000]" doc:"working days from order to delivery"`
	MinimumOrder     float64  `json:"minimum_order,omitempty" limit:"[0,1000000]" doc:"least quantity that is sold, in the unit of the packs"`
	HazardousFreight *bool    `json:"hazardous_freight,omitempty" doc:"dangerous goods for the carrier; follows from the hazards unless given"`
}

// Base returns the common part itself.
func (c *Common) Base() *Common { return c }

// Unit is what the product is measured in, as printed: L, kg, m or pcs; empty
// for an unknown kind.
func (c *Common) Unit() string { return packOf(c.Kind).unit }

// Pack is one size the product is sold in. Exactly one size is given, the one
// that fits the kind.
type Pack struct {
	PackL     *float64 `json:"pack_l,omitempty" limit:"[0.001,10000]" doc:"volume, of paint, thinner and other liquids; a kit counts mixed"`
	PackKg    *float64 `json:"pack_kg,omitempty" limit:"[0.001,10000]" doc:"mass, of abrasive"`
	PackM     *float64 `json:"pack_m,omitempty" limit:"[0.001,10000]" doc:"length of a roll, of tape and film"`
	PackCount *float64 `json:"pack_count,omitempty" limit:"[1,100000]" doc:"pieces, of discs and items"`
	Part      string   `json:"part,omitempty" doc:"the part of the mix it holds, base, hardener or activator, where parts are sold apart; a kit has none"`
	Price     *Price   `json:"price,omitempty" doc:"of one pack; left out where unknown"`
	Currency  string   `json:"currency,omitempty" doc:"of the price; that of the job"`
	PriceDate string   `json:"price_date,omitempty" doc:"when the price was quoted"`
	Tax       string   `json:"tax,omitempty" doc:"added to the price, included in it, or none"`
	Source    string   `json:"source,omitempty" doc:"where the price comes from"`
}

// Size is what the pack holds, in the unit of its kind; 0 when no size is given.
func (p Pack) Size() float64 {
	for _, size := range []*float64{p.PackL, p.PackKg, p.PackM, p.PackCount} {
		if size != nil {
			return *size
		}
	}
	return 0
}
