package estimate

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/fault"
	"filmbuild/products"
)

// faultsOf works a job out and returns its faults as "pointer code".
func faultsOf(t *testing.T, job string) []string {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	_, err = NewReader(nil).Estimate([]byte(job), catalogue)
	var list *fault.Error
	if !errors.As(err, &list) {
		require.NoError(t, err)
		return nil
	}
	var said []string
	for _, f := range list.Faults {
		said = append(said, f.Pointer+" "+f.Code)
	}
	return said
}

func TestRangesOutOfOrderOrLimits(t *testing.T) {
	item := func(amount string) string {
		return `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": ` + amount + `}]}`
	}
	assert.Empty(t, faultsOf(t, item(`{"low": 1, "likely": 2, "high": 3}`)))
	assert.Equal(t, []string{"/items/0/amount inconsistent"}, faultsOf(t, item(`{"low": 4, "likely": 2, "high": 3}`)), "low above high")
	assert.Equal(t, []string{"/items/0/amount inconsistent"}, faultsOf(t, item(`{"low": 1, "likely": 5, "high": 3}`)), "likely outside")
	assert.Equal(t, []string{"/items/0/amount/high required"}, faultsOf(t, item(`{"low": 1, "likely": 2}`)))
	assert.Equal(t, []string{"/items/0/amount/distribution unknown_kind"}, faultsOf(t, item(`{"low": 1, "likely": 2, "high": 3, "distribution": "normal"}`)))

	step := func(efficiency string) string {
		return `{"name": "x", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 9, "edge_m": 0}}],
			"steps": [{"id": "s", "operation": "coat", "on": ["a"], "product": "epoxy-primer", "method": "hvlp", "transfer_efficiency_percent": ` + efficiency + `}]}`
	}
	assert.Empty(t, faultsOf(t, step(`{"low": 40, "likely": 50, "high": 60}`)))
	assert.Equal(t, []string{"/steps/0/transfer_efficiency_percent/high out_of_range"}, faultsOf(t, step(`{"low": 40, "likely": 50, "high": 160}`)))
	assert.Equal(t, []string{"/steps/0/transfer_efficiency_percent/low out_of_range"}, faultsOf(t, step(`{"low": 0, "likely": 50, "high": 60}`)))
}

func TestCorrelationsAreChecked(t *testing.T) {
	job := func(correlations string) string {
		return `{"name": "x", "currency": "USD", "items": [
			{"id": "a", "amount": {"low": 1, "likely": 2, "high": 3}}, {"id": "b", "amount": {"low": 1, "likely": 2, "high": 3}},
			{"id": "c", "amount": {"low": 1, "likely": 2, "high": 3}, "correlation_group": "metal"}, {"id": "d", "amount": "5", "correlation_group": "metal"}], "correlations": ` + correlations + `}`
	}
	for _, c := range []struct {
		correlations string
		faults       []string
	}{
		{`[{"a": "a", "b": "b", "ratio": 0.9}, {"a": "a", "b": "metal", "ratio": -0.2}]`, nil},
		{`[{"a": "a", "b": "b", "ratio": -0.6}, {"a": "b", "b": "c", "ratio": -0.6}, {"a": "c", "b": "a", "ratio": -0.6}]`, []string{"/correlations inconsistent"}},
		{`[{"a": "a", "b": "b", "ratio": 1}]`, []string{"/correlations inconsistent"}},
		{`[{"a": "a", "b": "nobody", "ratio": 0.1}]`, []string{"/correlations/0/b unknown_reference"}},
		{`[{"a": "a", "ratio": 0.1}]`, []string{"/correlations/0/b required"}},
		{`[{"a": "a", "b": "a", "ratio": 0.1}]`, []string{"/correlations/0/b inconsistent"}},
		{`[{"a": "c", "b": "d", "ratio": 0.1}]`, []string{"/correlations/0/b inconsistent"}},
		{`[{"a": "a", "b": "b", "ratio": 0.1}, {"a": "b", "b": "a", "ratio": 0.2}]`, []string{"/correlations/1 duplicate_id"}},
		{`[{"a": "a", "b": "b", "ratio": 1.5}]`, []string{"/correlations/0/ratio out_of_range"}},
	} {
		assert.Equal(t, c.faults, faultsOf(t, job(c.correlations)), c.correlations)
	}
}
