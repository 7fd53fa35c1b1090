package money

import (
	"encoding/json"
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func currency(t require.TestingT, code string) Currency {
	c, err := CurrencyOf(code)
	require.NoError(t, err)
	return c
}

func price(t require.TestingT, text string) decimal.Decimal {
	value, err := ParsePrice(text)
	require.NoError(t, err)
	return value
}

func amount(t require.TestingT, code, text string) Amount {
	a, err := currency(t, code).Parse(text)
	require.NoError(t, err)
	return a
}

func TestCostRoundsOnce(t *testing.T) {
	usd := currency(t, "USD")
	// A third of a pack at 100.00, three times: identities in exact fractions.
	assert.Equal(t, "33.33", usd.CostFromPack(1, 3, price(t, "100.00")).String())
	assert.Equal(t, "100.00", usd.CostFromPack(3, 3, price(t, "100.00")).String())
	// 1.5 · 0.01 / 3 is 0.005, a tie, which a unit price of 0.00333… would miss.
	assert.Equal(t, "0.01", usd.CostFromPack(1.5, 3, price(t, "0.01")).String())
	assert.Equal(t, "-0.01", usd.CostFromPack(-1.5, 3, price(t, "0.01")).String())
	// 11.5 / 7 · 23.17 is 38.065; the float64 of 11.5 / 7 alone would make it less.
	assert.Equal(t, "38.07", usd.Cost(11.5/7, price(t, "23.17")).String())
	assert.Equal(t, "-38.07", usd.Cost(-11.5/7, price(t, "23.17")).String())
	assert.Equal(t, "38.06", usd.Cost(38.0649999999, price(t, "1")).String(), "no half, by more than the last bits")
	assert.Equal(t, "7.73", usd.CostFromPack(10.299999999999999, 20, price(t, "15.00")).String())
	assert.Equal(t, "999999999999.12", usd.Cost(999999999999.1249, price(t, "1")).String(), "no half")
	assert.Equal(t, "89.60", usd.CostFromPack(3.2, 5, price(t, "140.00")).String())
	assert.Equal(t, "13", currency(t, "JPY").Cost(2.5, price(t, "5")).String())
	assert.Equal(t, "1.235", currency(t, "KWD").Cost(1, price(t, "1.2345")).String())
}

// The oracle is big.Rat: the distance to the exact product is at most half a
// minor unit and the millionth of one that is taken for a half, and a tie lies away
// from zero.
func TestCostIsTheNearestAmount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		quantity := float64(rapid.Int64Range(-1e9, 1e9).Draw(t, "thousandths")) / 1000
		pack := float64(rapid.Int64Range(1, 1e6).Draw(t, "pack")) / 8
		cents := rapid.Int64Range(0, 1e7).Draw(t, "cents")
		got := currency(t, "USD").CostFromPack(quantity, pack, decimal.New(cents, -2))

		exact, ok := new(big.Rat).SetString(decimal.NewFromFloat(quantity).String())
		require.True(t, ok)
		exact.Mul(exact, big.NewRat(cents, 100)).Quo(exact, new(big.Rat).SetFloat64(pack))
		rounded, ok := new(big.Rat).SetString(got.String())
		require.True(t, ok)
		distance := new(big.Rat).Sub(rounded, exact)
		half := big.NewRat(1, 200)
		compared := new(big.Rat).Abs(distance).Cmp(half)
		require.LessOrEqual(t, new(big.Rat).Abs(distance).Cmp(new(big.Rat).Add(half, big.NewRat(1, 100_000_000))), 0)
		if compared >= 0 {
			require.Equal(t, exact.Sign(), distance.Sign(), "a tie goes away from zero")
		}
	})
}

func TestAQuantityThatIsNoNumberIsNoAmount(t *testing.T) {
	usd := currency(t, "USD")
	invalid := []Amount{
		usd.Cost(math.NaN(), one), usd.Cost(math.Inf(1), one), usd.Cost(1e300, one), usd.Cost(1e15, one),
		usd.CostFromPack(1, 0, one), usd.CostFromPack(1, -1, one), usd.CostFromPack(1, math.NaN(), one),
		usd.Of(decimal.New(1, math.MaxInt32)), usd.Of(decimal.New(1, math.MinInt32)), usd.Cost(1, decimal.New(1, math.MaxInt32)),
		amount(t, "USD", "1").MulPercent(math.NaN()), amount(t, "USD", "999999999999999.99").Add(amount(t, "USD", "0.01")),
	}
	for _, a := range invalid {
		assert.False(t, a.IsValid())
		assert.False(t, a.IsZero())
		assert.Equal(t, "not an amount", a.String())
		sum := Sum(usd.Zero(), a)
		assert.False(t, sum.IsValid())
		assert.False(t, usd.Zero().Sub(sum).MulPercent(10).IsValid())
		assert.Zero(t, sum.Ratio(usd.Of(one)))
		_, err := json.Marshal(sum)
		require.ErrorIs(t, err, ErrNotAnAmount)
		_, err = Split(sum, []float64{1})
		require.ErrorIs(t, err, ErrNotAnAmount)
	}
	assert.Equal(t, "0.00", usd.Cost(5e-324, one).String())
	assert.Equal(t, "999999999999999.00", usd.Cost(999999999999999, one).String())
}

