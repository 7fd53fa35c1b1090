package published

// Source: OSHA silica eTool (C rows), trade table of abrasive life and
// measured bead losses (B, D rows), identities (E-11, E-13); the mark stands
// in each case.

import (
	"testing"

	"filmbuild/estimate/blast"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	silicaTool = "OSHA silica eTool, economics of aluminium oxide"
	lbPerFt2   = poundKg / squareFoot // kg/m² in lb/ft²
)

// oxideHour is the eTool's hour with a 1/2 in nozzle: C-1.
func oxideHour(t *testing.T, recovered bool) blast.Result {
	t.Helper()
	b := blast.NewBlasting()
	b.NozzleBoreMm, b.PressureKPa = 12.7, 100*psiKPa
	b.AreaM2, b.StripRateM2H = new(285*squareFoot), new(285*squareFoot)
	b.MediaFlowKgH, b.BreakdownPercent, b.Recovered = new(2000*poundKg), new(10.0), recovered
	b.RemovedFilmUm, b.RemovedFilmDensityKgL = 75, new(1.4) // E-11
	b.Check(func(pointer, code, detail string) { t.Errorf("%s %s: %s", pointer, code, detail) })
	r, err := b.Calculate()
	require.NoError(t, err)
	return r
}

func TestAluminiumOxideHour(t *testing.T) {
	r := oxideHour(t, true)
	usedTons := *r.MediaUsedKg / poundKg / 2000
	media, disposal := 700*usedTons, 25*usedTons
	checkFigures(t, []figure{
		{"C-1 used", "C", silicaTool, 200, 1e-6, *r.MediaUsedKg / poundKg},
		{"C-1 hours", "C", silicaTool, 1, 1e-9, *r.Hours},
		{"C-1 media, $", "C", silicaTool, 70.00, 0.005, media},
		{"C-1 disposal, $", "C", silicaTool, 2.50, 0.005, disposal},
		{"C-1 total, $", "C", silicaTool, 92.50, 0.005, media + disposal + 20**r.Hours},
		{"C-1 per ft²", "C", silicaTool, 0.32456, 0.000005, (media + disposal + 20**r.Hours) / 285},
		{"C-3 thrown, lb/ft²", "D", silicaTool, 7.018, 0.001 * 7.018, *r.MediaThrownKgM2 / lbPerFt2},
		{"C-3 thrown, kg/m²", "D", silicaTool, 34.26, 0.001 * 34.26, *r.MediaThrownKgM2},
		{"C-3 net, lb/ft²", "D", silicaTool, 0.702, 0.001 * 0.702, *r.MediaUsedKg / poundKg / 285},
		{"C-3 net, kg/m²", "D", silicaTool, 3.43, 0.005, *r.MediaUsedKg / (285 * squareFoot)},
	})
}

// C-4: cost per ft² = (A(P+D)/R + E + L)/X, with C-1's numbers; R of that
// formula is our uses (D-2).
func TestCostFormulaOfTheTrade(t *testing.T) {
	r := oxideHour(t, true)
	const tonsAnHour, price, disposal, labour, rate = 1.0, 700.0, 25.0, 20.0, 285.0
	cost := (tonsAnHour*(price+disposal) / *r.Uses + labour) / rate
	assert.InDelta(t, 0.32456, cost, 0.000005, "C-4 [C], D-2 [D]")
}

func TestRemovedFilmAndWaste(t *testing.T) {
	again, once := oxideHour(t, true), oxideHour(t, false)
	const area = 285 * squareFoot
	mil15 := blast.NewBlasting()
	mil15.AreaM2, mil15.NozzleBoreMm, mil15.PressureKPa = new(1.0), 6.35, 200
	mil15.RemovedFilmUm, mil15.RemovedFilmDensityKgL = mil, new(1.5)
	thin, err := mil15.Calculate()
	require.NoError(t, err)
	checkFigures(t, []figure{
		{"E-11 75 µm at 1.4, g/m²", "D", "definition", 105, 1e-9, 1000 * *again.RemovedFilmKg / area},
		{"E-11 75 µm at 1.4, lb/ft²", "D", "definition", 0.0215, 0.00005, *again.RemovedFilmKg / area / lbPerFt2},
		{"E-11 1 mil at 1.5, g/m²", "D", "definition", 38.1, 0.05, 1000 * *thin.RemovedFilmKg},
		{"E-11 1 mil at 1.5, lb/ft²", "D", "definition", 0.0078, 0.00005, *thin.RemovedFilmKg / lbPerFt2},
		{"E-13 recycled, % of waste", "D", "C-3 and E-11", 3.0, 0.02 * 3.0, 100 * *again.RemovedFilmKg / *again.WasteKg},
		{"E-13 single use, % of waste", "D", "C-3 and E-11", 0.31, 0.02 * 0.31, 100 * *once.RemovedFilmKg / *once.WasteKg},
	})
}

// A-27, L03: production from flow over consumption of 5 lb/ft²; the chart rounds
// to 100, 160 and 230 ft²/h.
func TestProductionFromFlow(t *testing.T) {
	for pounds, feet := range map[float64]float64{494: 98.8, 812: 162.4, 1152: 230.4} {
		b := blast.NewBlasting()
		b.NozzleBoreMm, b.PressureKPa = 8, 100*psiKPa
		b.MediaFlowKgH, b.StripRateM2H = new(pounds*poundKg), new(feet*squareFoot)
		r, err := b.Calculate()
		require.NoError(t, err)
		assert.InEpsilon(t, 5, *r.MediaThrownKgM2/lbPerFt2, 1e-9, "A-27 [C]")
		b.StripRateM2H = new(map[float64]float64{494: 100, 812: 160, 1152: 230}[pounds] * squareFoot)
		r, err = b.Calculate()
		require.NoError(t, err)
		assert.InEpsilon(t, 5, *r.MediaThrownKgM2/lbPerFt2, 0.02, "A-27 [C], L03 [A]")
	}
}

func TestLifeOfMedia(t *testing.T) {
	const measured = "chapter on blasting with glass beads, 3/16 in nozzle, 25 psi"
	uses := func(breakdown float64) float64 { return found(blast.Uses(breakdown)) }
	checkFigures(t, []figure{
		{"D-1", "C", silicaTool, 10, 0, uses(0.10)},
		{"B-3 on 2024", "C*", measured, 16.7, 0.05, uses(0.060)},
		{"B-3 on steel", "C*", measured, 14.9, 0.05, uses(0.067)},
		{"B-4 on 2024", "C*", measured, 9.4, 0.05, uses(0.106)},
		{"B-4 on steel", "C*", measured, 7.8, 0.05, uses(0.129)},
		{"B-5 on 2024", "C*", measured, 8.8, 0.05, uses(0.114)},
		{"B-5 on steel", "C*", measured, 7.2, 0.05, uses(0.139)},
		{"D-4", "D", measured, 47.6, 0.05, uses(0.021)},
		{"D-5", "D", measured, 28.6, 0.05, uses(0.035)},
		{"D-6", "D", measured, 7.7, 0.05, uses(0.13)},
	})
}

// B-8: a trade's table of lives has both the uses and the loss in each.
func TestLivesOfATradeTable(t *testing.T) {
	for name, m := range map[string]struct{ loss, least, most float64 }{
		"sand": {1, 1, 1}, "garnet": {0.25, 3, 5}, "plastic": {0.13, 7, 9}, "glass bead": {0.10, 9, 12}, "silicon carbide": {0.11, 9, 10},
		"aluminium oxide": {0.09, 10, 12}, "ceramic": {0.012, 70, 90}, "steel": {0.01, 80, 100}, "stainless": {0.005, 150, 225},
	} {
		uses := found(blast.Uses(m.loss))
		assert.GreaterOrEqual(t, uses, m.least-1e-9, "B-8 [C] %s", name)
		assert.LessOrEqual(t, uses, m.most+1e-9, "B-8 [C] %s", name)
	}
}

// D-4 to D-6: a charge that is not topped up, after 10 passes.
func TestUntoppedCharge(t *testing.T) {
	for id, c := range map[string]struct{ breakdown, leftPercent, passes float64 }{
		"D-4": {0.021, 80.9, 9.106}, "D-5": {0.035, 70.0, 8.563}, "D-6": {0.13, 24.8, 5.781},
	} {
		left, thrown, err := blast.UntoppedCharge(c.breakdown, 10)
		require.NoError(t, err)
		assert.InDelta(t, c.leftPercent, 100*left, 0.1, id)
		assert.InDelta(t, c.passes, thrown, 0.001, id)
	}
}
