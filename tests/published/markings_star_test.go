package published

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

const starSource = "identity: regular pentagram; closed forms in tan 18° and tan 36°; the n-point formulas stand on a public page on star shapes"

// ST-2, ST-4, ST-5, ST-7: regular five-pointed star, circumscribed radius 1.
func TestMarkingsStar(t *testing.T) {
	f := figureOf[*marking.Star](t, "star")
	f.SizeM, f.Colour = 2, "white"
	tan18 := math.Tan(math.Pi / 10)
	markingCase{id: "ST-2", source: starSource, mark: "H", figure: f,
		areas: map[string]float64{"white": 1.12256994144896}}.run(t, 1e-13)
	markingCase{id: "ST-2 closed form", source: starSource, mark: "H", figure: f,
		areas: map[string]float64{"white": 10 * tan18 / (3 - tan18*tan18)}}.run(t, 1e-13)
	markingCase{id: "ST-4", source: starSource, mark: "H", figure: f,
		sums: map[string]float64{"outline_m": 7.26542528005361, "edge_once_m": 7.26542528005361, "edge_two_sided_m": 7.26542528005361}}.run(t, 1e-13)
	markingCase{id: "ST-5", source: starSource, mark: "H", figure: f,
		areas: map[string]float64{"white": 0.357325110296 * math.Pi}}.run(t, 1e-11)
	markingCase{id: "ST-7", source: starSource, mark: "H", figure: f,
		sums: map[string]float64{"width_m": 2 * 0.951056516295}}.run(t, 1e-11)
}

// ST-1, ST-3, ST-6, ST-8: lengths inside the star.
func TestMarkingsStarParts(t *testing.T) {
	f := figureOf[*marking.Star](t, "star")
	f.SizeM, f.Colour = 2, "white"
	m, err := marking.Measure(f)
	require.NoError(t, err)

	outline := f.Layers()[0].Outline[0]
	require.Len(t, outline, 10)
	assert.InEpsilon(t, 0.381966011250105, m.Working[0].Value, 1e-14, "ST-1: inner corner radius, 1/φ²")
	for i, corner := range outline {
		next := outline[(i+1)%10].At
		side := math.Hypot(corner.At.X-next.X, corner.At.Y-next.Y)
		assert.InEpsilon(t, 0.726542528005361, side, 1e-13, "ST-3: side of a point, tan 36°")
	}
	assert.InEpsilon(t, 0.309016994375, outline[2].At.Y, 1e-11, "ST-6: height of the side points, sin 18°")
	// The inner corners form a pentagon of area n/2·r²·sin 72° and inradius r·cos 36°.
	r := math.Hypot(outline[1].At.X, outline[1].At.Y)
	assert.InEpsilon(t, 0.309016994375, r*math.Cos(math.Pi/5), 1e-11, "ST-8: inradius")
	assert.InEpsilon(t, 0.346893189282, 2.5*r*r*math.Sin(2*math.Pi/5), 1e-11, "ST-8: area")
}

const barSource = "AN-I-9b amendment 2 (16 January 1947), as quoted on a history site; bar end read as the star's shoulder, border mitred: our choice"

func starAndBar(t *testing.T, change func(*marking.StarAndBar)) *marking.StarAndBar {
	f := figureOf[*marking.StarAndBar](t, "star_and_bar")
	f.SizeM = 1
	if change != nil {
		change(f)
	}
	return f
}

