package money

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCurrencyTable(t *testing.T) {
	require.NoError(t, errCurrencies)
	assert.Len(t, currencies, 165)
	eur := currency(t, "EUR")
	assert.Equal(t, "EUR", eur.Code())
	assert.Equal(t, "Euro", eur.Name())
	// Where tables made for printing differ from ISO 4217 (M02; ISO values from
	// memory there, read in table A.1 here).
	assert.Equal(t, 3, currency(t, "IQD").MinorUnits())
	assert.Equal(t, 2, currency(t, "MGA").MinorUnits())
	assert.Equal(t, 4, currency(t, "UYW").MinorUnits())
	assert.Equal(t, 2, currency(t, "MRU").MinorUnits())
}

func TestUnknownCurrency(t *testing.T) {
	for _, code := range []string{"", "usd", "US", "XAU", "XXX", "ZZZ", "USDOLLARSANDCENTS"} {
		_, err := CurrencyOf(code)
		var unknown *UnknownCurrencyError
		require.ErrorAs(t, err, &unknown)
		assert.Equal(t, code, unknown.Code)
	}
	_, err := CurrencyOf("usd")
	assert.EqualError(t, err, `currency "usd" is not known; give a code of ISO 4217 in capitals, such as USD, GBP or EUR`)
}

func TestLoaderRefusesFaultyTables(t *testing.T) {
	const head = "code,minor_units,name,source\n"
	for _, c := range []struct{ table, message string }{
		{"", "currencies.csv: the columns must be code, minor_units, name, source"},
		{"code,name\n", "currencies.csv: the columns must be code, minor_units, name, source"},
		{head + "usd,2,Dollar,s\n", `currencies.csv: "usd" is not three capitals`},
		{head + "USD,2,Dollar,s\nUSD,2,Dollar,s\n", "currencies.csv: USD is there twice"},
		{head + "USD,5,Dollar,s\n", `currencies.csv: minor units "5" of USD are not 0 to 4`},
		{head + "USD,x,Dollar,s\n", `currencies.csv: minor units "x" of USD are not 0 to 4`},
		{head + "USD,2,Dollar,\n", "currencies.csv: USD has no name or no source"},
		{head + "USD\n", "currencies.csv: record on line 2: wrong number of fields"},
	} {
		_, err := loadCurrencies(c.table)
		assert.EqualError(t, err, c.message)
	}
}
