package estimate_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// marks is a job of one mark step on a plain surface.
func marks(figure, members doc) doc {
	figure["id"] = "m"
	step := doc{"id": "s", "operation": "mark", "markings": []string{"m"}, "dry_film_um": 30, "method": "brush", "paints": doc{"red": orange, "blue": black}}
	for name, value := range members {
		step[name] = value
	}
	return doc{"components": []doc{flat("a", 10, 4)}, "markings": []doc{figure}, "steps": []doc{step}}
}

// The star and bar of 1 m diameter: 14.074006374 m of borders once, 22.59509732 m
// two-sided (reference markings SB-9, SB-10 [M]); six of them once with 15 % of
// waste are 97.110644 m of one tape, 2 rolls of 55 m (section 5.1 [D]).
func TestEdgesOfAnInsignia(t *testing.T) {
	figure := doc{"kind": "star_and_bar", "size_m": 1}
	once := work(t, marks(figure, nil)).Steps[0]
	assert.InDelta(t, 14.074006374, edgeM(once), 1e-8)
	apart := work(t, marks(figure, doc{"edge_rule": "two_sided"})).Steps[0]
	assert.InDelta(t, 22.59509732, edgeM(apart), 1e-7)
	figure["count"] = 6
	e := work(t, marks(figure, doc{"tape": "masking-tape-18", "tape_waste_percent": 15}))
	assert.InDelta(t, 97.110644, quantityOf(e.Steps[0], "masking-tape-18"), 5e-6)
	assert.InDelta(t, 97.110644, e.Steps[0].MaskingTapeM, 5e-6, "whoever names one tape lays that one")
	for _, line := range e.Order {
		if line.Product == "masking-tape-18" {
			require.Len(t, line.Packs, 1)
			assert.Equal(t, 2, line.Packs[0].Count)
			assert.Equal(t, 55.0, line.Packs[0].Pack)
		}
	}
}

// With white under all of it the outline is taped for the white, and each later
// colour inside its own border: the same once; two-sided the white's outline and
// the perimeters of red and blue (SB-5, SB-16 [M]).
func TestEdgesOverAnUnderColour(t *testing.T) {
	figure := doc{"kind": "star_and_bar", "size_m": 1, "under_colour": "white"}
	once := work(t, marks(figure, nil)).Steps[0]
	assert.InDelta(t, 14.074006374, edgeM(once), 1e-8)
	for _, m := range once.Masking {
		if slices.Contains(m.Between[:], "base") {
			assert.Equal(t, "white", m.Colour)
		}
	}
	apart := work(t, marks(figure, doc{"edge_rule": "two_sided"})).Steps[0]
	assert.InDelta(t, 5.55291542782+2.24641330297+12.16141399415, edgeM(apart), 1e-7)
}

// On a white skin the white of a roundel 1:2:3 is left, 6 ninths of the area are
// painted, and all three circles are borders still (identity).
func TestTheBaseIsLeftAsItIs(t *testing.T) {
	figure := doc{"kind": "roundel", "size_m": 0.6, "rings": []doc{{"ratio": 1, "colour": "orange"}, {"ratio": 2, "colour": "white"}, {"ratio": 3, "colour": "green"}}}
	all, left := work(t, marks(figure, nil)).Steps[0], work(t, marks(figure, doc{"base_colour": "white"})).Steps[0]
	assert.InEpsilon(t, all.AreaM2*6/9, left.AreaM2, 1e-9)
	assert.InEpsilon(t, edgeM(all), edgeM(left), 1e-9, "every circle is still a border")
	require.Len(t, left.Colours, 2)
	assert.Equal(t, map[string]string{"/steps/0/base_colour": "inconsistent"}, faultsOf(t, marks(doc{"kind": "disc", "size_m": 1, "colour": "white"}, doc{"base_colour": "white"})))
}

