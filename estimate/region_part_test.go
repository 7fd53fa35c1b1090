package estimate_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// painted works one step on a region of a shape.
func painted(shape doc, on []string, region doc) doc {
	region["id"], region["of"] = "part", on
	return doc{
		"components": []doc{{"id": "it", "count": 2, "shape": shape}},
		"regions":    []doc{region},
		"steps":      []doc{{"id": "s", "operation": "coat", "on": []string{"part"}, "product": "epoxy-primer", "method": "brush"}},
	}
}

// Areas and edges by plane and solid geometry (identity), for two parts each.
func TestRegionsOfAShape(t *testing.T) {
	tube := doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4, "ends": 2}
	wing := doc{"kind": "wing", "section": "flat", "root_chord_m": 2, "tip_chord_m": 1, "span_m": 3}
	box := doc{"kind": "box", "length_m": 3, "width_m": 2, "height_m": 1}
	panel := doc{"kind": "panel", "width_m": 2, "height_m": 1}
	body := doc{"kind": "body", "stations": []doc{{"x_m": 0, "width_m": 1, "height_m": 1}, {"x_m": 5, "width_m": 1, "height_m": 1}}}
	for name, c := range map[string]struct {
		shape        doc
		on           []string
		region       doc
		area, border float64
	}{
		"bay of a tube":           {tube, []string{"it/side"}, doc{"from_m": 1, "to_m": 2.5}, math.Pi * 1.5, 2 * math.Pi},
		"end of a tube":           {tube, []string{"it"}, doc{"to_m": 1}, math.Pi * 1.25, math.Pi},
		"end of a tube, its side": {tube, []string{"it/side"}, doc{"to_m": 1}, math.Pi, 2 * math.Pi},
		"band along a tube":       {tube, []string{"it/side"}, doc{"from_z_m": 0, "to_z_m": 0.25}, 4 * math.Pi / 6, 4*4 + 2*2*math.Pi/12},
		"strip at the end":        {tube, []string{"it/side"}, doc{"strip": doc{"along": "end_2", "width_m": 0.2}}, math.Pi * 0.2, 2 * math.Pi},
		"strip round the end":     {tube, []string{"it"}, doc{"strip": doc{"along": "end_2", "width_m": 0.2}}, math.Pi * (0.2 + 0.25 - 0.09), math.Pi * (1 + 0.6)},
		"leading edge":            {wing, []string{"it"}, doc{"strip": doc{"along": "leading_edge", "width_m": 0.1}}, 2 * 3 * 0.1, 2*3 + 2*0.1},
		"leading edge above":      {wing, []string{"it/upper"}, doc{"strip": doc{"along": "leading_edge", "width_m": 0.1}}, 3 * 0.1, 2*3 + 2*0.1},
		"tip of a wing":           {wing, []string{"it"}, doc{"from_m": 2.4}, 2 * 0.6 * 1.1, 2 * 1.2},
		"boot-topping of a box":   {box, []string{"it"}, doc{"to_z_m": 0.25}, 6 + 10*0.25, 10},
		"frame of a panel":        {panel, []string{"it"}, doc{"strip": doc{"along": "outline", "width_m": 0.1}}, 2 - 1.8*0.8, 6 + 2*(1.8+0.8)},
		"cheat line":              {body, []string{"it/left"}, doc{"from_m": 1, "to_m": 4, "from_z_m": -0.25, "to_z_m": 0}, 3 * math.Pi / 12, 6 + 2*math.Pi/12},
		"anti-glare panel":        {body, []string{"it"}, doc{"from_m": 1, "to_m": 2, "strip": doc{"along": "top", "width_m": 0.3}}, 0.6, 2 * (1 + 0.6)},
		"edge given":              {body, []string{"it"}, doc{"from_m": 1, "to_m": 2, "edge_m": 7}, math.Pi, 3.5},
	} {
		t.Run(name, func(t *testing.T) {
			e := work(t, painted(c.shape, c.on, c.region))
			assert.InEpsilon(t, 2*c.area, e.Steps[0].AreaM2, 1e-9)
			assert.InDelta(t, 2*c.border, edgeM(e.Steps[0]), 1e-7)
			assert.Empty(t, e.Steps[0].Warnings)
			assert.Equal(t, "part", e.Steps[0].Working[0].Of, "the part's own working comes first")
		})
	}
}

// Bays side by side take in the whole, and one more is too many. Openings come
// off each in proportion, and the step says that it cannot tape them.
func TestBaysOfAComponent(t *testing.T) {
	job := doc{
		"components": []doc{{"id": "tube", "shape": doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}, "openings": []doc{{"area_m2": 1, "edge_m": 4}}}},
		"regions": []doc{{"id": "fore", "of": []string{"tube"}, "to_m": 1}, {"id": "middle", "of": []string{"tube"}, "from_m": 1, "to_m": 3},
			{"id": "aft", "of": []string{"tube"}, "from_m": 3}, {"id": "again", "of": []string{"tube"}, "from_m": 2.5}},
		"steps": []doc{{"id": "s", "operation": "coat", "on": []string{"fore", "middle", "aft"}, "product": "epoxy-primer", "method": "brush"}},
	}
	e := work(t, job)
	assert.InEpsilon(t, 4*math.Pi-1, e.Steps[0].AreaM2, 1e-12)
	assert.Len(t, e.Steps[0].Warnings, 3)
	assert.Contains(t, e.Steps[0].Warnings[0], "region fore is part of faces with openings")
	job["steps"] = []doc{{"id": "s", "operation": "coat", "on": []string{"fore", "middle", "aft", "again"}, "product": "epoxy-primer", "method": "brush"}}
	assert.Equal(t, map[string]string{"/steps/0/on/3": "overlap"}, faultsOf(t, job))
}

