package published

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

// RD rows: concentric roundels of outer diameter 1 m. Areas and edges stand
// from the centre out, printed to 10 digits.
func TestMarkingsRoundels(t *testing.T) {
	const list = "encyclopaedic list of air force roundels"
	thirds := []float64{0.0872664626, 0.2617993878, 0.436332313}
	thirdEdges := []float64{1.047197551, 2.094395102, 3.141592654}
	for _, row := range []struct {
		id, source, mark string
		ratios           []float64
		areas, edges     []float64
	}{
		{"RD-A", list + "; an aircraft page says equal fifths", "H", []float64{1, 3, 5},
			[]float64{0.03141592654, 0.2513274123, 0.5026548246}, []float64{0.6283185307, 1.884955592, 3.141592654}},
		{"RD-A1", list, "H", []float64{1, 3, 5, 7},
			[]float64{0.01602853395, 0.1282282716, 0.2564565432, 0.3846848147}, []float64{0.4487989505, 1.346396852, 2.243994753, 3.141592654}},
		{"RD-A2", list + ", which says approximately", "M", []float64{1, 3, 5, 6},
			[]float64{0.02181661565, 0.1745329252, 0.3490658504, 0.2399827721}, []float64{0.5235987756, 1.570796327, 2.617993878, 3.141592654}},
		{"RD-B", list, "H", []float64{2, 5}, []float64{0.1256637061, 0.6597344573}, []float64{1.256637061, 3.141592654}},
		{"RD-C", list, "H", []float64{3, 4, 8},
			[]float64{0.1104466167, 0.08590292412, 0.5890486225}, []float64{1.178097245, 1.570796327, 3.141592654}},
		{"RD-FR", "two pages on French air force insignia: thirds adopted in 1933, measured 1:2:3", "H", []float64{1, 2, 3}, thirds, thirdEdges},
		{"RD-D", "ratio from memory, not confirmed", "L", []float64{1, 2, 3}, thirds, thirdEdges},
		{"RD-D'", "literal reading of an archived history page, in conflict with RD-D; neither is settled", "L", []float64{3, 7, 11},
			[]float64{0.0584180452, 0.2596357565, 0.4673443617}, []float64{0.8567979964, 1.9991953250, 3.1415926536}},
	} {
		f := figureOf[*marking.Roundel](t, "roundel")
		f.SizeM = 1
		c := markingCase{id: row.id, source: row.source, mark: row.mark, figure: f, areas: map[string]float64{}, edges: map[[2]string]float64{}}
		for i, ratio := range row.ratios {
			f.Rings = append(f.Rings, marking.RoundelRing{Ratio: ratio, Colour: fmt.Sprintf("colour %d", i)})
			c.areas[fmt.Sprintf("colour %d", i)] = row.areas[i]
			outside := fmt.Sprintf("colour %d", i+1)
			if i == len(row.ratios)-1 {
				outside = "base"
			}
			c.edges[[2]string{fmt.Sprintf("colour %d", i), outside}] = row.edges[i]
		}
		c.run(t, 1e-9)

		// The same row as a named set of ratios.
		named := figureOf[*marking.Roundel](t, "roundel")
		named.SizeM = 1
		for i, ratio := range row.ratios {
			if i > 0 {
				named.RatioSet += "-"
			}
			named.RatioSet += fmt.Sprint(ratio)
			named.Colours = append(named.Colours, fmt.Sprintf("colour %d", i))
		}
		c.id, c.figure = row.id+" by name", named
		c.run(t, 1e-9)
	}
}

// Section 5.1, edge accounting (identity): with the outline o and the inner
// edges i, masking each edge once takes o + i and masking each colour in its
// own mask takes o + 2·i.
func TestMarkingsEdgeAccounting(t *testing.T) {
	f := figureOf[*marking.Roundel](t, "roundel")
	f.SizeM, f.Rings = 1, []marking.RoundelRing{{Ratio: 1, Colour: "red"}, {Ratio: 2, Colour: "white"}, {Ratio: 3, Colour: "blue"}}
	m, err := marking.Measure(f)
	require.NoError(t, err)
	inner := edgeLength(m, [2]string{"red", "white"}) + edgeLength(m, [2]string{"white", "blue"})
	assert.InEpsilon(t, 1.047197551+2.094395102, inner, 1e-9)
	assert.InEpsilon(t, m.OutlineM+inner, m.EdgeOnceM, 1e-12)
	assert.InEpsilon(t, colourPerimeter(m, "red")+colourPerimeter(m, "white")+colourPerimeter(m, "blue"), m.EdgeTwoSidedM, 1e-12)
}
