package surfaces

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"filmbuild/surfaces/planar"
)

func square(side float64) *Panel {
	return &Panel{WidthM: pointer(side), HeightM: pointer(side), Sides: 1}
}

func roundHole(d, x, y float64) Hole { return Hole{DiameterM: &d, XM: &x, YM: &y} }

func slot(w, h, r, x, y float64) Hole {
	return Hole{WidthM: &w, HeightM: &h, CornerRadiusM: &r, XM: &x, YM: &y}
}

func TestPanelFaces(t *testing.T) {
	thin := must(t, &Panel{WidthM: pointer(2.0), HeightM: pointer(1.0), Sides: 1})
	assert.Equal(t, []Face{{"front", 2}}, thin.Faces)
	assert.Equal(t, []Edge{{[2]string{"front", Open}, 6}}, thin.Edges)
	both := must(t, &Panel{WidthM: pointer(2.0), HeightM: pointer(1.0), Sides: 2})
	assert.Equal(t, []Edge{{[2]string{"front", "back"}, 6}}, both.Edges)
	thick := must(t, &Panel{WidthM: pointer(2.0), HeightM: pointer(1.0), Sides: 2, ThicknessMM: pointer(10.0)})
	assert.InDelta(t, 4+6*0.01, thick.AreaM2(), 1e-12)
	assert.InDelta(t, 12, thick.FaceEdgeM("edges"), 1e-12)
	assert.InDelta(t, 6, thick.FaceEdgeM("back"), 1e-12)
}

// Identities: a rectangle whose corners are rounded by half its side is a
// circle; a slot is a rectangle and a circle.
func TestRoundedForms(t *testing.T) {
	disc := &Panel{WidthM: pointer(2.0), HeightM: pointer(2.0), CornerRadiusM: pointer(1.0), Sides: 1}
	m := must(t, disc)
	assert.InDelta(t, math.Pi, m.AreaM2(), 1e-12)
	assert.InDelta(t, 2*math.Pi, m.EdgeM(), 1e-12)
	p := square(1)
	p.Holes = []Hole{slot(0.5, 0.2, 0.1, 0.5, 0.5)}
	m = must(t, p)
	assert.InDelta(t, 1-(0.3*0.2+math.Pi*0.01), m.AreaM2(), 1e-12)
	assert.InDelta(t, 4+(2*0.3+2*math.Pi*0.1), m.EdgeM(), 1e-12)
}

func TestOutlineMayRunEitherWayAndBeClosedByHand(t *testing.T) {
	ring := [][2]float64{{0, 0}, {4, 0}, {4, 3}, {0, 3}}
	want := must(t, &Panel{Outline: ring, Sides: 1})
	assert.InDelta(t, 12, want.AreaM2(), 1e-12)
	back := [][2]float64{{0, 3}, {4, 3}, {4, 0}, {0, 0}, {0, 3}}
	m := must(t, &Panel{Outline: back, Sides: 1})
	assert.Equal(t, want.Faces, m.Faces)
	assert.Equal(t, want.Edges, m.Edges)
}

// Small figures far from the origin keep their digits. Reference G7.08.
func TestFigureFarFromTheOrigin(t *testing.T) {
	area, border := extent(planar.Region{straight([][2]float64{{1e6, 1e6}, {1e6, 1e6 + 0.01}, {1e6 + 0.01, 1e6 + 0.01}, {1e6 + 0.01, 1e6}})})
	assert.InDelta(t, 1e-4, area, 2e-10)
	assert.InDelta(t, 0.04, border, 1e-9)
}

func TestPanelRefusesFaultyOutlines(t *testing.T) {
	for name, c := range map[string]struct {
		outline [][2]float64
		want    map[string]string
	}{
		"bow tie (reference G7.07)": {[][2]float64{{0, 0}, {2, 2}, {2, 0}, {0, 2}}, map[string]string{"/outline": "self_crossing"}},
		"two corners":               {[][2]float64{{0, 0}, {1, 0}}, map[string]string{"/outline": "required"}},
		"repeated corner":           {[][2]float64{{0, 0}, {1, 0}, {1, 0}, {0, 1}}, map[string]string{"/outline": "self_crossing"}},
		"spike":                     {[][2]float64{{0, 0}, {2, 0}, {2, 1}, {2, 0}, {0, 3}}, map[string]string{"/outline": "self_crossing"}},
		"fold back":                 {[][2]float64{{0, 0}, {2, 0}, {1, 0}}, map[string]string{"/outline": "self_crossing"}},
		"corner on a side":          {[][2]float64{{0, 0}, {4, 0}, {4, 2}, {2, 0}, {0, 2}}, map[string]string{"/outline": "self_crossing"}},
		"not a number":              {[][2]float64{{0, 0}, {math.NaN(), 0}, {1, 1000}}, map[string]string{"/outline/1/0": "out_of_range", "/outline/2/1": "out_of_range"}},
		"too many corners":          {make([][2]float64, 600), map[string]string{"/outline": "too_many"}},
	} {
		assert.Equal(t, c.want, codes(&Panel{Outline: c.outline, Sides: 1}), name)
	}
}

