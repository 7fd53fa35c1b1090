package products

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func ptr(v float64) *float64 { return &v }

func TestKinds(t *testing.T) {
	units := map[string]string{"paint": "L", "thinner": "L", "liquid": "L", "media": "kg", "tape": "m", "film": "m", "disc": "pcs", "item": "pcs"}
	assert.Len(t, Kinds(), len(units))
	for _, kind := range Kinds() {
		p, ok := New(kind)
		require.True(t, ok, kind)
		assert.Equal(t, kind, p.Base().Kind)
		assert.Equal(t, units[kind], p.Base().Unit())
		assert.Equal(t, strings.ToLower(reflect.TypeOf(p).Elem().Name()), kind)
	}
	_, ok := New("perfume")
	assert.False(t, ok)
	assert.Empty(t, (&Common{Kind: "perfume"}).Unit())
}

// Every limit tag is an interval, and every number on the wire has one and a
// word of explanation.
func TestTags(t *testing.T) {
	var look func(reflect.Type)
	look = func(s reflect.Type) {
		for i := range s.NumField() {
			f := s.Field(i)
			inner := f.Type
			for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice {
				inner = inner.Elem()
			}
			if inner.Kind() == reflect.Struct && inner.PkgPath() == s.PkgPath() {
				look(inner)
			}
			if inner.Kind() == reflect.Float64 {
				_, err := parseInterval(f.Tag.Get("limit"))
				assert.NoError(t, err, "%s.%s", s, f.Name)
			}
			if !f.Anonymous {
				assert.NotEmpty(t, f.Tag.Get("json"), "%s.%s", s, f.Name)
				assert.True(t, f.Tag.Get("doc") != "" || f.Tag.Get("json") == "", "%s.%s", s, f.Name)
			}
		}
	}
	for _, kind := range Kinds() {
		p, _ := New(kind)
		look(reflect.TypeOf(p).Elem())
	}
}

