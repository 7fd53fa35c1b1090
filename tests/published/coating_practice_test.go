package published

// Source: USAF TO 1-1-8, UFGS 09971, NAVFAC MO-124, TM 43-0139 and others, named
// with their mark in each case (B, S, K, L rows of the coating tables, C rows of
// the planning tables): the catalogue's values and what the engine makes of them.

import (
	"encoding/json"
	"errors"
	"testing"

	"filmbuild/estimate"
	"filmbuild/estimate/climate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/film"
	"filmbuild/estimate/inspect"
	"filmbuild/estimate/units"
	"filmbuild/estimate/voc"
	"filmbuild/products"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const order118 = "USAF TO 1-1-8"

func paintOf(t *testing.T, id string) *products.Paint {
	t.Helper()
	c, err := products.Load()
	require.NoError(t, err)
	p, ok := c.Product(id)
	require.True(t, ok, id)
	return p.(*products.Paint)
}

// band is a published range and where ours must lie in it.
type band struct {
	id, mark, source string
	low, high, got   float64
}

func checkBands(t *testing.T, bands []band) {
	t.Helper()
	for _, b := range bands {
		t.Run(b.id, func(t *testing.T) {
			assert.GreaterOrEqual(t, b.got, b.low, "%s [%s]", b.source, b.mark)
			assert.LessOrEqual(t, b.got, b.high, "%s [%s]", b.source, b.mark)
		})
	}
}

// The usual films of the catalogue lie in the films that specifications print.
func TestFilmsOfTheCatalogue(t *testing.T) {
	usual := func(id string) float64 { return *paintOf(t, id).DryFilmUM }
	checkBands(t, []band{
		{"S1", "T", order118 + " Table 5-2", 0.6 * mil, 0.9 * mil, usual("epoxy-primer")},
		{"S1 waterborne", "T", order118 + " Table 5-2", 0.6 * mil, 0.9 * mil, usual("epoxy-primer-waterborne")},
		{"S2 two coats", "T", order118 + " Table 5-2", 0.8 * mil, 2.0 * mil, 2 * usual("epoxy-primer")},
		{"S5", "T", order118 + " Table 5-2", 1.7 * mil, 2.3 * mil, usual("polyurethane-gloss-white")},
		{"S6 two coats", "T", order118 + " Table 5-2", 1.6 * mil, 5.0 * mil, 2 * usual("polyurethane-gloss-white")},
		{"S7 three coats", "T", order118 + " Table 5-2", 4.8 * mil, 7.0 * mil, 3 * usual("polyurethane-gloss-white")},
		{"S10 wash primer", "T", order118, 0.2 * mil, 0.3 * mil, usual("etch-primer")},
		{"S16 thinner", "T", order118, 0, 10, *paintOf(t, "polyurethane-gloss-white").ThinnerPercent},
		{"S19 equipment", "T", "TB 750-251", 1.0 * mil, 5000, usual("alkyd-gloss-white")},
	})
	assert.Equal(t, 20.0, *paintOf(t, "etch-primer").ThinnerPercent, "S10 [T]: 1 part to 5")
	assert.Equal(t, 0.5, *paintOf(t, "epoxy-primer").InductionH, "S17 [T]: stand 30 min")
	assert.Equal(t, 4.0, climate.LongestBatchH, "S17 [T]: no more than is used in 4 h")
}

// B1, B2: oil paint on sheet and heavy sections, brushed, in ft²/gal; ours are
// alkyds of the catalogue at their usual films.
func TestCoverageOfOilPaint(t *testing.T) {
	c, err := products.Load()
	require.NoError(t, err)
	brush, _ := c.Method("brush")
	cover := func(id string) float64 {
		p := paintOf(t, id)
		theory := found(film.TheoreticalSpreadingRate(p.VolumeSolidsPercent/100, *p.DryFilmUM))
		return found(film.PracticalSpreadingRate(theory, brush.TransferEfficiencyPercent.Likely/100, 0)) * feetPerGallon
	}
	const manual = "TM 43-0139 Table 3-2"
	checkBands(t, []band{
		{"B1 prime coat on sheet", "T", manual, 400, 600, cover("alkyd-primer")},
		{"B1 third coat on sheet", "T", manual, 600, 700, cover("alkyd-gloss-white")},
		{"B2 prime coat on heavy sections", "T", manual, 400, 550, cover("alkyd-primer")},
		{"B2 third coat on heavy sections", "T", manual, 550, 650, cover("alkyd-gloss-white")},
	})
}

// F8: a consumption factor of 1/(1 − loss) says the same as the loss.
func TestConsumptionFactor(t *testing.T) {
	const area, factor = 80.0, 1.6
	rate := found(film.TheoreticalSpreadingRate(0.55, 60))
	assert.InEpsilon(t, area*factor/rate, found(film.Paint(area, 60, 0.55, 1, 1-1/factor)), 1e-12, "F8, coating trade notes [T2]")
}

// Third column of the table of section 7: the mean that keeps all but 1 % of the
// readings above 0.8 of the nominal film.
func TestMeanFilmForTheLeastReading(t *testing.T) {
	const table = "normal distribution; bound of A1 (ISO 19840)"
	factor := func(c float64) float64 {
		f, bounded, err := film.LeastReadingFactor(film.Min80Of20, c)
		require.True(t, err == nil && bounded)
		return f
	}
	checkFigures(t, []figure{
		{"7 c=0.15 least", "D", table, 1.23, 0.005, factor(0.15)},
		{"7 c=0.20 least", "D", table, 1.50, 0.005, factor(0.20)},
		{"7 c=0.25 least", "D", table, 1.91, 0.005, factor(0.25)},
		{"7 c=0.30 least", "D", table, 2.65, 0.005, factor(0.30)},
	})
	_, bounded, err := film.LeastReadingFactor(film.Mean, 0.2)
	assert.True(t, err == nil && !bounded, "the mean bounds no reading")
	_, bounded, err = film.LeastReadingFactor(film.Min90Of10, 0.45)
	assert.True(t, err == nil && !bounded, "no mean is enough")
}

// A1 and A4 as counts of 45 readings; A3's levels; P1's corrections.
func TestAcceptanceOfReadings(t *testing.T) {
	r := func(rule string, level int, grade string) inspect.Result {
		i := inspect.Inspection{AreaM2: 40, DryFilmUm: new(100.0), FilmRule: rule, RestrictionLevel: level, ProfileGrade: grade}
		i.Check(func(pointer, code, detail string) { t.Errorf("%s %s: %s", pointer, code, detail) })
		got, err := i.Calculate()
		require.NoError(t, err)
		return got
	}
	iso, imo := r("min_80_20", 3, ""), r("min_90_10", 3, "")
	assert.Equal(t, 45, iso.Readings, "A6 [T]: 3 areas between 300 and 1000 ft²")
	assert.InDelta(t, 80, *iso.LeastReadingUm, 1e-9, "A1 [T]")
	assert.Equal(t, 8, *iso.MostBelow, "A1 [T]: fewer than 20 % of 45")
	assert.InDelta(t, 300, *iso.MostReadingUm, 1e-9, "A1 [T]: often 3 times")
	assert.InDelta(t, 90, *imo.LeastReadingUm, 1e-9, "A4 [T]")
	assert.Equal(t, 4, *imo.MostBelow, "A4 [T]: at least 90 % of 45 at the nominal film")
	for level, want := range map[int][2]float64{1: {100, 100}, 3: {80, 120}, 4: {80, 150}} {
		got := r("mean", level, "")
		assert.InDelta(t, want[0], *got.LeastSpotUm, 1e-9, "A3, level %d", level)
		assert.InDelta(t, want[1], *got.MostSpotUm, 1e-9, "A3, level %d [1 is T, the others M]", level)
	}
	assert.Nil(t, r("mean", 5, "").MostSpotUm, "A3, level 5: no maximum [M]")
	for grade, want := range map[string]float64{"fine": 10, "medium": 25, "coarse": 40, "unknown": 25} {
		assert.Equal(t, want, *r("mean", 3, grade).CorrectionUm, "P1 [M], %s", grade)
	}
}

// S15: 43 to 58 µm of topcoat is one wet cross-coat, two passes of the gun.
func TestPassesOfACrossCoat(t *testing.T) {
	white := paintOf(t, "polyurethane-gloss-white")
	c, err := products.Load()
	require.NoError(t, err)
	hvlp, _ := c.Method("hvlp")
	for _, dry := range []float64{1.7 * mil, *white.DryFilmUM} {
		wet := found(film.WetFilm(dry, white.VolumeSolidsPercent/100, 0))
		passes, err := film.Passes(wet, hvlp.PassWetFilmUM.Likely)
		require.NoError(t, err)
		assert.Equal(t, 2, passes, "S15, %s [T], %.0f µm dry", order118, dry)
	}
}

// K4, K5: how long Navy epoxy stands after mixing, by temperature.
func TestInductionByTemperature(t *testing.T) {
	const manual = "NAVFAC MO-124"
	at := func(fahrenheit float64) float64 {
		return found(climate.Induction(0.75, celsius(75), celsius(fahrenheit))) // middle of 0.5 to 1 h above 70 °F
	}
	checkBands(t, []band{
		{"K5 above 70 °F", "T", manual, 0.5, 1, at(80)},
		{"K5 at 65 °F", "T", manual, 1, 1.5, at(65)},
		{"K4", "T", "MIL-HDBK-1110 7.3.1.1: about 30 min; training 15 to 30", 0.25, 0.5, *paintOf(t, "epoxy-primer").InductionH},
	})
	assert.InDelta(t, 2, at(55), 0.15, "K5 at 55 °F [T]: printed as 2 h; the factor is derived from the middles of the bands")
}

// C07, C11, C12 and K7 as the catalogue's windows; C09, the factors for 10 °C that
// the least times of C07 imply, against those the rule uses.
func TestRecoatWindows(t *testing.T) {
	const guide = "UFGS 09971"
	white, primer := paintOf(t, "polyurethane-gloss-white"), paintOf(t, "epoxy-primer")
	rows := [][4]float64{{16, 21, 8, 48}, {22, 27, 6, 48}, {28, 32, 4, 36}, {33, 38, 3, 24}, {39, 43, 2, 12}, {44, 49, 1, 2}}
	require.Len(t, white.Recoat, len(rows))
	for i, w := range white.Recoat {
		assert.Equal(t, rows[i], [4]float64{w.FromC, w.ToC, *w.MinH, w.MaxH}, "C07, %s [A]", guide)
	}
	w := primer.Recoat[0]
	assert.Equal(t, [3]float64{5, 8, 24}, [3]float64{*w.MinH, w.MaxH, *w.WipeUntilH}, "C11, %s 5.6.2 [A]", order118)
	assert.Equal(t, "scuff", w.Missed, "C11 [A]")
	assert.Equal(t, 7*24.0, paintOf(t, "epoxy-primer-high-build").Recoat[0].MaxH, "K7, C17, NAVFAC MO-124 [T]")

	table := []climate.RecoatTime{{FromC: 16, ToC: 21, LeastH: new(8.0), MostH: 48}}
	cold, scaled, known := climate.RecoatByRule(table, 6)
	require.True(t, scaled && known)
	assert.InDelta(t, 16, *cold.LeastH, 1e-12, "C09: 1.62 to 2.10 for 10 °C; the rule takes 2")
	assert.Equal(t, 48.0, cold.MostH, "cold does not lengthen the window")
	hot, _, _ := climate.RecoatByRule(table, 31)
	assert.InDelta(t, 24, hot.MostH, 1e-12)
	_, _, known = climate.RecoatByRule(table, 45)
	assert.False(t, known, "too far from any row")
}

// T1 to T4, T9: the classes of part lie where the sources put them.
func TestEfficiencyByPart(t *testing.T) {
	c, err := products.Load()
	require.NoError(t, err)
	on := func(method, size string) products.Value {
		m, ok := c.Method(method)
		require.True(t, ok)
		return m.EfficiencyOn(size)
	}
	checkFigures(t, []figure{
		{"T1 airless", "T", "NR 440.48 Table 1", 25, 0, on("airless", "medium").Low},
		{"T2 air-atomised", "T", "1200-03-16-.57 Table 1", 25, 0, on("conventional", "medium").Low},
		{"T3 air", "M", "40 CFR 60.453 Table 1", 40, 0, on("conventional", "medium").High},
		{"T3 airless", "M", "40 CFR 60.453 Table 1", 45, 0, on("airless", "large").Low},
		{"T4 air-atomised, solvent-borne", "M", "40 CFR 60.393", 50, 0, on("conventional", "large").Likely},
		{"T4 electrostatic by hand", "M", "40 CFR 60.393", 75, 0, on("electrostatic", "large").Likely},
		{"T9 conventional, small", "T", "finishing consultant", 5, 0, on("conventional", "small").Likely},
		{"T9 HVLP, small, low", "T", "finishing consultant", 7, 0, on("hvlp", "small").Low},
		{"T9 HVLP, small, high", "T", "finishing consultant", 10, 0, on("hvlp", "small").High},
		{"T9 electrostatic, small, low", "T", "finishing consultant", 7, 0, on("electrostatic", "small").Low},
		{"T9 large", "T", "finishing consultant", 65, 0, on("conventional", "large").High},
	})
}

// L1 to L8: each limit is printed in g/L and in lb/gal, rounded to a tenth; that
// of L7 is cut to a hundredth (250 g/L is 2.086).
func TestLimitsInBothUnits(t *testing.T) {
	for id, l := range map[string]struct {
		grams  float64
		pounds string
		within float64
	}{
		"L1": {350, "2.9 lb/gal", 6}, "L2": {540, "4.5 lb/gal", 6}, "L3": {650, "5.4 lb/gal", 6}, "L4": {420, "3.5 lb/gal", 6},
		"L7": {250, "2.08 lb/gal", 1.2}, "L8": {340, "2.8 lb/gal", 6}, "V7": {340, "2.837 lb/gal", 0.06}, "V7 unit": {119.8, "1 lb/gal", 0.05},
	} {
		got, err := units.Parse(l.pounds, "g_l")
		require.NoError(t, err)
		assert.InDelta(t, l.grams, got, l.within, "%s [T; L4 M]", id)
	}
}

// L8: ordinary thinner must not push an aircraft primer above 340 g/L. L9: exempt
// thinner may go in, and lowers the solids only.
func TestThinnerAndTheLimit(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	try := func(thinner string, percent float64) (*estimate.Estimate, error) {
		text, err := json.Marshal(map[string]any{"name": "L8", "currency": "USD", "voc_limit_g_l": "2.84 lb/gal",
			"components": []any{map[string]any{"id": "a", "shape": map[string]any{"kind": "measured", "area_m2": 20, "edge_m": 0}}},
			"products":   []any{map[string]any{"id": "primer", "kind": "paint", "volume_solids_percent": 60, "voc_g_l": 340, "thinner": thinner}},
			"steps":      []any{map[string]any{"id": "s", "operation": "coat", "on": []any{"a"}, "product": "primer", "dry_film_um": 20, "method": "hvlp", "thinner_percent": percent}}})
		require.NoError(t, err)
		return estimate.NewReader(nil).Estimate(text, catalogue)
	}
	_, err = try("thinner-epoxy", 5)
	var faults *fault.Error
	require.True(t, errors.As(err, &faults), "L8, %s 6.12.6.4 [T]", order118)
	assert.Contains(t, err.Error(), "thinner_percent")
	e, err := try("thinner-exempt", 25)
	require.NoError(t, err, "L9, %s 6.12.6.4 [T]", order118)
	assert.InDelta(t, 340, *e.Steps[0].Mixing[0].VOCGL, 1e-9, "L9 [T]")
	assert.InDelta(t, 20*1.25/0.6, e.Steps[0].Mixing[0].WetFilmUM, 1e-9, "L9 [T]: it does lower the solids")
}

// V2, V3: the solids that a VOC implies and the VOC on a solids basis say the
// same: S = C/(1 − C/D) is C over the implied solids.
func TestVOCOnASolidsBasis(t *testing.T) {
	const c = 3.5 * lbGalGL
	assert.InEpsilon(t, c/(1-3.5/7.36), c/found(voc.ImpliedSolids(c, voc.SolventDensity)), 1e-12, "V2, 30 TAC 115.423(1) [T]")
}
