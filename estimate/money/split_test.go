package money

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestSplitByLargestRemainder(t *testing.T) {
	for _, c := range []struct {
		code, total string
		weights     []float64
		want        []string
	}{
		{"USD", "100.00", []float64{1, 1, 1}, []string{"33.34", "33.33", "33.33"}},
		{"USD", "-100.00", []float64{1, 1, 1}, []string{"-33.34", "-33.33", "-33.33"}},
		{"USD", "0.05", []float64{0.1, 0.2, 0.7}, []string{"0.01", "0.01", "0.03"}}, // 0.5, 1 and 3.5 cents: the first of the two that lost half a cent
		{"USD", "10.00", []float64{0, 3, 0}, []string{"0.00", "10.00", "0.00"}},
		{"JPY", "100", []float64{1, 2}, []string{"33", "67"}},
		{"USD", "0.00", []float64{1, 2}, []string{"0.00", "0.00"}},
	} {
		parts, err := Split(amount(t, c.code, c.total), c.weights)
		require.NoError(t, err)
		var got []string
		for _, part := range parts {
			got = append(got, part.String())
		}
		assert.Equal(t, c.want, got)
	}
}

func TestSplitRefusals(t *testing.T) {
	for _, c := range []struct {
		weights []float64
		message string
	}{
		{nil, "an amount can only be split by weights of which one is above 0"},
		{[]float64{0, 0}, "an amount can only be split by weights of which one is above 0"},
		{[]float64{1, -2}, "weight 1 is -2; it must be finite and at least 0"},
		{[]float64{math.NaN()}, "weight 0 is NaN; it must be finite and at least 0"},
		{[]float64{math.Inf(1)}, "weight 0 is +Inf; it must be finite and at least 0"},
	} {
		_, err := Split(amount(t, "USD", "1.00"), c.weights)
		assert.EqualError(t, err, c.message)
	}
}

func TestSplitLosesNothingAndStaysWithinAUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.Int64Range(-1e12, 1e12).Draw(t, "units")
		total := currency(t, "USD").Of(decimal.New(units, -2))
		weights := rapid.SliceOfN(rapid.Float64Range(0, 1e6), 1, 30).Draw(t, "weights")
		weights = append(weights, 1)
		parts, err := Split(total, weights)
		require.NoError(t, err)
		require.Zero(t, total.Cmp(Sum(parts...)))
		var sum float64
		for _, weight := range weights {
			sum += weight
		}
		for i, part := range parts {
			require.InDelta(t, total.Float64()*weights[i]/sum, part.Float64(), 0.01+1e-15*math.Abs(total.Float64())*float64(len(weights)))
			require.False(t, part.Sign()*total.Sign() < 0)
		}
	})
}
