package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

// capUnits is the cap height of the embedded fonts, so that a letter of this
// height has the font's own units.
const capUnits = 1480

func sansOf(t *testing.T, text string, bold bool, height float64) *marking.Lettering {
	f := figureOf[*marking.Lettering](t, "lettering")
	f.Text, f.Font, f.Bold, f.HeightM, f.Colour = text, "sans", bold, height, "black"
	return f
}

// Source: the Go fonts (embedded, open), read by two general font libraries.
//
// GF-1 to GF-8: glyphs in font units, as two independent readers of the font
// found them. Straight-sided glyphs agree to 1e-9. Curved ones have a tolerance
// of 5e-4, for one reader cuts implied points to whole units; the numbers printed
// are that reader's, which is ours, so they agree to 1e-8.
func TestMarkingsFontGlyphs(t *testing.T) {
	for _, row := range []struct {
		id, glyph       string
		bold            bool
		area, perimeter float64
		contours        int
		within          float64
	}{
		{"GF-1", "H", false, 734573, 7902, 1, 1e-9},
		{"GF-2", "L", false, 424782, 4832, 1, 1e-9},
		{"GF-3", "E", false, 707110, 8448, 1, 1e-9},
		{"GF-4", "N", false, 827502.5, 8764.985024, 1, 1e-9},
		{"GF-5", "O", false, 800508.1667, 8279.109876, 2, 1e-8},
		{"GF-6", "8", false, 721927.3333, 8120.017062, 3, 1e-8},
		{"GF-7", "H", true, 1017148, 7778, 1, 1e-9},
		{"GF-8", "O", true, 1087627.8333, 7915.849709, 2, 1e-8},
	} {
		// Tenths of the cap height keep within the greatest letter allowed.
		f := sansOf(t, row.glyph, row.bold, 10)
		m, err := marking.Measure(f)
		require.NoError(t, err)
		k := 10.0 / capUnits
		assert.InEpsilon(t, row.area*k*k, m.AreaM2, row.within, "%s area", row.id)
		assert.InEpsilon(t, row.perimeter*k, m.OutlineM, row.within, "%s perimeter", row.id)
		require.Len(t, m.Colours, 1)
		assert.Equal(t, row.contours, m.Colours[0].Parts+m.Colours[0].Islands, "%s contours", row.id)
		assert.Equal(t, row.contours-1, m.Islands, "%s islands", row.id)
	}
}

// GF-1 to GF-8 as parts of the cap height, and the advances.
func TestMarkingsFontAdvances(t *testing.T) {
	for _, row := range []struct {
		id, glyph string
		bold      bool
		advance   float64
		area      float64
	}{
		{"GF-1", "H", false, 1479, 0.3353602}, {"GF-2", "L", false, 1139, 0.1939290}, {"GF-3", "E", false, 1366, 0.3228223},
		{"GF-4", "N", false, 1479, 0.3777860}, {"GF-5", "O", false, 1593, 0.3654621}, {"GF-6", "8", false, 1139, 0.3295870},
		{"GF-7", "H", true, 1479, 0.4643663}, {"GF-8", "O", true, 1593, 0.4965430},
	} {
		m, err := marking.Measure(sansOf(t, row.glyph, row.bold, 1))
		require.NoError(t, err)
		assert.InDelta(t, row.area, m.AreaM2, 0.5e-7, row.id)
		assert.Equal(t, "advance_m", m.Working[0].Quantity)
		assert.InEpsilon(t, row.advance/capUnits, m.Working[0].Value, 1e-12, row.id)
	}
}

// GF-9: HELLO without kerning at a cap height of 25.4 mm.
func TestMarkingsFontWord(t *testing.T) {
	m, err := marking.Measure(sansOf(t, "HELLO", false, 0.0254))
	require.NoError(t, err)
	assert.InDelta(t, 910.645, m.AreaM2*1e6, 0.5e-3, "area in mm²")
	assert.InDelta(t, 588.544, m.OutlineM*1e3, 0.5e-3, "perimeter in mm")
	assert.InDelta(t, 115.261, m.Working[0].Value*1e3, 0.5e-3, "advance in mm")
	assert.InDelta(t, 1.411503, m.AreaM2/0.0254/0.0254, 0.5e-6)
	assert.InDelta(t, 23.171020, m.OutlineM/0.0254, 0.5e-6)
}
