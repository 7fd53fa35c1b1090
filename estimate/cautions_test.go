package estimate_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"filmbuild/estimate"
)

func codes(list []estimate.Caution) []string {
	found := make([]string, 0, len(list))
	for _, c := range list {
		found = append(found, c.Code)
	}
	return found
}

// What can hurt someone is told at the step where it can, and once for the job.
func TestCautionsGoWithTheStep(t *testing.T) {
	metal := func(substrate string, area float64) doc {
		part := flat(substrate, area, 4)
		part["substrate"] = substrate
		return part
	}
	e := work(t, doc{
		"components": []doc{metal("magnesium", 1), metal("fibreglass", 1), metal("clad_aluminium", 30)},
		"steps": []doc{
			{"id": "spray", "operation": "coat", "on": []string{"fibreglass"}, "product": "polyurethane-gloss-white", "method": "hvlp"},
			{"id": "brush", "operation": "coat", "on": []string{"fibreglass"}, "product": "epoxy-primer-chromated", "method": "brush"},
			{"id": "blast", "operation": "blast", "on": []string{"magnesium"}, "media": "glass-bead-fine", "nozzle_bore_mm": 6, "pressure_kpa": 200, "strip_rate_m2_h": 1},
			{"id": "treat", "operation": "pretreat", "on": []string{"clad_aluminium"}, "product": "conversion-coat"},
			{"id": "strip", "operation": "strip", "on": []string{"fibreglass"}, "product": "stripper"},
		},
	})
	want := map[string]struct{ has, hasNot []string }{
		"spray": {[]string{"isocyanate", "pressure", "solvent", "weather", "paint_waste", "defer"}, []string{"blast_breathing", "old_paint", "acid", "chromate_paint", "turning"}},
		"brush": {[]string{"chromate_paint", "sensitiser", "solvent"}, []string{"isocyanate", "pressure"}},
		"blast": {[]string{"blast_breathing", "blast_enclosure", "old_paint", "lead_dust", "chromate_dust", "noise", "dust", "magnesium", "thin_skin", "separate_media", "waste", "defer"}, []string{"isocyanate", "composite", "weather"}},
		"treat": {[]string{"acid", "bare_aluminium", "turning", "weather"}, []string{"old_paint", "magnesium"}},
		"strip": {[]string{"stripper", "composite", "old_paint", "waste"}, []string{"lead_dust", "blast_breathing"}},
	}
	all := map[string]bool{}
	for _, s := range e.Steps {
		found := codes(s.Cautions)
		for _, code := range want[s.ID].has {
			assert.Contains(t, found, code, s.ID)
		}
		for _, code := range want[s.ID].hasNot {
			assert.NotContains(t, found, code, s.ID)
		}
		for _, c := range s.Cautions {
			all[c.Code] = true
			assert.NotEmpty(t, c.Text)
			assert.NotEmpty(t, c.Source)
		}
	}
	assert.Len(t, e.Cautions, len(all), "each once")
	assert.Equal(t, "defer", e.Cautions[len(e.Cautions)-1].Code, "local codes and data sheets have the last word")
	assert.Contains(t, e.Steps[0].Wear, "supplied-air respirator")
	assert.Contains(t, e.Steps[2].Wear, "supplied-air blasting helmet")
}

// What nobody has ruled out of the old paint is treated as present; a test that
// rules it out takes its caution away, and a component's word goes before the
// job's.
func TestUnknownOldPaintIsTreatedAsPresent(t *testing.T) {
	found := func(job, component doc) []string {
		part := flat("a", 1, 4)
		part["existing_film_um"] = 100
		members := doc{"components": []doc{part}, "steps": []doc{{"id": "s", "operation": "sand", "on": []string{"a"}, "product": "disc-150"}}}
		if job != nil {
			members["old_paint"] = job
		}
		if component != nil {
			part["old_paint"] = component
		}
		e := work(t, members)
		if len(e.Steps[0].Cautions) > 0 {
			assert.Equal(t, "defer", e.Steps[0].Cautions[len(e.Steps[0].Cautions)-1].Code, "every list ends by deferring to local codes, data sheets and licensed practice")
		}
		return codes(e.Steps[0].Cautions)
	}
	dusts := []string{"lead_dust", "chromate_dust", "cadmium_dust", "asbestos", "old_paint"}
	assert.Subset(t, found(nil, nil), dusts)
	assert.Subset(t, found(doc{"lead": "unknown"}, nil), dusts)
	assert.NotContains(t, found(nil, nil), "lead_year")
	assert.Contains(t, found(doc{"year": 1965}, nil), "lead_year")
	assert.NotContains(t, found(doc{"year": 1995}, nil), "lead_year")
	assert.Subset(t, found(doc{"year": 1995}, nil), dusts, "a later year rules nothing out")
	none := doc{"lead": "no", "chromate": "no", "cadmium": "no", "asbestos": "no", "year": 1965}
	for _, code := range append(dusts, "lead_year") {
		assert.NotContains(t, found(none, nil), code)
	}
	mixed := found(none, doc{"chromate": "yes"})
	assert.Subset(t, mixed, []string{"chromate_dust", "old_paint"})
	assert.NotContains(t, mixed, "lead_dust")
	_, err := try(t, doc{"old_paint": doc{"lead": "perhaps", "year": 20}, "components": []doc{flat("a", 1, 4)}, "steps": []doc{}})
	assert.ErrorContains(t, err, "/old_paint/lead")
	assert.ErrorContains(t, err, "/old_paint/year")
}

// Sanding new paint between coats raises no dust of old paint, once that is off.
func TestScuffingNewPaintIsNoOldPaint(t *testing.T) {
	part := flat("a", 1, 4)
	part["existing_film_um"] = 100
	e := work(t, doc{"components": []doc{part}, "steps": []doc{{"id": "off", "operation": "strip", "on": []string{"a"}, "product": "stripper"},
		{"id": "scuff", "operation": "sand", "scuff": true, "on": []string{"a"}, "product": "disc-320"}}})
	assert.Contains(t, codes(e.Steps[0].Cautions), "lead_strip")
	for _, code := range []string{"lead_dust", "chromate_dust", "cadmium_dust", "old_paint"} {
		assert.NotContains(t, codes(e.Steps[1].Cautions), code)
	}
}

// Published bounds of pressure and skin are told where a job goes beyond them
// (FAA AC 43.13-1B ch. 6: 30 to 40 psi on clad aluminium, approval below 0.0625 in,
// read).
func TestBlastingBeyondPublishedBounds(t *testing.T) {
	warnings := func(kilopascal, skin float64) []string {
		part := flat("skin", 1, 4)
		part["substrate"], part["skin_mm"] = "clad_aluminium", skin
		e := work(t, doc{"components": []doc{part}, "steps": []doc{{"id": "s", "operation": "blast", "on": []string{"skin"}, "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": kilopascal, "media_flow_kg_h": 80, "strip_rate_m2_h": 3}}})
		return e.Steps[0].Warnings
	}
	contains := func(list []string, words string) bool {
		return slices.ContainsFunc(list, func(w string) bool { return strings.Contains(w, words) })
	}
	assert.False(t, contains(warnings(241.3, 1.6), "kPa is outside"), "35 psi")
	assert.True(t, contains(warnings(310, 1.6), "kPa is outside"), "45 psi")
	assert.True(t, contains(warnings(170, 1.6), "kPa is outside"), "25 psi")
	assert.True(t, contains(warnings(241.3, 1.2), "engineering approval"))
	assert.False(t, contains(warnings(241.3, 1.6), "engineering approval"))
}
