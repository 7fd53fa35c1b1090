package products

import (
	"strconv"

	"github.com/shopspring/decimal"
)

// Price is money for one pack, in the currency of whoever holds the product. It
// is a type of its own because decimal drops trailing zeros in JSON: a price is
// written with at least two places, "44.00".
type Price struct{ decimal.Decimal }

// MarshalJSON writes the price as a decimal text.
func (p Price) MarshalJSON() ([]byte, error) { return []byte(strconv.Quote(amount(p.Decimal))), nil }

// Taxes are how a price stands to tax: it comes on top, it is in the price, or
// there is none.
func Taxes() []string { return []string{"added", "included", "none"} }

// value is the bare decimal; nil where there is no price.
func (p *Price) value() *decimal.Decimal {
	if p == nil {
		return nil
	}
	return &p.Decimal
}
