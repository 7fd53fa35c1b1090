package api

import (
	"bytes"
	"errors"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/gin-gonic/gin"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnknownRoutes(t *testing.T) {
	s := newService(t)
	for _, path := range []string{"/v1", "/v2/estimates", "/v1/estimates/", "/v1/shapes/", "/v1/calculations/nothing", "/v1/examples/nothing", "//", "/web/nothing.js"} {
		got := s.get(path)
		assert.Equal(t, http.StatusNotFound, got.Code, path)
		assert.Equal(t, "Not Found", problemOf(t, got).Title)
	}
}

func TestWrongMethods(t *testing.T) {
	s := newService(t)
	for path, allowed := range map[string][]string{
		"/v1/estimates":            {"POST"},
		"/v1/calculations/coating": {"GET", "HEAD", "POST"},
		"/v1/shapes":               {"GET", "HEAD"},
		"/healthz":                 {"GET", "HEAD"},
		"/":                        {"GET", "HEAD"},
	} {
		got := s.ask(http.MethodDelete, path, "", nil)
		assert.Equal(t, http.StatusMethodNotAllowed, got.Code, path)
		assert.ElementsMatch(t, allowed, strings.Split(got.Header().Get("Allow"), ", "), path) // RFC 9110 section 15.5.6
	}
}

func TestMalformedBodies(t *testing.T) {
	s := newService(t)
	for name, body := range map[string]string{
		"empty":          "",
		"blank":          " \n",
		"cut short":      `{"name":`,
		"no JSON":        `name: x`,
		"trailing comma": `{"name":"x",}`,
		"text after it":  panelJob + ` x`,
		"a second one":   panelJob + panelJob,
		"100 deep":       strings.Repeat("[", 100) + strings.Repeat("]", 100),
		"100 deep below": `{"name":` + strings.Repeat(`{"a":`, 100) + "1" + strings.Repeat("}", 101),
		"NaN":            `{"contingency_percent":NaN}`,
		"not UTF-8":      "{\"name\":\"\xff\xfe\"}",
	} {
		for _, path := range []string{"/v1/estimates", "/v1/calculations/coating", "/v1/calculations/area"} {
			got := s.post(path, body)
			assert.Equal(t, http.StatusBadRequest, got.Code, "%s: %s", path, name)
			errs := problemOf(t, got).Errors
			require.Len(t, errs, 1, name)
			assert.NotEmpty(t, errs[0].Code, name)
		}
	}
}

func TestLargeBodies(t *testing.T) {
	s := newService(t)
	got := s.post("/v1/estimates", `{"note":"`+strings.Repeat("x", 2<<20)+`"}`)
	assert.Equal(t, http.StatusRequestEntityTooLarge, got.Code)
	assert.Contains(t, problemOf(t, got).Detail, "1 MiB")
	padded := panelJob + strings.Repeat(" ", 2<<20)
	assert.Equal(t, http.StatusRequestEntityTooLarge, s.post("/v1/estimates", padded).Code, "trailing bytes count too")
	fits := panelJob + strings.Repeat(" ", MostBody-len(panelJob))
	assert.Equal(t, http.StatusOK, s.post("/v1/estimates", fits).Code)
}

func TestMediaTypes(t *testing.T) {
	s := newService(t)
	for _, kind := range []string{"", "text/plain", "application/xml", "multipart/form-data", "application/x-www-form-urlencoded", "application/"} {
		var headers header
		if kind != "" {
			headers = header{"Content-Type", kind}
		}
		got := s.ask(http.MethodPost, "/v1/estimates", panelJob, headers)
		assert.Equal(t, http.StatusUnsupportedMediaType, got.Code, kind)
		assert.Contains(t, problemOf(t, got).Detail, "application/json")
	}
	assert.Equal(t, http.StatusOK, s.ask(http.MethodPost, "/v1/estimates", panelJob, header{"Content-Type", "application/json; charset=utf-8"}).Code)
	packed := s.post("/v1/estimates", panelJob, "Content-Encoding", "gzip")
	assert.Equal(t, http.StatusUnsupportedMediaType, packed.Code)
	assert.Contains(t, problemOf(t, packed).Detail, "gzip")
}

func TestUnacceptable(t *testing.T) {
	s := newService(t)
	for _, path := range []string{"/v1/shapes", "/v1/markings", "/v1/products", "/v1/media", "/v1/methods", "/v1/sources", "/v1/formulas", "/v1/examples", "/v1/examples/one-panel"} {
		got := s.get(path, "Accept", "text/html")
		assert.Equal(t, http.StatusNotAcceptable, got.Code, path)
		assert.Equal(t, "Accept", got.Header().Get("Vary"), path)
	}
	assert.Equal(t, http.StatusNotAcceptable, s.post("/v1/estimates", panelJob, "Accept", "image/png").Code)
}

func TestAllFaultsAtOnce(t *testing.T) {
	s := newService(t)
	got := s.post("/v1/estimates", `{"currency":"QQQ","colour":1,"tax_percent":101,"components":[{"id":"p","shape":{"kind":"box","length_m":0,"width_m":"3 kg","height_m":1}}]}`)
	assert.Equal(t, http.StatusUnprocessableEntity, got.Code)
	codes := codesOf(t, got)
	for pointer, code := range map[string]string{"/name": "required", "/currency": "unknown_reference", "/colour": "unknown_field", "/tax_percent": "out_of_range",
		"/components/0/shape/length_m": "out_of_range", "/components/0/shape/width_m": "wrong_unit"} {
		assert.Equal(t, code, codes[pointer], pointer)
	}
}

// What goes wrong inside is told to nobody but the log, under a shared name.
func TestPanics(t *testing.T) {
	var log bytes.Buffer
	before := slog.Default()
	slog.SetDefault(slog.New(slog.NewTextHandler(&log, nil)))
	t.Cleanup(func() { slog.SetDefault(before) })
	s := newService(t)
	s.handler.engine.GET("/panics", func(*gin.Context) { panic("a secret") })
	s.handler.engine.GET("/panics-late", func(c *gin.Context) { c.String(http.StatusOK, "half"); panic("a secret") })
	s.handler.engine.GET("/hangs-up", func(*gin.Context) { panic(http.ErrAbortHandler) })

	got := s.get("/panics")
	assert.Equal(t, http.StatusInternalServerError, got.Code)
	assert.NotContains(t, got.Body.String(), "secret")
	p := problemOf(t, got)
	assert.Regexp(t, `^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`, p.Instance) // RFC 9562 section 5.4
	assert.Contains(t, log.String(), "a secret")
	assert.Contains(t, log.String(), p.Instance)

	for _, path := range []string{"/panics-late", "/hangs-up"} {
		assert.PanicsWithError(t, http.ErrAbortHandler.Error(), func() {
			s.handler.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, path, nil))
		}, path)
	}
}

type brokenBody struct{}

func (brokenBody) Read([]byte) (int, error) { return 0, errors.New("the line went dead") }

func TestBodyThatBreaksOff(t *testing.T) {
	s := newService(t)
	request := httptest.NewRequest(http.MethodPost, "/v1/estimates", io.MultiReader(strings.NewReader(`{"name":`), brokenBody{}))
	request.Header.Set("Content-Type", "application/json")
	got := httptest.NewRecorder()
	s.handler.ServeHTTP(got, request)
	assert.Equal(t, http.StatusBadRequest, got.Code)
	assert.NoError(t, s.description.Answer(request, got))
}
