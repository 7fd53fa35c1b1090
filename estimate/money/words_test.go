package money

import (
	"math"
	"strconv"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The quick way to an amount gives what exact decimal arithmetic gives, or leaves
// it to that: over quantities of every size, halves and what lies just beside
// them (the slow way is the check: a general library's decimals).
func TestRoundWordsIsRound(t *testing.T) {
	quick := 0
	check := func(t *rapid.T) {
		quantity := rapid.OneOf(
			rapid.Float64Range(-1e9, 1e9), rapid.Float64(),
			rapid.Map(rapid.Int64Range(-1_000_000, 1_000_000), func(n int64) float64 { return float64(n) / 200 }),
			rapid.Map(rapid.Int64Range(-1_000_000, 1_000_000), func(n int64) float64 { return math.Nextafter(float64(n)/200, 0) }),
		).Draw(t, "quantity")
		pack := rapid.SampledFrom([]float64{1, 7, 8, 100, 0.473, 3.785, 18.925, 1e-9, 12.300000000000001, 1e12}).Draw(t, "pack")
		price := decimal.New(rapid.Int64Range(-1_000_000_000, 1_000_000_000).Draw(t, "coefficient"), rapid.Int32Range(-8, 6).Draw(t, "exponent"))
		places := rapid.Int32Range(0, mostMinorUnits).Draw(t, "places")
		if !finite(quantity) {
			return
		}
		words, short := wordsOf(price)
		require.True(t, short)
		got, ok := roundWords(shortestWords(quantity), words, shortestWords(pack), places)
		if !ok {
			return
		}
		quick++
		want := round(shortest(quantity).Mul(price), shortest(pack), places)
		require.Equal(t, want.String(), got.String())
		require.Equal(t, want.IsValid(), got.IsValid())
		require.Equal(t, want.value.Exponent(), got.value.Exponent())
	}
	for range 50 { // rapid tries a hundred each time
		rapid.Check(t, check)
	}
	assert.Greater(t, quick, 1500, "most take the quick way")
}

// A number taken apart is the number (identity; read back by strconv).
func TestShortestWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64().Draw(t, "value")
		if !finite(value) {
			return
		}
		w := shortestWords(value)
		text := strconv.FormatUint(w.coefficient, 10) + "e" + strconv.Itoa(w.exponent)
		if w.negative {
			text = "-" + text
		}
		back, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		require.True(t, back == value, "%v became %s", value, text)
		require.True(t, shortest(value).Equal(decimal.RequireFromString(text)))
	})
}

// Sums by words are sums of decimals, up to the bound of amounts.
func TestAddIsTheDecimalSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) Amount {
			places := rapid.Int32Range(0, 4).Draw(t, name+" places")
			units := rapid.Int64Range(-999_999_999_999_999_999, 999_999_999_999_999_999).Draw(t, name)
			if rapid.Bool().Draw(t, name+" is nothing") {
				units = 0
			}
			return bounded(decimal.New(units, -places), places, false)
		}
		a, b := draw("a"), draw("b")
		sum, exact := a.Add(b), a.value.Add(b.value)
		if a.invalid || b.invalid || exact.Abs().Cmp(decimal.New(1, 15)) >= 0 {
			require.False(t, sum.IsValid())
			return
		}
		require.True(t, sum.value.Equal(exact))
		require.Equal(t, exact.StringFixed(sum.minorUnits), sum.String())
	})
}
