package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// warnedOf works out one step on one part and returns its warnings.
func warnedOf(t *testing.T, part, step doc) []string {
	t.Helper()
	return blasted(t, part, step).Warnings
}

func refusedOf(t *testing.T, part, step doc) error {
	t.Helper()
	_, err := try(t, doc{"components": []doc{part}, "steps": []doc{step}})
	return err
}

// The limits that are published for each substrate, with their sources (reference
// blasting B-40 to B-50, S-18, S-21; read).
func TestBlastingOutsidePublishedLimitsIsTold(t *testing.T) {
	rate := doc{"strip_rate_m2_h": 3}
	with := func(members doc) doc {
		step := doc{}
		for _, m := range []doc{rate, members} {
			for k, v := range m {
				step[k] = v
			}
		}
		return beads("a", step)
	}
	for name, c := range map[string]struct {
		substrate string
		step      doc
		said      string
	}{
		"pressure on clad skin (B-40)":     {"clad_aluminium", with(doc{"pressure_kpa": "45 psi"}), "p. 6-28 (B-40"},
		"pressure on bare aluminium, B-41": {"aluminium", with(doc{"pressure_kpa": "35 psi"}), "p. 6-28 (B-41"},
		"pressure on magnesium, B-44":      {"magnesium", with(doc{"pressure_kpa": "40 psi"}), "p. 6-32 (B-44"},
		"pressure on steel, B-45":          {"steel", with(doc{"pressure_kpa": "60 psi"}), "Table 4-4 (B-45"},
		"pressure on stainless, B-45":      {"stainless_steel", with(doc{"pressure_kpa": "60 psi"}), "Table 4-4 (B-45"},
		"coarse bead, B-40":                {"clad_aluminium", with(doc{"media": "glass-bead-coarse", "strip_rate_m2_h": 4}), "grain of up to: 297 µm is outside at most 150 µm"},
		"dwell, B-43":                      {"clad_aluminium", with(doc{"dwell_s": 20}), "on one spot: 20 s is outside at most 15 s"},
		"dwell in all, B-44":               {"magnesium", with(doc{"pressure_kpa": "30 psi", "total_dwell_s": 70}), "on one spot in all: 70 s is outside at most 60 s"},
		"plastic too hard, B-49":           {"aluminium", with(doc{"media": "plastic-type-v", "pressure_kpa": "45 psi"}), "(B-49"},
		"plastic on composite, B-50":       {"composite", with(doc{"media": "plastic-type-v"}), "(B-50"},
		"stand-off of starch, A-24":        {"aluminium", with(doc{"media": "wheat-starch", "standoff_mm": "8 in"}), "(A-24"},
		"sharp grain on skin":              {"aluminium", with(doc{"media": "garnet", "pressure_kpa": 300}), "takes the cladding"},
	} {
		t.Run(name, func(t *testing.T) {
			assert.True(t, contains(warnedOf(t, skin("a", c.substrate, 5, 250), c.step), c.said), "%v", warnedOf(t, skin("a", c.substrate, 5, 250), c.step))
		})
	}
	sound := warnedOf(t, skin("a", "clad_aluminium", 5, 250), with(doc{"dwell_s": 10, "standoff_mm": 150, "pressure_kpa": "35 psi"}))
	assert.False(t, contains(sound, "is outside"), "%v", sound)
}

// On magnesium a suction gun may have half as much pressure again (B-44).
func TestSuctionOnMagnesium(t *testing.T) {
	gun := beads("a", doc{"strip_rate_m2_h": 1, "feed": "suction", "media_flow_kg_h": 40, "pressure_kpa": "50 psi"})
	assert.False(t, contains(warnedOf(t, skin("a", "magnesium", 5, 250), gun), "kPa is outside"))
	gun["pressure_kpa"] = "55 psi"
	assert.True(t, contains(warnedOf(t, skin("a", "magnesium", 5, 250), gun), "kPa is outside"))
}

// Thickness: 1.588 mm for beads (B-42), 0.81 for plastic (B-50), 0.41 for starch
// (B-36).
func TestThinSkins(t *testing.T) {
	for media, limit := range map[string]float64{"glass-bead-fine": 1.5875, "plastic-type-ii": 0.8128, "wheat-starch": 0.406, "walnut-shell": 1.5875} {
		for share, thin := range map[float64]bool{0.97: true, 1.03: false} {
			part := skin("a", "clad_aluminium", 5, 250)
			part["skin_mm"] = limit * share
			assert.Equal(t, thin, contains(warnedOf(t, part, beads("a", doc{"media": media, "strip_rate_m2_h": 3})), "engineering approval is required"), "%s at %g mm", media, limit*share)
		}
	}
}