func TestFaultyRegionsOfAShape(t *testing.T) {
	tube := doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}
	wing := doc{"kind": "wing", "section": "flat", "root_chord_m": 2, "tip_chord_m": 1, "span_m": 3}
	known := doc{"kind": "measured", "area_m2": 3, "edge_m": 4}
	for name, c := range map[string]struct {
		shape, region doc
		want          map[string]string
	}{
		"backwards":          {tube, doc{"from_m": 3, "to_m": 2}, map[string]string{"/regions/0/to_m": "not_increasing"}},
		"beyond both ends":   {tube, doc{"from_m": -1, "to_m": 9}, map[string]string{"/regions/0/from_m": "outside", "/regions/0/to_m": "outside"}},
		"out of range":       {tube, doc{"from_m": 700}, map[string]string{"/regions/0/from_m": "out_of_range"}},
		"no stations":        {known, doc{"to_m": 1}, map[string]string{"/regions/0/to_m": "not_applicable"}},
		"no lines":           {known, doc{"strip": doc{"along": "edge", "width_m": 1}}, map[string]string{"/regions/0/strip": "not_applicable"}},
		"no heights":         {wing, doc{"from_z_m": 0}, map[string]string{"/regions/0/from_z_m": "not_applicable"}},
		"unknown line":       {wing, doc{"strip": doc{"along": "nose", "width_m": 1}}, map[string]string{"/regions/0/strip/along": "unknown_reference"}},
		"no line":            {wing, doc{"strip": doc{"width_m": 1}}, map[string]string{"/regions/0/strip/along": "required"}},
		"no width":           {wing, doc{"strip": doc{"along": "tip"}}, map[string]string{"/regions/0/strip/width_m": "out_of_range"}},
		"strip with heights": {tube, doc{"from_z_m": 0, "strip": doc{"along": "end_1", "width_m": 1}}, map[string]string{"/regions/0/from_z_m": "not_applicable"}},
		"strip in a bay":     {tube, doc{"from_m": 0, "strip": doc{"along": "end_1", "width_m": 1}}, map[string]string{"/regions/0/from_m": "not_applicable"}},
		"measured too":       {tube, doc{"from_m": 1, "area_m2": 1, "share_ratio": 0.5}, map[string]string{"/regions/0/area_m2": "inconsistent", "/regions/0/share_ratio": "inconsistent"}},
	} {
		t.Run(name, func(t *testing.T) {
			job := painted(c.shape, []string{"it"}, c.region)
			delete(job, "steps")
			assert.Equal(t, c.want, faultsOf(t, job))
		})
	}
	closed := doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4, "ends": 2}
	job := painted(closed, []string{"it/end_2"}, doc{"to_m": 1})
	delete(job, "steps")
	assert.Equal(t, map[string]string{"/regions/0/of": "outside"}, faultsOf(t, job), "no part of that face")
}

// A job cannot hold the engine up with strips that take long.
func TestTheWorkOnPartsIsBounded(t *testing.T) {
	var stations, regions []doc
	for i := range 101 {
		stations = append(stations, doc{"x_m": i, "width_m": 1, "height_m": 1 + float64(i%2)})
	}
	for i := range 200 {
		regions = append(regions, doc{"id": fmt.Sprint("r", i), "of": []string{"hull"}, "strip": doc{"along": "top", "width_m": 0.1 + 0.001*float64(i)}, "from_m": 0, "to_m": 1})
	}
	start := time.Now()
	found := faultsOf(t, doc{"components": []doc{{"id": "hull", "shape": doc{"kind": "body", "stations": stations}}}, "regions": regions})
	assert.Equal(t, "too_many", found["/regions/10"])
	assert.Less(t, time.Since(start), time.Minute)
}

// The tip of a capped wing belongs to the bay that reaches it, once.
func TestABayUpToACappedTip(t *testing.T) {
	wing := doc{"kind": "wing", "section": "double_wedge", "root_thickness_ratio": 0.1, "root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "tip": "capped"}
	whole := work(t, coatOn([]doc{{"id": "it", "shape": wing}}, nil, "it")).Steps[0].AreaM2
	regions := []doc{{"id": "inner", "of": []string{"it"}, "to_m": 1.2}, {"id": "outer", "of": []string{"it"}, "from_m": 1.2}}
	bays := work(t, coatOn([]doc{{"id": "it", "shape": wing}}, regions, "inner", "outer")).Steps[0].AreaM2
	assert.InEpsilon(t, whole, bays, 1e-12)
}
