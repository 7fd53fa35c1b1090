package estimate_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
)

// coatSteps are coats of a paint each, on one region each.
func coatSteps(members doc, pairs ...[2]string) []doc {
	var steps []doc
	for _, p := range pairs {
		step := doc{"id": "on-" + strings.ReplaceAll(p[0], "/", "-"), "operation": "coat", "on": []string{p[0]}, "product": p[1], "method": "brush", "dry_film_um": 40}
		for name, value := range members {
			step[name] = value
		}
		steps = append(steps, step)
	}
	return steps
}

const (
	orange = "polyurethane-gloss-orange"
	black  = "polyurethane-gloss-black"
	white  = "polyurethane-gloss-white"
)

func between(s estimate.StepEstimate, a, b string) []estimate.MaskedEdge {
	return slices.DeleteFunc(slices.Clone(s.Masking), func(e estimate.MaskedEdge) bool {
		return !slices.Contains(e.Between[:], a) || !slices.Contains(e.Between[:], b)
	})
}

// Two bays of a tube of 1 m across share a circle of π m (identity). In two
// colours it is taped by the later step alone; two-sided by both; in one step, or
// in the same paint, by none. The outer circles are taped either way.
func TestTheBorderOfTwoBays(t *testing.T) {
	job := doc{"components": []doc{{"id": "tube", "shape": doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 4}}},
		"regions": []doc{{"id": "fore", "of": []string{"tube"}, "to_m": 1}, {"id": "middle", "of": []string{"tube"}, "from_m": 1, "to_m": 3}}}
	tape := func(steps ...doc) []float64 {
		job["steps"] = steps
		e := work(t, job)
		var lengths []float64
		for _, s := range e.Steps {
			lengths = append(lengths, edgeM(s)/math.Pi)
		}
		return lengths
	}
	near := func(want, got []float64, what string) { assert.InDeltaSlice(t, want, got, 1e-9, what) }
	near([]float64{1, 2}, tape(coatSteps(nil, [2]string{"fore", orange}, [2]string{"middle", black})...), "the later one tapes the border")
	near([]float64{1, 2}, tape(coatSteps(nil, [2]string{"middle", orange}, [2]string{"fore", black})...), "whichever that is")
	near([]float64{2, 2}, tape(coatSteps(doc{"edge_rule": "two_sided"}, [2]string{"fore", orange}, [2]string{"middle", black})...), "both")
	near([]float64{2, 2}, tape(coatSteps(doc{"mask": true}, [2]string{"fore", orange}, [2]string{"middle", black})...), "both on demand")
	near([]float64{1, 1}, tape(coatSteps(nil, [2]string{"fore", orange}, [2]string{"middle", orange})...), "one paint, no border")
	together := coatSteps(nil, [2]string{"fore", orange})[0]
	together["on"] = []string{"fore", "middle"}
	near([]float64{2}, tape(together), "one step, no border")

	job["steps"] = coatSteps(nil, [2]string{"fore", orange}, [2]string{"middle", black})
	e := work(t, job)
	left, cut := between(e.Steps[0], "fore", "middle"), between(e.Steps[1], "fore", "middle")
	require.Len(t, left, 1)
	require.Len(t, cut, 1)
	assert.Equal(t, 0, left[0].Passes)
	assert.Equal(t, "on-middle", left[0].ServedBy)
	assert.Equal(t, 2, cut[0].Tapes, "narrow tape and wide behind it")
	assert.InEpsilon(t, left[0].LengthM, cut[0].LengthM, 1e-12)
	assert.InEpsilon(t, cut[0].TapeM, 2*math.Pi, 1e-9)
}

