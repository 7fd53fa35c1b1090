package api

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
)

func trainer(t *testing.T) string {
	t.Helper()
	e, err := example.Find("jet-trainer")
	require.NoError(t, err)
	return string(e.Job)
}

func TestSheets(t *testing.T) {
	s, job := newService(t), trainer(t)
	for path, said := range map[string]string{
		"?marking=side-roundel&date=12+May":                `Ø 508`, // 20 in
		"?marking=side-roundel&units=us":                   `Ø 20&quot;`,
		"?marking=cheat-line&layer=cut":                    `data-islands="0"`,
		"?component=wing&face=upper":                       `tip rib at the leading edge`,
		"?component=wing&face=upper&other_side=true":       `wing, upper, the other side`,
		"?component=fuselage&face=right":                   `STA 6100`,
		"?component=fuselage&face=left&layer=all&units=si": `WL 250`,
	} {
		got := s.post("/v1/sheets"+path, job, "Accept", "image/svg+xml")
		require.Equal(t, http.StatusOK, got.Code, got.Body.String())
		assert.Equal(t, "image/svg+xml", got.Header().Get("Content-Type"))
		assert.Contains(t, got.Body.String(), said, path)
	}
}

func TestSheetsThatCannotBe(t *testing.T) {
	s, job := newService(t), trainer(t)
	for path, want := range map[string]map[string]string{
		"":                                 {"/marking": "required"},
		"?marking=x":                       {"/marking": "unknown_reference"},
		"?component=tail&face=left":        {"/component": "unknown_reference"},
		"?component=wing":                  {"/component": "unknown_reference"},
		"?marking=walkway&component=wing":  {"/marking": "inconsistent"},
		"?component=wing&layer=cut":        {"/layer": "not_applicable"},
		"?marking=walkway&other_side=true": {"/other_side": "not_applicable"},
		"?component=fuselage&face=left&other_side=true":     {"/other_side": "not_applicable"},
		"?marking=walkway&date=" + strings.Repeat("9", 121): {"/date": "too_long"},
		"?layer=film&units=yards&side=1":                    {"/layer": "unknown_kind", "/units": "unknown_kind", "/side": "unknown_field"},
	} {
		got := s.post("/v1/sheets"+path, job)
		assert.Equal(t, want, codesOf(t, got), path)
	}
	assert.Equal(t, http.StatusNotAcceptable, s.post("/v1/sheets?marking=walkway", job, "Accept", "application/pdf").Code)
	assert.Equal(t, map[string]string{"/name": "required", "/currency": "required", "": "required"}, codesOf(t, s.post("/v1/sheets?marking=walkway", `{}`)))
}

func TestOneMarkingIsDrawn(t *testing.T) {
	s := newService(t)
	const body = `{"kind": "star_and_bar", "size_m": "25 in"}`
	got := s.post("/v1/calculations/marking", body, "Accept", "image/svg+xml")
	require.Equal(t, http.StatusOK, got.Code, got.Body.String())
	assert.Contains(t, got.Body.String(), `<g id="white"`)
	cut := s.get("/v1/calculations/marking?kind=star_and_bar&size_m=0.635&layer=cut", "Accept", "image/svg+xml")
	require.Equal(t, http.StatusOK, cut.Code, cut.Body.String())
	assert.Contains(t, cut.Body.String(), `id="film"`)
	assert.Equal(t, map[string]string{"/layer": "unknown_kind", "/units": "unknown_kind"}, codesOf(t, s.post("/v1/calculations/marking?layer=x&units=y", body, "Accept", "image/svg+xml")))
	assert.Equal(t, map[string]string{"/layer": "unknown_field"}, codesOf(t, s.post("/v1/calculations/area?layer=cut", `{"kind": "sphere", "radius_m": 1}`, "Accept", "image/svg+xml")))
}

// Every kind of marking has its sheet where the list says.
func TestExamplesOfMarkingsAreDrawn(t *testing.T) {
	s := newService(t)
	var list Markings
	require.NoError(t, json.Unmarshal(s.get("/v1/markings").Body.Bytes(), &list))
	require.Greater(t, len(list.Markings), 15)
	for _, k := range list.Markings {
		got := s.get(k.Sheet)
		assert.Equal(t, http.StatusOK, got.Code, k.Kind)
		assert.Contains(t, got.Body.String(), `data-pass="1"`)
	}
	assert.Equal(t, http.StatusNotFound, s.get("/v1/markings/cube/sheet").Code)
}

