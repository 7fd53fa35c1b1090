// Package broken sends jobs that are at fault through the engine and through
// the API. Each file of testdata has a sibling .faults: the HTTP status, then
// the faults that must be found, no more and no fewer, as code and pointer.
package broken

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/products"
)

func load(t *testing.T) *products.Catalogue {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	return catalogue
}

// Every broken job is refused with exactly its faults, by the engine and by the
// API alike, and no figure leaves either.
func TestBrokenJobs(t *testing.T) {
	files, err := filepath.Glob("testdata/*.json")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 40)
	catalogue := load(t)
	handler := api.Handler(catalogue)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".json"), func(t *testing.T) {
			body, err := os.ReadFile(file)
			require.NoError(t, err)
			want, err := os.ReadFile(strings.TrimSuffix(file, ".json") + ".faults")
			require.NoError(t, err)
			refused(t, catalogue, handler, body, string(want))
		})
	}
}

// refused sends a job both ways and compares what comes back with what is
// wanted.
func refused(t *testing.T, catalogue *products.Catalogue, handler http.Handler, body []byte, want string) {
	t.Helper()
	e, err := estimate.NewReader(nil).Estimate(body, catalogue)
	assert.Nil(t, e, "no figure may leave the engine")
	assert.Equal(t, want, fmt.Sprintln(statusOf(err))+lines(faultsOf(t, err)), "the engine")

	problem := send(t, handler, body)
	assert.Equal(t, want, fmt.Sprintln(problem.Status)+lines(problem.Errors), "the API")
	for _, f := range problem.Errors {
		told(t, f)
	}
}

func send(t *testing.T, handler http.Handler, body []byte) api.Problem {
	t.Helper()
	request := httptest.NewRequest(http.MethodPost, "/v1/estimates", bytes.NewReader(body))
	request.Header.Set("Content-Type", "application/json")
	answer := httptest.NewRecorder()
	handler.ServeHTTP(answer, request)
	assert.Equal(t, "application/problem+json", answer.Header().Get("Content-Type"))
	var problem api.Problem
	decoder := json.NewDecoder(answer.Body)
	decoder.DisallowUnknownFields() // an estimate beside the problem would be one
	require.NoError(t, decoder.Decode(&problem))
	assert.Equal(t, answer.Code, problem.Status)
	assert.NotEmpty(t, problem.Detail)
	return problem
}

// told checks that a fault's sentence says something about the field it is at.
func told(t *testing.T, f fault.Fault) {
	t.Helper()
	assert.GreaterOrEqual(t, len(strings.Fields(f.Detail)), 4, "%s: %q is no sentence", f.Pointer, f.Detail)
	assert.NotContains(t, f.Detail, "%!", "a format went wrong")
	assert.LessOrEqual(t, len(f.Detail), 700, "%s: nobody reads %d letters", f.Pointer, len(f.Detail))
	// after a shape's, a face's or a list's pointer comes what was written there:
	// the sentence repeats the field's name or the value that was refused
	if name := fieldOf(f.Pointer); name != "" && (f.Code == "out_of_range" || f.Code == "required" || f.Code == "not_a_number" || f.Code == "wrong_type") {
		assert.Contains(t, f.Detail, name, "the field is named")
	}
}

// fieldOf is the last name in a pointer, "" where it ends in an index.
func fieldOf(pointer string) string {
	name := pointer[strings.LastIndexByte(pointer, '/')+1:]
	if name == "" || strings.Trim(name, "0123456789") == "" || name == "on" {
		return ""
	}
	return name
}

func statusOf(err error) int {
	var syntax *wire.SyntaxError
	switch {
	case err == nil:
		return http.StatusOK
	case errors.As(err, &syntax):
		return http.StatusBadRequest
	}
	return http.StatusUnprocessableEntity
}

func faultsOf(t *testing.T, err error) []fault.Fault {
	t.Helper()
	var syntax *wire.SyntaxError
	var list *fault.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &syntax):
		return []fault.Fault{{Pointer: syntax.Pointer, Code: syntax.Code, Detail: syntax.Detail}}
	}
	require.ErrorAs(t, err, &list)
	return list.Faults
}

func lines(faults []fault.Fault) string {
	list := make([]string, 0, len(faults))
	for _, f := range faults {
		list = append(list, strings.TrimSpace(f.Code+" "+f.Pointer)+"\n")
	}
	sort.Strings(list)
	return strings.Join(list, "")
}
