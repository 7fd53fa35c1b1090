package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
)

// placedJob strips a body and paints a letter on both its sides, which stood at
// two tapes (TR-2 of the markings list: 0.6 and 0.8 from points 1 apart meet
// squarely at (0.36, 0.48)).
func placedJob() doc {
	return doc{
		"components": []doc{flat("hull", 40, 4), flat("deck", 10, 4)},
		"markings": []doc{
			{"id": "mark", "kind": "lettering", "text": "L", "height_m": 0.6, "colour": "white", "count": 2, "on": "hull",
				"place": doc{"anchor": "lower_left", "rotation_deg": 90, "mirrored": true, "tapes": []doc{{"x_m": 0, "y_m": 0, "distance_m": 0.6, "name": "hatch"}, {"x_m": 1, "y_m": 0, "distance_m": 0.8}}}},
			{"id": "name", "kind": "lettering", "text": "L", "height_m": 0.6, "colour": "white", "on": "hull"},
			{"id": "spot", "kind": "disc", "size_m": 0.2, "colour": "white", "on": "deck", "place": doc{"station": doc{"station_m": 2, "water_line_m": 1, "face": "left", "datum": "bow"}}},
		},
		"steps": []doc{
			{"id": "bare", "operation": "strip", "on": []string{"hull"}, "product": "stripper"},
			{"id": "letters", "operation": "mark", "markings": []string{"mark", "name", "spot"}, "dry_film_um": 30, "method": "brush"},
		},
	}
}

func TestPlacings(t *testing.T) {
	e := work(t, placedJob())
	require.Len(t, e.Placings, 2)
	p := e.Placings[0]
	assert.Equal(t, "mark", p.Marking)
	assert.Equal(t, "hull", p.Component)
	assert.InDelta(t, 0.36, p.XM, 1e-9)
	assert.InDelta(t, 0.48, p.YM, 1e-9)
	assert.InDelta(t, 0.003*1.41421356, p.ErrorM, 1e-9)
	assert.Equal(t, "bare", p.RecordBefore)
	assert.Equal(t, []string{"letters"}, p.ReturnIn)
	// An L of 0.4 by 0.6 turned a quarter left about its lower left corner (identity).
	want := [][2]float64{{0.36, 0.48}, {0.36, 0.88}, {-0.24, 0.88}, {-0.24, 0.48}}
	for i, c := range want {
		assert.InDeltaSlice(t, c[:], p.Corners[i][:], 1e-9)
	}
	// On the other side its lower right corner goes to (−0.36, 0.48), turned right:
	// the mirrored box, in which the L itself is not mirrored.
	require.NotNil(t, p.OtherSide)
	assert.Equal(t, "lower_right", p.OtherSide.Anchor)
	assert.InDelta(t, -90, p.OtherSide.RotationDeg, 0)
	for i, c := range [][2]float64{{-0.36, 0.88}, {-0.36, 0.48}, {0.24, 0.48}, {0.24, 0.88}} {
		assert.InDeltaSlice(t, c[:], p.OtherCorners[i][:], 1e-9)
	}
	assert.Empty(t, e.Placings[1].RecordBefore, "nothing strips the deck")
	assert.Equal(t, "left", e.Placings[1].Face)

	assert.Len(t, e.Steps[0].Instructions, 2)
	assert.Contains(t, e.Steps[0].Instructions[0], "by one more measure where mark stand")
	assert.Contains(t, e.Steps[0].Instructions[1], "measure where name stand")
	assert.Equal(t, []string{"put back to their places: mark, spot; see placings, and the placing sheet of each face"}, e.Steps[1].Instructions)
	text := report.Table(e, units.SI)
	for _, said := range []string{"PLACES", "0.360", "-0.360", "DO NOT FORGET", "bare: before this step"} {
		assert.Contains(t, text, said)
	}
}

func TestFaultsOfPlacings(t *testing.T) {
	job := placedJob()
	markings := job["markings"].([]doc)
	markings[0]["place"] = doc{"mirrored": true, "tapes": []doc{{"x_m": 0, "y_m": 0, "distance_m": 0.3}, {"x_m": 1, "y_m": 0, "distance_m": 0.6}}}
	markings[1]["place"] = doc{"mirrored": true, "anchor": "nose", "offsets": doc{"from_a_m": 1, "from_b_m": 1}}
	markings[2]["place"] = doc{}
	assert.Equal(t, map[string]string{
		"/markings/0/place/tapes": "inconsistent", "/markings/1/place/anchor": "unknown_kind",
		"/markings/1/place/mirrored": "inconsistent", "/markings/2/place": "required",
	}, faultsOf(t, job))

	job = placedJob()
	job["components"] = []doc{{"id": "hull", "shape": doc{"kind": "box", "length_m": 3, "width_m": 1, "height_m": 1}}, flat("deck", 10, 4)}
	m := job["markings"].([]doc)[0]
	m["place"].(doc)["mirror_figure"] = true
	assert.Equal(t, map[string]string{"/markings/0/place/mirror_figure": "not_applicable"}, faultsOf(t, job))
	m["on"], m["place"] = "hull/left", doc{"station": doc{"station_m": 2, "face": "right", "datum": "bow"}}
	assert.Equal(t, map[string]string{"/markings/0/place/station/face": "inconsistent"}, faultsOf(t, job))
}