// Borders are symmetric, and three bays of any lengths in any order of painting
// take each circle once: two inner ones and the open ends (identity).
func TestBordersAreSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0.1, 1.9).Draw(t, "a")
		b := rapid.Float64Range(2, 3.9).Draw(t, "b")
		low, high := rapid.Float64Range(-0.3, 0).Draw(t, "low"), rapid.Float64Range(0.05, 0.4).Draw(t, "high")
		shape := rapid.SampledFrom([]doc{
			{"kind": "cylinder", "radius_m": 0.5, "length_m": 4},
			{"kind": "frustum", "radius_1_m": 0.5, "radius_2_m": 0.8, "length_m": 4},
			{"kind": "body", "stations": []doc{{"x_m": 0, "width_m": 1, "height_m": 1}, {"x_m": 2.5, "width_m": 1.2, "height_m": 1.4}, {"x_m": 4, "width_m": 0.8, "height_m": 0.9}}},
		}).Draw(t, "shape")
		regions := []doc{{"id": "fore", "of": []string{"it"}, "to_m": a}, {"id": "band", "of": []string{"it"}, "from_m": a, "to_m": b, "from_z_m": low, "to_z_m": high}, {"id": "aft", "of": []string{"it"}, "from_m": b}}
		job := doc{"components": []doc{{"id": "it", "shape": shape}}, "regions": regions}
		total := func(order ...[2]string) (sum float64, e *estimate.Estimate) {
			job["steps"] = coatSteps(nil, order...)
			e = work(t, job)
			for _, s := range e.Steps {
				sum += edgeM(s)
			}
			return sum, e
		}
		order := rapid.Permutation([][2]string{{"fore", orange}, {"band", black}, {"aft", white}}).Draw(t, "order")
		one, e := total(order...)
		slices.Reverse(order)
		other, _ := total(order...)
		assert.InEpsilon(t, one, other, 1e-9, "whoever paints first")
		lengths := map[string]float64{}
		for _, s := range e.Steps {
			for _, m := range between(s, "fore", "band") {
				lengths[s.ID] += m.LengthM
			}
		}
		assert.Positive(t, lengths["on-fore"])
		assert.InEpsilon(t, lengths["on-fore"], lengths["on-band"], 1e-9, "the border is as long from either side")
	})
}

// A band beside the whole of another face: the ridge between the left and the
// right half of a body is taped once, as far as the bay goes (identity).
func TestABayBesideAFace(t *testing.T) {
	body := doc{"kind": "body", "stations": []doc{{"x_m": 0, "width_m": 1, "height_m": 1}, {"x_m": 4, "width_m": 1, "height_m": 1}}}
	job := doc{"components": []doc{{"id": "hull", "shape": body}}, "regions": []doc{{"id": "bay", "of": []string{"hull/left"}, "from_m": 1, "to_m": 2}},
		"steps": coatSteps(nil, [2]string{"hull/right", orange}, [2]string{"bay", black})}
	e := work(t, job)
	assert.InEpsilon(t, 2*(4-1)+math.Pi, edgeM(e.Steps[0]), 1e-9, "top and bottom but for the bay, and half a circle at each end")
	assert.InEpsilon(t, 2*1+math.Pi, edgeM(e.Steps[1]), 1e-9)
}

// A seam between two components in two colours is taped once too: by whichever
// is painted later (identity; the circle of a tube set on a tank's end).
func TestASeamInTwoColours(t *testing.T) {
	tank := cylinder("tank", 1, 6, 0, nil)
	stub := cylinder("stub", 0.5, 2, 0, doc{"joins": []doc{{"to": "tank", "kind": "plate", "area_m2": 0.785, "edge_m": 3}}})
	seams := func(order ...[2]string) []int {
		e := work(t, doc{"components": []doc{tank, stub}, "steps": coatSteps(nil, order...)})
		var passes []int
		for _, s := range e.Steps {
			for _, m := range s.Masking {
				if m.Kind == "seam" {
					passes = append(passes, m.Passes)
				}
			}
		}
		return passes
	}
	assert.Equal(t, []int{0, 1}, seams([2]string{"tank", orange}, [2]string{"stub", black}))
	assert.Equal(t, []int{0, 1}, seams([2]string{"stub", orange}, [2]string{"tank", black}))
	assert.Equal(t, []int{0, 0}, seams([2]string{"stub", orange}, [2]string{"tank", orange}))
}

