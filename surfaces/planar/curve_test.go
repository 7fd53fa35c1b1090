package planar

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// parabola is the region under y = x·(2 − x)·h from 0 to 2, drawn as one
// quadratic curve.
func parabola(h float64) Outline {
	return Outline{{At: Point{0, 0}}, {At: Point{2, 0}, Bend: Quadratic(Point{2, 0}, Point{1, 2 * h}, Point{0, 0})}}
}

// A parabola's segment has two thirds of its box (Archimedes), its centroid two
// fifths up, and a length known in closed form: identities.
func TestParabola(t *testing.T) {
	for _, h := range []float64{0.1, 1, 7} {
		a := arranged(t, Layer{"white", Region{parabola(h)}})
		require.Len(t, a.Areas(), 1)
		assert.InEpsilon(t, 2.0/3*2*h, a.Areas()[0].Area, 1e-14)
		assert.InDelta(t, 1, a.Areas()[0].Centre.X, 1e-14)
		assert.InEpsilon(t, 0.4*h, a.Areas()[0].Centre.Y, 1e-13)
		k := 2 * h // slope at the ends
		arc := 2 * (math.Sqrt(1+k*k)/2 + math.Asinh(k)/(2*k))
		assert.InEpsilon(t, 2+arc, lengthOf(a, "white", Base), 1e-13)
		assert.InEpsilon(t, h, a.Box().Height(), 1e-14)
	}
}

// A straight line across a parabola at height y cuts off the segment above it,
// two thirds of its chord times its height.
func TestLineAcrossParabola(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := rapid.Float64Range(0.001, 0.999).Draw(t, "y")
		turn := rapid.Float64Range(-4, 4).Draw(t, "turn")
		m := Placement{Scale: 1, Turn: turn, Shift: Point{0.3, -7}}
		a := arranged(t, m.Layers([]Layer{{"white", Region{parabola(1)}}, {"red", Region{Rectangle(Point{-1, y}, Point{3, 2})}}})...)
		half := math.Sqrt(1 - y)
		assert.InDelta(t, 4.0/3-2.0/3*2*half*(1-y), areaOf(a, "white"), 1e-9)
		assert.InDelta(t, 2*half, lengthOf(a, "white", "red"), 1e-9)
	})
}

// Two parabolas crossing at right angles, y = x² and x = y²: they enclose ⅓
// (identity), and lie on each other's other side beyond.
func TestParabolasCross(t *testing.T) {
	up := Outline{{At: Point{-1, 1}, Bend: Quadratic(Point{-1, 1}, Point{0, -1}, Point{1, 1})}, {At: Point{1, 1}}}
	right := Outline{{At: Point{1, 1}, Bend: Quadratic(Point{1, 1}, Point{-1, 0}, Point{1, -1})}, {At: Point{1, -1}}}
	a := arranged(t, Layer{"white", Region{up}}, Layer{"red", Region{right}})
	assert.InDelta(t, 4.0/3, areaOf(a, "red"), 1e-12)
	assert.InDelta(t, 4.0/3-1.0/3, areaOf(a, "white"), 1e-9)
	assert.InDelta(t, 2*4.0/3-1.0/3, areaOf(arranged(t, Layer{"white", Region{up, right}}), "white"), 1e-9, "united")
}

// A line that touches a curve where it turns back changes nothing; so does an
// arc that touches from outside.
func TestTangentsOfCurves(t *testing.T) {
	for name, other := range map[string]Outline{
		"line": Rectangle(Point{-1, 1}, Point{3, 2}), "circle": Circle(Point{1, 2}, 1), "curve": Placement{Scale: 1, Turn: math.Pi, Shift: Point{2, 2}}.Outline(parabola(1)),
	} {
		for _, turn := range []float64{0, 0.3, 1, 2.5} {
			m := Placement{Scale: 1, Turn: turn}
			a := arranged(t, m.Layers([]Layer{{"white", Region{parabola(1)}}, {"red", Region{other}}})...)
			assert.InDelta(t, 4.0/3, areaOf(a, "white"), 1e-9, name)
			assert.InDelta(t, math.Abs(other.SignedArea()), areaOf(a, "red"), 1e-9, name)
			assert.InDelta(t, 0, lengthOf(a, "white", "red"), 1e-4, name)
		}
	}
}

// Curves against the polygon through 600 of their points, an independent way:
// the areas agree to the sagitta, and every crossing is found.
func TestCurvesAgreeWithPolygons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Even numbers, so that no two borders run almost together, where a polygon
		// cannot say which of them is on top.
		even := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "first"), 1))
		point := func() Point { return Point{2*even.Float64() - 1, 2*even.Float64() - 1} }
		var curved, flat []Layer
		for _, colour := range []string{"white", "red", "blue"} {
			var o, polygon Outline
			corners := []Point{point(), point(), point()}
			for i, p := range corners {
				q := corners[(i+1)%3]
				bend := Bend{point(), point()}
				o = append(o, Corner{At: p, Bend: &bend})
				c := cubic{p, bend.First, bend.Second, q}
				for k := range 200 {
					polygon = append(polygon, Corner{At: c.at(float64(k) / 200)})
				}
			}
			curved = append(curved, Layer{colour, Region{o}})
			flat = append(flat, Layer{colour, Region{polygon}})
		}
		exact, rough := arranged(t, curved...), arranged(t, flat...)
		for _, colour := range []string{"white", "red", "blue"} {
			assert.InDelta(t, areaOf(rough, colour), areaOf(exact, colour), 2e-3, colour)
		}
		for _, l := range exact.Lengths() {
			assert.InDelta(t, lengthOf(rough, l.Between[0], l.Between[1]), l.Length, 2e-2, l.Between)
		}
		for _, c := range exact.Areas() {
			if r := areaOf(rough, c.Colour); r > 0.01 {
				for _, other := range rough.Areas() {
					if other.Colour == c.Colour {
						assert.InDelta(t, 0, c.Centre.minus(other.Centre).length(), 2e-3/r, "centroid of %s", c.Colour)
					}
				}
			}
		}
	})
}

