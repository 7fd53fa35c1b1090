package estimate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func coatOn(components, regions []doc, on ...string) doc {
	return doc{"components": components, "regions": regions,
		"steps": []doc{{"id": "s", "operation": "coat", "on": on, "product": "epoxy-primer", "method": "brush"}}}
}

// A bay loses what lies in it and is taped round it; a bay beside it loses
// nothing. Areas and lengths by plane and solid geometry (identity).
func TestABayLosesTheOpeningsThatLieInIt(t *testing.T) {
	tube := func(spot doc) []doc {
		spot["area_m2"], spot["edge_m"] = 0.5, 3
		return []doc{{"id": "tube", "count": 2, "shape": doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}, "openings": []doc{spot}}}
	}
	regions := []doc{
		{"id": "fore", "of": []string{"tube"}, "to_m": 1}, {"id": "aft", "of": []string{"tube"}, "from_m": 3},
		{"id": "upper", "of": []string{"tube"}, "from_z_m": 0}, {"id": "rim", "of": []string{"tube"}, "strip": doc{"along": "end_2", "width_m": 0.2}},
		{"id": "corner", "of": []string{"tube"}, "to_m": 1, "from_z_m": 0},
	}
	ring := math.Pi // length round the tube
	for name, c := range map[string]struct {
		spot       doc
		on         string
		area, tape float64
		warned     bool
	}{
		"half in a bay":                 {spot: doc{"from_m": 0.5, "to_m": 1.5}, on: "fore", area: ring - 0.25, tape: 2*ring + 1.5},
		"not in a bay":                  {spot: doc{"from_m": 0.5, "to_m": 1.5}, on: "aft", area: ring, tape: 2 * ring},
		"in the bay that is named":      {spot: doc{"region": "aft"}, on: "aft", area: ring - 0.5, tape: 2*ring + 3},
		"in another one":                {spot: doc{"region": "aft"}, on: "fore", area: ring, tape: 2 * ring},
		"in a strip":                    {spot: doc{"region": "rim"}, on: "rim", area: 0.2*ring - 0.5, tape: 2*ring + 3},
		"not in the strip":              {spot: doc{"region": "fore"}, on: "rim", area: 0.2 * ring, tape: 2 * ring},
		"in a strip, and half in a bay": {spot: doc{"region": "rim", "from_m": 2, "to_m": 4}, on: "aft", area: ring - 0.25, tape: 2*ring + 1.5},
		"in a band":                     {spot: doc{"from_z_m": 0.1, "to_z_m": 0.3}, on: "upper", area: 2*ring - 0.5, tape: ring + 8 + 3},
		"below a band":                  {spot: doc{"to_z_m": -0.1}, on: "upper", area: 2 * ring, tape: ring + 8},
		"in the corner of both":         {spot: doc{"to_m": 2, "from_z_m": -0.1, "to_z_m": 0.3}, on: "corner", area: ring/2 - 0.5*0.5*0.75, tape: ring + 2 + 3*0.5*0.75},
		"height alone, for a bay":       {spot: doc{"to_z_m": -0.1}, on: "fore", area: ring - 0.125, tape: 2 * ring, warned: true},
		"station alone, for a corner":   {spot: doc{"to_m": 1}, on: "corner", area: ring/2 - 0.0625, tape: ring + 2, warned: true},
		"station alone, for a strip":    {spot: doc{"to_m": 1}, on: "rim", area: 0.2*ring - 0.025, tape: 2 * ring, warned: true},
		"nowhere":                       {spot: doc{}, on: "fore", area: ring - 0.125, tape: 2 * ring, warned: true},
	} {
		t.Run(name, func(t *testing.T) {
			s := work(t, coatOn(tube(c.spot), regions, c.on)).Steps[0]
			assert.InEpsilon(t, 2*c.area, s.AreaM2, 1e-9)
			assert.InDelta(t, 2*c.tape, edgeM(s), 1e-7)
			if c.warned {
				assert.Len(t, s.Warnings, 1)
			} else {
				assert.Empty(t, s.Warnings)
			}
		})
	}
}

