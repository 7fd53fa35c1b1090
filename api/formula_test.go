package api

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	shownFormula = regexp.MustCompile(`(?s)<pre class="wrapped" id="(excel|calc)">(.*?)</pre>`)
	formulaPart  = regexp.MustCompile(`"((?:[^"]|"")*)"|ENCODEURL\(SUBSTITUTE\((\$?[A-Z]+\$?[0-9]+)([,;])","[,;]"\."\)\)`)
)

// addressOf works the text of a formula out as a spreadsheet would, with the
// values of cells.
func addressOf(t *testing.T, formula, separator string, cells map[string]string) string {
	t.Helper()
	inner, ok := strings.CutPrefix(formula, "=NUMBERVALUE(WEBSERVICE(")
	require.True(t, ok, formula)
	inner, ok = strings.CutSuffix(inner, ")"+separator+`"."`+separator+`",")`)
	require.True(t, ok, formula)
	address, left := "", inner
	for _, part := range formulaPart.FindAllStringSubmatch(inner, -1) {
		assert.LessOrEqual(t, len(part[1]), 255, "Excel takes no longer text")
		if part[2] != "" {
			assert.Equal(t, separator, part[3])
			require.Contains(t, cells, part[2])
			address += url.QueryEscape(strings.ReplaceAll(cells[part[2]], ",", "."))
		} else {
			address += strings.ReplaceAll(part[1], `""`, `"`)
		}
		left = strings.Replace(left, part[0], "", 1)
	}
	assert.Empty(t, strings.Trim(left, "&"), "nothing but texts and cells")
	return address
}

// The address of every formula answers with a bare number.
func TestFormulasAskForABareNumber(t *testing.T) {
	s := newService(t)
	asked := 0
	for _, query := range []string{
		"",
		"?calculation=coating&field=paint_l&area_m2=118&dry_film_um=0.8+mil&volume_solids_percent=55&transfer_efficiency_percent=$B$2",
		"?calculation=area&kind=wing&field=area_m2&root_chord_m=1.45&tip_chord_m=0.9&span_m=12+ft+10+1/2+in&root_thickness_ratio=9+%25&section=naca",
		"?calculation=dew-point&field=dew_point_c&air_c=A2&relative_humidity_percent=B2&surface_c=60+%C2%B0F",
		"?calculation=marking&kind=rectangle&field=outline_m&width_m=A2&height_m=0.5&colour=white",
		"?calculation=masking&field=tape_m&edge_m=42",
		"?calculation=packs&field=cost&needed=12&packs=" + url.QueryEscape(`[{"pack":5,"price":"140.00"},{"pack":1,"price":"34.00"}]`),
	} {
		got := s.get("/docs/formula" + query)
		require.Equal(t, http.StatusOK, got.Code, query)
		found := shownFormula.FindAllStringSubmatch(got.Body.String(), -1)
		require.Len(t, found, 2, query)
		for _, one := range found {
			separator := map[string]string{"excel": ",", "calc": ";"}[one[1]]
			address := addressOf(t, html.UnescapeString(one[2]), separator, map[string]string{"A2": "12,5", "B2": "60", "$B$2": "60"})
			assert.Less(t, len(address), 2048)
			path, ours := strings.CutPrefix(address, "http://example.com")
			require.True(t, ours, address)
			answer := s.get(path)
			require.Equal(t, http.StatusOK, answer.Code, address+answer.Body.String())
			_, err := strconv.ParseFloat(answer.Body.String(), 64)
			assert.NoError(t, err, address)
			asked++
		}
	}
	assert.Equal(t, 14, asked)
}

func TestTheFormulaPageTellsFaults(t *testing.T) {
	s := newService(t)
	got := s.get("/docs/formula?calculation=coating&area_m2=3+kg")
	require.Equal(t, http.StatusOK, got.Code)
	assert.Contains(t, got.Body.String(), "3 kg is a mass")
	assert.NotContains(t, s.get(`/docs/formula?calculation=coating&area_m2=%22%3E%3Cscript%3E`).Body.String(), "<script>")
	assert.Equal(t, http.StatusNotFound, s.get("/docs/formula?calculation=nothing").Code)
}

func TestExamplesAsTables(t *testing.T) {
	s := newService(t)
	whole := s.get("/v1/examples/one-panel/estimate")
	require.Equal(t, http.StatusOK, whole.Code)
	assert.JSONEq(t, s.post("/v1/estimates", s.get("/v1/examples/one-panel").Body.String()).Body.String(), whole.Body.String())
	table := s.get("/v1/examples/one-panel/estimate.csv?table=order")
	require.Equal(t, http.StatusOK, table.Code)
	assert.True(t, strings.HasPrefix(table.Body.String(), "product,name,"), table.Body.String())
	assert.Equal(t, table.Body.String(), s.ask(http.MethodGet, "/v1/examples/one-panel/estimate?table=order", "", header{"Accept", "text/csv"}).Body.String())
	assert.Equal(t, http.StatusNotFound, s.get("/v1/examples/nothing/estimate.csv").Code)
}
