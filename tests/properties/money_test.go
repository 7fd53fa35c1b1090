package properties

import (
	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
)

func (b bench) currency(t *rapid.T, e *estimate.Estimate) money.Currency {
	currency, err := money.CurrencyOf(e.Currency)
	require.NoError(t, err)
	return currency
}

func decimalOf(t *rapid.T, text string) decimal.Decimal {
	value, err := money.ParsePrice(text)
	require.NoError(t, err)
	return value
}
