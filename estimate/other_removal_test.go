package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Every way of taking paint off fills the same figures, so that they can be laid
// side by side: 10 m² of 250 µm at 1.5 kg/L are 3.75 kg (identity).
func TestEveryWayOfRemovalFillsTheSameFigures(t *testing.T) {
	for means, step := range map[string]doc{
		"blast":    beads("a", doc{"recovered": true, "working_charge_kg": 50}),
		"machine":  {"operation": "sand", "product": "disc-150"},
		"hand":     {"operation": "sand", "product": "disc-150", "tool": "hand"},
		"scraper":  {"operation": "sand", "tool": "scraper"},
		"chemical": {"operation": "strip", "product": "stripper", "coats": 2, "dwell_min": 30},
		"water":    {"operation": "strip", "means": "water", "water_l_h": "3 gal/min", "water_pressure_kpa": "15000 psi"},
	} {
		t.Run(means, func(t *testing.T) {
			step["id"], step["on"] = "s", []string{"a"}
			s := blasted(t, skin("a", "aluminium", 10, 250), step)
			require.NotNil(t, s.Removal)
			assert.Equal(t, means, s.Removal.Means)
			assert.InEpsilon(t, 3.75, s.RemovedKg, 1e-12)
			assert.GreaterOrEqual(t, s.WasteKg, 3.75)
			assert.Positive(t, s.Hours)
			assert.InEpsilon(t, 10/s.Hours, s.Removal.OverallM2H, 1e-12)
			assert.Positive(t, s.Removal.RateM2H)
			assert.NotEmpty(t, s.Removal.RateSource)
			assert.Equal(t, "nozzle_on", s.Removal.RateBasis)
			require.NotNil(t, s.Removal.WasteDrums)
			assert.Positive(t, *s.Removal.WasteDrums)
			assert.InEpsilon(t, 100*3.75/s.WasteKg, *s.Removal.FilmInWastePercent, 1e-9)
			assert.NotEmpty(t, s.Removal.DustReason, "no factor is published for any of these")
		})
	}
}

