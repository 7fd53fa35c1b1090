package money

import (
	"math"
	"math/bits"
	"strconv"

	"github.com/shopspring/decimal"
)

// wordDigits is how many digits every int64 can hold.
const wordDigits = 18

// words is a decimal whose coefficient fits a machine word: its value is
// ±coefficient · 10^exponent.
type words struct {
	negative    bool
	coefficient uint64
	exponent    int
}

// wordsOf takes a decimal apart; ok is false where it is too long.
func wordsOf(value decimal.Decimal) (w words, ok bool) {
	if value.NumDigits() > wordDigits {
		return words{}, false
	}
	c := value.CoefficientInt64()
	if c < 0 {
		return words{true, uint64(-c), int(value.Exponent())}, true
	}
	return words{false, uint64(c), int(value.Exponent())}, true
}

// shortestWords is the same number as shortest, which is finite.
func shortestWords(value float64) words {
	var room [32]byte
	w := words{negative: value < 0}
	text := strconv.AppendFloat(room[:0], math.Abs(value), 'e', -1, 64) // d.ddde±dd
	for k, c := range text {
		if c == 'e' {
			exponent, _ := strconv.Atoi(string(text[k+1:])) // written by AppendFloat
			w.exponent += exponent
			break
		}
		if c == '.' {
			continue
		}
		w.coefficient = 10*w.coefficient + uint64(c-'0')
		if k > 1 {
			w.exponent--
		}
	}
	return w
}

// roundWords is round for a·b / divisor where all of it fits machine words, in
// the same exact arithmetic. ok is false where it does not, or where the quotient
// lies so little below a half of the last coin that round has to look closer.
func roundWords(a, b, divisor words, places int32) (amount Amount, ok bool) {
	high, low := bits.Mul64(a.coefficient, b.coefficient)
	by := divisor.coefficient
	exponent := a.exponent + b.exponent - divisor.exponent + int(places)
	for ; exponent > 0; exponent-- {
		over, next := bits.Mul64(low, 10)
		lost, upper := bits.Mul64(high, 10)
		var carry uint64
		if high, carry = bits.Add64(upper, over, 0); lost+carry != 0 {
			return Amount{}, false
		}
		low = next
	}
	for ; exponent < 0; exponent++ {
		if by > math.MaxUint64/10 {
			return Amount{}, false
		}
		by *= 10
	}
	if high >= by {
		return Amount{}, false // also where the divisor is 0
	}
	coins, rest := bits.Div64(high, low, by)
	if toNext := by - rest; rest >= toNext {
		coins++
	} else if toNext-rest <= by/nearHalf {
		return Amount{}, false
	}
	if coins > math.MaxInt64 {
		return Amount{}, false
	}
	value := int64(coins)
	if a.negative != b.negative {
		value = -value
	}
	return bounded(decimal.New(value, -places), places, false), true
}

// nearHalf bounds where round looks closer: within one part of twice so many of a
// coin below the half, two millionths. round takes a millionth at most for it.
const nearHalf = 250_000

// addWords is a + b where both fit machine words.
func addWords(a, b decimal.Decimal) (sum decimal.Decimal, ok bool) {
	switch {
	case b.IsZero() && b.Exponent() >= a.Exponent():
		return a, true
	case a.IsZero() && a.Exponent() >= b.Exponent():
		return b, true
	case a.Exponent() != b.Exponent() || a.NumDigits() > wordDigits || b.NumDigits() > wordDigits:
		return decimal.Decimal{}, false
	}
	return decimal.New(a.CoefficientInt64()+b.CoefficientInt64(), a.Exponent()), true
}