// A mask step serves what follows it, but not work of another kind, nor beyond
// the time that its tape may stay on (24 h in the catalogue, from memory).
func TestAMaskStepServesWhatFollows(t *testing.T) {
	part := flat("a", 10, 14)
	part["openings"] = []doc{{"name": "hatch", "area_m2": 1, "edge_m": 4}}
	coat := func(id string, coats int, members doc) doc {
		step := doc{"id": id, "operation": "coat", "on": []string{"a"}, "product": white, "method": "brush", "dry_film_um": 40, "coats": coats, "tape_on_h": 8}
		for name, value := range members {
			step[name] = value
		}
		return step
	}
	mask := doc{"id": "m", "operation": "mask", "on": []string{"a"}}
	strip := doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper"}
	passes := func(steps ...doc) [][]int {
		var all [][]int
		for _, s := range work(t, doc{"components": []doc{part}, "steps": steps}).Steps {
			var list []int
			for _, m := range s.Masking {
				list = append(list, m.Passes)
			}
			all = append(all, list)
		}
		return all
	}
	assert.Equal(t, [][]int{{1, 1}, {0, 0}, {0, 0}}, passes(mask, coat("b", 1, nil), coat("c", 2, nil)), "three coats of 8 h are 24 h")
	assert.Equal(t, [][]int{{1, 1}, {0, 0}, {1, 1}}, passes(mask, coat("b", 2, nil), coat("c", 2, nil)), "the fourth coat wants new tape")
	assert.Equal(t, [][]int{{1, 1}, {1, 1}}, passes(coat("b", 1, nil), coat("c", 1, nil)), "without a mask step each tapes anew")
	assert.Equal(t, [][]int{{1, 1}, {0, 0}}, passes(coat("b", 1, nil), coat("c", 1, doc{"keep_tape": true})))
	assert.Equal(t, [][]int{{1, 1}, {0, 0}, {1, 1}}, passes(mask, strip, coat("c", 1, nil)), "tape for stripping is none for paint")
	assert.Equal(t, [][]int{{1, 1}, nil, {0, 0}}, passes(mask, coat("b", 1, doc{"mask": false}), coat("c", 1, nil)))
	long := work(t, doc{"components": []doc{part}, "steps": []doc{coat("b", 7, nil)}}).Steps[0]
	assert.Equal(t, 3, long.Masking[0].Passes, "7 coats, 3 to a taping")
	assert.True(t, contains(long.Warnings, "taped 3 times"))
	slow := work(t, doc{"components": []doc{part}, "steps": []doc{coat("b", 2, doc{"tape_on_h": 30, "tape_at_c": 90})}}).Steps[0]
	assert.Equal(t, 2, slow.Masking[0].Passes)
	assert.True(t, contains(slow.Warnings, "should be off within 24 h"))
	assert.True(t, contains(slow.Warnings, "holds up to 60 °C"))
}

// The lists add up: tape is the sum of lengths, passes and tapes with the waste,
// hours the tape laid by the rate, film the covers; more passes or edges never
// take less (identity).
func TestTheListsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.Float64Range(0.1, 30).Draw(t, "edge")
		waste := rapid.Float64Range(0, 40).Draw(t, "waste")
		rate := rapid.Float64Range(1, 60).Draw(t, "rate")
		coats := rapid.IntRange(1, 9).Draw(t, "coats")
		method := rapid.SampledFrom([]string{"brush", "hvlp"}).Draw(t, "method")
		work := func(edge float64, coats int) estimate.StepEstimate {
			part := flat("a", 40, edge)
			part["openings"] = []doc{{"area_m2": 1, "edge_m": 4}}
			return work(t, doc{"components": []doc{part, {"id": "box", "shape": doc{"kind": "box", "length_m": 2, "width_m": 1, "height_m": 1}}}, "masking": doc{"tape_waste_percent": waste, "rate_m_h": rate},
				"regions": []doc{{"id": "some", "of": []string{"box/top"}, "share_ratio": 0.25, "edge_m": 3}},
				"steps":   []doc{{"id": "s", "operation": "coat", "on": []string{"a", "some", "box/left"}, "product": white, "method": method, "coats": coats}}}).Steps[0]
		}
		s := work(edge, coats)
		laid, cover := 0.0, 0.0
		for _, m := range s.Masking {
			assert.InDelta(t, m.LengthM*float64(m.Passes*m.Tapes), m.TapeM, 1e-9)
			laid, cover = laid+m.TapeM, cover+m.CoverM2
		}
		assert.InEpsilon(t, laid*(1+waste/100), s.MaskingTapeM, 1e-9)
		assert.InEpsilon(t, laid/rate, s.MaskingHours, 1e-9)
		assert.InEpsilon(t, cover/4, quantityOf(s, "masking-film"), 1e-9)
		assert.InEpsilon(t, s.MaskingTapeM, quantityOf(s, "masking-tape-24")+quantityOf(s, "fine-line-tape-12"), 1e-9)
		assert.GreaterOrEqual(t, work(edge*1.5, coats).MaskingTapeM, s.MaskingTapeM)
		assert.GreaterOrEqual(t, work(edge, coats+3).MaskingTapeM, s.MaskingTapeM)
	})
}

