package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// areaAndEdge measures one outline in one colour.
func areaAndEdge(t *testing.T, outlines ...planar.Outline) (area, edge float64) {
	t.Helper()
	a, err := planar.Arrange([]planar.Layer{{Colour: "white", Outline: outlines}})
	require.NoError(t, err)
	require.Len(t, a.Areas(), 1)
	require.Len(t, a.Lengths(), 1)
	return a.Areas()[0].Area, a.Lengths()[0].Length
}

// ID-5 (Steiner): a band of width t round a convex outline of perimeter P, with
// rounded corners, has the area P·t + π·t² and the outer edge P + 2·π·t.
// ID-6: with mitred corners, on a rectangle, P·t + 4·t² and P + 8·t.
func TestMarkingsBandsRoundOutlines(t *testing.T) {
	const w, h, r, band = 0.8, 0.5, 0.1, 0.06
	inner := planar.RoundedRectangle(planar.Point{}, planar.Point{X: w, Y: h}, r)
	outer := planar.RoundedRectangle(planar.Point{X: -band, Y: -band}, planar.Point{X: w + band, Y: h + band}, r+band)
	_, p := areaAndEdge(t, inner)
	area, edges := areaAndEdge(t, outer, inner.Reversed())
	assert.InEpsilon(t, p*band+math.Pi*band*band, area, 1e-12, "ID-5 area")
	assert.InEpsilon(t, p+(p+2*math.Pi*band), edges, 1e-12, "ID-5 both edges")

	inner = planar.Rectangle(planar.Point{}, planar.Point{X: w, Y: h})
	outer = planar.Rectangle(planar.Point{X: -band, Y: -band}, planar.Point{X: w + band, Y: h + band})
	_, p = areaAndEdge(t, inner)
	area, edges = areaAndEdge(t, outer, inner.Reversed())
	assert.InEpsilon(t, p*band+4*band*band, area, 1e-14, "ID-6 area")
	assert.InEpsilon(t, p+(p+8*band), edges, 1e-14, "ID-6 both edges")
}

// ID-7 to ID-9: a circle is not its inscribed N-gon. The polygon has the
// published area and perimeter; the circle of the package has π and 2π.
func TestMarkingsCircleIsNoPolygon(t *testing.T) {
	gon := func(n int) planar.Outline {
		points := make([]planar.Point, n)
		for i := range points {
			points[i] = planar.Polar(planar.Point{}, 1, 2*math.Pi*float64(i)/float64(n))
		}
		return planar.Polygon(points...)
	}
	area64, edge64 := areaAndEdge(t, gon(64))
	assert.InEpsilon(t, 3.1365484905, area64, 1e-10, "ID-7 area")
	assert.InEpsilon(t, 6.2806623139, edge64, 1e-10, "ID-7 perimeter")
	area360, edge360 := areaAndEdge(t, gon(360))
	assert.InEpsilon(t, 3.1414331587, area360, 1e-10, "ID-8 area")
	assert.InEpsilon(t, 6.2831055588, edge360, 1e-10, "ID-8 perimeter")

	area, edge := areaAndEdge(t, planar.Circle(planar.Point{}, 1))
	assert.InEpsilon(t, math.Pi, area, 1e-14)
	assert.InEpsilon(t, 2*math.Pi, edge, 1e-14)
	// ID-9: relative errors 2π²/(3N²) and π²/(6N²), to their next term.
	assert.InEpsilon(t, 2*math.Pi*math.Pi/(3*360*360), (area-area360)/area, 1e-4, "ID-9 area")
	assert.InEpsilon(t, math.Pi*math.Pi/(6*360*360), (edge-edge360)/edge, 1e-4, "ID-9 perimeter")
}

// ID-10: straight taper, 8 m long, 0.25 m and 0.05 m at the ends (trapezium).
func TestMarkingsTaperedStripe(t *testing.T) {
	f := figureOf[*marking.Stripe](t, "stripe")
	end := 0.05
	f.LengthM, f.WidthM, f.EndWidthM, f.Colour = 8, 0.25, &end, "green"
	markingCase{id: "ID-10", source: "identity: trapezium", mark: "H", figure: f,
		areas: map[string]float64{"green": 1.2},
		sums:  map[string]float64{"outline_m": 16.0012499512 + 0.25 + 0.05}}.run(t, 1e-10)
}

// ID-11: curved stripe of constant width: centre line radius 10, width 0.1,
// 30°; the long edges total 2·R·angle whatever the width.
func TestMarkingsCurvedBand(t *testing.T) {
	f := figureOf[*marking.Stripe](t, "stripe")
	radius, angle := 10.0, 30.0
	f.RadiusM, f.AngleDeg, f.WidthM, f.Colour = &radius, &angle, 0.1, "green"
	markingCase{id: "ID-11", source: "identity: annulus sector", mark: "H", figure: f,
		areas: map[string]float64{"green": 0.5235987756},
		sums:  map[string]float64{"outline_m": 10.4719755120 + 2*0.1}}.run(t, 1e-9)
}
