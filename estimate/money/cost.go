package money

import (
	"math"

	"github.com/shopspring/decimal"
)

var one = decimal.New(1, 0)

// furthestExponent bounds the powers of ten that enter a calculation: float64
// needs 324 and a price 8. Beyond about 2^31 decimal panics.
const furthestExponent = 400

// Of returns a decimal as an amount of the currency, rounded half away from zero.
// A decimal with an exponent beyond ±400 gives an amount that is not valid.
func (c Currency) Of(value decimal.Decimal) Amount {
	if !plain(value) {
		return Amount{minorUnits: c.minorUnits, invalid: true}
	}
	if w, short := wordsOf(value); short {
		if amount, ok := roundWords(w, words{coefficient: 1}, words{coefficient: 1}, c.minorUnits); ok {
			return amount
		}
	}
	return round(value, one, c.minorUnits)
}

// Cost turns a quantity into money:
//
//	cost = quantity · unitPrice, rounded once
//
// quantity is in the unit that the price is for. If it is NaN or infinite the
// result is not valid.
//
// Source: identity; rounding half away from zero as a spreadsheet's ROUND.
func (c Currency) Cost(quantity float64, unitPrice decimal.Decimal) Amount {
	return c.CostFromPack(quantity, 1, unitPrice)
}

// CostFromPack is the cost of the part of a pack that is used up:
//
//	cost = quantity · packPrice / pack, rounded once
//
// quantity and pack are in the same unit. A unit price would have to be rounded
// before it could be multiplied, and ties would then fall on the wrong side. The
// result is not valid unless quantity is finite and pack is finite and above 0.
//
// Source: identity.
func (c Currency) CostFromPack(quantity, pack float64, packPrice decimal.Decimal) Amount {
	if !finite(quantity) || !finite(pack) || pack <= 0 || !plain(packPrice) {
		return Amount{minorUnits: c.minorUnits, invalid: true}
	}
	if price, short := wordsOf(packPrice); short {
		if amount, ok := roundWords(shortestWords(quantity), price, shortestWords(pack), c.minorUnits); ok {
			return amount
		}
	}
	return round(shortest(quantity).Mul(packPrice), shortest(pack), c.minorUnits)
}

// MulPercent returns the given percentage of a, such as a tax or a contingency,
// rounded once to a's minor units. If percent is NaN or infinite the result is
// not valid.
func (a Amount) MulPercent(percent float64) Amount {
	if a.invalid || !finite(percent) {
		return Amount{minorUnits: a.minorUnits, invalid: true}
	}
	return round(a.value.Mul(shortest(percent)), decimal.New(100, 0), a.minorUnits)
}

// round is the rule by which money is rounded: numerator / denominator to the
// given places, half away from zero, in exact decimal arithmetic. denominator is
// above 0.
//
// A value that lies below a half by no more than 1e-14 of itself, and a millionth
// of a coin, is taken for the half: quantities are float64, and 11.5 h / 7 at 23.17
// is 38.065 and not the 38.06499999999999908 that its float64 gives. The formulas
// that people read beside the amounts round by the same rule. roundWords is the
// quick way to the same amount.
func round(numerator, denominator decimal.Decimal, places int32) Amount {
	value := numerator.DivRound(denominator, places+guardPlaces)
	coins := value.Abs().Shift(places)
	below := half.Sub(coins.Sub(coins.Floor()))
	if below.IsPositive() && below.Cmp(coins.Shift(-14)) <= 0 && below.Cmp(millionth) <= 0 {
		coins = coins.Ceil()
	} else {
		coins = coins.Round(0)
	}
	if value.IsNegative() {
		coins = coins.Neg()
	}
	return bounded(coins.Shift(-places), places, false)
}

// guardPlaces are the places beyond the minor unit in which a quotient is looked
// at: its rest counts only for what lies on a half to all of them.
const guardPlaces = 18

var (
	half      = decimal.New(5, -1)
	millionth = decimal.New(1, -6)
)

// shortest returns the decimal of the shortest text that reads back as value,
// which must be finite: decimal panics otherwise.
func shortest(value float64) decimal.Decimal { return decimal.NewFromFloat(value) }

func plain(value decimal.Decimal) bool {
	return value.Exponent() >= -furthestExponent && value.Exponent() <= furthestExponent
}

func finite(value float64) bool { return !math.IsNaN(value) && !math.IsInf(value, 0) }
