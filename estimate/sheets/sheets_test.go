package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/products"
)

// job has a figure on both sides of a hull, one on a deck that is the same on
// both sides, and one that no step paints and no body can carry.
const job = `{"name": "Hull", "currency": "EUR",
	"components": [{"id": "hull", "shape": {"kind": "box", "length_m": 4, "width_m": 2, "height_m": 1}}, {"id": "deck", "count": 2, "shape": {"kind": "measured", "area_m2": 6}}],
	"markings": [
		{"id": "name", "kind": "lettering", "text": "AB", "height_m": 0.2, "colour": "white", "count": 2, "on": "hull/left",
		 "place": {"station": {"station_m": 1.5, "water_line_m": 0.6, "face": "left", "datum": "bow"}, "mirrored": true}},
		{"id": "spot", "kind": "disc", "size_m": 0.3, "colour": "red", "count": 2, "on": "deck",
		 "place": {"offsets": {"from_a_m": 0.4, "from_b_m": 0.9, "edge_a": "coaming"}, "mirrored": true}},
		{"id": "round", "kind": "disc", "size_m": 0.9, "colour": "red", "skin_radius_m": 0.3, "sizes": "projected"}]}`

func draw(t *testing.T, w Wanted) (picture string, codes map[string]string) {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	j, e, err := estimate.NewReader(nil).Worked([]byte(job), catalogue)
	require.NoError(t, err)
	codes = map[string]string{}
	data, err := Draw(j, e, w, func(pointer, code, detail string) {
		assert.NotEmpty(t, detail)
		codes[pointer] = code
	})
	require.NoError(t, err)
	return string(data), codes
}

func TestFacesOfAJob(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	_, e, err := estimate.NewReader(nil).Worked([]byte(job), catalogue)
	require.NoError(t, err)
	assert.Equal(t, []string{"deck", "hull/left", "hull/right"}, Faces(e))
}

// The left side shows the station to the right of the datum, the right side to
// its left; the letters read the same on both: the first of them stands left of
// the second.
func TestBothSides(t *testing.T) {
	left, codes := draw(t, Wanted{Component: "hull", Face: "left"})
	require.Empty(t, codes)
	right, codes := draw(t, Wanted{Component: "hull", Face: "right"})
	require.Empty(t, codes)
	for _, side := range []string{left, right} {
		assert.Contains(t, side, "STA 1500")
		assert.Contains(t, side, "WL 600")
		assert.Contains(t, side, `data-marking="name"`)
	}
	assert.Contains(t, left, ">1500<")
	assert.Contains(t, right, ">−1500<")
	shape := func(picture string) string {
		_, rest, _ := strings.Cut(picture, `<g id="marking-1-pass-1"`)
		_, rest, _ = strings.Cut(rest, `d="`)
		return rest[:strings.IndexByte(rest, '"')]
	}
	assert.Equal(t, len(shape(left)), len(shape(right)))
}

func TestOtherSideOfAFace(t *testing.T) {
	here, codes := draw(t, Wanted{Component: "deck"})
	require.Empty(t, codes)
	assert.Contains(t, here, ">900<")
	assert.Contains(t, here, "coaming")
	there, codes := draw(t, Wanted{Component: "deck", OtherSide: true})
	require.Empty(t, codes)
	assert.Contains(t, there, ">−900<")
}

func TestSheetsThatCannotBeDrawn(t *testing.T) {
	for _, c := range []struct {
		w    Wanted
		want map[string]string
	}{
		{Wanted{}, map[string]string{"/marking": "required"}},
		{Wanted{Marking: "nobody"}, map[string]string{"/marking": "unknown_reference"}},
		{Wanted{Marking: "round"}, map[string]string{"/marking": "inconsistent"}},
		{Wanted{Component: "hull"}, map[string]string{"/component": "unknown_reference"}},
		{Wanted{Component: "hull", Face: "left", OtherSide: true}, map[string]string{"/other_side": "not_applicable"}},
		{Wanted{Component: "hull", Face: "left", Layer: "cut"}, map[string]string{"/layer": "not_applicable"}},
		{Wanted{Marking: "name", Component: "hull", Date: strings.Repeat("1", 200)}, map[string]string{"/marking": "inconsistent", "/date": "too_long"}},
	} {
		picture, codes := draw(t, c.w)
		assert.Empty(t, picture)
		assert.Equal(t, c.want, codes)
	}
}

func TestOneMarkingOfAJob(t *testing.T) {
	whole, codes := draw(t, Wanted{Marking: "name", Date: "spring", Units: "us"})
	require.Empty(t, codes)
	for _, said := range []string{">name<", ">Hull<", ">spring<", "dimensions in inches"} {
		assert.Contains(t, whole, said)
	}
	lines, codes := draw(t, Wanted{Marking: "name", Layer: "cut"})
	require.Empty(t, codes)
	assert.Contains(t, lines, `id="film"`)
}
