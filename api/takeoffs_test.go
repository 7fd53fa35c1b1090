package api

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"mime/multipart"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/takeoff"
)

func TestTemplatesComeBackAsJobs(t *testing.T) {
	s := newService(t)
	var list Templates
	require.NoError(t, json.Unmarshal(s.get("/v1/templates").Body.Bytes(), &list))
	require.Len(t, list.Templates, 5)
	assert.Contains(t, list.Tables, "stations")
	for _, one := range list.Templates {
		got := s.get(one.Path)
		require.Equal(t, http.StatusOK, got.Code, one.Name)
		assert.Contains(t, got.Header().Get("Content-Disposition"), one.Name)
		kind, _, _ := strings.Cut(got.Header().Get("Content-Type"), ";")
		back := s.ask(http.MethodPost, "/v1/takeoffs", got.Body.String(), header{"Content-Type", kind})
		assert.Equal(t, http.StatusOK, back.Code, back.Body.String())
	}
	assert.Equal(t, http.StatusNotFound, s.get("/v1/templates/paint.csv").Code)
}

func TestSeveralTablesAsParts(t *testing.T) {
	s := newService(t)
	var body bytes.Buffer
	w := multipart.NewWriter(&body)
	for name, said := range map[string]string{
		"components.csv": "id,kind,area [m²]\nplate,measured,12.5\n",
		"steps.csv":      "id,operation,on,product,method\nprime,coat,plate,epoxy-primer,brush\n",
	} {
		part, err := w.CreateFormFile("tables", name)
		require.NoError(t, err)
		_, err = part.Write([]byte(said))
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	got := s.ask(http.MethodPost, "/v1/takeoffs", body.String(), header{"Content-Type", w.FormDataContentType()})
	require.Equal(t, http.StatusOK, got.Code, got.Body.String())
	worked := s.post("/v1/estimates", got.Body.String())
	require.Equal(t, http.StatusOK, worked.Code, worked.Body.String())
	assert.Contains(t, worked.Body.String(), `"area_m2":12.5`)
}

func TestFaultsOfTablesTellTheirCell(t *testing.T) {
	s := newService(t)
	got := s.ask(http.MethodPost, "/v1/takeoffs?table=components", "id;kind;area [m²]\na;measured;1,250\nb;box;2\n", header{"Content-Type", "text/csv"})
	require.Equal(t, http.StatusUnprocessableEntity, got.Code)
	var problem Problem
	require.NoError(t, json.Unmarshal(got.Body.Bytes(), &problem))
	require.NotEmpty(t, problem.Errors)
	assert.Equal(t, "components, row 2, column C (area [m²])", problem.Errors[0].Cell.String())
	assert.Equal(t, "components, row 3, column C (area [m²])", problem.Errors[1].Cell.String())

	assert.Equal(t, http.StatusUnsupportedMediaType, s.ask(http.MethodPost, "/v1/takeoffs", "{}", header{"Content-Type", "application/json"}).Code)
	assert.Equal(t, http.StatusRequestEntityTooLarge, s.ask(http.MethodPost, "/v1/takeoffs", strings.Repeat("x", takeoff.MostBytes+1), header{"Content-Type", "text/csv"}).Code)
	assert.Equal(t, map[string]string{"/table": "unknown_kind", "/x": "unknown_field"}, codesOf(t, s.ask(http.MethodPost, "/v1/takeoffs?table=y&x=1", "id\na\n", header{"Content-Type", "text/csv"})))
}

func TestAJobAsTables(t *testing.T) {
	s := newService(t)
	sheet := s.post("/v1/tables", panelJob)
	require.Equal(t, http.StatusOK, sheet.Code, sheet.Body.String())
	back := s.ask(http.MethodPost, "/v1/takeoffs", sheet.Body.String(), header{"Content-Type", spreadsheet})
	require.Equal(t, http.StatusOK, back.Code, back.Body.String())
	assert.JSONEq(t, s.post("/v1/estimates", panelJob).Body.String(), s.post("/v1/estimates", back.Body.String()).Body.String())

	packed := s.post("/v1/tables", panelJob, "Accept", packedTables)
	require.Equal(t, http.StatusOK, packed.Code)
	archive, err := zip.NewReader(bytes.NewReader(packed.Body.Bytes()), int64(packed.Body.Len()))
	require.NoError(t, err)
	assert.Equal(t, "job.csv", archive.File[0].Name)
	assert.Equal(t, http.StatusUnprocessableEntity, s.post("/v1/tables", `{"name": "x", "currency": "USD"}`).Code)
}
