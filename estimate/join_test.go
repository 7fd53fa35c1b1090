package estimate_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
)

func cylinder(id string, radius, length float64, ends int, more doc) doc {
	part := doc{"id": id, "shape": doc{"kind": "cylinder", "radius_m": radius, "length_m": length, "ends": ends}}
	for name, value := range more {
		part[name] = value
	}
	return part
}

func areaOf(e *estimate.Estimate, component, face string) float64 {
	for _, a := range e.Areas {
		if a.Component != component {
			continue
		}
		if face == "" {
			return a.AreaM2
		}
		for _, f := range a.Faces {
			if f.Face == face {
				return f.AreaM2
			}
		}
	}
	return math.NaN()
}

// faultsOf returns the faults of a job, by pointer.
func faultsOf(t *testing.T, members doc) map[string]string {
	t.Helper()
	_, err := try(t, members)
	var failed *fault.Error
	require.True(t, errors.As(err, &failed), "%v", err)
	found := map[string]string{}
	for _, f := range failed.Faults {
		found[f.Pointer] = f.Code
	}
	return found
}

// A plate takes its area off both sides, for each joint of each part.
func TestPlateComesOffBothSides(t *testing.T) {
	foot := cylinder("foot", 0.2, 1, 2, doc{"count": 3, "joins": []doc{{"to": "deck", "face": "top", "kind": "plate", "area_m2": 0.1, "edge_m": 1.2, "count": 1}}})
	deck := doc{"id": "deck", "shape": doc{"kind": "box", "length_m": 4, "width_m": 2, "height_m": 0.5}}
	plain := work(t, doc{"components": []doc{deck, cylinder("foot", 0.2, 1, 2, doc{"count": 3})}})
	e := work(t, doc{"components": []doc{deck, foot}})
	assert.InDelta(t, areaOf(plain, "deck", "top")-0.3, areaOf(e, "deck", "top"), 1e-12)
	assert.InDelta(t, areaOf(plain, "deck", "bottom"), areaOf(e, "deck", "bottom"), 1e-12)
	assert.InDelta(t, areaOf(plain, "foot", "end_1")-0.3, areaOf(e, "foot", "end_1"), 1e-12)
	assert.InDelta(t, areaOf(plain, "foot", "end_2"), areaOf(e, "foot", "end_2"), 1e-12)
	assert.InDelta(t, plain.Totals.AreaM2-0.6, e.Totals.AreaM2, 1e-12, "twice the footprint")
	assert.InDelta(t, 0.3, e.Areas[0].JoinsM2, 1e-12)
	assert.InDelta(t, plain.Areas[0].EdgeM+3*1.2, e.Areas[0].EdgeM, 1e-12)
	for _, a := range e.Areas {
		w := line(t, a.Working, "joint_m2")
		assert.Equal(t, "foot on deck", w.Of)
		assert.InDelta(t, 0.3, w.Value, 1e-12)
		assert.Equal(t, 3.0, w.Terms["n"])
	}
}

// A tube on a tube, reference G8.01 and G8.03, r = 0.5 on R = 1: the saddle off
// the body, the flat circle off the tube's own end, and nothing off an open one.
func TestTubeOnATank(t *testing.T) {
	const footprint, saddle = 0.81259777291992, 3.19724445685
	tank := cylinder("tank", 1, 6, 0, nil)
	for ends, off := range map[int]float64{0: 0, 1: 0, 2: math.Pi * 0.25} {
		stub := cylinder("stub", 0.5, 2, ends, nil)
		plain := work(t, doc{"components": []doc{tank, stub}})
		stub["joins"] = []doc{{"to": "tank", "kind": "tube"}}
		e := work(t, doc{"components": []doc{tank, stub}})
		assert.InDelta(t, areaOf(plain, "tank", "")-footprint, areaOf(e, "tank", ""), 1e-12)
		assert.InDelta(t, areaOf(plain, "stub", "")-off, areaOf(e, "stub", ""), 1e-12)
		assert.InDelta(t, plain.Areas[0].EdgeM+saddle, e.Areas[0].EdgeM, 1e-10)
		if off == 0 {
			assert.Contains(t, line(t, e.Areas[1].Working, "joint_m2").Formula, "no closing face")
		}
	}
}

// The line round a part is taped when its body alone is painted, and is none
// when both are; the part's own open rim there is then no edge either.
func TestTapeAtAJoint(t *testing.T) {
	const saddle = 3.19724445685
	job := doc{"components": []doc{cylinder("tank", 1, 6, 0, nil), cylinder("stub", 0.5, 2, 0, doc{"joins": []doc{{"to": "tank", "kind": "tube"}}})}}
	tape := func(on ...string) float64 {
		job["steps"] = []doc{{"id": "s", "operation": "coat", "on": on, "product": "epoxy-primer", "method": "brush"}}
		return edgeM(work(t, job).Steps[0])
	}
	assert.InDelta(t, 4*math.Pi+saddle, tape("tank"), 1e-10)
	assert.InDelta(t, 2*math.Pi, tape("stub"), 1e-10)
	assert.InDelta(t, 4*math.Pi+math.Pi, tape("tank", "stub"), 1e-10, "the far rim of the stub is left")
}

