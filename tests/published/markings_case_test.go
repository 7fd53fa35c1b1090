package published

import (
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

// markingCase is one row of a published or derived table of a figure. mark is H
// where the rule was read in the source and the number found in two
// independent ways, M where the rule was read and a geometric choice is ours
// (said in source), L where the rule is from memory.
type markingCase struct {
	id     string
	source string
	mark   string
	figure marking.Figure
	areas  map[string]float64    // m² by colour
	edges  map[[2]string]float64 // m by pair
	sums   map[string]float64    // by the wire name of the sum
}

func (c markingCase) run(t *testing.T, relative float64) {
	t.Run(c.id, func(t *testing.T) {
		require.NotEmpty(t, c.source)
		require.Contains(t, "HML", c.mark)
		m, err := marking.Measure(c.figure)
		require.NoError(t, err)
		for colour, want := range c.areas {
			require.InEpsilon(t, want, colourArea(m, colour), relative, colour)
		}
		for pair, want := range c.edges {
			require.InEpsilon(t, want, edgeLength(m, pair), relative, pair)
		}
		sums := map[string]float64{
			"area_m2": m.AreaM2, "outline_m": m.OutlineM, "edge_once_m": m.EdgeOnceM, "edge_two_sided_m": m.EdgeTwoSidedM,
			"width_m": m.WidthM, "height_m": m.HeightM, "stencil_film_m2": m.StencilFilmM2,
		}
		for name, want := range c.sums {
			require.InEpsilon(t, want, sums[name], relative, name)
		}
	})
}

func colourArea(m marking.Measurement, colour string) float64 {
	for _, c := range m.Colours {
		if c.Colour == colour {
			return c.AreaM2
		}
	}
	return 0
}

func edgeLength(m marking.Measurement, pair [2]string) float64 {
	for _, e := range m.Edges {
		if e.Between == pair || e.Between == [2]string{pair[1], pair[0]} {
			return e.LengthM
		}
	}
	return 0
}

// colourPerimeter is the whole border of one colour.
func colourPerimeter(m marking.Measurement, colour string) float64 {
	sum := 0.0
	for _, e := range m.Edges {
		if e.Between[0] == colour || e.Between[1] == colour {
			sum += e.LengthM
		}
	}
	return sum
}

// figureOf is a kind with its defaults, as a document would get it.
func figureOf[T marking.Figure](t *testing.T, kind string) T {
	t.Helper()
	f, ok := marking.New(kind)
	require.True(t, ok, kind)
	return f.(T)
}
