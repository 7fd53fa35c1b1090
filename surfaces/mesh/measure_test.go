package mesh

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUnitIsRequiredAndScales(t *testing.T) {
	data := binarySTL(cubeTriangles(Point{1, 1, 1}, 2))
	for unit, metres := range map[string]float64{"m": 1, "mm": 0.001, "cm": 0.01, "in": 0.0254, "ft": 0.3048} {
		r := measureBytes(t, data, DefaultOptions(unit))
		assert.InEpsilon(t, 24*metres*metres, r.AreaM2, 1e-15, unit)
		assert.InEpsilon(t, 8*metres*metres*metres, r.VolumeM3, 1e-15, unit)
		assert.InEpsilon(t, 3*metres, r.Box.High[2], 1e-15, unit)
	}
	for unit, code := range map[string]string{"": "required", "yd": "wrong_unit", "M": "wrong_unit"} {
		_, err := Measure(context.Background(), strings.NewReader(oneFacet), Options{Unit: unit})
		var bad *OptionError
		require.ErrorAs(t, err, &bad)
		assert.Equal(t, code, bad.Code)
		assert.Equal(t, "/unit", bad.Pointer)
		assert.Contains(t, bad.Detail, "ft")
	}
}

// The limits are those of reference 6d.6.
func TestSizeWarnings(t *testing.T) {
	for size, code := range map[float64]string{0.049: "very_small", 0.051: "", 99: "", 101: "very_large"} {
		r := measureBytes(t, binarySTL(cubeTriangles(Point{}, size)), DefaultOptions("m"))
		if code == "" {
			assert.Empty(t, r.Warnings, "%g", size)
		} else {
			assert.Contains(t, codes(r), code, "%g", size)
		}
	}
	far := measureBytes(t, binarySTL(cubeTriangles(Point{1e6, 0, 0}, 1)), DefaultOptions("m"))
	assert.Contains(t, codes(far), "far_from_origin")
}

func TestOptionsAreChecked(t *testing.T) {
	bad := Options{Unit: "m", Split: SplitUpDown, AngleDeg: 91, CheckFacets: -1, Samples: 20_000, FacetsPerTurn: 2}
	found := map[string]string{}
	bad.Check(func(pointer, code, detail string) { found[pointer] = code; assert.NotEmpty(t, detail) })
	assert.Equal(t, map[string]string{
		"/axis": "out_of_range", "/angle_deg": "out_of_range", "/check_facets": "out_of_range",
		"/samples": "out_of_range", "/facets_per_turn": "out_of_range",
	}, found)
	found = map[string]string{}
	Options{Unit: "m", Split: "sideways"}.Check(func(pointer, code, _ string) { found[pointer] = code })
	assert.Equal(t, "unknown_kind", found["/split"])
	DefaultOptions("mm").Check(func(pointer, _, detail string) { assert.Fail(t, pointer, detail) })
	Options{Unit: "mm"}.Check(func(pointer, _, detail string) { assert.Fail(t, pointer, detail) })
}

// A cube of 2 has four facing sides each way of 4 m² (identity).
func TestSplitByHalfSpaces(t *testing.T) {
	o := DefaultOptions("m")
	o.Split = SplitUpDown
	r := measureBytes(t, binarySTL(cubeTriangles(Point{5, 5, 5}, 2)), o)
	assert.Equal(t, []Face{{"upper", 4}, {"lower", 4}, {"side", 16}}, r.Faces)
	assert.Equal(t, 16.0, r.Border.AreaM2, "upright sides lie on the border of half spaces")
	assert.Contains(t, codes(r), "near_border")
	assert.ElementsMatch(t, []Edge{{[2]string{"upper", "side"}, 8}, {[2]string{"lower", "side"}, 8}}, r.Checks.Edges)

	o.Split, o.Axis, o.AngleDeg = SplitLeftRight, Point{0, -3, 0}, 45
	r = measureBytes(t, binarySTL(cubeTriangles(Point{}, 2)), o)
	assert.Equal(t, []Face{{"left", 4}, {"right", 4}, {"middle", 16}}, r.Faces)
	assert.Zero(t, r.Border.AreaM2)
}

