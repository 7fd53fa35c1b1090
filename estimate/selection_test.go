package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A box of 2 m by 1 m by 0.5 m: the edges between what is chosen and what is not
// are plane geometry (identity).
func TestBordersOfASelection(t *testing.T) {
	for name, c := range map[string]struct {
		on   []string
		area float64
		edge float64
	}{
		"one face":              {[]string{"box/top"}, 2, 2 * (2 + 1)},
		"two neighbours":        {[]string{"box/top", "box/front"}, 2 + 0.5, 2*(2+1) + 2*(1+0.5) - 2*1},
		"two that do not touch": {[]string{"box/top", "box/bottom"}, 4, 4 * (2 + 1)},
		"all of it":             {[]string{"box"}, 2 * (2 + 1 + 0.5), 0},
		"face by face":          {[]string{"box/top", "box/bottom", "box/left", "box/right", "box/front", "box/back"}, 7, 0},
		"a region of one face":  {[]string{"lid"}, 2, 2 * (2 + 1)},
		"a region and a face":   {[]string{"lid", "box/front"}, 2.5, 2*(2+1) + 2*(1+0.5) - 2*1},
	} {
		t.Run(name, func(t *testing.T) {
			e := work(t, doc{
				"components": []doc{{"id": "box", "count": 3, "shape": doc{"kind": "box", "length_m": 2, "width_m": 1, "height_m": 0.5}}},
				"regions":    []doc{{"id": "lid", "of": []string{"box/top"}}},
				"steps":      []doc{{"id": "s", "operation": "coat", "on": c.on, "product": "epoxy-primer", "method": "brush"}},
			})
			assert.InEpsilon(t, 3*c.area, e.Steps[0].AreaM2, 1e-12)
			assert.InDelta(t, 3*c.edge, edgeM(e.Steps[0]), 1e-12)
		})
	}
}

// Openings come off the face they lie in and their edges are masked; they count
// once for each part. A region that is a share knows nothing of openings.
func TestOpeningsAndRegions(t *testing.T) {
	job := doc{
		"components": []doc{{"id": "box", "count": 2, "extra_area_percent": 5, "shape": doc{"kind": "box", "length_m": 2, "width_m": 1, "height_m": 0.5},
			"openings": []doc{{"name": "hatch", "face": "top", "area_m2": 0.3, "edge_m": 2.2}, {"name": "vent", "face": "top", "area_m2": 0.1, "edge_m": 1.3}}}},
		"regions": []doc{{"id": "half", "of": []string{"box/top"}, "share_ratio": 0.5, "edge_m": 3}, {"id": "patch", "of": []string{"box"}, "area_m2": 1}},
	}
	on := func(on ...string) doc {
		job["steps"] = []doc{{"id": "s", "operation": "coat", "on": on, "product": "epoxy-primer", "method": "brush"}}
		return job
	}
	top := 2 * (2*1.05 - 0.4)
	e := work(t, on("box/top"))
	assert.InEpsilon(t, top, e.Steps[0].AreaM2, 1e-12)
	assert.InEpsilon(t, 2*(6+2.2+1.3), edgeM(e.Steps[0]), 1e-12)
	assert.InEpsilon(t, 0.8, e.Areas[0].OpeningsM2, 1e-12)
	assert.InEpsilon(t, 2*(7*1.05-0.4), e.Areas[0].AreaM2, 1e-12)
	assert.Len(t, assumed(e, "laps, rivets and gaps"), 1)

	e = work(t, on("half"))
	assert.InEpsilon(t, top/2, e.Steps[0].AreaM2, 1e-12)
	assert.InEpsilon(t, 3.0, edgeM(e.Steps[0]), 1e-12)
	assert.Empty(t, e.Steps[0].Warnings)

	e = work(t, on("patch"))
	assert.InEpsilon(t, 1.0, e.Steps[0].AreaM2, 1e-12)
	assert.Zero(t, e.Steps[0].MaskingTapeM)
	assert.Contains(t, e.Steps[0].Warnings[0], "region patch has no edge_m")
}

// An opening may leave its face out where there is one face only.
func TestAnOpeningOfTheOnlyFace(t *testing.T) {
	part := flat("a", 3, 7)
	part["openings"] = []doc{{"area_m2": 1, "edge_m": 4}}
	e := work(t, doc{"components": []doc{part}})
	assert.InEpsilon(t, 2.0, e.Totals.AreaM2, 1e-12)
	assert.InEpsilon(t, 11.0, e.Areas[0].EdgeM, 1e-12)
}

// What a shape's measurement warns of is told with the job's warnings.
func TestWarningsOfAShapeAreTold(t *testing.T) {
	e := work(t, doc{"components": []doc{{"id": "lid", "shape": doc{"kind": "panel", "width_m": 1, "height_m": 1,
		"holes": []doc{{"diameter_m": 0.2, "x_m": 0.4, "y_m": 0.5}, {"diameter_m": 0.2, "x_m": 0.5, "y_m": 0.5}}}}}})
	require.Len(t, e.Warnings, 1)
	assert.Contains(t, e.Warnings[0], "lid: ")
	assert.Contains(t, e.Warnings[0], "overlap")
}
