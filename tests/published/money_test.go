package published

import (
	"testing"

	"filmbuild/estimate/money"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func moneyCurrency(t *testing.T, code string) money.Currency {
	t.Helper()
	c, err := money.CurrencyOf(code)
	require.NoError(t, err)
	return c
}

func moneyPrice(t *testing.T, text string) decimal.Decimal {
	t.Helper()
	price, err := money.ParsePrice(text)
	require.NoError(t, err)
	return price
}

// M01: minor units of ISO 4217, read in a public code list (mark A).
func TestM01MinorUnits(t *testing.T) {
	for places, codes := range map[int][]string{
		2: {"USD", "GBP", "EUR"}, 0: {"JPY", "KRW", "ISK", "CLP", "VND"}, 3: {"KWD", "BHD", "TND"}, 4: {"CLF"},
	} {
		for _, code := range codes {
			assert.Equal(t, places, moneyCurrency(t, code).MinorUnits(), code)
		}
	}
}

// M06: tax manual VATREC12030, below half a penny down, from half a penny up
// (mark A). The cases around the rule are ours.
func TestM06RetailRounding(t *testing.T) {
	gbp := moneyCurrency(t, "GBP")
	for price, want := range map[string]string{"1.2349": "1.23", "1.2350": "1.24", "1.2351": "1.24", "0.0049": "0.00", "0.0050": "0.01"} {
		assert.Equal(t, want, gbp.Cost(1, moneyPrice(t, price)).String(), price)
	}
}

// M07: three times 0.1249, each line rounded or the total, as a spreadsheet has
// them (computed, mark D). An estimate's total is the sum of its rounded lines.
func TestM07LineAgainstTotal(t *testing.T) {
	usd := moneyCurrency(t, "USD")
	line := usd.Cost(1, moneyPrice(t, "0.1249"))
	assert.Equal(t, "0.36", money.Sum(line, line, line).String())
	assert.Equal(t, "0.37", usd.Cost(3, moneyPrice(t, "0.1249")).String())
}

// M08: a tax of 20 % on three times 1.13, by line or on the total (computed,
// mark D). The 0.67 of a total that is cut down is not our rule.
func TestM08TaxOnLineAgainstTotal(t *testing.T) {
	line, err := moneyCurrency(t, "GBP").Parse("1.13")
	require.NoError(t, err)
	tax := line.MulPercent(20)
	assert.Equal(t, "0.69", money.Sum(tax, tax, tax).String())
	assert.Equal(t, "0.68", money.Sum(line, line, line).MulPercent(20).String())
}

// M09: rounding of ties (computed, mark D). Ours is half away from zero, which
// is the column "up" for these; "even" is what we do not do.
func TestM09HalfAwayFromZero(t *testing.T) {
	yen, usd := moneyCurrency(t, "JPY"), moneyCurrency(t, "USD")
	for price, want := range map[string]string{"2.5": "3", "3.5": "4", "-2.5": "-3"} {
		assert.Equal(t, want, yen.Of(moneyPrice(t, price)).String())
	}
	assert.Equal(t, "0.13", usd.Of(moneyPrice(t, "0.125")).String())
}

// M10: values that binary rounding gets wrong and a spreadsheet gets right
// (tested, mark A), as a quantity at a price of one.
func TestM10BinaryTrap(t *testing.T) {
	usd := moneyCurrency(t, "USD")
	for quantity, want := range map[float64]string{1.005: "1.01", 0.285: "0.29", 5.015: "5.02", 10.075: "10.08"} {
		assert.Equal(t, want, usd.Cost(quantity, decimal.New(1, 0)).String())
	}
}
