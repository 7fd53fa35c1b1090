package money

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// mostDecimals is the most decimal places read: a price per litre or metre may
// be finer than the currency's minor unit.
const mostDecimals = 8

// TextError refuses text that is not an amount or a price.
type TextError struct {
	Text   string
	Reason string
}

func (e *TextError) Error() string { return fmt.Sprintf("%.40q %s", e.Text, e.Reason) }

// ParsePrice reads a price or a rate as written on the wire: an optional minus
// sign, 1 to 15 digits, and a point with 1 to 8 digits if there are any. Spaces,
// commas, exponents and currency signs are refused.
//
// Error: *TextError.
func ParsePrice(text string) (decimal.Decimal, error) {
	integer, decimals, pointed := strings.Cut(strings.TrimPrefix(text, "-"), ".")
	switch {
	case !allDigits(integer) || (pointed && !allDigits(decimals)):
		return decimal.Decimal{}, &TextError{Text: text, Reason: `is not an amount of money; write digits and a point only, as "12.50": no currency sign, no commas`}
	case len(integer) > mostIntegerDigits:
		return decimal.Decimal{}, &TextError{Text: text, Reason: "has more than 15 digits before the point"}
	case len(decimals) > mostDecimals:
		return decimal.Decimal{}, &TextError{Text: text, Reason: "has more than 8 decimal places"}
	}
	value, err := decimal.NewFromString(text)
	if err != nil {
		return decimal.Decimal{}, &TextError{Text: text, Reason: "is not an amount of money"}
	}
	return value, nil
}

// Parse reads an amount of the currency. More places than the currency has are
// refused unless they are zeros: "12.505" is no amount of USD, "12.500" is.
//
// Error: *TextError.
func (c Currency) Parse(text string) (Amount, error) {
	value, err := ParsePrice(text)
	if err != nil {
		return Amount{}, err
	}
	amount := c.Of(value)
	if !amount.value.Equal(value) {
		return Amount{}, &TextError{Text: text, Reason: fmt.Sprintf("has more than the %d decimal places of %s", c.minorUnits, c.code)}
	}
	return amount, nil
}

// String prints a with exactly its minor units: "12.50", or "not an amount".
func (a Amount) String() string {
	if a.invalid {
		return "not an amount"
	}
	return a.value.StringFixed(a.minorUnits)
}

// MarshalText makes JSON write a as a string. It fails with ErrNotAnAmount if a
// is not valid.
func (a Amount) MarshalText() ([]byte, error) {
	if a.invalid {
		return nil, ErrNotAnAmount
	}
	return []byte(a.String()), nil
}

// UnmarshalText reads what MarshalText wrote. The places written are taken for
// the minor units, since the currency stands elsewhere in the document.
//
// Error: *TextError.
func (a *Amount) UnmarshalText(text []byte) error {
	value, err := ParsePrice(string(text))
	if err != nil {
		return err
	}
	places := int32(0)
	if point := strings.IndexByte(string(text), '.'); point >= 0 {
		places = int32(len(text) - point - 1)
	}
	*a = Amount{value: value, minorUnits: places}
	return nil
}

func allDigits(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }
