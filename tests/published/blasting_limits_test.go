package published

// Source: FAA AC 43.13-1B, TM 1-1500-344-23-2, MIL-STD-1504C, a guidebook on
// blasting and trade charts (reference blasting, marks beside each row), 40 CFR
// 261.24 (E-7, C), SW-846 1311 (E-9, from memory).

import (
	"math"
	"testing"

	"filmbuild/estimate/blast"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The limits that were added to the catalogue after TestBlastLimitsOfTheCatalogue,
// in the units of their sources; a bound turned into SI is rounded outwards.
func TestFurtherBlastLimitsOfTheCatalogue(t *testing.T) {
	c := catalogueOf(t)
	none := math.NaN()
	for _, l := range []struct {
		id, mark, product, quantity, substrate string
		low, high, unit                        float64
	}{
		{"B-43", "C", "glass-bead-fine", "dwell_s", "clad_aluminium", none, 15, 1},
		{"B-44", "C", "glass-bead-fine", "total_dwell_s", "magnesium", none, 60, 1},
		{"B-45", "C*", "glass-bead-fine", "pressure_kpa", "stainless_steel", 40, 50, psiKPa},
		{"B-46", "C*", "glass-bead-fine", "pressure_kpa", "clad_aluminium", 30, 40, psiKPa},
		{"B-46", "C*", "glass-bead-fine", "pressure_kpa", "aluminium", 40, 45, psiKPa},
		{"B-46", "C*", "glass-bead-fine", "pressure_kpa", "magnesium", 10, 35, psiKPa},
		{"B-47", "C", "glass-bead-fine", "standoff_mm", "", 3, 12, inchMm},
		{"A-24 synthetic", "C", "plastic-type-v", "standoff_mm", "", 6, 12, inchMm},
		{"A-24 soft natural", "C", "walnut-shell", "standoff_mm", "", 3, 6, inchMm},
		{"B-36", "C", "wheat-starch", "skin_mm", "clad_aluminium", 0.016, none, inchMm},
		{"B-51", "C", "plastic-type-ii", "pressure_kpa", "", 25, 40, psiKPa},
		{"B-24, sizes 10 to 13", "M", "glass-bead-coarse", "size_um", "aluminium", none, 0.0059, inchMm * 1000},
	} {
		low, high := limitOf(t, c, l.product, l.quantity, l.substrate)
		assert.Equal(t, math.IsNaN(l.low), math.IsNaN(low), "%s [%s] low", l.id, l.mark)
		assert.Equal(t, math.IsNaN(l.high), math.IsNaN(high), "%s [%s] high", l.id, l.mark)
		if !math.IsNaN(l.low) {
			assert.InEpsilon(t, l.low*l.unit, low, 0.005, "%s [%s] low", l.id, l.mark)
		}
		if !math.IsNaN(l.high) {
			assert.InEpsilon(t, l.high*l.unit, high, 0.005, "%s [%s] high", l.id, l.mark)
		}
	}
}

// G-9: grits by alloy, for any disc.
func TestGritsOfTheCatalogue(t *testing.T) {
	found := map[string]float64{}
	for _, l := range catalogueOf(t).LimitsOfAll() {
		if l.Quantity == "grit" {
			found[l.Substrate] = *l.Low
			assert.Equal(t, "G-9", l.Ref)
		}
	}
	assert.Equal(t, map[string]float64{"aluminium": 150, "clad_aluminium": 240}, found, "G-9 [C*]")
}

// Media that came to the catalogue later, and the order of lives on both metals
// (B-7: beads last longest of what was tested).
func TestFurtherMediaOfTheCatalogue(t *testing.T) {
	c := catalogueOf(t)
	const poundFoot = 16.01846 // kg/m³ in lb/ft³
	checkFigures(t, []figure{
		{"B-22, B-38 low, g/cm³", "C", "trade media chart", 1.36, 0.005, valueOf(t, c, "glass-bead-fine", "bulk_density_kg_m3", "").Low / 1000},
		{"B-22, B-38 high, g/cm³", "C", "trade media chart", 1.44, 0.005, valueOf(t, c, "glass-bead-fine", "bulk_density_kg_m3", "").High / 1000},
		{"B-21 Mohs low", "M", "memory", 5.5, 0, valueOf(t, c, "glass-bead-fine", "mohs", "").Low},
		{"B-21 Mohs high", "M", "memory", 6, 0, valueOf(t, c, "glass-bead-fine", "mohs", "").High},
		{"B-33 garnet, lb/ft³, low", "C", "trade table", 130, 0.1, valueOf(t, c, "garnet", "bulk_density_kg_m3", "").Low / poundFoot},
		{"B-38 steel grit, lb/ft³", "C", "trade media chart", 230, 0.1, valueOf(t, c, "steel-grit", "bulk_density_kg_m3", "").Likely / poundFoot},
		{"B-38 steel shot, lb/ft³", "C", "trade media chart", 280, 0.1, valueOf(t, c, "steel-shot", "bulk_density_kg_m3", "").Likely / poundFoot},
		{"B-8 steel, loss in a use", "C", "trade table of lives", 1, 0, valueOf(t, c, "steel-grit", "breakdown_percent", "").Likely},
		{"B-6 pressure, psi", "C", "chapter on blasting with glass beads", 25, 0.001, valueOf(t, c, "glass-bead-fine", "breakdown_at_kpa", "").Likely / psiKPa},
		{"B-9 plastic, 12 recycles", "C", "copy of a handbook sheet", 100.0 / 12, 0.05, valueOf(t, c, "plastic-type-v", "breakdown_percent", "").Low},
	})
	for _, metal := range []string{"aluminium", "steel"} {
		assert.Less(t, valueOf(t, c, "glass-bead-fine", "breakdown_percent", metal).Likely, valueOf(t, c, "aluminium-oxide", "breakdown_percent", metal).Likely, "B-7 [C] on %s", metal)
	}
	assert.Less(t, valueOf(t, c, "plastic-type-v", "strip_rate_m2_h", "").Likely, valueOf(t, c, "plastic-type-ii", "strip_rate_m2_h", "").Likely, "B-31 [C]: V strips slower than II")
	// B-10: 25 lb/ft² of steel grit thrown, at the flow of a 3/8 in nozzle and 100 psi.
	flow := found(blast.MediaFlow(9.525, 690, blast.SeaLevelKPa, 3684))
	assert.InEpsilon(t, flow/(25*lbPerFt2), valueOf(t, c, "steel-grit", "strip_rate_m2_h", "").Likely, 0.01, "B-10 [C], A-18 [D]")
}

// E-7, E-9: waste below 20 times the limit of the leachate cannot fail. E-13:
// recycling may flip it.
func TestLeachateOfTheWaste(t *testing.T) {
	checkFigures(t, []figure{
		{"E-9 lead, mg/kg", "M", "SW-846 1311 1.2", 5.0, 1e-9, found(blast.LeachateMost(100))},
		{"E-9 cadmium, mg/kg", "M", "SW-846 1311 1.2", 1.0, 1e-9, found(blast.LeachateMost(20))},
	})
	b := blast.NewBlasting()
	b.NozzleBoreMm, b.PressureKPa = 12.7, 100*psiKPa
	b.AreaM2, b.StripRateM2H = new(285*squareFoot), new(285*squareFoot)
	b.MediaFlowKgH, b.BreakdownPercent, b.Recovered = new(2000*poundKg), new(10.0), true
	b.RemovedFilmUm, b.RemovedFilmDensityKgL = 75, new(1.4)
	b.FilmLeadPercent, b.FilmCadmiumPercent = new(1.0), new(0.01)
	r, err := b.Calculate()
	require.NoError(t, err)
	require.Len(t, r.Leachate, 2)
	lead, cadmium := r.Leachate[0], r.Leachate[1]
	assert.Equal(t, []float64{5, 1}, []float64{lead.LimitGM3, cadmium.LimitGM3}, "E-7 [C]")
	assert.InEpsilon(t, 10000*0.030/20, lead.LeachateMostGM3, 0.02, "E-13 [D]: 3.0 %% of paint with 1 %% of lead")
	assert.InEpsilon(t, 10000*0.0031/20, lead.LeachateSingleUseGM3, 0.02, "E-13 [D]: 0.31 %% of paint")
	assert.True(t, lead.MayBeHazardous, "15 mg/L")
	assert.False(t, lead.MayBeHazardousOnce, "1.5 mg/L: recycling flips it")
	assert.False(t, cadmium.MayBeHazardous, "0.15 mg/L")
}
