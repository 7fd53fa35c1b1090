package sheet

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces/marking"
)

// Random figures read back: roundels of any rings, polygons, stars of any size,
// paths of lines, arcs and curves, and texts.
func randomFigure(t *rapid.T) marking.Figure {
	size := rapid.Float64Range(0.01, 20).Draw(t, "size")
	of := func(kind string) marking.Figure {
		f, found := marking.New(kind)
		require.True(t, found)
		return f
	}
	colour := rapid.SampledFrom([]string{"red", "insignia blue", "sky-blue", "sea green", "puce"})
	share := rapid.Float64Range(0.05, 1)
	switch rapid.IntRange(0, 4).Draw(t, "kind") {
	case 0:
		f, ratio := of("roundel").(*marking.Roundel), 0.0
		f.SizeM = size
		for range rapid.IntRange(1, 6).Draw(t, "rings") {
			ratio += share.Draw(t, "ring")
			f.Rings = append(f.Rings, marking.RoundelRing{Ratio: ratio, Colour: colour.Draw(t, "colour")})
		}
		if rapid.Bool().Draw(t, "under") {
			f.UnderColour = "white"
		}
		return f
	case 1:
		f := of("polygon").(*marking.Polygon)
		f.Colour = colour.Draw(t, "colour")
		n := rapid.IntRange(3, 15).Draw(t, "corners")
		for i := range n {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			r := size * share.Draw(t, "radius")
			f.Points = append(f.Points, [2]float64{r * cos, r * sin})
		}
		return f
	case 2:
		f := of("star_and_bar").(*marking.StarAndBar)
		f.SizeM, f.Red, f.Blue = size, rapid.Bool().Draw(t, "red"), rapid.Bool().Draw(t, "blue")
		return f
	case 3:
		f := of("outline").(*marking.Outline)
		f.Colour, f.FillRule, f.Crossings, f.WidthM = colour.Draw(t, "colour"), rapid.SampledFrom([]string{"nonzero", "evenodd"}).Draw(t, "rule"), "resolve", &size
		n := func() string { return fmt.Sprintf("%.2f ", 100*share.Draw(t, "number")) }
		f.Path = "M" + n() + n()
		for range rapid.IntRange(2, 6).Draw(t, "edges") {
			f.Path += rapid.SampledFrom([]string{"L" + n() + n(), "A" + n() + n() + "30 0 1 " + n() + n(), "C" + n() + n() + n() + n() + n() + n(), "Q" + n() + n() + n() + n()}).Draw(t, "edge")
		}
		f.Path += "Z"
		return f
	}
	f := of("lettering").(*marking.Lettering)
	f.Font, f.HeightM, f.Colour = "sans", size/4, colour.Draw(t, "colour")
	f.Text = rapid.StringOfN(rapid.RuneFrom([]rune("ABCgjQRS&@08%é")), 1, 8, -1).Draw(t, "text")
	return f
}

func TestRandomFiguresReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFigure(t)
		m, err := marking.Measure(f)
		if err != nil {
			t.Skip("the draw is no figure")
		}
		data, err := Figure(f, Look{US: rapid.Bool().Draw(t, "us")})
		require.NoError(t, err)
		s := readSVG(t, data)
		seen := 0
		for _, g := range s.groups {
			if g.attributes["data-pass"] == "" {
				continue
			}
			seen++
			k, err := strconv.Atoi(g.attributes["data-pass"])
			require.NoError(t, err)
			// Signed, as the lines of a path may touch each other: parts run one way and
			// holes the other.
			area := 0.0
			for _, r := range readPath(t, g.paths[0]) {
				area -= r.area
			}
			assert.InDelta(t, m.Painted[k-1].AreaM2*1e6, area, 1e-6*m.AreaM2*1e6)
		}
		assert.Equal(t, len(m.Painted), seen)

		cut, err := Cut(f, Look{})
		require.NoError(t, err)
		for _, g := range readSVG(t, cut).groups {
			for _, d := range g.paths {
				require.Len(t, readPath(t, d), 1)
			}
		}
	})
}
