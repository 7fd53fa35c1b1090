// Package contract holds the service, its description and its examples against
// each other.
package contract

import (
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/api"
	"filmbuild/api/web"
	"filmbuild/openapi"
	"filmbuild/openapi/build"
	"filmbuild/products"
	"filmbuild/tests/contract/conform"
)

// root is the module's directory, as seen from this package.
const root = "../.."

func TestMain(m *testing.M) {
	slog.SetDefault(slog.New(slog.DiscardHandler))
	os.Exit(m.Run())
}

func service(t testing.TB) *api.Server {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	return api.Handler(catalogue)
}

func description(t testing.TB) *conform.Description {
	t.Helper()
	d, err := conform.Read(openapi.Document())
	require.NoError(t, err)
	return d
}

func post(s http.Handler, path string, body []byte) *httptest.ResponseRecorder {
	request := httptest.NewRequest(http.MethodPost, path, strings.NewReader(string(body)))
	request.Header.Set("Content-Type", "application/json")
	got := httptest.NewRecorder()
	s.ServeHTTP(got, request)
	return got
}

var parameter = regexp.MustCompile(`:([a-z]+)`)

// Pages are for people and not described; every HEAD stands beside its GET.
func TestRoutesAndDescriptionAgree(t *testing.T) {
	pages := web.Files()
	var routes, heads []string
	for _, r := range service(t).Routes() {
		if _, page := pages[r.Path]; page {
			continue
		}
		path := parameter.ReplaceAllString(r.Path, "{$1}")
		if r.Method == http.MethodHead {
			heads = append(heads, http.MethodGet+" "+path)
			continue
		}
		routes = append(routes, r.Method+" "+path)
	}
	assert.ElementsMatch(t, routes, description(t).Operations(), "routes on the left, the description on the right")
	var gets []string
	for _, route := range routes {
		if strings.HasPrefix(route, http.MethodGet) {
			gets = append(gets, route)
		}
	}
	assert.ElementsMatch(t, gets, heads, "a GET without its HEAD, or the other way round")
	assert.Greater(t, len(routes), 20)
}

func TestDescriptionIsThatOfTheSource(t *testing.T) {
	first, err := build.Document(root)
	require.NoError(t, err)
	again, err := build.Document(root)
	require.NoError(t, err)
	assert.True(t, slices.Equal(first, again), "the same source gave two documents")
	if !slices.Equal(first, openapi.Document()) {
		t.Error("openapi/openapi.json is not that of the source; run: go generate ./openapi")
	}
}

func TestDescriptionIsSound(t *testing.T) {
	require.NoError(t, build.Validate(openapi.Document()))
	assert.Contains(t, string(openapi.Document()), `"openapi": "3.1.1"`)
	assert.Error(t, build.Validate([]byte(strings.Replace(string(openapi.Document()), `"summary"`, `"sumary"`, 1))), "a misspelt keyword passes")
}