// Of a sphere, the cap within the angle α of the axis has the share
// (1 − cos α)/2 of the area (identity); 3° rings make it so to 2 %.
func TestSplitOfASphere(t *testing.T) {
	var profile [][2]float64
	for i := 0; i <= 60; i++ {
		a := math.Pi * float64(i) / 60
		profile = append(profile, [2]float64{math.Sin(a), -math.Cos(a)})
	}
	profile[0][0], profile[60][0] = 0, 0
	o := DefaultOptions("m")
	o.Split, o.AngleDeg = SplitUpDown, 60
	r := measureBytes(t, binarySTL(revolve(profile, 120)), o)
	assert.True(t, r.Checks.Closed)
	assert.InEpsilon(t, 0.25*4*math.Pi, r.Faces[0].AreaM2, 0.02)
	assert.InEpsilon(t, r.Faces[0].AreaM2, r.Faces[1].AreaM2, 1e-6)
	sum := 0.0
	for _, f := range r.Faces {
		sum += f.AreaM2
	}
	assert.InEpsilon(t, r.AreaM2, sum, 1e-14, "faces add up")
	assert.Empty(t, r.Inside.BothSides)
}

func TestChosenSolids(t *testing.T) {
	text := strings.Replace(oneFacet, "solid a", "solid", 1) + strings.ReplaceAll(oneFacet, "1 0 0", "2 0 0")
	o := DefaultOptions("m")
	o.Solids = []string{"a"}
	r := measureBytes(t, []byte(text), o)
	assert.Equal(t, 1.0, r.AreaM2)
	require.Len(t, r.Solids, 1)
	assert.EqualValues(t, 1, r.Facets)
	o.Solids = []string{"solid 1"}
	assert.Equal(t, 0.5, measureBytes(t, []byte(text), o).AreaM2)
	o.Solids = []string{"hollow"}
	var empty *OptionError
	_, err := Measure(context.Background(), strings.NewReader(text+"solid hollow\nendsolid\n"), o)
	require.ErrorAs(t, err, &empty)
	assert.Equal(t, "inconsistent", empty.Code)
	o.Solids = []string{"a", "fin"}
	_, err = Measure(context.Background(), strings.NewReader(text), o)
	var bad *OptionError
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, "unknown_reference", bad.Code)
	assert.Equal(t, "/solids/1", bad.Pointer)
	assert.Contains(t, bad.Detail, `"solid 1", "a"`)
}

// Blocks and single facets are two ways to the same sums.
func TestBlocksAgreeWithFacets(t *testing.T) {
	var triangles []triangle
	for i := range 500 {
		triangles = append(triangles, cubeTriangles(Point{float64(i), -float64(i % 7), 3}, 0.1*float64(i%13+1))...)
	}
	data := binarySTL(triangles)
	fast := measureBytes(t, data, Options{Unit: "m"})
	slow := measureBytes(t, data, DefaultOptions("m"))
	assert.InEpsilon(t, slow.AreaM2, fast.AreaM2, 1e-15)
	assert.InEpsilon(t, slow.VolumeM3, fast.VolumeM3, 1e-12)
	assert.Equal(t, slow.Box, fast.Box)
	assert.Equal(t, slow.Facets, fast.Facets)
	assert.Equal(t, fast.Facets, fast.Solids[0].Facets)
	assert.Contains(t, codes(fast), "checks_left_out")
	assert.Nil(t, fast.Checks)
}

func TestWorkingGivesTheArea(t *testing.T) {
	r := measureBytes(t, binarySTL(cubeTriangles(Point{}, 3)), DefaultOptions("ft"))
	w := r.Working[0]
	assert.Equal(t, "area_m2", w.Quantity)
	assert.InEpsilon(t, r.AreaM2, w.Terms["Σ"]*w.Terms["u"]*w.Terms["u"], 1e-15)
}
