package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

func wing(old float64) doc {
	return doc{"id": "wing", "substrate": "aluminium", "existing_film_um": old, "shape": doc{"kind": "wing", "root_chord_m": 1.4, "tip_chord_m": 0.9, "span_m": 2, "root_thickness_ratio": 0.1, "tip_thickness_ratio": 0.1}}
}

func said(s estimate.StepEstimate, code string) []string {
	var found []string
	for _, w := range s.Warnings {
		if strings.Contains(w, "("+code+";") {
			found = append(found, w)
		}
	}
	return found
}

func coat(id, on, product string) doc {
	return doc{"id": id, "operation": "coat", "on": []string{on}, "product": product, "method": "hvlp"}
}

// The chain is followed face by face: what is done to the upper side says
// nothing about the lower.
func TestTheChainIsFollowedFaceByFace(t *testing.T) {
	treat := func(on string) doc {
		return doc{"id": "treat", "operation": "pretreat", "on": []string{on}, "product": "conversion-coat"}
	}
	steps := func(treated string) []doc {
		return []doc{{"id": "bare", "operation": "strip", "on": []string{"wing"}, "product": "stripper"},
			{"id": "wash", "operation": "wash", "on": []string{"wing"}, "product": "detergent"}, treat(treated), coat("prime", "wing", "epoxy-primer"), coat("white", "wing", "polyurethane-gloss-white")}
	}
	e := work(t, doc{"components": []doc{wing(200)}, "steps": steps("wing/upper")})
	found := said(e.Steps[3], "bare_untreated")
	require.Len(t, found, 1)
	assert.True(t, strings.HasPrefix(found[0], "wing/lower: bare aluminium"), found[0])
	require.Len(t, e.Steps[2].Checks, 1)
	assert.Equal(t, "water_break", e.Steps[2].Checks[0].Code)
	assert.Equal(t, []string{"wing/upper"}, e.Steps[2].Checks[0].On)

	e = work(t, doc{"components": []doc{wing(200)}, "steps": steps("wing")})
	for _, s := range e.Steps {
		for _, w := range s.Warnings {
			assert.NotContains(t, w, "bare_untreated")
		}
	}
	assert.Equal(t, []string{"wing"}, e.Steps[2].Checks[0].On)
}

// A region is a piece of its own: it has what the whole face had, and what was
// done to it; a colour on it needs white under it, a mark beside it does not see
// it.
func TestRegionsAndMarksAreFollowed(t *testing.T) {
	job := doc{"components": []doc{wing(200)}, "regions": []doc{{"id": "tip", "of": []string{"wing/upper"}, "area_m2": 0.4, "edge_m": 2}},
		"markings": []doc{{"id": "star", "kind": "star", "size_m": 0.3, "colour": "red", "on": "wing/upper"}},
		"steps": []doc{{"id": "bare", "operation": "strip", "on": []string{"wing"}, "product": "stripper"}, {"id": "wash", "operation": "wash", "on": []string{"wing"}, "product": "detergent"},
			{"id": "treat", "operation": "pretreat", "on": []string{"wing"}, "product": "conversion-coat"}, coat("prime", "wing", "epoxy-primer"),
			coat("orange", "tip", "polyurethane-gloss-orange"), {"id": "figures", "operation": "mark", "markings": []string{"star"}, "method": "brush"}}}
	e := work(t, job)
	for step, colour := range map[int]string{4: "tip: orange goes on", 5: "wing/upper: red goes on"} {
		found := said(e.Steps[step], "colour_without_white")
		require.Len(t, found, 1, "step %d", step)
		assert.True(t, strings.HasPrefix(found[0], colour), found[0])
	}
	steps := job["steps"].([]doc)
	job["steps"] = append(append(append([]doc{}, steps[:4]...), coat("white", "wing", "polyurethane-gloss-white")), steps[4:]...)
	e = work(t, job)
	for _, s := range e.Steps {
		assert.Empty(t, said(s, "colour_without_white"), s.ID)
	}
}

// Half a face stripped and the whole of it painted gloss: the edge shows, unless
// both halves are stripped.
func TestStepEdgesOfAFaceHalfStripped(t *testing.T) {
	job := func(stripped ...string) doc {
		return doc{"components": []doc{wing(200)}, "regions": []doc{{"id": "half", "of": []string{"wing/upper"}, "share_ratio": 0.5, "edge_m": 2}, {"id": "rest", "of": []string{"wing/upper"}, "share_ratio": 0.5, "edge_m": 2}},
			"steps": []doc{{"id": "bare", "operation": "strip", "on": stripped, "product": "stripper"}, {"id": "wash", "operation": "wash", "on": []string{"wing"}, "product": "detergent"},
				coat("prime", "wing/upper", "epoxy-primer"), coat("white", "wing/upper", "polyurethane-gloss-white"), coat("again", "wing/upper", "polyurethane-gloss-white")}}
	}
	e := work(t, job("half"))
	found := said(e.Steps[3], "step_edges")
	require.Len(t, found, 1)
	assert.True(t, strings.HasPrefix(found[0], "wing/upper: part of this surface"), found[0])
	assert.Empty(t, said(e.Steps[4], "step_edges"), "told once")
	e = work(t, job("half", "rest"))
	assert.Empty(t, said(e.Steps[3], "step_edges"))
	assert.Empty(t, said(work(t, job("wing/upper")).Steps[3], "step_edges"))
}

// Blasting that takes days leaves its first steel bare for longer than the
// 24 h of an SSPC-type specification (reference planning C18); the dates of the
// steps say it where they are given.
func TestBlastedSteelWaitsForPrimer(t *testing.T) {
	steel := doc{"id": "gate", "substrate": "steel", "existing_film_um": 300, "shape": doc{"kind": "measured", "area_m2": 60, "edge_m": 0}}
	blast := doc{"id": "bare", "operation": "blast", "on": []string{"gate"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 2, "crew": 2}
	e := work(t, doc{"components": []doc{steel}, "steps": []doc{blast, coat("prime", "gate", "epoxy-primer-high-build")}})
	found := said(e.Steps[1], "rust_wait")
	require.Len(t, found, 1)
	assert.Contains(t, found[0], "waits 30 h of work")

	dated := func(first, then string) []string {
		prime := coat("prime", "gate", "epoxy-primer-high-build")
		blast["strip_rate_m2_h"], blast["starts"], prime["starts"] = 12, first, then
		return said(work(t, doc{"components": []doc{steel}, "steps": []doc{blast, prime}}).Steps[1], "rust_wait")
	}
	assert.Empty(t, dated("2026-05-02T08:00", "2026-05-02T15:00"))
	assert.Len(t, dated("2026-05-02T08:00", "2026-05-04T08:00"), 1)
}

func TestAStepsStartIsATime(t *testing.T) {
	_, err := try(t, doc{"components": []doc{wing(200)}, "steps": []doc{{"id": "a", "operation": "wash", "on": []string{"wing"}, "product": "detergent", "starts": "2 May"}}})
	assert.ErrorContains(t, err, "/steps/0/starts")
}
