package api

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

const (
	certainJob = `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": "700"}]}`
	rangedJob  = `{"name": "x", "currency": "USD", "items": [{"id": "a", "amount": {"low": 100, "likely": 200, "high": 600}}]}`
)

func (s service) rangeOf(query, job string) *estimate.Range {
	s.t.Helper()
	got := s.post("/v1/estimates"+query, job)
	require.Equal(s.t, http.StatusOK, got.Code, got.Body)
	var e struct{ Range *estimate.Range }
	require.NoError(s.t, json.Unmarshal(got.Body.Bytes(), &e))
	return e.Range
}

// There is a range where trials are asked for, or the job states one.
func TestRangesOverHTTP(t *testing.T) {
	s := newService(t)
	assert.Nil(t, s.rangeOf("", certainJob))
	r := s.rangeOf("", rangedJob)
	require.NotNil(t, r)
	assert.Equal(t, 10000, r.Trials)
	assert.Equal(t, uint64(1), r.Seed)
	r = s.rangeOf("?trials=2000&seed=9", certainJob)
	require.NotNil(t, r)
	assert.Equal(t, 2000, r.Trials)
	assert.Equal(t, uint64(9), r.Seed)
	assert.Equal(t, s.rangeOf("?trials=2000&seed=9", rangedJob), s.rangeOf("?seed=9&trials=2000", rangedJob))
	assert.NotEqual(t, s.rangeOf("?trials=2000&seed=8", rangedJob).Total, s.rangeOf("?seed=9&trials=2000", rangedJob).Total)

	got := s.post("/v1/estimates?trials=1000", rangedJob, "Accept", "image/svg+xml")
	assert.Equal(t, http.StatusOK, got.Code)
	assert.Contains(t, got.Body.String(), "<svg")
	assert.Contains(t, got.Body.String(), "P80")
	for _, table := range []string{"range", "drivers", "curve"} {
		got := s.post("/v1/estimates?table="+table, certainJob, "Accept", "text/csv")
		assert.Equal(t, http.StatusOK, got.Code)
		assert.NotEmpty(t, got.Body.String(), table)
	}
	got = s.post("/v1/estimates?table=range", rangedJob, "Accept", "text/csv")
	assert.Len(t, strings.Split(strings.TrimSpace(got.Body.String()), "\r\n"), 4, "head, total, cash and hours")
}

func TestTrialsOutOfBounds(t *testing.T) {
	s := newService(t)
	for query, want := range map[string]map[string]string{
		"?trials=0":              {"/trials": "out_of_range"},
		"?trials=999":            {"/trials": "out_of_range"},
		"?trials=1000001":        {"/trials": "out_of_range"},
		"?trials=-5":             {"/trials": "wrong_type"},
		"?trials=many":           {"/trials": "wrong_type"},
		"?trials=1000&trials=2":  {"/trials": "duplicate_name"},
		"?seed=-1&trials=0":      {"/seed": "wrong_type", "/trials": "out_of_range"},
		"?seed=9007199254740992": {"/seed": "out_of_range"},
	} {
		got := s.post("/v1/estimates"+query, rangedJob)
		assert.Equal(t, http.StatusBadRequest, got.Code, query)
		assert.Equal(t, want, codesOf(t, got), query)
	}
}

// A question and its answer over HTTP.
func TestSolutions(t *testing.T) {
	s := newService(t)
	const job = `{"name": "x", "currency": "USD", "components": [{"id": "a", "shape": {"kind": "measured", "area_m2": 30, "edge_m": 0}}],
		"steps": [{"id": "prime", "operation": "coat", "on": ["a"], "product": "epoxy-primer", "method": "brush"}]}`
	got := s.post("/v1/solutions", `{"job": `+job+`, "find": "area", "stock": [{"product": "epoxy-primer", "quantity": 5}]}`)
	assert.Equal(t, http.StatusOK, got.Code, got.Body)
	assert.Contains(t, got.Body.String(), `"limited_by":"epoxy-primer"`)
	got = s.post("/v1/solutions", `{"job": `+job+`, "find": "area", "budget": "0.01"}`)
	assert.Equal(t, http.StatusUnprocessableEntity, got.Code)
	assert.Equal(t, map[string]string{"/budget": "inconsistent"}, codesOf(t, got))
	assert.Equal(t, http.StatusBadRequest, s.post("/v1/solutions?x=1", "{}").Code)
	assert.Equal(t, http.StatusNotAcceptable, s.post("/v1/solutions", "{}", "Accept", "text/csv").Code)
	assert.Equal(t, http.StatusBadRequest, s.post("/v1/solutions", "{").Code)
}