func faultsOf(p interface {
	Check(func(pointer, code, detail string))
}) map[string]string {
	found := map[string]string{}
	p.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func TestCheckAcceptsTheExamplesOfTheDesign(t *testing.T) {
	price := Price{decimal.RequireFromString("140.00")}
	for _, p := range []Product{
		&Paint{Common: Common{ID: "primer-x", Kind: "paint", Packs: []Pack{{PackL: ptr(5), Price: &price}, {PackL: ptr(1)}}}, VolumeSolidsPercent: 55, DryFilmDensityKgL: ptr(1.6), VOCGL: ptr(340),
			Mix: &Mix{Base: 4, Hardener: 1}, Thinner: "thinner-x", ThinnerPercent: ptr(0), PotLifeH: ptr(4), PotLifeAtC: ptr(21)},
		&Liquid{Common: Common{ID: "wash-x", Kind: "liquid", Packs: []Pack{{PackL: ptr(5)}}}, CoverageLM2: 0.2},
		&Media{Common: Common{ID: "bead-x", Kind: "media", Packs: []Pack{{PackKg: ptr(25)}}}, BulkDensityKgM3: 1450, BreakdownPercent: 8},
		&Tape{Common: Common{ID: "tape-x", Kind: "tape", Packs: []Pack{{PackM: ptr(50)}}}, WidthMM: 25},
		&Disc{Common: Common{ID: "disc-x", Kind: "disc", Packs: []Pack{{PackCount: ptr(50)}}}, AreaM2: 0.5},
		&Thinner{Common: Common{ID: "thinner-x", Kind: "thinner"}},
		&Film{Common: Common{ID: "film-x", Kind: "film"}, WidthMM: 500},
		&Item{Common: Common{ID: "item-x", Kind: "item"}},
	} {
		assert.Empty(t, faultsOf(p), p.Base().ID)
	}
}

func TestCheckReportsAll(t *testing.T) {
	negative, fine := Price{decimal.RequireFromString("-1")}, Price{decimal.RequireFromString("1.00001")}
	paint := &Paint{
		Common: Common{ID: "x", Kind: "paint", Hazards: []string{"solvent", "magic"}, Note: strings.Repeat("a", 501),
			Packs: []Pack{{PackL: ptr(0)}, {PackKg: ptr(5)}, {}, {PackL: ptr(5), Price: &negative}, {PackL: ptr(1), Price: &fine}}},
		VOCGL: ptr(math.NaN()), DensityKgL: ptr(-1), Mix: &Mix{Base: 4}, ThinnerPercent: ptr(-5), PotLifeH: ptr(math.Inf(1)), Role: "undercoat",
	}
	assert.Equal(t, map[string]string{
		"/volume_solids_percent": "out_of_range",
		"/voc_g_l":               "out_of_range",
		"/density_kg_l":          "out_of_range",
		"/mix/hardener":          "out_of_range",
		"/thinner_percent":       "out_of_range",
		"/pot_life_h":            "out_of_range",
		"/pot_life_at_c":         "inconsistent",
		"/role":                  "unknown_kind",
		"/hazards/1":             "unknown_kind",
		"/note":                  "too_many",
		"/packs/0/pack_l":        "out_of_range",
		"/packs/1/pack_kg":       "not_applicable",
		"/packs/2/pack_l":        "required",
		"/packs/3/price":         "out_of_range",
		"/packs/4/price":         "out_of_range",
	}, faultsOf(paint))

	assert.Equal(t, map[string]string{"/bulk_density_kg_m3": "out_of_range", "/breakdown_percent": "not_increasing", "/size_high_um": "not_increasing", "/strip_rate_high_m2_h": "not_increasing", "/breakdown_by_substrate/0/breakdown_percent": "out_of_range"},
		faultsOf(&Media{Common: Common{Kind: "media"}, BreakdownPercent: 5, BreakdownLowPercent: ptr(6), SizeLowUM: ptr(9), SizeHighUM: ptr(8), StripRateM2H: ptr(3), StripRateHighM2H: ptr(2), Breakdowns: []SubstrateBreakdown{{"steel", 101}}}))
	assert.Equal(t, map[string]string{"/voc_g_l": "inconsistent"}, faultsOf(&Thinner{Common: Common{Kind: "thinner"}, VOCGL: ptr(900), DensityKgL: ptr(0.8)}))
	assert.Equal(t, map[string]string{"/use": "unknown_kind", "/coverage_l_m2": "out_of_range"}, faultsOf(&Liquid{Common: Common{Kind: "liquid"}, Use: "drink"}))
	assert.Equal(t, map[string]string{"/use": "unknown_kind", "/width_mm": "out_of_range"}, faultsOf(&Tape{Common: Common{Kind: "tape"}, Use: "red"}))
	assert.Equal(t, map[string]string{"/use": "unknown_kind", "/width_mm": "out_of_range"}, faultsOf(&Film{Common: Common{Kind: "film"}, Use: "red"}))
	assert.Equal(t, map[string]string{"/area_m2": "out_of_range", "/packs/0/pack_count": "out_of_range"},
		faultsOf(&Disc{Common: Common{Kind: "disc", Packs: []Pack{{PackCount: ptr(2.5)}}}}))
	assert.Equal(t, map[string]string{"/packs": "too_many"}, faultsOf(&Item{Common: Common{Kind: "item", Packs: make([]Pack, mostPacks+1)}}))
}

func TestDetailNamesNumberUnitAndRemedy(t *testing.T) {
	var detail string
	(&Tape{Common: Common{Kind: "tape"}, WidthMM: 2000}).Check(func(_, _, d string) { detail = d })
	assert.Equal(t, "width_mm is 2000 mm; it must be above 0 mm and at most 1000 mm", detail)
}

func TestPacksCalculator(t *testing.T) {
	var in PacksInput
	require.NoError(t, json.Unmarshal([]byte(`{"needed": 6.2, "packs": [{"pack": 5, "price": "140.00"}, {"pack": 1, "price": "34"}]}`), &in))
	require.Empty(t, faultsOf(&in))
	result, err := in.Calculate()
	require.NoError(t, err)
	text, err := json.Marshal(result)
	require.NoError(t, err)
	// By hand: 5 + 1 + 1 costs 208, 5 + 5 costs 280.
	assert.JSONEq(t, `{"packs": [{"pack": 5, "count": 1, "price": "140.00"}, {"pack": 1, "count": 2, "price": "34.00"}], "bought": 7, "cost": "208.00", "left_over": 0.8}`, string(text))

	unpriced := PacksInput{Needed: ptr(3), Packs: []PackOffer{{Pack: 2}}}
	result, err = unpriced.Calculate()
	require.NoError(t, err)
	assert.Equal(t, PacksResult{Packs: []PackLine{{Pack: 2, Count: 2}}, Bought: 4, LeftOver: 1}, result)

	negative := decimal.RequireFromString("-1")
	bad := PacksInput{Needed: ptr(-1), Packs: []PackOffer{{Pack: 0}, {Pack: 1, Price: &negative}}}
	assert.Equal(t, map[string]string{"/needed": "out_of_range", "/packs/0/pack": "out_of_range", "/packs/1/price": "out_of_range"}, faultsOf(&bad))
	_, err = bad.Calculate()
	assert.Error(t, err)
	assert.Equal(t, map[string]string{"/packs": "required"}, faultsOf(&PacksInput{Needed: ptr(1)}))
}

func TestAPriceKeepsItsCents(t *testing.T) {
	for text, want := range map[string]string{"44.00": `"44.00"`, "44": `"44.00"`, "0.125": `"0.125"`} {
		got, err := json.Marshal(Price{decimal.RequireFromString(text)})
		require.NoError(t, err)
		assert.Equal(t, want, string(got))
	}
}
