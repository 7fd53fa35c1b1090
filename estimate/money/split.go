package money

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"
)

// WeightError refuses weights that money cannot be split by. Index is -1 when
// the weights as a whole are at fault.
type WeightError struct {
	Index  int
	Weight float64
}

func (e *WeightError) Error() string {
	if e.Index < 0 {
		return "an amount can only be split by weights of which one is above 0"
	}
	return fmt.Sprintf("weight %d is %v; it must be finite and at least 0", e.Index, e.Weight)
}

// Split divides total in the proportion of the weights so that the parts add up
// to it to the last minor unit: every part is cut off at the minor unit, and the
// units left over go one each to the parts that lost most, earlier ones first.
//
// Errors: *WeightError; ErrNotAnAmount if total is not valid.
//
// Source: method of the largest remainder, common practice.
func Split(total Amount, weights []float64) ([]Amount, error) {
	if total.invalid {
		return nil, ErrNotAnAmount
	}
	exact := make([]decimal.Decimal, len(weights))
	var sum decimal.Decimal
	for i, weight := range weights {
		if !finite(weight) || weight < 0 {
			return nil, &WeightError{Index: i, Weight: weight}
		}
		exact[i] = shortest(weight)
		sum = sum.Add(exact[i])
	}
	if sum.IsZero() {
		return nil, &WeightError{Index: -1}
	}

	units := total.value.Abs().Shift(total.minorUnits)
	parts := make([]decimal.Decimal, len(weights))
	lost := make([]decimal.Decimal, len(weights))
	left := units
	for i, weight := range exact {
		parts[i], lost[i] = units.Mul(weight).QuoRem(sum, 0)
		left = left.Sub(parts[i])
	}
	order := make([]int, len(weights))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return lost[j].Cmp(lost[i]) })
	for _, i := range order[:left.IntPart()] {
		parts[i] = parts[i].Add(one)
	}

	amounts := make([]Amount, len(weights))
	for i, part := range parts {
		if total.Sign() < 0 {
			part = part.Neg()
		}
		amounts[i] = Amount{value: part.Shift(-total.minorUnits), minorUnits: total.minorUnits}
	}
	return amounts, nil
}
