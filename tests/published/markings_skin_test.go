package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// ID-12 (arc length): on a cylinder of radius 0.6 what looks 0.6 high from the
// side is 0.6283185307 along the skin; a rectangle keeps its width, so its area
// grows by the same.
func TestMarkingsOnCylinder(t *testing.T) {
	along, err := marking.SkinLength(0.6, 0.6)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.6283185307, along, 1e-9, "ID-12")

	f := figureOf[*marking.Rectangle](t, "rectangle")
	radius := 0.6
	f.WidthM, f.HeightM, f.Colour, f.SkinRadiusM, f.Sizes = 1.5, 0.6, "red", &radius, "projected"
	markingCase{id: "ID-12 rectangle", source: "identity: arc length", mark: "H", figure: f,
		areas: map[string]float64{"red": 1.5 * 0.6283185307}, sums: map[string]float64{"height_m": 0.6283185307, "width_m": 1.5, "outline_m": 2 * (1.5 + 0.6283185307)}}.run(t, 1e-9)
	m, err := marking.Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.6, m.Skin.ProjectedHeightM, 1e-12)

	f.HeightM, f.Sizes = along, "skin"
	m, err = marking.Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.6, m.Skin.ProjectedHeightM, 1e-9, "and back")
	assert.InEpsilon(t, 1.5*along, m.AreaM2, 1e-12, "wrapping changes no area")
}

// ID-5 (Steiner) for random convex outlines: a band of width t with rounded
// corners has the area P·t + π·t² and the outer edge P + 2·π·t.
func TestMarkingsBandsRoundRandomOutlines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(t, "corners")
		band := rapid.Float64Range(0.01, 1).Draw(t, "band")
		var angles []float64
		sum := 0.0
		for range n {
			step := rapid.Float64Range(0.2, 1).Draw(t, "step")
			angles, sum = append(angles, sum), sum+step
		}
		var inner, outer planar.Outline
		perimeter := 0.0
		at := func(i int) planar.Point {
			sin, cos := math.Sincos(2 * math.Pi * angles[i%n] / sum)
			return planar.Point{X: 3 * cos, Y: sin} // corners on an ellipse: convex
		}
		for i := range n {
			p, q, r := at(i), at(i+1), at(i+2)
			side := math.Hypot(q.X-p.X, q.Y-p.Y)
			perimeter += side
			out := math.Atan2(q.Y-p.Y, q.X-p.X) - math.Pi/2
			next := math.Atan2(r.Y-q.Y, r.X-q.X) - math.Pi/2
			turn := math.Mod(next-out+4*math.Pi, 2*math.Pi)
			inner = append(inner, planar.Corner{At: p})
			outer = append(outer, planar.Corner{At: planar.Polar(p, band, out)}, planar.Corner{At: planar.Polar(q, band, out), Sweep: turn})
		}
		a, err := planar.Arrange([]planar.Layer{{Colour: "white", Outline: planar.Region{outer, inner.Reversed()}}})
		require.NoError(t, err)
		assert.InEpsilon(t, perimeter*band+math.Pi*band*band, a.Areas()[0].Area, 1e-9, "ID-5 area")
		assert.InEpsilon(t, 2*perimeter+2*math.Pi*band, a.Lengths()[0].Length, 1e-9, "ID-5 both edges")
	})
}

// ID-14: a tape of 6 mm laid flat on a circle of 100 mm must stretch by 6 %; by
// the lengths of the two edges of that band (identity).
func TestMarkingsTapeStretch(t *testing.T) {
	stretch, err := marking.TapeStretch(0.006, 0.1)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.06, stretch, 1e-12, "ID-14")
	inner, outer := planar.Circle(planar.Point{}, 0.1), planar.Circle(planar.Point{}, 0.106)
	_, edges := areaAndEdge(t, outer, inner.Reversed())
	_, within := areaAndEdge(t, inner)
	assert.InEpsilon(t, 1+stretch, (edges-within)/within, 1e-12)
	_, err = marking.TapeStretch(0.006, 0)
	assert.Error(t, err)
}