// Sprayed, a small figure takes what lands on small parts: 8.5 % by HVLP, the
// middle of 7 to 10 % (reference coating T9 [T]), against 55 % on a large one;
// a brush loses no more. Colours list litres and hours that add up.
func TestSmallFiguresTakeMorePaint(t *testing.T) {
	small := doc{"kind": "disc", "size_m": 0.2, "colour": "white", "count": 25}
	large := doc{"kind": "disc", "size_m": 1, "colour": "white"} // as much area in one
	litres := func(figure, members doc) float64 {
		s := work(t, marks(figure, members)).Steps[0]
		require.Len(t, s.Colours, 1)
		assert.InEpsilon(t, quantityOf(s, white), s.Colours[0].Litres, 1e-9)
		assert.InEpsilon(t, s.Hours-s.MaskingHours, s.Colours[0].Hours, 1e-9)
		return s.Colours[0].Litres
	}
	hvlp := doc{"method": "hvlp"}
	assert.InEpsilon(t, 55/8.5, litres(small, hvlp)/litres(large, hvlp), 1e-9)
	assert.InEpsilon(t, 1, litres(small, nil)/litres(large, nil), 1e-9)
	given := doc{"method": "hvlp", "transfer_efficiency_percent": 40}
	assert.InEpsilon(t, 1, litres(small, given)/litres(large, given), 1e-9, "what the step says counts")
	e := work(t, marks(small, hvlp))
	require.Len(t, assumed(e, "on small parts of figures"), 1)
	assert.Contains(t, assumed(e, "on small parts of figures")[0].Source, "T9")
}

// Colours of one paint and of several share litres and hours without loss, and
// lie in the order in which they are put down.
func TestColoursAddUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		size := rapid.Float64Range(0.1, 2).Draw(rt, "size")
		second := rapid.Float64Range(1.1, 3).Draw(rt, "ratio")
		method := rapid.SampledFrom([]string{"brush", "hvlp", "airless"}).Draw(rt, "method")
		figure := doc{"kind": "roundel", "size_m": size, "count": rapid.IntRange(1, 4).Draw(rt, "count"),
			"rings": []doc{{"ratio": 1, "colour": "orange"}, {"ratio": second, "colour": "white"}, {"ratio": second + 1, "colour": "green"}}}
		paints := rapid.SampledFrom([]doc{{}, {"green": white}, {"green": orange, "white": orange}}).Draw(rt, "paints")
		s := work(t, marks(figure, doc{"method": method, "paints": paints, "coats": 2, "setup_h": 1})).Steps[0]
		litres, hours, area := map[string]float64{}, 0.0, 0.0
		for i, c := range s.Colours {
			litres[c.Product] += c.Litres
			hours, area = hours+c.Hours, area+c.AreaM2
			assert.Equal(rt, i+1, c.Layer)
			assert.LessOrEqual(rt, c.SmallM2, c.AreaM2*(1+1e-12))
		}
		for product, sum := range litres {
			assert.InEpsilon(rt, quantityOf(s, product), sum, 1e-9)
		}
		assert.InEpsilon(rt, s.AreaM2, area, 1e-9)
		assert.InEpsilon(rt, s.Hours-s.MaskingHours-1, hours, 1e-9)
	})
}

// Narrow tape goes round curves; a straight figure takes wide tape alone (FAA
// handbook 8083-31 ch. 8, MK-1: 3/4 or 1 in for straight lines), unless the step
// names a narrow one.
func TestNarrowTapeGoesRoundCurves(t *testing.T) {
	plain := work(t, marks(doc{"kind": "rectangle", "width_m": 1, "height_m": 0.5, "colour": "white"}, nil)).Steps[0]
	assert.Zero(t, quantityOf(plain, "fine-line-tape-6"))
	assert.InEpsilon(t, 1.1*3, quantityOf(plain, "masking-tape-24"), 1e-9)
	named := work(t, marks(doc{"kind": "rectangle", "width_m": 1, "height_m": 0.5, "colour": "white"}, doc{"fine_tape": "fine-line-tape-3"})).Steps[0]
	assert.InEpsilon(t, 1.1*3, quantityOf(named, "fine-line-tape-3"), 1e-9)
	round := work(t, marks(doc{"kind": "disc", "size_m": 1, "colour": "white"}, nil)).Steps[0]
	assert.Positive(t, quantityOf(round, "fine-line-tape-6"))
	one := work(t, marks(doc{"kind": "disc", "size_m": 1, "colour": "white"}, doc{"fine_tape": "none"})).Steps[0]
	assert.Equal(t, 1, one.Masking[0].Tapes)
}
