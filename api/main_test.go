package api

import (
	"encoding/json"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/api/web"
	"filmbuild/openapi"
	"filmbuild/products"
	"filmbuild/tests/contract/conform"
)

func TestMain(m *testing.M) {
	slog.SetDefault(slog.New(slog.DiscardHandler)) // one line a request is for operators
	os.Exit(m.Run())
}

// described is the description, read once: it does not change.
var described = sync.OnceValues(func() (*conform.Description, error) { return conform.Read(openapi.Document()) })

// service is a server whose every answer is held against its description.
type service struct {
	t           testing.TB
	handler     *Server
	description *conform.Description
}

func newService(t testing.TB) service {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	description, err := described()
	require.NoError(t, err)
	return service{t, Handler(catalogue), description}
}

// header is a list of header names and values by turns.
type header []string

func (s service) ask(method, path, body string, headers header) *httptest.ResponseRecorder {
	s.t.Helper()
	request := httptest.NewRequest(method, path, strings.NewReader(body))
	for i := 0; i+1 < len(headers); i += 2 {
		request.Header.Add(headers[i], headers[i+1])
	}
	got := httptest.NewRecorder()
	s.handler.ServeHTTP(got, request)
	if _, page := web.Files()[request.URL.Path]; !page || got.Code >= 400 {
		assert.NoError(s.t, s.description.Answer(request, got), "%s %s", method, path)
	}
	assert.Equal(s.t, "nosniff", got.Header().Get("X-Content-Type-Options"))
	return got
}

func (s service) get(path string, headers ...string) *httptest.ResponseRecorder {
	s.t.Helper()
	return s.ask(http.MethodGet, path, "", headers)
}

func (s service) post(path, body string, headers ...string) *httptest.ResponseRecorder {
	s.t.Helper()
	return s.ask(http.MethodPost, path, body, append(header{"Content-Type", "application/json"}, headers...))
}

func problemOf(t testing.TB, got *httptest.ResponseRecorder) Problem {
	t.Helper()
	var p Problem
	require.NoError(t, json.Unmarshal(got.Body.Bytes(), &p), got.Body.String())
	return p
}

// codesOf returns the code of each fault by its pointer.
func codesOf(t testing.TB, got *httptest.ResponseRecorder) map[string]string {
	t.Helper()
	codes := map[string]string{}
	for _, f := range problemOf(t, got).Errors {
		codes[f.Pointer] = f.Code
		assert.NotEmpty(t, f.Detail)
	}
	return codes
}

const panelJob = `{"name":"panel","currency":"USD","components":[{"id":"p","shape":{"kind":"measured","area_m2":2}}],
 "steps":[{"id":"prime","operation":"coat","on":["p"],"product":"epoxy-primer","method":"brush"}]}`
