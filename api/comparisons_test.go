package api

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/compare"
)

func TestComparisons(t *testing.T) {
	s := newService(t)
	document, err := compare.Example()
	require.NoError(t, err)
	got := s.post("/v1/comparisons?trials=1000", string(document))
	assert.Equal(t, http.StatusOK, got.Code, got.Body)
	assert.Contains(t, got.Body.String(), `"cheapest_ratio"`)
	got = s.post("/v1/comparisons?trials=1000&seed=4", string(document), "Accept", "text/csv")
	assert.Equal(t, http.StatusOK, got.Code)
	assert.True(t, strings.HasPrefix(got.Body.String(), "way,step,operation,cost_USD,"), got.Body)
	got = s.post("/v1/comparisons?trials=1000&units=us", string(document), "Accept", "text/plain")
	assert.Equal(t, http.StatusOK, got.Code)
	assert.Contains(t, got.Body.String(), "chemical stripping")

	const base = `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": "700"}]}`
	got = s.post("/v1/comparisons", `{"base": `+base+`, "variants": [{"id": "v", "patch": {}}]}`)
	assert.Equal(t, http.StatusUnprocessableEntity, got.Code)
	assert.Equal(t, map[string]string{"/variants/0/patch": "inconsistent"}, codesOf(t, got))
	assert.Equal(t, http.StatusBadRequest, s.post("/v1/comparisons?trials=0", string(document)).Code)
	assert.Equal(t, http.StatusBadRequest, s.post("/v1/comparisons?table=steps", string(document)).Code)
	assert.Equal(t, http.StatusNotAcceptable, s.post("/v1/comparisons", string(document), "Accept", "image/png").Code)
}