// Reference blasting G-2: 1/32 to 1/16 in wet are 0.794 to 1.588 L/m² a coat.
func TestStripperByItsWetFilm(t *testing.T) {
	for film, litres := range map[string]float64{"1/32 in": 0.794, "1/16 in": 1.588} {
		s := blasted(t, skin("a", "aluminium", 10, 250), doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper", "wet_film_mm": film, "coats": 3})
		assert.InEpsilon(t, 3*10*litres, s.Litres, 0.002, "G-2 [D]")
		assert.False(t, contains(s.Warnings, "brushed on in"))
		assert.Equal(t, "wet_film_mm", line(t, s.Working, "litres").Links[2].Node.Quantity)
	}
	dwelt := blasted(t, skin("a", "aluminium", 10, 250), doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper", "coats": 3, "dwell_min": 20, "crew": 2})
	assert.InEpsilon(t, 1, *dwelt.Removal.DwellH, 1e-12, "three coats of 20 min")
	assert.InEpsilon(t, dwelt.Hours/2+1, dwelt.Removal.ElapsedH, 1e-12, "nobody is paid to watch it")
}

// G-1 and G-3: 10 to 40 min, 50 to 100 °F, slower below 60 °F.
func TestStripperOutsideItsUseIsTold(t *testing.T) {
	for said, members := range map[string]doc{
		"runs (Navy":             {"wet_film_mm": 3},
		"outside the usual 10":   {"dwell_min": 120},
		"outside the 10 to 38":   {"air_c": "45 °F"},
		"work noticeably slower": {"air_c": "55 °F"},
	} {
		step := doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper"}
		for k, v := range members {
			step[k] = v
		}
		assert.True(t, contains(blasted(t, skin("a", "aluminium", 10, 250), step).Warnings, said), said)
	}
	sound := blasted(t, skin("a", "aluminium", 10, 250), doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper", "wet_film_mm": 1, "dwell_min": 30, "air_c": "70 °F"})
	assert.Empty(t, sound.Warnings)
}

// Water for stripping: 3 gal/min for the time at work (B-35 [C] is the most on an
// aircraft), all of it waste.
func TestWaterIsCaught(t *testing.T) {
	step := doc{"id": "s", "operation": "strip", "on": []string{"a"}, "means": "water", "water_l_h": 600, "rate_m2_h": 4}
	s := blasted(t, skin("a", "aluminium", 10, 250), step)
	assert.InEpsilon(t, 1500, *s.Removal.WaterL, 1e-12)
	assert.InEpsilon(t, 1500+3.75, s.WasteKg, 1e-12)
	assert.Equal(t, 9, *s.Removal.WasteDrums, "187 kg each")
	assert.Zero(t, s.Litres, "water leaves no tin")
	step["water_l_h"] = "4 gal/min"
	assert.True(t, contains(blasted(t, skin("a", "aluminium", 10, 250), step).Warnings, "3 gallons"))
	assert.False(t, contains(blasted(t, skin("a", "steel", 10, 250), step).Warnings, "3 gallons"))
}

// G-9: 150 or finer on bare aluminium, 240 or finer on clad, to bare metal.
func TestGritsByAlloy(t *testing.T) {
	for _, c := range []struct {
		substrate, disc string
		told            bool
	}{{"aluminium", "disc-80", true}, {"aluminium", "disc-150", false}, {"clad_aluminium", "disc-150", true}, {"clad_aluminium", "disc-240", false}, {"steel", "disc-80", false}} {
		step := doc{"id": "s", "operation": "sand", "on": []string{"a"}, "product": c.disc}
		assert.Equal(t, c.told, contains(blasted(t, skin("a", c.substrate, 1, 100), step).Warnings, "Table 6-1 (G-9"), "%s on %s", c.disc, c.substrate)
		step["scuff"] = true
		assert.False(t, contains(blasted(t, skin("a", c.substrate, 1, 100), step).Warnings, "Table 6-1"), "scuffing stays in the paint")
	}
}

func TestOtherRemovalRefusesWhatDoesNotFit(t *testing.T) {
	for pointer, step := range map[string]doc{
		"/steps/0/tool":          {"operation": "sand", "product": "disc-80", "tool": "axe"},
		"/steps/0/product":       {"operation": "sand", "tool": "machine"},
		"/steps/0/scuff":         {"operation": "sand", "tool": "scraper", "scuff": true},
		"/steps/0/means":         {"operation": "strip", "product": "stripper", "means": "fire"},
		"/steps/0/wet_film_mm":   {"operation": "strip", "product": "stripper", "wet_film_mm": 1, "coverage_l_m2": 1},
		"/steps/0/water_l_h":     {"operation": "strip", "means": "water"},
		"/steps/0/rate_basis":    {"operation": "strip", "product": "stripper", "rate_basis": "daily"},
		"/steps/0/dwell_min":     {"operation": "strip", "means": "water", "water_l_h": 500, "dwell_min": 10},
		"/steps/0/altitude_m":    beads("a", doc{"altitude_m": 1500, "ambient_pressure_kpa": 90}),
		"/steps/0/hose_bore_mm":  beads("a", doc{"nozzle_bore_mm": 12.7, "hose_length_m": 100, "hose_bore_mm": 19}),
		"/steps/0/hose_length_m": beads("a", doc{"hose_bore_mm": 25}),
		"/steps/0/recovered":     beads("a", doc{"batch_passes": 8}),
	} {
		step["id"], step["on"] = "s", []string{"a"}
		require.ErrorContains(t, refusedOf(t, skin("a", "aluminium", 10, 250), step), pointer+":")
	}
}

func TestLitresAndHoursNeverFallWithTheArea(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		small := rapid.Float64Range(0.1, 100).Draw(rt, "area")
		large := rapid.Float64Range(small, 200).Draw(rt, "larger area")
		coats := rapid.IntRange(1, 5).Draw(rt, "coats")
		step := func(coats int) doc {
			return doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper", "coats": coats}
		}
		a, b, c := blasted(t, skin("a", "aluminium", small, 250), step(coats)), blasted(t, skin("a", "aluminium", large, 250), step(coats)), blasted(t, skin("a", "aluminium", small, 250), step(coats+1))
		for _, more := range []float64{b.Litres - a.Litres, b.Hours - a.Hours, b.WasteKg - a.WasteKg, c.Litres - a.Litres, c.Hours - a.Hours} {
			assert.GreaterOrEqual(rt, more, 0.0)
		}
	})
}