// One curve in two layers, whole and in parts, is one border (identity).
func TestCurvesInCommon(t *testing.T) {
	c := cubic{{0, 0}, {0.2, 1}, {0.9, 1.3}, {1, 0.2}}
	whole := Outline{{At: c[0], Bend: &Bend{c[1], c[2]}}, {At: c[3]}}
	m := c.at(0.37)
	left, right := c.part(0, 0.37, c[0], m), c.part(0.37, 1, m, c[3])
	above := Outline{
		{At: c[3], Bend: &Bend{right[2], right[1]}}, {At: m, Bend: &Bend{left[2], left[1]}},
		{At: c[0]}, {At: Point{0, 2}}, {At: Point{1, 2}},
	}
	a := arranged(t, Layer{"white", Region{whole}}, Layer{"red", Region{above}})
	assert.InDelta(t, c.length(), lengthOf(a, "white", "red"), 1e-9)
	assert.InDelta(t, math.Abs(whole.SignedArea()), areaOf(a, "white"), 1e-9)
	assert.InDelta(t, math.Abs(above.SignedArea()), areaOf(a, "red"), 1e-9)
}

// A quadratic curve is the same curve when written as a cubic (identity), and
// its length is that of its many chords.
func TestQuadraticIsExact(t *testing.T) {
	p, c, q := Point{1, 2}, Point{4, -3}, Point{5, 5}
	b := Quadratic(p, c, q)
	curve := cubic{p, b.First, b.Second, q}
	sum, last := 0.0, p
	for i := 1; i <= 10000; i++ {
		u := float64(i) / 10000
		want := p.times((1 - u) * (1 - u)).plus(c.times(2 * u * (1 - u))).plus(q.times(u * u))
		require.InDelta(t, 0, want.minus(curve.at(u)).length(), 1e-14)
		sum += want.minus(last).length()
		last = want
	}
	assert.InEpsilon(t, sum, curve.length(), 1e-8)
}

func TestFaultsOfCurves(t *testing.T) {
	for name, o := range map[string]Outline{
		"no number": {{At: Point{}, Bend: &Bend{Point{math.NaN(), 0}, Point{}}}, {At: Point{1, 1}}},
		"too far":   {{At: Point{}, Bend: &Bend{Point{0, 1e13}, Point{}}}, {At: Point{1, 1}}},
	} {
		_, err := Arrange([]Layer{{"white", Region{o}}})
		assert.ErrorIs(t, err, ErrNotFinite, name)
	}
	_, err := Arrange([]Layer{{"white", Region{{{At: Point{}, Sweep: 1, Bend: &Bend{}}, {At: Point{1, 1}}}}}})
	assert.ErrorIs(t, err, ErrTwoWays)
}

// A curve back to its own beginning is an outline by itself: its loop has the
// area of the closed form. One that crosses itself is found.
func TestOneCurveAlone(t *testing.T) {
	loop := Outline{{At: Point{0, 0}, Bend: &Bend{Point{1, 1}, Point{-1, 1}}}}
	a := arranged(t, Layer{"white", Region{loop}})
	assert.InDelta(t, 3.0/20*2, areaOf(a, "white"), 1e-12)
	assert.NoError(t, loop.Simple())

	eight := Outline{{At: Point{0, 0}, Bend: &Bend{Point{3, 1}, Point{-2, 1}}}, {At: Point{1, 0}}}
	var crossing *CrossingError
	assert.ErrorAs(t, eight.Simple(), &crossing)
}

// The box of a curve is that of its extremes, not of its controls.
func TestBoxOfCurves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-1, 1)
		c := cubic{}
		for i := range c {
			c[i] = Point{at.Draw(t, "x"), at.Draw(t, "y")}
		}
		box := nowhere()
		for i := range 1001 {
			p := c.at(float64(i) / 1000)
			box = box.with(Box{p, p})
		}
		edges := bends(edge{from: c[0], to: c[3]}, &c, nil)
		own := nowhere()
		for _, e := range edges {
			own = own.with(e.box)
		}
		assert.InDelta(t, box.Min.X, own.Min.X, 1e-5)
		assert.InDelta(t, box.Min.Y, own.Min.Y, 1e-5)
		assert.InDelta(t, box.Max.X, own.Max.X, 1e-5)
		assert.InDelta(t, box.Max.Y, own.Max.Y, 1e-5)
	})
}
