package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

func ruled(t *testing.T, rule, text string, height float64) *marking.Lettering {
	f := lettered(t, text, height)
	f.Rule = rule
	return f
}

func working(t *testing.T, f marking.Figure, name string) float64 {
	t.Helper()
	m, err := marking.Measure(f)
	require.NoError(t, err)
	for _, w := range m.Working {
		if w.Quantity == name {
			return w.Value
		}
	}
	require.Failf(t, "no such working", name)
	return 0
}

// LT-1, LT-2, LT-5, LT-6: lengths of texts by rules other than the registration
// rule.
func TestMarkingsLetteringRules(t *testing.T) {
	const boat, road = "33 CFR 183.25", "public table of the UK 2001 display regulations"
	for _, row := range []struct {
		id, source, mark, rule, text string
		height, width                float64
	}{
		{"LT-1", boat, "H", "boat_plate", "14", 1, 1.1},
		{"LT-2", boat, "H", "boat_plate", "444", 1, 2.633333333},
		{"LT-5", road, "H", "road_plate", "AB23 CDE", 0.079, 0.438},
		{"LT-6", road + "; a 1 one stroke wide is an inference", "M", "road_plate", "AB12 CDE", 0.079, 0.402},
	} {
		markingCase{id: row.id, source: row.source, mark: row.mark, figure: ruled(t, row.rule, row.text, row.height),
			sums: map[string]float64{"width_m": row.width}}.run(t, 1e-9)
	}
	plate := ruled(t, "road_plate", "AB23 CDE", 0.079)
	plate.StencilMarginMM = 11
	markingCase{id: "LT-5 with margins", source: road, mark: "H", figure: plate,
		sums: map[string]float64{"stencil_film_m2": 0.460 * (0.079 + 2*0.011)}}.run(t, 1e-9)
}

// LT-4: two group gaps, each as wide as a letter other than I.
func TestMarkingsVesselNumber(t *testing.T) {
	f := ruled(t, "vessel_number", "DC 5678 EF", 3*markingInch)
	letter, gap, group := working(t, f, "letter_width_m"), working(t, f, "gap_m"), working(t, f, "group_gap_m")
	assert.InEpsilon(t, letter, group, 1e-12, "LT-4, 33 CFR 173.27 (mark H)")
	m, err := marking.Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 8*letter+(1+3+1)*gap+2*letter, m.WidthM, 1e-9)
}

// LT-8 (DOD-HDBK-791 6-5.3.2, mark H): strokes of 1/6 dark on light and 1/7 to
// 1/8 light on dark, width 3:5 to 1:1. LT-11 (DIN 1451 by a lettering manual,
// mark M): strokes h/7, K X Y N 5h/7, M 6h/7, W 8h/7. LT-13: 8 by 12 in is the
// registration rule's two-thirds.
func TestMarkingsLetterProportions(t *testing.T) {
	assert.InEpsilon(t, 1.0/6, working(t, ruled(t, "label", "A", 1), "stroke_width_m"), 1e-12, "LT-8")
	assert.InDelta(t, (1.0/7+1.0/8)/2, working(t, ruled(t, "label_light", "A", 1), "stroke_width_m"), (1.0/7-1.0/8)/2+1e-12, "LT-8")
	assert.InEpsilon(t, 3.0/5, working(t, ruled(t, "label", "A", 1), "letter_width_m"), 1e-12, "LT-8")
	for text, width := range map[string]float64{"K": 5, "X": 5, "Y": 5, "N": 5, "M": 6, "W": 8} {
		markingCase{id: "LT-11 " + text, source: "DIN 1451 by a lettering manual, partly legible", mark: "M", figure: ruled(t, "din_1451", text, 7),
			sums: map[string]float64{"width_m": width}}.run(t, 1e-9)
	}
	assert.InEpsilon(t, 1, working(t, ruled(t, "din_1451", "K", 7), "stroke_width_m"), 1e-12, "LT-11")
	assert.InEpsilon(t, 8*markingInch, working(t, lettered(t, "A", 12*markingInch), "letter_width_m"), 1e-12, "LT-13")
}

// LT-9 and LT-10: ISO 3098 type B at 7 mm, from the dimension table of
// NF EN ISO 3098-0 (mark H).
func TestMarkingsDrawingLetters(t *testing.T) {
	const h = 0.007
	f := ruled(t, "iso_3098_b", "AB\nCD\nEF", h)
	assert.InEpsilon(t, 0.0007, working(t, f, "stroke_width_m"), 1e-12, "LT-9 stroke")
	assert.InEpsilon(t, 0.0014, working(t, f, "gap_m"), 1e-12, "LT-9 letter gap")
	assert.InEpsilon(t, 0.0042, working(t, f, "group_gap_m"), 1e-12, "LT-9 word gap")
	assert.InEpsilon(t, 0.0091, working(t, f, "line_pitch_m"), 1e-12, "LT-9 line pitch, capitals only")
	markingCase{id: "LT-10", source: "from LT-9: 7 + 2 × 9.1 mm", mark: "H", figure: f, sums: map[string]float64{"height_m": 0.0252}}.run(t, 1e-9)
	assert.InEpsilon(t, 0.0105, working(t, sansOf(t, "Ab\nCd", false, h), "line_pitch_m"), 1e-12, "LT-9 without accents")
	assert.InEpsilon(t, 0.0133, working(t, sansOf(t, "Äb\nCd", false, h), "line_pitch_m"), 1e-12, "LT-9 with accents")
}

// RG-9 (ICAO Annex 7 and CAP 523, from memory, mark L): width 2/3, stroke 1/6,
// gap at least 1/4 of the width, a hyphen as long as a letter. LT-7 (14 CFR
// 25.812, mark H): height to stroke between 6:1 and 7:1.
func TestMarkingsStrokesAndHyphen(t *testing.T) {
	mark := lettered(t, "A-B", 0.5)
	assert.InEpsilon(t, 0.5*2/3, working(t, mark, "letter_width_m"), 1e-12, "RG-9")
	assert.InEpsilon(t, 0.5/6, working(t, mark, "stroke_width_m"), 1e-12, "RG-9")
	assert.InEpsilon(t, 0.5*2/3/4, working(t, mark, "gap_m"), 1e-12, "RG-9")
	markingCase{id: "RG-9 hyphen", source: "ICAO Annex 7, from memory", mark: "L", figure: lettered(t, "-", 0.5),
		sums: map[string]float64{"width_m": 0.5 * 2 / 3}}.run(t, 1e-12)
	sign := ruled(t, "registration", "EXIT", 1.5*markingInch)
	ratio := sign.HeightM / working(t, sign, "stroke_width_m")
	assert.GreaterOrEqual(t, ratio, 6-1e-12, "LT-7")
	assert.LessOrEqual(t, ratio, 7+1e-12, "LT-7")
}

// LT-17 (trade article on FAA AC 150/5340-1K appendix A, mark M): letters on a
// grid 20 squares high; of 12 ft, a square is 7.2 in. Such a letter is drawn as
// an outline in squares.
func TestMarkingsSurfaceLetterGrid(t *testing.T) {
	f := figureOf[*marking.Outline](t, "outline")
	f.Path, f.UnitMM, f.Colour = "M0 0V-20H4V-4H12V0Z", 7.2*25.4, "yellow"
	markingCase{id: "LT-17", source: "grid of 20 squares; the L on it is invented", mark: "M", figure: f,
		areas: map[string]float64{"yellow": (20*4 + 8*4) * math.Pow(7.2*markingInch, 2)}, sums: map[string]float64{"height_m": 12 * 12 * markingInch}}.run(t, 1e-12)
}
