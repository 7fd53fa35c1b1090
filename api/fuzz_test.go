package api

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
	"filmbuild/products"
)

// Whatever is posted, the answer is an estimate, or a problem that says where
// the fault is; never a panic and never a 500.
func FuzzEstimates(f *testing.F) {
	all, err := example.All()
	require.NoError(f, err)
	f.Add(panelJob)
	for _, e := range all {
		job := string(e.Job)
		f.Add(job)
		for _, mutation := range [][2]string{
			{`"area_m2": `, `"area_m2": -`}, {`"count": 2`, `"count": 1e9`}, {`1.2`, `1e308`}, {`1.2`, `"1 yd"`}, {`1.2`, `{"low":1,"likely":2,"high":3}`},
			{`"kind": "`, `"kind": "x`}, {`"on": [`, `"on": ["nowhere",`}, {`"id": "`, `"id": "/`}, {`{`, `[`}, {`"24.00"`, `"99999999999999999"`}, {`: `, `: null, "x": `},
		} {
			f.Add(strings.Replace(job, mutation[0], mutation[1], 1))
			f.Add(strings.ReplaceAll(job, mutation[0], mutation[1]))
		}
		f.Add(job[:len(job)/2])
	}
	catalogue, err := products.Load()
	require.NoError(f, err)
	handler := Handler(catalogue)
	f.Fuzz(func(t *testing.T, body string) {
		request := httptest.NewRequest(http.MethodPost, "/v1/estimates", strings.NewReader(body))
		request.Header.Set("Content-Type", "application/json")
		got := httptest.NewRecorder()
		handler.ServeHTTP(got, request)
		switch got.Code {
		case http.StatusOK:
			require.True(t, json.Valid(got.Body.Bytes()))
		case http.StatusRequestEntityTooLarge:
		case http.StatusBadRequest, http.StatusUnprocessableEntity:
			requireFaults(t, got)
		default:
			t.Fatalf("status %d: %s", got.Code, got.Body.String())
		}
	})
}

// requireFaults wants every fault to say where, by a pointer that is empty or
// starts with a slash (RFC 6901 section 3), what, and what to do.
func requireFaults(t *testing.T, got *httptest.ResponseRecorder) {
	t.Helper()
	problem := problemOf(t, got)
	require.NotEmpty(t, problem.Errors)
	for _, fault := range problem.Errors {
		require.True(t, fault.Pointer == "" || fault.Pointer[0] == '/', fault.Pointer)
		require.Regexp(t, `^[a-z_]+$`, fault.Code)
		require.NotEmpty(t, fault.Detail)
	}
}