// What would spoil the part is refused, unless somebody in charge of it approves.
func TestWhatIsRefusedCanBeApproved(t *testing.T) {
	for name, c := range map[string]struct {
		substrate, pointer string
		step               doc
	}{
		"clear plastic, S-18":     {"clear_plastic", "/steps/0/on", beads("a", doc{"media": "wheat-starch", "strip_rate_m2_h": 3})},
		"beads on composite":      {"composite", "/steps/0/on", beads("a", doc{"strip_rate_m2_h": 3})},
		"steel grit on aluminium": {"aluminium", "/steps/0/on", beads("a", doc{"media": "steel-grit", "strip_rate_m2_h": 3})},
		"psi given as kPa x 7":    {"clad_aluminium", "/steps/0/pressure_kpa", beads("a", doc{"strip_rate_m2_h": 3, "pressure_kpa": 1000})},
		"silicon carbide on skin": {"aluminium", "/steps/0/product", doc{"id": "s", "operation": "sand", "on": []string{"a"}, "product": "sic"}},
		"stripper on a window":    {"clear_plastic", "/steps/0/on", doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper"}},
	} {
		t.Run(name, func(t *testing.T) {
			job := doc{"components": []doc{skin("a", c.substrate, 5, 250)}, "steps": []doc{c.step},
				"products": []doc{{"id": "sic", "kind": "disc", "area_m2": 0.5, "grit": 180, "abrasive": "silicon_carbide"}}}
			_, err := try(t, job)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.pointer)
			assert.Contains(t, err.Error(), "approved_by")
			c.step["approved_by"] = "the invented structures engineer"
			s := work(t, job).Steps[0]
			assert.True(t, contains(s.Warnings, "approved by the invented structures engineer"), "%v", s.Warnings)
		})
	}
}

// Pressure below all that strips gives no rate from the book, and is told of one
// given (B-44).
func TestPressureBelowWhatStrips(t *testing.T) {
	part := skin("a", "clad_aluminium", 5, 250)
	require.ErrorContains(t, refusedOf(t, part, beads("a", doc{"pressure_kpa": 50})), "/steps/0/pressure_kpa")
	assert.True(t, contains(warnedOf(t, part, beads("a", doc{"pressure_kpa": 50, "strip_rate_m2_h": 0.5})), "below 69 kPa"))
}

// Steel and light alloys: separate media, steel first, and masks (S-15, S-18,
// S-21).
func TestMediaAreKeptApartByMetal(t *testing.T) {
	gear, wing := skin("gear", "steel", 3, 250), skin("wing", "clad_aluminium", 9, 250)
	step := func(id, on, media string) doc {
		return beads(on, doc{"id": id, "media": media, "strip_rate_m2_h": 3, "recovered": true, "working_charge_kg": 25})
	}
	warnings := func(steps ...doc) [][]string {
		e := work(t, doc{"components": []doc{gear, wing}, "steps": steps})
		var all [][]string
		for _, s := range e.Steps {
			all = append(all, s.Warnings)
		}
		return all
	}
	const carried, first = "take a fresh lot here", "steel and titanium spark"
	same := warnings(step("1", "gear", "glass-bead-fine"), step("2", "wing", "glass-bead-fine"))
	assert.True(t, contains(same[1], carried), "steel dust goes over to the wing")
	assert.False(t, contains(same[0], first))
	apart := warnings(step("1", "gear", "glass-bead-medium"), step("2", "wing", "glass-bead-fine"))
	assert.False(t, contains(apart[1], carried))
	backwards := warnings(step("1", "wing", "glass-bead-fine"), step("2", "gear", "glass-bead-medium"))
	assert.True(t, contains(backwards[1], first))
	together := beads("gear", doc{"strip_rate_m2_h": 3, "recovered": true, "working_charge_kg": 25, "on": []string{"gear", "wing"}})
	assert.True(t, contains(work(t, doc{"components": []doc{gear, wing}, "steps": []doc{together}}).Steps[0].Warnings, "make two steps of it"))
}

func TestMasksAreDemanded(t *testing.T) {
	wing, radome := skin("wing", "clad_aluminium", 9, 250), skin("radome", "fibreglass", 1, 250)
	wing["openings"] = []doc{{"name": "well", "area_m2": 0.5, "edge_m": 3}}
	bare := work(t, doc{"components": []doc{wing, radome}, "steps": []doc{beads("wing", doc{"strip_rate_m2_h": 3, "mask": false})}}).Steps[0].Warnings
	assert.True(t, contains(bare, "mask radome"))
	assert.True(t, contains(bare, "plug drains"))
	masked := work(t, doc{"components": []doc{wing}, "steps": []doc{beads("wing", doc{"strip_rate_m2_h": 3, "mask": true})}}).Steps[0].Warnings
	assert.False(t, contains(masked, "plug drains"))
	assert.False(t, contains(masked, "before blasting near them"))
}
