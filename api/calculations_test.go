package api

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const coatingPath = "/v1/calculations/coating"

// query writes names and values by turns as a query string.
func query(pairs ...string) string {
	values := url.Values{}
	for i := 0; i+1 < len(pairs); i += 2 {
		values.Set(pairs[i], pairs[i+1])
	}
	return "?" + values.Encode()
}

// GET and POST are one calculator. 10 m² at 20.32 µm (0.8 mil, exactly, since
// a mil is 25.4 µm) of 55 % solids take 10·20.32/(10·55) L: identity.
func TestQueryAndBodyAgree(t *testing.T) {
	s := newService(t)
	asked := s.get(coatingPath + query("area_m2", "10", "dry_film_um", "0.8 mil", "volume_solids_percent", "55"))
	require.Equal(t, http.StatusOK, asked.Code, asked.Body.String())
	posted := s.post(coatingPath, `{"area_m2":10,"dry_film_um":"0.8 mil","volume_solids_percent":55}`)
	assert.Equal(t, posted.Body.String(), asked.Body.String())
	var answer struct {
		Paint float64 `json:"paint_l"`
	}
	require.NoError(t, json.Unmarshal(asked.Body.Bytes(), &answer))
	assert.InDelta(t, 10*20.32/(10*55), answer.Paint, 1e-12)
}

func TestOneField(t *testing.T) {
	s := newService(t)
	path := coatingPath + query("area_m2", "10", "dry_film_um", "20", "volume_solids_percent", "50", "field", "paint_l")
	for accept, want := range map[string]string{
		"":                                  "0.4",
		"*/*":                               "0.4",
		"text/plain":                        "0.4",
		"text/html, */*;q=0.1":              "0.4",
		"application/json":                  `{"paint_l":0.4}`,
		"text/plain;q=0.1,application/json": `{"paint_l":0.4}`,
	} {
		got := s.get(path, "Accept", accept)
		assert.Equal(t, http.StatusOK, got.Code, accept)
		assert.Equal(t, want, got.Body.String(), accept)
		assert.Equal(t, "Accept", got.Header().Get("Vary"))
	}
	assert.Equal(t, http.StatusNotAcceptable, s.get(path, "Accept", "image/png").Code)
	posted := s.post(coatingPath+"?field=paint_l", `{"area_m2":10,"dry_film_um":20,"volume_solids_percent":50}`)
	assert.Equal(t, "0.4", posted.Body.String())
	whole := s.get(coatingPath+query("area_m2", "10", "dry_film_um", "20", "volume_solids_percent", "50"), "Accept", "text/plain")
	assert.Equal(t, http.StatusNotAcceptable, whole.Code)
	assert.Contains(t, problemOf(t, whole).Detail, "?field=")
}

func TestFieldsInsideAnAnswer(t *testing.T) {
	s := newService(t)
	box := query("kind", "box", "length_m", "1", "width_m", "2", "height_m", "3")
	assert.Equal(t, "2", s.get("/v1/calculations/area"+box+"&field=faces/0/area_m2").Body.String())
	assert.Equal(t, "top", s.get("/v1/calculations/area"+box+"&field=faces/0/face").Body.String())
	for _, none := range []string{"faces", "faces/99/area_m2", "faces/-1", "faces/x", "area_m2/0", "nothing"} {
		got := s.get("/v1/calculations/area" + box + "&field=" + none)
		assert.Equal(t, http.StatusUnprocessableEntity, got.Code, none)
		assert.Equal(t, map[string]string{"/field": "unknown_field"}, codesOf(t, got), none)
	}
	weather := query("air_c", "20", "relative_humidity_percent", "50", "surface_c", "20", "field", "may_coat")
	assert.Equal(t, "true", s.get("/v1/calculations/dew-point"+weather).Body.String())
	assert.Equal(t, `{"may_coat":true}`, s.get("/v1/calculations/dew-point"+weather, "Accept", "application/json").Body.String())
}

// Money stays decimal text, as one value too.
func TestMoneyStaysText(t *testing.T) {
	s := newService(t)
	path := "/v1/calculations/packs" + query("needed", "3", "packs", `[{"pack":5,"price":"140.00"},{"pack":1,"price":"34.00"}]`, "field", "cost")
	assert.Equal(t, "102.00", s.get(path).Body.String()) // 3 × 34.00 is less than 140.00: identity
	assert.Equal(t, `{"cost":"102.00"}`, s.get(path, "Accept", "application/json").Body.String())
}

// Spreadsheets misread exponents.
func TestBareNumbersHaveNoExponent(t *testing.T) {
	assert.Equal(t, "0.00000001", plain(json.Number("1e-8")))
	assert.Equal(t, "100000000000000000000000", plain(json.Number("1e23")))
	assert.Equal(t, strconv.FormatFloat(0.1, 'f', -1, 64), plain(json.Number("0.1")))
}

func TestQueriesThatAreRefused(t *testing.T) {
	s := newService(t)
	good := query("area_m2", "10", "dry_film_um", "20", "volume_solids_percent", "50")
	for added, want := range map[string]struct {
		code    int
		pointer string
	}{
		"&colour=red":        {422, "/colour"},
		"&coats=2&coats=3":   {422, "/coats"},
		"&coats=two":         {422, "/coats"},
		"&coats=1.5":         {422, "/coats"},
		"&coats=NaN":         {422, "/coats"},
		"&loss_percent=1e99": {422, "/loss_percent"},
		"&coats=[1":          {422, "/coats"},
		"&loss_percent=5%":   {400, ""},
		"&a=%zz":             {400, ""},
		"&a;b=1":             {400, ""},
		"&field=a&field=b":   {400, "/field"},
	} {
		got := s.get(coatingPath + good + added)
		assert.Equal(t, want.code, got.Code, added)
		assert.Contains(t, codesOf(t, got), want.pointer, added)
	}
	assert.Equal(t, map[string]string{"/units": "unknown_field"}, codesOf(t, s.post(coatingPath+"?units=us", `{}`)))
	assert.Equal(t, map[string]string{"/x": "unknown_field"}, codesOf(t, s.get("/v1/shapes?x=1")))
}

// A plus sign in a query is a space; a unit with a space works either way.
func TestUnitsInQueries(t *testing.T) {
	s := newService(t)
	for _, film := range []string{"0.8%20mil", "0.8+mil", "0.8mil", "20.32", "20.32%20%C2%B5m"} {
		got := s.get(coatingPath + "?area_m2=10&volume_solids_percent=55%25&dry_film_um=" + film + "&field=wet_film_um")
		require.Equal(t, http.StatusOK, got.Code, film+got.Body.String())
		wet, err := strconv.ParseFloat(got.Body.String(), 64)
		require.NoError(t, err)
		assert.InDelta(t, 20.32/0.55, wet, 1e-9, film)
	}
}