func TestArithmetic(t *testing.T) {
	a, b := amount(t, "USD", "12.50"), amount(t, "USD", "0.75")
	assert.Equal(t, "13.25", a.Add(b).String())
	assert.Equal(t, "11.75", a.Sub(b).String())
	assert.Equal(t, "-11.75", b.Sub(a).String())
	assert.Equal(t, 1, a.Cmp(b))
	assert.Equal(t, -1, b.Sub(a).Sign())
	assert.InDelta(t, 0.06, b.Ratio(a), 1e-15)
	assert.Zero(t, b.Ratio(a.Sub(a)))
	assert.True(t, a.Sub(a).IsZero())
	assert.Equal(t, 12.5, a.Float64())
	assert.True(t, a.Decimal().Equal(decimal.New(125, -1)))
	assert.Equal(t, "1.25", a.MulPercent(10).String())
	assert.Equal(t, "0.04", a.MulPercent(0.3).String(), "0.0375")
}

func TestZeroValueIsUsable(t *testing.T) {
	var none Amount
	assert.True(t, none.IsZero() && none.IsValid())
	assert.Equal(t, "0", none.String())
	assert.Equal(t, "12.50", none.Add(amount(t, "USD", "12.50")).String())
	assert.Equal(t, "0", Sum().String())
	assert.Equal(t, "0.00", currency(t, "USD").Zero().String())
	assert.Equal(t, "3", Currency{}.Cost(2.5, one).String())
}

func TestWireForm(t *testing.T) {
	for _, c := range []struct{ code, text, want string }{
		{"USD", "12.5", `"12.50"`}, {"JPY", "13", `"13"`}, {"KWD", "1.2", `"1.200"`}, {"CLF", "1", `"1.0000"`}, {"USD", "-0.05", `"-0.05"`}, {"USD", "-0", `"0.00"`},
	} {
		written, err := json.Marshal(amount(t, c.code, c.text))
		require.NoError(t, err)
		assert.JSONEq(t, c.want, string(written))
		var back Amount
		require.NoError(t, json.Unmarshal(written, &back))
		again, err := json.Marshal(back)
		require.NoError(t, err)
		assert.Equal(t, string(written), string(again))
	}
	var a Amount
	assert.Error(t, json.Unmarshal([]byte("12.5"), &a), "a JSON number is not money")
	assert.Error(t, json.Unmarshal([]byte(`"1e3"`), &a))
}

func TestParseRefusals(t *testing.T) {
	usd := currency(t, "USD")
	const shape = ` is not an amount of money; write digits and a point only, as "12.50": no currency sign, no commas`
	for _, c := range []struct{ text, message string }{
		{"", `""` + shape}, {"-", `"-"` + shape}, {".5", `".5"` + shape}, {"5.", `"5."` + shape}, {"+5", `"+5"` + shape}, {"--5", `"--5"` + shape}, {" 5", `" 5"` + shape},
		{"1e3", `"1e3"` + shape}, {"NaN", `"NaN"` + shape}, {"Inf", `"Inf"` + shape}, {"0x10", `"0x10"` + shape}, {"1,000", `"1,000"` + shape}, {"$5", `"$5"` + shape}, {"1.2.3", `"1.2.3"` + shape}, {"٣", `"٣"` + shape},
		{"1234567890123456", `"1234567890123456" has more than 15 digits before the point`},
		{"1.123456789", `"1.123456789" has more than 8 decimal places`},
		{"12.505", `"12.505" has more than the 2 decimal places of USD`},
	} {
		_, err := usd.Parse(c.text)
		require.EqualError(t, err, c.message)
		var text *TextError
		require.ErrorAs(t, err, &text)
	}
	_, err := usd.Parse(strings.Repeat("9", 10000))
	require.Error(t, err)
	assert.Less(t, len(err.Error()), 100)
	assert.Equal(t, "12.50", amount(t, "USD", "12.500").String())
}

func TestParseOfWhatIsPrinted(t *testing.T) {
	codes := []string{"USD", "JPY", "KWD", "CLF"}
	rapid.Check(t, func(t *rapid.T) {
		c := currency(t, rapid.SampledFrom(codes).Draw(t, "code"))
		a := c.Of(decimal.New(rapid.Int64Range(-1e17, 1e17).Draw(t, "units"), -int32(c.MinorUnits())))
		if !a.IsValid() {
			return
		}
		back, err := c.Parse(a.String())
		require.NoError(t, err)
		require.Zero(t, a.Cmp(back))
		require.Equal(t, a.String(), back.String())
	})
}

func TestSumLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cents := rapid.SliceOf(rapid.Int64Range(-1e9, 1e9)).Draw(t, "cents")
		var want int64
		lines := []Amount{currency(t, "USD").Zero()}
		for _, n := range cents {
			want += n
			lines = append(lines, currency(t, "USD").Of(decimal.New(n, -2)))
		}
		require.Equal(t, decimal.New(want, -2).StringFixed(2), Sum(lines...).String())
	})
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"12.50", "-0.01", "0", "000", "999999999999999.99999999", "1e3", "NaN", ".5", "5.", "", "-", "1,000"} {
		f.Add(text, "USD")
	}
	f.Add("13", "JPY")
	f.Fuzz(func(t *testing.T, text, code string) {
		c, err := CurrencyOf(code)
		if err != nil {
			c = currency(t, "CLF")
		}
		a, err := c.Parse(text)
		if err != nil {
			require.True(t, a.IsZero())
			return
		}
		require.True(t, a.IsValid())
		back, err := c.Parse(a.String())
		require.NoError(t, err)
		require.Equal(t, a.String(), back.String())
		exact, ok := new(big.Rat).SetString(text)
		require.True(t, ok)
		require.Zero(t, exact.Cmp(a.Decimal().Rat()))
	})
}

func BenchmarkCost(b *testing.B) {
	usd, unitPrice := currency(b, "USD"), price(b, "140.00")
	b.ReportAllocs()
	for b.Loop() {
		usd.CostFromPack(3.217, 5, unitPrice)
	}
}