func TestPanelRefusesMixedForms(t *testing.T) {
	assert.Equal(t, map[string]string{"/width_m": "required"}, codes(&Panel{Sides: 1}))
	assert.Equal(t, map[string]string{"/height_m": "required", "/sides": "out_of_range"}, codes(&Panel{WidthM: pointer(1.0)}))
	assert.Equal(t, map[string]string{"/width_m": "not_applicable", "/corner_radius_m": "not_applicable"},
		codes(&Panel{Outline: [][2]float64{{0, 0}, {1, 0}, {0, 1}}, WidthM: pointer(1.0), CornerRadiusM: pointer(0.1), Sides: 2}))
	assert.Equal(t, map[string]string{"/corner_radius_m": "inconsistent"}, codes(&Panel{WidthM: pointer(1.0), HeightM: pointer(2.0), CornerRadiusM: pointer(0.6), Sides: 1}))
	p := square(1)
	p.Holes = []Hole{
		{}, {DiameterM: pointer(0.1), WidthM: pointer(0.1)}, {DiameterM: pointer(0.1), CornerRadiusM: pointer(0.1), XM: pointer(0.5)},
		{Outline: [][2]float64{{0.1, 0.1}, {0.2, 0.1}, {0.1, 0.2}}, XM: pointer(0.5)},
	}
	assert.Equal(t, map[string]string{
		"/holes/0": "required", "/holes/1": "inconsistent",
		"/holes/2/corner_radius_m": "not_applicable", "/holes/2/y_m": "required", "/holes/3/x_m": "not_applicable",
	}, codes(p))
	p.Holes = make([]Hole, 501)
	assert.Equal(t, map[string]string{"/holes": "too_many"}, codes(p))
}

func TestPanelPlacesHoles(t *testing.T) {
	l := &Panel{Sides: 1, Outline: [][2]float64{{0, 0}, {3, 0}, {3, 1}, {1, 1}, {1, 3}, {0, 3}}}
	plate := square(1)
	soft := square(1)
	soft.CornerRadiusM = pointer(0.3)
	triangle := func(x, y, s float64) Hole { return Hole{Outline: [][2]float64{{x, y}, {x + s, y}, {x, y + s}}} }
	for i, c := range []struct {
		panel *Panel
		holes []Hole
		want  map[string]string
	}{
		{plate, []Hole{roundHole(0.98, 0.5, 0.5)}, map[string]string{}},
		{plate, []Hole{roundHole(1, 0.5, 0.5)}, map[string]string{"/holes/0": "outside"}},
		{plate, []Hole{roundHole(0.2, 2, 0.5)}, map[string]string{"/holes/0": "outside"}},
		{plate, []Hole{roundHole(0.2, 0.3, 0.5), roundHole(0.2, 0.7, 0.5), roundHole(0.3, 0.5, 0.5)},
			map[string]string{}},
		{plate, []Hole{roundHole(0.5, 0.5, 0.5), roundHole(0.1, 0.5, 0.5)}, map[string]string{}},
		{plate, []Hole{slot(0.6, 0.6, 0, 0.5, 0.5), triangle(0.4, 0.4, 0.1)}, map[string]string{}},
		{plate, []Hole{slot(0.2, 0.2, 0, 0.3, 0.3), slot(0.2, 0.2, 0.1, 0.51, 0.51)}, map[string]string{}},
		// Sharp corners of two squares clear each other by less than rounded ones.
		{plate, []Hole{slot(0.2, 0.2, 0, 0.3, 0.3), slot(0.2, 0.2, 0, 0.49, 0.49)}, map[string]string{}},
		{plate, []Hole{slot(0.2, 0.2, 0.1, 0.3, 0.3), slot(0.2, 0.2, 0.1, 0.49, 0.49)}, map[string]string{}},
		// A square reaches into the rounded corner of the panel, a disc does not.
		{soft, []Hole{slot(0.2, 0.2, 0, 0.15, 0.15)}, map[string]string{"/holes/0": "outside"}},
		{soft, []Hole{roundHole(0.2, 0.2, 0.2)}, map[string]string{}},
		{soft, []Hole{roundHole(0.9, 0.5, 0.5)}, map[string]string{}},
		{soft, []Hole{roundHole(0.9, 0.56, 0.5)}, map[string]string{"/holes/0": "outside"}},
		// In the notch of an L, across it, and in its arm.
		{l, []Hole{roundHole(0.5, 2, 2)}, map[string]string{"/holes/0": "outside"}},
		{l, []Hole{{Outline: [][2]float64{{0.5, 2.5}, {0.5, 2.4}, {2.5, 0.5}}}}, map[string]string{"/holes/0": "outside"}},
		{l, []Hole{roundHole(0.5, 2, 0.5), roundHole(0.5, 0.5, 2)}, map[string]string{}},
		{l, []Hole{roundHole(1.1, 2, 0.5)}, map[string]string{"/holes/0": "outside"}},
	} {
		p := *c.panel
		p.Holes = c.holes
		assert.Equal(t, c.want, codes(&p), "case %d", i)
	}
}

// The arcs of a figure are exact: a polygon of many corners comes near from
// inside, with the deficit (N/2π)·sin(2π/N). Identity.
func TestCircleAgainstPolygon(t *testing.T) {
	const n = 400
	var ring [][2]float64
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		ring = append(ring, [2]float64{0.5 + 0.3*cos, 0.5 + 0.3*sin})
	}
	p := square(1)
	p.Holes = []Hole{{Outline: ring}}
	drawn := 1 - must(t, p).AreaM2()
	p.Holes = []Hole{roundHole(0.6, 0.5, 0.5)}
	exact := 1 - must(t, p).AreaM2()
	assert.InEpsilon(t, n/(2*math.Pi)*math.Sin(2*math.Pi/n), drawn/exact, 1e-12, fmt.Sprint(drawn, exact))
}