// A wing gives its own root; the joint of reference G3.31.
func TestWingOnABody(t *testing.T) {
	wing := doc{"id": "wing", "count": 2, "shape": doc{"kind": "wing", "section": "biconvex", "root_chord_m": 2 * math.Sqrt(3) * 0.75, "tip_chord_m": 0,
		"span_m": 1.5, "sweep_le_deg": 60, "root_thickness_ratio": 0.04}, "joins": []doc{{"to": "body", "face": "side", "kind": "wing_root"}}}
	e := work(t, doc{"components": []doc{cylinder("body", 0.5, 9, 0, nil), wing}})
	assert.InDelta(t, math.Pi*9-2*0.6668799513*0.04*6.75, areaOf(e, "body", ""), 1e-9, "flat root, G3.16")
	assert.InEpsilon(t, 2*3.9087257924183, areaOf(e, "wing", ""), 1e-9, "an open root loses nothing, G3.29")
	wing["joins"] = []doc{{"to": "body", "face": "side", "kind": "wing_root", "body_radius_m": 0.5}}
	e = work(t, doc{"components": []doc{cylinder("body", 0.5, 9, 0, nil), wing}})
	assert.InDelta(t, math.Pi*9-2*0.1805798867, areaOf(e, "body", ""), 2e-10, "G3.31")
}

func TestFaultyJoins(t *testing.T) {
	tank := cylinder("tank", 1, 6, 0, nil)
	for name, c := range map[string]struct {
		join doc
		want map[string]string
	}{
		"nothing given":     {doc{}, map[string]string{"/components/1/joins/0/to": "required"}},
		"unknown component": {doc{"to": "hull", "kind": "plate"}, map[string]string{"/components/1/joins/0/to": "unknown_reference"}},
		"on itself":         {doc{"to": "stub", "kind": "plate"}, map[string]string{"/components/1/joins/0/to": "inconsistent"}},
		"no kind":           {doc{"to": "tank"}, map[string]string{"/components/1/joins/0/kind": "unknown_kind"}},
		"unknown faces": {doc{"to": "tank", "kind": "tube", "face": "top", "own_face": "bottom"},
			map[string]string{"/components/1/joins/0/face": "unknown_reference", "/components/1/joins/0/own_face": "unknown_reference"}},
		"too large":       {doc{"to": "tank", "kind": "tube", "radius_m": 1.2}, map[string]string{"/components/1/joins/0/radius_m": "outside"}},
		"offset too far":  {doc{"to": "tank", "kind": "tube", "offset_m": 0.6}, map[string]string{"/components/1/joins/0/radius_m": "outside"}},
		"of another kind": {doc{"to": "tank", "kind": "tube", "chord_m": 1, "area_m2": 2}, map[string]string{"/components/1/joins/0/chord_m": "not_applicable", "/components/1/joins/0/area_m2": "not_applicable"}},
		"without sizes":   {doc{"to": "tank", "kind": "wing_root"}, map[string]string{"/components/1/joins/0/chord_m": "required", "/components/1/joins/0/thickness_ratio": "required"}},
		"thick as a body": {doc{"to": "tank", "kind": "wing_root", "chord_m": 10, "thickness_ratio": 0.4, "body_radius_m": 1}, map[string]string{"/components/1/joins/0/body_radius_m": "outside"}},
		"out of range": {doc{"to": "tank", "kind": "tube", "angle_deg": 10, "count": 0},
			map[string]string{"/components/1/joins/0/angle_deg": "out_of_range", "/components/1/joins/0/count": "out_of_range"}},
		"more than there is": {doc{"to": "tank", "kind": "plate", "area_m2": 12, "count": 4}, map[string]string{"/components/1/joins/0": "outside"}},
		"more than the end":  {doc{"to": "tank", "kind": "plate", "area_m2": 1, "own_face": "end_1"}, map[string]string{"/components/1/joins/0": "outside"}},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, c.want, faultsOf(t, doc{"components": []doc{tank, cylinder("stub", 0.5, 2, 1, doc{"joins": []doc{c.join}})}}))
		})
	}
}