// What a document of markings may hold wrong: one clear fault each, from the
// calculator and, once, from a job that paints the figure.
func TestBadMarkings(t *testing.T) {
	s := newService(t)
	for name, c := range map[string]struct{ body, pointer, code, says string }{
		"rings not increasing":         {`{"kind": "roundel", "size_m": 0.4, "rings": [{"ratio": 1, "colour": "red"}, {"ratio": 3, "colour": "white"}, {"ratio": 2, "colour": "blue"}]}`, "/rings/2/ratio", "not_increasing", "2"},
		"empty text":                   {`{"kind": "lettering", "text": "", "height_m": 0.3, "colour": "black"}`, "/text", "required", "text"},
		"a letter the alphabet lacks":  {`{"kind": "lettering", "text": "SÃO 7", "height_m": 0.3, "colour": "black"}`, "/text", "unknown_reference", "Ã"},
		"bar end unknown":              {`{"kind": "star_and_bar", "size_m": 0.5, "bar_end": "elbow"}`, "/bar_end", "unknown_kind", "shoulder, circle"},
		"self-crossing path":           {`{"kind": "outline", "path": "M0 0L100 100L100 0L0 100Z", "colour": "red"}`, "/path", "self_crossing", "(50, 50)"},
		"border wider than the figure": {`{"kind": "star_and_bar", "size_m": 0.5, "border_width_m": 0.3}`, "/border_width_m", "inconsistent", "wider"},
		"round more than the body":     {`{"kind": "disc", "size_m": 0.9, "colour": "red", "skin_radius_m": 0.3, "sizes": "projected"}`, "/skin_radius_m", "inconsistent", "0.9 m"},
	} {
		t.Run(name, func(t *testing.T) {
			one := func(pointer string, p Problem) {
				assert.Equal(t, http.StatusUnprocessableEntity, p.Status)
				require.Len(t, p.Errors, 1, "%v", p.Errors)
				assert.Equal(t, pointer, p.Errors[0].Pointer)
				assert.Equal(t, c.code, p.Errors[0].Code)
				assert.Contains(t, p.Errors[0].Detail, c.says)
			}
			one(c.pointer, problemOf(t, s.post("/v1/calculations/marking", c.body)))
			one(c.pointer, problemOf(t, s.post("/v1/calculations/marking", c.body, "Accept", "image/svg+xml")))
			job := fmt.Sprintf(`{"name": "x", "currency": "USD", "markings": [{"id": "m", %s], "steps": [{"id": "s", "operation": "mark", "markings": ["m"], "dry_film_um": 30, "method": "brush"}]}`, c.body[1:])
			one("/markings/0"+c.pointer, problemOf(t, s.post("/v1/estimates", job)))
		})
	}
	const tapes = `{"tapes": [{"x_m": 0, "y_m": 0, "distance_m": 0.3}, {"x_m": 1, "y_m": 0, "distance_m": 0.6}]}`
	p := problemOf(t, s.post("/v1/calculations/placing", tapes))
	require.Len(t, p.Errors, 1)
	assert.Equal(t, "/tapes", p.Errors[0].Pointer)
	assert.Contains(t, p.Errors[0].Detail, "the tapes do not meet")
	p = problemOf(t, s.post("/v1/calculations/marking", `{"kind": "disc", "size_m": 1, "colour": "red", "place": `+tapes+`}`))
	require.Len(t, p.Errors, 1)
	assert.Equal(t, "/place/tapes", p.Errors[0].Pointer)
}

// TR-2 of the markings list over HTTP, as a spreadsheet would ask for it.
func TestPlacingInAQuery(t *testing.T) {
	s := newService(t)
	got := s.get("/v1/calculations/placing?field=y_m&tapes=" + `%5B%7B%22x_m%22:0,%22y_m%22:0,%22distance_m%22:0.6%7D,%7B%22x_m%22:1,%22y_m%22:0,%22distance_m%22:0.8%7D%5D`)
	require.Equal(t, http.StatusOK, got.Code, got.Body.String())
	assert.Equal(t, "0.48", got.Body.String())
}

// A path may be far longer than other texts.
func TestLongPathOverHTTP(t *testing.T) {
	s := newService(t)
	var path strings.Builder
	path.WriteString("M0 0")
	for i := range 2000 { // a comb of teeth 1 wide and 10 high, 1 apart
		fmt.Fprintf(&path, "V10H%dV0H%d", 2*i+1, 2*i+2)
	}
	path.WriteString("V-1H0Z")
	require.Greater(t, path.Len(), 20_000)
	body, err := json.Marshal(map[string]any{"kind": "outline", "path": path.String(), "colour": "red"})
	require.NoError(t, err)
	got := s.post("/v1/calculations/marking", string(body))
	require.Equal(t, http.StatusUnprocessableEntity, got.Code)
	assert.Equal(t, map[string]string{"/path": "wrong_type"}, codesOf(t, got), "8000 edges are too many, the length is not")

	short := "M0 0" + strings.Repeat("", 0)
	for i := range 1000 {
		short += fmt.Sprintf("V10.000000H%d.000000V0.000000H%d.000000", 2*i+1, 2*i+2)
	}
	short += "V-1H0Z"
	require.Greater(t, len(short), 30_000)
	body, err = json.Marshal(map[string]any{"kind": "outline", "path": short, "colour": "red"})
	require.NoError(t, err)
	got = s.post("/v1/calculations/marking", string(body))
	require.Equal(t, http.StatusOK, got.Code, got.Body.String())
	var m struct {
		AreaM2 float64 `json:"area_m2"`
	}
	require.NoError(t, json.Unmarshal(got.Body.Bytes(), &m))
	assert.InEpsilon(t, (1000*10+2000*1)*1e-6, m.AreaM2, 1e-9, "teeth and the back below them")
}