// A joint at a known place comes off its bay; its line is taped there, unless
// the part set on it is painted too.
func TestABayLosesTheJointsThatLieInIt(t *testing.T) {
	plate := doc{"kind": "plate", "to": "tube", "face": "side", "area_m2": 0.3, "edge_m": 2.4, "from_m": 0.2, "to_m": 0.8}
	parts := []doc{{"id": "tube", "shape": doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}},
		{"id": "box", "shape": doc{"kind": "measured", "area_m2": 2, "edge_m": 2.4}, "joins": []doc{plate}}}
	regions := []doc{{"id": "fore", "of": []string{"tube"}, "to_m": 1}, {"id": "aft", "of": []string{"tube"}, "from_m": 1}}
	fore := work(t, coatOn(parts, regions, "fore")).Steps[0]
	assert.InEpsilon(t, math.Pi-0.3, fore.AreaM2, 1e-12)
	assert.InEpsilon(t, 2*math.Pi+2.4, edgeM(fore), 1e-12)
	aft := work(t, coatOn(parts, regions, "aft")).Steps[0]
	assert.InEpsilon(t, 3*math.Pi, aft.AreaM2, 1e-12)
	both := work(t, coatOn(parts, regions, "fore", "box")).Steps[0]
	assert.InEpsilon(t, math.Pi-0.3+2, both.AreaM2, 1e-12)
	assert.InEpsilon(t, 2*math.Pi, edgeM(both), 1e-12, "the rim of what is set on is no edge any more")
}

// Bays that are the whole have its area and the edges of its openings, wherever
// these lie.
func TestBaysAddUpWhereverOpeningsLie(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cut := rapid.Float64Range(0.5, 3.5).Draw(t, "cut")
		var openings []doc
		edges := 0.0
		for range rapid.IntRange(1, 4).Draw(t, "openings") {
			from := rapid.Float64Range(0, 3).Draw(t, "from")
			edge := rapid.Float64Range(0, 3).Draw(t, "edge")
			edges += edge
			openings = append(openings, doc{"area_m2": rapid.Float64Range(0.01, 0.1).Draw(t, "area"), "edge_m": edge, "from_m": from, "to_m": from + rapid.Float64Range(0.3, 1).Draw(t, "length")})
		}
		parts := []doc{{"id": "tube", "shape": doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}, "openings": openings}}
		regions := []doc{{"id": "fore", "of": []string{"tube"}, "to_m": cut}, {"id": "aft", "of": []string{"tube"}, "from_m": cut}}
		whole, bays := work(t, coatOn(parts, regions, "tube")), work(t, coatOn(parts, regions, "fore", "aft"))
		assert.InEpsilon(t, whole.Steps[0].AreaM2, bays.Steps[0].AreaM2, 1e-12)
		assert.InDelta(t, edgeM(whole.Steps[0]), edgeM(bays.Steps[0]), 1e-9, "no border between bays that are painted together")
	})
}

func TestFaultyPlacesOfOpenings(t *testing.T) {
	tube := doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}
	known := doc{"kind": "measured", "area_m2": 3, "edge_m": 4}
	for name, c := range map[string]struct {
		shape, spot doc
		want        map[string]string
	}{
		"beyond":         {tube, doc{"to_m": 5}, map[string]string{"/components/0/openings/0/to_m": "outside"}},
		"backwards":      {tube, doc{"from_m": 3, "to_m": 2}, map[string]string{"/components/0/openings/0/to_m": "not_increasing"}},
		"no stations":    {known, doc{"to_m": 1}, map[string]string{"/components/0/openings/0/to_m": "not_applicable"}},
		"no such region": {tube, doc{"region": "tail"}, map[string]string{"/components/0/openings/0/region": "unknown_reference"}},
		"a share":        {tube, doc{"region": "some"}, map[string]string{"/components/0/openings/0/region": "not_applicable"}},
		"elsewhere":      {tube, doc{"region": "other"}, map[string]string{"/components/0/openings/0/region": "inconsistent"}},
		"more than all":  {tube, doc{"region": "ring"}, map[string]string{"/regions/0": "outside"}},
	} {
		t.Run(name, func(t *testing.T) {
			c.spot["area_m2"] = 1
			ring := doc{"id": "ring", "of": []string{"rest"}, "to_m": 0.1}
			if c.spot["region"] == "ring" {
				ring["of"] = []string{"it"}
			}
			assert.Equal(t, c.want, faultsOf(t, doc{
				"components": []doc{{"id": "it", "shape": c.shape, "openings": []doc{c.spot}}, {"id": "rest", "shape": tube}},
				"regions": []doc{ring, {"id": "some", "of": []string{"it"}, "share_ratio": 0.1},
					{"id": "other", "of": []string{"rest"}, "to_m": 2}},
			}))
		})
	}
}