// What is closed and chosen whole has no edges and takes no tape (identity).
func TestAWholeSelectionTakesNoTape(t *testing.T) {
	for _, shape := range []doc{{"kind": "sphere", "radius_m": 1}, {"kind": "box", "length_m": 2, "width_m": 1, "height_m": 1}, {"kind": "cylinder", "radius_m": 1, "length_m": 2, "ends": 2}} {
		s := work(t, doc{"components": []doc{{"id": "it", "shape": shape}}, "steps": coatSteps(doc{"method": "hvlp"}, [2]string{"it", white})}).Steps[0]
		assert.Empty(t, s.Masking)
		assert.Zero(t, s.MaskingTapeM+s.MaskingHours)
	}
}

// A job may leave masking out altogether; a step may still ask for it.
func TestMaskingOfTheWholeJob(t *testing.T) {
	job := doc{"components": []doc{flat("a", 10, 14)}, "masking": doc{"mask": false},
		"steps": append(coatSteps(nil, [2]string{"a", white}), doc{"id": "s", "operation": "strip", "on": []string{"a"}, "product": "stripper", "mask": true})}
	e := work(t, job)
	assert.Empty(t, e.Steps[0].Masking)
	assert.Len(t, e.Steps[1].Masking, 1)
	job["masking"] = doc{"rate_m_h": 0}
	assert.Equal(t, map[string]string{"/masking/rate_m_h": "out_of_range"}, faultsOf(t, job))
	job["masking"] = nil
	job["steps"] = []doc{coatSteps(doc{"edge_rule": "thrice", "fine_tape": "garnet"}, [2]string{"a", white})[0]}
	assert.Equal(t, map[string]string{"/steps/0/edge_rule": "unknown_kind", "/steps/0/fine_tape": "not_applicable"}, faultsOf(t, job))
}

// Many bays in many steps are no more work than their number (a job must not hold
// the engine up): neighbours are found once.
func TestManyBaysAreQuick(t *testing.T) {
	const bays = 1000
	var regions []doc
	var ids []string
	for i := range bays {
		id := fmt.Sprint("r", i)
		ids = append(ids, id)
		regions = append(regions, doc{"id": id, "of": []string{"tube"}, "from_m": 10 * float64(i) / bays, "to_m": 10 * float64(i+1) / bays})
	}
	var steps []doc
	for i := range 20 {
		steps = append(steps, doc{"id": fmt.Sprint("s", i), "operation": "coat", "on": ids, "product": white, "method": "brush"})
	}
	start := time.Now()
	e := work(t, doc{"components": []doc{{"id": "tube", "shape": doc{"kind": "cylinder", "radius_m": 0.5, "length_m": 10}}}, "regions": regions, "steps": steps})
	assert.Less(t, time.Since(start), 20*time.Second)
	assert.InEpsilon(t, 2*math.Pi, edgeM(e.Steps[0]), 1e-9, "the two ends of the tube; no border within")
}