// Joints take off exactly twice the footprint where a face closes the part, and
// once where none does; scaling all lengths scales all areas.
func TestJointsTakeOffTheFootprintOnBothSides(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := rapid.Float64Range(0.05, 0.9).Draw(rt, "radius")
		k := rapid.Float64Range(0.5, 2).Draw(rt, "scale")
		ends := rapid.IntRange(0, 2).Draw(rt, "ends")
		n := rapid.IntRange(1, 3).Draw(rt, "count")
		job := func(k float64, joined bool) *estimate.Estimate {
			stub := cylinder("stub", r*k, 2*k, ends, doc{"count": n})
			if joined {
				stub["joins"] = []doc{{"to": "ball", "kind": "cylinder_on_sphere"}}
			}
			return work(t, doc{"components": []doc{{"id": "ball", "shape": doc{"kind": "sphere", "radius_m": 2 * k}}, stub}})
		}
		plain, joined, large := job(1, false), job(1, true), job(k, true)
		cap := 2 * math.Pi * 2 * (2 - math.Sqrt(4-r*r)) * float64(n)
		own := 0.0
		if ends == 2 {
			own = math.Pi * r * r * float64(n)
		}
		assert.InDelta(t, plain.Totals.AreaM2-cap-own, joined.Totals.AreaM2, 1e-9)
		assert.InEpsilon(t, k*k*joined.Totals.AreaM2, large.Totals.AreaM2, 1e-9)
	})
}

// Gaps, laps and rivets add what their formulas say (reference G8.14 for the
// rivets), on the face named or on all in proportion, for each part.
func TestGapsLapsAndRivets(t *testing.T) {
	box := doc{"id": "box", "count": 2, "shape": doc{"kind": "box", "length_m": 2, "width_m": 1, "height_m": 0.5},
		"gaps": []doc{{"name": "flap", "face": "back", "span_m": 0.9, "depth_m": 0.02}}, "laps": []doc{{"length_m": 12, "thickness_mm": 1.5, "face": "top"}},
		"rivets": doc{"count": 1000, "head_height_mm": 1.7}}
	e := work(t, doc{"components": []doc{box}})
	gap, lap, rivets := 2*0.9*0.02, 12*0.0015, 9.0792e-6*1000
	assert.InDelta(t, 2*(7+gap+lap+rivets), e.Totals.AreaM2, 1e-6)
	assert.InDelta(t, 2*(gap+lap+rivets), e.Areas[0].AddedM2, 1e-6)
	assert.InDelta(t, 2*(0.5+gap+rivets*0.5/7), areaOf(e, "box", "back"), 1e-6)
	assert.InDelta(t, 2*(2+lap+rivets*2/7), areaOf(e, "box", "top"), 1e-6)
	for name, value := range map[string]float64{"gap_m2": gap, "lap_m2": lap, "rivets_m2": rivets} {
		assert.InDelta(t, 2*value, line(t, e.Areas[0].Working, name).Value, 1e-6, name)
	}
	box["gaps"] = []doc{{"face": "lid", "span_m": 0, "depth_m": 20}}
	box["rivets"] = doc{"count": 0, "head_height_mm": -1}
	assert.Equal(t, map[string]string{"/components/0/gaps/0/span_m": "out_of_range", "/components/0/gaps/0/depth_m": "out_of_range",
		"/components/0/rivets/count": "out_of_range", "/components/0/rivets/head_height_mm": "out_of_range"}, faultsOf(t, doc{"components": []doc{box}}))
	box["rivets"], box["gaps"] = nil, []doc{{"face": "lid", "span_m": 1, "depth_m": 1}}
	assert.Equal(t, map[string]string{"/components/0/gaps/0/face": "unknown_reference"}, faultsOf(t, doc{"components": []doc{box}}))
}

// The accuracy holds the errors of what is taken off and added (independent
// errors, identity): 2 % of 7 m² and 5 % of an opening of 1.5 m², of 5.5 m².
func TestAccuracyOfAComponent(t *testing.T) {
	box := doc{"id": "box", "shape": doc{"kind": "box", "length_m": 2, "width_m": 1, "height_m": 0.5}}
	assert.Equal(t, 2.0, work(t, doc{"components": []doc{box}}).Areas[0].AccuracyPercent)
	box["openings"] = []doc{{"face": "top", "area_m2": 1.5}}
	want := math.Ceil(1000*math.Hypot(7*0.02, 1.5*0.05)/5.5) / 10
	assert.InDelta(t, want, work(t, doc{"components": []doc{box}}).Areas[0].AccuracyPercent, 1e-12)
	box["openings"], box["extra_area_percent"] = nil, 10
	want = math.Ceil(1000*math.Hypot(7.7*0.02, 0.7*0.5)/7.7) / 10
	assert.InDelta(t, want, work(t, doc{"components": []doc{box}}).Areas[0].AccuracyPercent, 1e-12)
}