// SB-1 to SB-16: diameter of the circle 1 m. The rows are rounded to 12 digits.
func TestMarkingsStarAndBar(t *testing.T) {
	type pairs = map[[2]string]float64
	whole := starAndBar(t, nil)
	for _, c := range []markingCase{
		{id: "SB-1", figure: whole, areas: map[string]float64{"white": 0.441988836202}},
		{id: "SB-2", figure: whole, areas: map[string]float64{"red": 0.0794970216277}},
		{id: "SB-3", figure: whole, areas: map[string]float64{"blue": 0.837744311291}},
		{id: "SB-4", figure: whole, sums: map[string]float64{"area_m2": 1.35923016912}},
		{id: "SB-5", figure: whole, edges: pairs{{"blue", "base"}: 5.55291542782}, sums: map[string]float64{"outline_m": 5.55291542782}},
		{id: "SB-6", figure: whole, edges: pairs{{"blue", "white"}: 6.27467764321}},
		{id: "SB-7", figure: whole, edges: pairs{{"blue", "red"}: 0.33382092312}},
		{id: "SB-8", figure: whole, edges: pairs{{"red", "white"}: 1.91259237985}},
		{id: "SB-9", figure: whole, sums: map[string]float64{"edge_once_m": 14.074006374}},
		{id: "SB-10", figure: whole, sums: map[string]float64{"edge_two_sided_m": 22.59509732}},
		{id: "SB-11", figure: whole, sums: map[string]float64{"width_m": 2.0760565163, "height_m": 1.125}},
		{id: "SB-13", figure: starAndBar(t, func(f *marking.StarAndBar) { f.Red = false }),
			areas: map[string]float64{"white": 0.52148585783, "blue": 0.837744311291}, edges: pairs{{"blue", "white"}: 6.60849856633}},
		{id: "SB-14", figure: starAndBar(t, func(f *marking.StarAndBar) { f.Blue = false }),
			areas: map[string]float64{"white": 0.441988836202, "red": 0.0794970216277},
			edges: pairs{{"white", "base"}: 6.274677643, {"red", "base"}: 0.333820923}},
		{id: "SB-15", figure: starAndBar(t, func(f *marking.StarAndBar) { f.SizeM = 0.635 }),
			sums: map[string]float64{"stencil_film_m2": 1.155024714}},
	} {
		c.source, c.mark = barSource, "M"
		c.run(t, 1e-9)
	}
}

// SB-12: one bar outside the circle is half of all white and red less the star.
// SB-16: the perimeter of each colour alone.
func TestMarkingsStarAndBarParts(t *testing.T) {
	m, err := marking.Measure(starAndBar(t, nil))
	require.NoError(t, err)
	tan18 := math.Tan(math.Pi / 10)
	star := 10 * tan18 / (3 - tan18*tan18) / 4
	assert.InEpsilon(t, 0.120421686234, (colourArea(m, "white")+colourArea(m, "red")-star)/2, 1e-9, "SB-12")
	for colour, want := range map[string]float64{"white": 8.18727002306, "red": 2.24641330297, "blue": 12.16141399415} {
		assert.InEpsilon(t, want, colourPerimeter(m, colour), 1e-9, "SB-16 "+colour)
	}
}

// Table of real sizes in inches (standard diameters in multiples of 5 in). The
// tolerance is half a unit of the last printed place.
func TestMarkingsStarAndBarSizes(t *testing.T) {
	for _, row := range []struct{ inches, white, red, blue, outline, once float64 }{
		{15, 0.064160, 0.011540, 0.121608, 2.11566, 5.36220},
		{20, 0.114061, 0.020515, 0.216192, 2.82088, 7.14960},
		{25, 0.178221, 0.032055, 0.337799, 3.52610, 8.93699},
		{30, 0.256638, 0.046159, 0.486431, 4.23132, 10.72439},
		{40, 0.456246, 0.082061, 0.864767, 5.64176, 14.29919},
		{50, 0.712884, 0.128221, 1.351198, 7.05220, 17.87399},
		{60, 1.026553, 0.184638, 1.945725, 8.46264, 21.44879},
	} {
		t.Run(fmt.Sprintf("SB %g in", row.inches), func(t *testing.T) {
			m, err := marking.Measure(starAndBar(t, func(f *marking.StarAndBar) { f.SizeM = row.inches * 0.0254 }))
			require.NoError(t, err)
			assert.InDelta(t, row.white, colourArea(m, "white"), 0.5e-6)
			assert.InDelta(t, row.red, colourArea(m, "red"), 0.5e-6)
			assert.InDelta(t, row.blue, colourArea(m, "blue"), 0.5e-6)
			assert.InDelta(t, row.outline, m.OutlineM, 0.5e-5)
			assert.InDelta(t, row.once, m.EdgeOnceM, 0.5e-5)
		})
	}
}

// Variant A of the rule: the bars end at 2R, so that the white spans 4R and
// with its border 4R + R/4 (identity on the rule's shares).
func TestMarkingsStarAndBarEndAtCircle(t *testing.T) {
	markingCase{id: "SB variant A", source: barSource, mark: "M",
		figure: starAndBar(t, func(f *marking.StarAndBar) { f.BarEnd = "circle" }),
		sums:   map[string]float64{"width_m": 2.125, "height_m": 1.125}}.run(t, 1e-12)
}
