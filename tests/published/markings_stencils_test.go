package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

func stencilOf(t *testing.T, text string, bridge float64) *marking.StencilText {
	f := figureOf[*marking.StencilText](t, "stencil")
	f.Text, f.HeightM, f.BridgeWidthM, f.Colour = text, 6, bridge, "black"
	return f
}

// SB-1b and SB-2b (identities): a bridge of width b across a stroke s takes b·s
// off the area and adds 2·s − 2·b of edge. The block O on a grid of 6, strokes
// of 1, with two bridges of 0.5 has 15 and 34 in place of 16 and 32.
func TestMarkingsBridges(t *testing.T) {
	markingCase{id: "SB-2b", source: "identity", mark: "H", figure: stencilOf(t, "O", 0.5),
		areas: map[string]float64{"black": 15}, sums: map[string]float64{"outline_m": 34}}.run(t, 1e-12)
	one := stencilOf(t, "O", 0.5)
	one.Bridges = 1
	markingCase{id: "SB-1b", source: "identity", mark: "H", figure: one,
		areas: map[string]float64{"black": 16 - 0.5}, sums: map[string]float64{"outline_m": 32 + 2 - 1}}.run(t, 1e-12)
}

// SB-3b: islands = closed lines − 1; none is left when bridges hold them.
func TestMarkingsIslands(t *testing.T) {
	for text, islands := range map[string]int{"A": 1, "O": 1, "8": 2, "L": 0} {
		m, err := marking.Measure(lettered(t, text, 6))
		require.NoError(t, err)
		assert.Equal(t, islands, m.Islands, text)
		held, err := marking.Measure(stencilOf(t, text, 0.5))
		require.NoError(t, err)
		assert.Zero(t, held.Islands, text)
	}
	// The row's 4 is closed, as that of the font is. A closed 4 made of upright and
	// level strokes alone would read as a 9: the block 4 of ours is open, one closed
	// line and so no island by the row's own rule.
	four, err := marking.Measure(sansOf(t, "4", false, 1))
	require.NoError(t, err)
	assert.Equal(t, 1, four.Islands, "4")
	open, err := marking.Measure(lettered(t, "4", 6))
	require.NoError(t, err)
	assert.Zero(t, open.Islands, "block 4")
	assert.InEpsilon(t, 3.5+4+6-1-1, open.AreaM2, 1e-12, "block 4: its three strokes less where they cross")
}

// SB-3b for every letter of the block alphabet: islands = closed lines − parts,
// counted on the lines that a cutter would follow.
func TestMarkingsIslandsOfTheAlphabet(t *testing.T) {
	for _, letter := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-" {
		f := lettered(t, string(letter), 6)
		m, err := marking.Measure(f)
		require.NoError(t, err)
		a, err := marking.Arrange(f)
		require.NoError(t, err)
		assert.Equal(t, len(a.Loops())-1, m.Islands, "%c", letter)
	}
}
