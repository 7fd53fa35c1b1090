package money

import (
	"errors"

	"github.com/shopspring/decimal"
)

// ErrNotAnAmount is what an Amount that is no amount answers when it is printed
// on the wire.
var ErrNotAnAmount = errors.New("not an amount of money: a quantity was not finite or the amount reached 10^15")

// mostIntegerDigits bounds every amount and price: below 10^15.
const mostIntegerDigits = 15

// Amount is money with the minor units of its currency. On the wire it is a
// decimal string with exactly that many places, "12.50"; for JPY "13".
//
// The zero value is no money and takes the places of whatever it is added to.
// Like a float64, an Amount can be no amount at all: after a quantity that is NaN
// or infinite, or from 10^15 up. That state spreads through sums, IsValid tells
// it, and marshalling it is an error, so that it is never taken for a price.
//
// It is a type of our own, and not decimal.Decimal, because that drops trailing
// zeros in JSON, takes numbers of any length, and is written into the API
// document as a JSON number by the generator, whatever its text form; a named
// type is declared a string there in one line.
type Amount struct {
	value      decimal.Decimal
	minorUnits int32
	invalid    bool
}

// IsValid reports whether a is an amount of money.
func (a Amount) IsValid() bool { return !a.invalid }

// Add returns a + b, to the finer of the two minor units.
func (a Amount) Add(b Amount) Amount {
	sum, ok := addWords(a.value, b.value)
	if !ok {
		sum = a.value.Add(b.value)
	}
	return bounded(sum, max(a.minorUnits, b.minorUnits), a.invalid || b.invalid)
}

// Sub returns a - b, to the finer of the two minor units.
func (a Amount) Sub(b Amount) Amount {
	return bounded(a.value.Sub(b.value), max(a.minorUnits, b.minorUnits), a.invalid || b.invalid)
}

// Sum adds amounts up. Nothing is rounded: the lines already are.
func Sum(amounts ...Amount) Amount {
	var total Amount
	for _, a := range amounts {
		total = total.Add(a)
	}
	return total
}

// Cmp is -1, 0 or 1 as a is less than, equal to or more than b. Amounts that are
// not valid compare as zero.
func (a Amount) Cmp(b Amount) int { return a.value.Cmp(b.value) }

// Sign is -1, 0 or 1 as a is below, at or above zero.
func (a Amount) Sign() int { return a.value.Sign() }

func (a Amount) IsZero() bool { return a.value.IsZero() && !a.invalid }

// Ratio returns a / whole as a share for people and charts. A share of nothing,
// or of what is not valid, is 0.
func (a Amount) Ratio(whole Amount) float64 {
	if whole.value.IsZero() || a.invalid || whole.invalid {
		return 0
	}
	return a.Float64() / whole.Float64()
}

// Float64 returns the float64 nearest to a, for statistics and charts only; it
// must not come back as money. An amount that is not valid is 0.
func (a Amount) Float64() float64 { return a.value.InexactFloat64() }

// Decimal returns the exact value. An amount that is not valid is 0.
func (a Amount) Decimal() decimal.Decimal { return a.value }

// bounded makes an amount of a value that has at most the given places.
func bounded(value decimal.Decimal, minorUnits int32, invalid bool) Amount {
	if invalid || !value.IsZero() && value.NumDigits()+int(value.Exponent()) > mostIntegerDigits {
		return Amount{minorUnits: minorUnits, invalid: true}
	}
	return Amount{value: value, minorUnits: minorUnits}
}
