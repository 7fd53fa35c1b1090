package api

import (
	"encoding/csv"
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/api/web"
	"filmbuild/estimate/example"
	"filmbuild/openapi"
)

func TestEstimateForms(t *testing.T) {
	s := newService(t)
	got := s.post("/v1/estimates", panelJob)
	require.Equal(t, http.StatusOK, got.Code, got.Body.String())
	assert.Equal(t, "application/json", got.Header().Get("Content-Type"))
	assert.Equal(t, "Accept", got.Header().Get("Vary"))

	text := s.post("/v1/estimates?units=us", panelJob, "Accept", "text/plain")
	assert.Equal(t, http.StatusOK, text.Code)
	assert.Contains(t, text.Body.String(), "ft²")

	for table, head := range map[string]string{"": "step", "steps": "step", "order": "product", "areas": "component", "budget": "category"} {
		sheet := s.post("/v1/estimates?table="+table, panelJob, "Accept", "text/csv")
		assert.Equal(t, http.StatusOK, sheet.Code, table)
		rows, err := csv.NewReader(sheet.Body).ReadAll()
		require.NoError(t, err)
		assert.Equal(t, head, rows[0][0], table)
		assert.Greater(t, len(rows), 1, table)
	}
	codes := codesOf(t, s.post("/v1/estimates?table=x&units=y&z=1&units=si", panelJob))
	assert.Equal(t, map[string]string{"/table": "unknown_kind", "/units": "duplicate_name", "/z": "unknown_field"}, codes, "all at once")
}

func TestBuiltInJobsOverHTTP(t *testing.T) {
	s := newService(t)
	all, err := example.All()
	require.NoError(t, err)
	for _, e := range all {
		shown := s.get("/v1/examples/" + e.ID)
		require.Equal(t, http.StatusOK, shown.Code, e.ID)
		assert.JSONEq(t, string(e.Job), shown.Body.String())
		worked := s.post("/v1/estimates", shown.Body.String())
		assert.Equal(t, http.StatusOK, worked.Code, e.ID+worked.Body.String())
	}
}

func TestCatalogueRoutes(t *testing.T) {
	s := newService(t)
	for path, list := range map[string]string{"/v1/shapes": "shapes", "/v1/markings": "markings", "/v1/products": "products", "/v1/media": "products", "/v1/methods": "methods",
		"/v1/sources": "sources", "/v1/formulas": "formulas", "/v1/examples": "examples"} {
		got := s.get(path)
		require.Equal(t, http.StatusOK, got.Code, path)
		var answer map[string]json.RawMessage
		require.NoError(t, json.Unmarshal(got.Body.Bytes(), &answer))
		var entries []any
		require.NoError(t, json.Unmarshal(answer[list], &entries), path)
		assert.NotEmpty(t, entries, path)
	}
}

func TestHealth(t *testing.T) {
	s := newService(t)
	assert.JSONEq(t, `{"status":"ok"}`, s.get("/healthz").Body.String())
	ready := s.get("/readyz")
	assert.Equal(t, http.StatusOK, ready.Code)
	assert.Contains(t, ready.Body.String(), s.handler.catalogue.Version())
}

// HEAD tells what GET would, and net/http leaves the body out.
func TestHead(t *testing.T) {
	s := newService(t)
	for _, path := range []string{"/", "/openapi.json", "/v1/shapes", "/healthz", coatingPath + "?area_m2=1&dry_film_um=20&volume_solids_percent=50"} {
		head, get := s.ask(http.MethodHead, path, "", nil), s.get(path)
		assert.Equal(t, http.StatusOK, head.Code, path)
		assert.Equal(t, get.Header(), head.Header(), path)
		assert.NotEmpty(t, head.Header().Get("Content-Length"), path)
	}
}

func TestPagesAndTheirTags(t *testing.T) {
	s := newService(t)
	paths := []string{"/openapi.json"}
	for path := range web.Files() {
		paths = append(paths, path)
	}
	for _, path := range paths {
		got := s.get(path)
		require.Equal(t, http.StatusOK, got.Code, path)
		tag := got.Header().Get("ETag")
		require.Regexp(t, `^"[0-9a-f]+"$`, tag, path)
		assert.NotEmpty(t, got.Header().Get("Content-Type"), path)
		again := s.get(path, "If-None-Match", `"other", W/`+tag)
		assert.Equal(t, http.StatusNotModified, again.Code, path)
		assert.Empty(t, again.Body.String(), path)
		assert.Equal(t, tag, again.Header().Get("ETag"), path) // RFC 9110 section 15.4.5
		assert.Equal(t, http.StatusOK, s.get(path, "If-None-Match", `"other"`).Code, path)
	}
	assert.Equal(t, string(openapi.Document()), s.get("/openapi.json").Body.String())
}

// Nothing on our pages may come from another host, or stand where the content
// security policy forbids it.
func TestPagesKeepToThisHost(t *testing.T) {
	s := newService(t)
	for path, file := range web.Files() {
		policy := s.get(path).Header().Get("Content-Security-Policy")
		assert.Contains(t, policy, "default-src 'self'", path)
		assert.NotContains(t, policy, "unsafe", path)
		if !strings.HasPrefix(file.Kind, "text/html") {
			continue
		}
		page := string(file.Data)
		for _, foreign := range []string{`src="http`, `src="//`, `rel="stylesheet" href="http`, "<style", " style=", " onclick=", " onload=", "<base"} {
			assert.NotContains(t, page, foreign, path)
		}
		assert.NotRegexp(t, `<script[^>]*>[^<]`, page, "a script inside the page %s", path)
	}
}
