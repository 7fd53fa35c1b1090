package estimate

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/products"
)

const roughJob = `{"name": "invented", "currency": "USD", "labour": {"volunteer_rate": "20"},
	"components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 30, "edge_m": 0}}],
	"steps": [{"id": "prime", "operation": "coat", "on": ["a"], "product": "epoxy-primer", "method": "hvlp", "cleaning_l": 0}],
	"items": [{"id": "hire", "amount": "100.00"}]OWN}`

func classOf(t *testing.T, job string) Class {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	e, err := NewReader(nil).Estimate([]byte(job), catalogue)
	require.NoError(t, err)
	return e.Class
}

// What a job finds out for itself moves the class up, step by step, and what is
// still to find out is listed.
func TestTheClassFollowsWhatIsKnown(t *testing.T) {
	rough := classOf(t, strings.Replace(roughJob, "OWN", "", 1))
	assert.GreaterOrEqual(t, rough.Class, 4)
	assert.Contains(t, strings.Join(rough.Up, "\n"), "get a quotation for epoxy-primer")
	assert.Contains(t, strings.Join(rough.Up, "\n"), "test patch for prime")
	assert.NotEmpty(t, rough.Source)

	patch := `, "test_patches": [{"for": ["prime"], "area_m2": 1, "minutes": 6, "litres": 0.06, "film_um": 20}]`
	tried := classOf(t, strings.Replace(roughJob, "OWN", patch, 1))
	assert.Greater(t, tried.RatesRatio, rough.RatesRatio)
	assert.LessOrEqual(t, tried.Class, rough.Class)
	assert.NotContains(t, strings.Join(tried.Up, "\n"), "test patch")

	quoted := `, "products": [{"id": "epoxy-primer", "kind": "paint", "volume_solids_percent": 60, "dry_film_density_kg_l": 1.75, "dry_film_um": 20, "packs": [{"pack_l": 1, "price": "50.00"}]}]`
	sure := classOf(t, strings.Replace(strings.Replace(roughJob, "OWN", patch+quoted, 1), `"amount": "100.00"`, `"amount": "100.00", "price_date": "2026-03-01"`, 1))
	assert.Equal(t, 1, sure.Class)
	assert.Equal(t, 1.0, sure.PricesRatio)
	assert.Equal(t, []string{"measure a better: its area is known to ±5 %"}, sure.Up)
	assert.Equal(t, [2]float64{-10, -3}, sure.LowPercent, "U01")
}

// A job of sums alone has no areas and no rates to know.
func TestTheClassOfItems(t *testing.T) {
	c := classOf(t, `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": {"low": 1, "likely": 2, "high": 9}}, {"id": "b", "amount": "7"}]}`)
	assert.Equal(t, 1.0, c.AreasRatio)
	assert.Equal(t, 1.0, c.RatesRatio)
	assert.Less(t, c.PricesRatio, 0.5)
	assert.Equal(t, 0.0, classOf(t, `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": "0"}]}`).PricesRatio)
}
