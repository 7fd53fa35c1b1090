package calculate

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/products"
)

// ask answers one calculator as a caller from outside would.
func ask(t *testing.T, name, body string) (map[string]any, map[string]string) {
	t.Helper()
	calculator, found := Find(name)
	require.True(t, found, name)
	catalogue, err := products.Load()
	require.NoError(t, err)
	var faults fault.List
	node, err := wire.Parse([]byte(body), &faults)
	require.NoError(t, err)
	in := calculator.New()
	estimate.NewReader(nil).Decode(node, in.Fields(), &faults)
	in.Check(catalogue, &faults)
	if err := faults.Err(); err != nil {
		codes := map[string]string{}
		var list *fault.Error
		require.ErrorAs(t, err, &list)
		for _, f := range list.Faults {
			codes[f.Pointer] = f.Code
			assert.NotEmpty(t, f.Detail)
		}
		return nil, codes
	}
	answer, err := in.Answer()
	require.NoError(t, err)
	text, err := json.Marshal(answer)
	require.NoError(t, err)
	var tree map[string]any
	require.NoError(t, json.Unmarshal(text, &tree))
	return tree, nil
}

// The calculators are those of the design, each once, each with an input of its
// own at every call.
func TestTheListOfCalculators(t *testing.T) {
	var names []string
	for _, c := range All() {
		names = append(names, c.Name)
		assert.NotEmpty(t, c.Doc)
		assert.NotSame(t, c.New().Fields(), c.New().Fields(), c.Name)
	}
	assert.ElementsMatch(t, []string{"area", "coating", "blasting", "masking", "marking", "voc", "day", "dew-point", "placing", "pot-life", "inspection", "packs"}, names)
	_, found := Find("weather")
	assert.False(t, found)
}

// Nothing asked, nothing answered: an empty input has faults, and no panic.
func TestAnEmptyInputHasFaults(t *testing.T) {
	for _, c := range All() {
		_, faults := ask(t, c.Name, `{}`)
		assert.NotEmpty(t, faults, c.Name)
	}
}

// One question to each, against arithmetic (identity).
func TestOneQuestionEach(t *testing.T) {
	for name, c := range map[string]struct {
		calculator, body, field string
		want                    any
	}{
		"area":       {"area", `{"kind": "panel", "width_m": "4 ft", "height_m": 0.5}`, "area_m2", 4 * 0.3048 * 0.5},
		"coating":    {"coating", `{"area_m2": 100, "dry_film_um": 50, "volume_solids_percent": 50, "transfer_efficiency_percent": 50}`, "paint_l", 100 * 50 / (1000 * 0.5 * 0.5)},
		"masking":    {"masking", `{"edge_m": 10, "tape_width_mm": 25, "roll_m": 50, "waste_percent": 20}`, "tape_m", 12.0},
		"voc":        {"voc", `{"parts": [{"volume_l": 3, "voc_g_l": 400}, {"volume_l": 1, "voc_g_l": 800}]}`, "voc_total_g", 2000.0},
		"packs":      {"packs", `{"needed": 4.5, "packs": [{"pack": 1, "price": "10.00"}, {"pack": 4, "price": "30.00"}]}`, "bought", 5.0},
		"inspection": {"inspection", `{"area_m2": 25}`, "areas", 3.0}, // an area each of 10 m² and less (SSPC-PA 2, see package inspect)
	} {
		t.Run(name, func(t *testing.T) {
			answer, faults := ask(t, c.calculator, c.body)
			require.Empty(t, faults)
			require.Contains(t, answer, c.field)
			assert.InEpsilon(t, c.want, answer[c.field], 1e-9)
		})
	}
}

// A medium of the catalogue lends its density and its breakdown; the input's own
// values win.
func TestBlastingLooksAMediumUp(t *testing.T) {
	const rest = `"area_m2": 10, "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 5, "recovered": true`
	catalogue, err := products.Load()
	require.NoError(t, err)
	product, _ := catalogue.Product("garnet")
	garnet := product.(*products.Media)
	looked, faults := ask(t, "blasting", `{"media": "garnet", `+rest+`}`)
	require.Empty(t, faults)
	thrown := looked["media_thrown_kg"].(float64)
	assert.InEpsilon(t, thrown*garnet.BreakdownPercent/100, looked["media_used_kg"], 1e-9)
	own, faults := ask(t, "blasting", `{"media": "garnet", "breakdown_percent": 50, `+rest+`}`)
	require.Empty(t, faults)
	assert.InEpsilon(t, thrown/2, own["media_used_kg"], 1e-9)

	_, faults = ask(t, "blasting", `{"media": "epoxy-primer", `+rest+`}`)
	assert.Equal(t, "unknown_reference", faults["/media"])
}

func TestAMarkingIsMeasured(t *testing.T) {
	answer, faults := ask(t, "marking", `{"kind": "stripe", "length_m": 2, "width_m": 0.5, "colour": "green"}`)
	require.Empty(t, faults)
	assert.InEpsilon(t, 1.0, answer["area_m2"], 1e-9)
	assert.InEpsilon(t, 5.0, answer["edge_once_m"], 1e-9)
	_, faults = ask(t, "marking", `{"kind": "stripe", "length_m": -2, "width_m": 0.5, "colour": "Green!"}`)
	assert.Equal(t, map[string]string{"/length_m": "out_of_range", "/colour": "wrong_type"}, faults)
}

// What the catalogue knows of a medium goes by the substrate and the pressure,
// and a strip rate of its own says that it is an estimate.
func TestBlastingTakesTheBookWhereTheInputIsSilent(t *testing.T) {
	const bead = `"nozzle_bore_mm": 6.35, "pressure_kpa": 240, "media": "glass-bead-fine", "recovered": true, "working_charge_kg": 25, "removed_film_um": 250, "area_m2": 12`
	result := func(text string) map[string]any {
		answer, faults := ask(t, "blasting", text)
		require.Empty(t, faults)
		return answer
	}
	book := result(`{` + bead + `}`)
	assert.InEpsilon(t, 3, book["strip_rate_used_m2_h"], 1e-9, "the catalogue's, at its own nozzle, pressure and film")
	assert.InEpsilon(t, 1, book["strip_rate_low_m2_h"], 1e-9)
	assert.InEpsilon(t, 6, book["strip_rate_high_m2_h"], 1e-9)
	assert.Contains(t, book["strip_rate_from"], "assumption")
	assert.InEpsilon(t, 10, book["uses"], 1e-9, "no substrate: the trade's figure")
	own := result(`{` + bead + `, "strip_rate_m2_h": 2, "substrate": "aluminium"}`)
	assert.Equal(t, "given", own["strip_rate_from"])
	assert.InEpsilon(t, 1/(0.021*math.Pow(240/172.37, math.Log(1.5)/math.Log(100.0/60))+0.05), own["uses"], 1e-6, "D-4, D-7, and 5 % spilt")

	_, faults := ask(t, "blasting", `{`+bead+`, "substrate": "cheese"}`)
	assert.Equal(t, map[string]string{"/substrate": "unknown_kind"}, faults)
	_, faults = ask(t, "blasting", `{"nozzle_bore_mm": 6.35, "pressure_kpa": 240, "media": "glass-bead-fine", "feed": "suction", "area_m2": 12}`)
	assert.Empty(t, faults, "without a flow a suction feed still has its air")
}
