package planar

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func nonzero(winding int) bool { return winding != 0 }

// cutOnly is Arrange without the direct way, and counts the clusters that the
// direct way takes.
func cutOnly(t require.TestingT, layers []Layer) (cut *Arrangement, taken, clusters int) {
	cut, err := arrangeBy(layers, nonzero, func(p *part, cluster []edge, colourOf []int) {
		clusters++
		other := part{frame: p.frame}
		if other.direct(cluster, colourOf, nonzero) {
			taken++
		}
		p.add(cluster, colourOf, nonzero)
	})
	require.NoError(t, err)
	return cut, taken, clusters
}

// identical asserts that two arrangements have the same borders in the same order, to
// 1e-12 of the figure's size, and hence the same of everything else.
func identical(t require.TestingT, want, got *Arrangement) {
	require.Equal(t, want.colours, got.colours)
	require.Len(t, got.parts, len(want.parts))
	for i, p := range want.parts {
		q := got.parts[i]
		require.Equal(t, p.frame, q.frame)
		require.Len(t, q.borders, len(p.borders))
		for k, b := range p.borders {
			c := q.borders[k]
			for _, d := range []float64{b.from.minus(c.from).length(), b.to.minus(c.to).length(), b.length() - c.length(), b.area() - c.area(), b.radius - c.radius, b.turn - c.turn} {
				require.InDelta(t, 0, d, 1e-12)
			}
			require.Equal(t, [2]int{b.left, b.right}, [2]int{c.left, c.right})
		}
	}
	require.InDeltaSlice(t, areasOf(want), areasOf(got), 1e-12*max(1, want.Box().Width()*want.Box().Height()))
	require.Equal(t, want.Holes(), got.Holes())
	require.Len(t, got.Loops(), len(want.Loops()))
	for i, l := range want.Loops() {
		require.Len(t, got.Loops()[i].Outline, len(l.Outline))
		require.Equal(t, l.Colour, got.Loops()[i].Colour)
	}
}

func areasOf(a *Arrangement) []float64 {
	var list []float64
	for _, c := range a.Areas() {
		list = append(list, c.Area, c.Centre.X, c.Centre.Y)
	}
	for _, l := range a.Lengths() {
		list = append(list, l.Length)
	}
	return list
}

// drawPlain draws a figure that does not cross itself about a place.
func drawPlain(t *rapid.T, at Point, size float64) Outline {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	m := Placement{Scale: size, Turn: number("turn", -4, 4), Shift: at, Mirror: rapid.Bool().Draw(t, "mirror")}
	var o Outline
	switch rapid.IntRange(0, 6).Draw(t, "form") {
	case 0:
		o = Circle(Point{}, 1)
	case 1:
		o = Rectangle(Point{-1, -number("height", 0.001, 1)}, Point{1, 0.3})
	case 2:
		o = RoundedRectangle(Point{-1, -0.6}, Point{1, 0.6}, number("corner", 0, 1))
	case 3: // a star or a notched disc of straight edges
		n := rapid.IntRange(3, 12).Draw(t, "points")
		for i := range n {
			o = append(o, Corner{At: Polar(Point{}, 1, 2*math.Pi*float64(i)/float64(n))},
				Corner{At: Polar(Point{}, number("inner", 0.05, 1), 2*math.Pi*(float64(i)+0.5)/float64(n))})
		}
	case 4: // a lens, a half moon or a drop
		o = Outline{{At: Point{-1, 0}, Sweep: math.Round(number("sweep", -30, 60)) / 10}, {At: Point{1, 0}, Sweep: math.Round(number("back", -30, 60)) / 10}}
	case 5: // a slot
		o = Outline{{At: Point{-1, -0.2}}, {At: Point{1, -0.2}, Sweep: math.Pi}, {At: Point{1, 0.2}}, {At: Point{-1, 0.2}, Sweep: math.Pi}}
	case 6: // any quadrilateral, perhaps crossing itself
		for range 4 {
			o = append(o, Corner{At: Point{number("x", -1, 1), number("y", -1, 1)}})
		}
	}
	o = m.Outline(o)
	if rapid.Bool().Draw(t, "reversed") {
		o = o.Reversed()
	}
	return o
}

// drawPlainLayers draws figures beside each other and inside each other, most of
// them well apart, some of them touching nearly or crossing.
func drawPlainLayers(t *rapid.T) []Layer {
	var layers []Layer
	for range rapid.IntRange(1, 4).Draw(t, "places") {
		at := Point{rapid.Float64Range(-9, 9).Draw(t, "x"), rapid.Float64Range(-9, 9).Draw(t, "y")}
		size := rapid.Float64Range(0.1, 3).Draw(t, "size")
		for range rapid.IntRange(1, 4).Draw(t, "rings") {
			l := Layer{Colour: rapid.SampledFrom(palette).Draw(t, "colour"), Outline: Region{drawPlain(t, at, size)}}
			if rapid.Bool().Draw(t, "with another") {
				l.Outline = append(l.Outline, drawPlain(t, at, size/2))
			}
			layers = append(layers, l)
			size *= rapid.SampledFrom([]float64{0.3, 0.5, 0.9, 1, 1 - 1e-7, 1 - 1e-5, 1 - 1e-9, 1.5}).Draw(t, "shrink")
		}
	}
	return layers
}

// The direct way finds the borders that cutting everything up finds, or leaves
// the figure to it.
func TestTheDirectWayIsTheArrangement(t *testing.T) {
	taken, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		layers := drawPlainLayers(t)
		if rapid.IntRange(0, 3).Draw(t, "grid") == 0 {
			layers = gridLayers(t)
		}
		cut, some, clusters := cutOnly(t, layers)
		direct, err := Arrange(layers)
		require.NoError(t, err)
		identical(t, cut, direct)
		taken, all = taken+some, all+clusters
	})
	t.Logf("the direct way took %d of %d clusters", taken, all)
	assert.Positive(t, taken, "it is tried at all")
}

// The figures for which the direct way is made take it.
func TestPlainFiguresTakeTheDirectWay(t *testing.T) {
	star := func(n int, inner float64) Outline {
		var o Outline
		for i := range n {
			o = append(o, Corner{At: Polar(Point{}, 1, 2*math.Pi*float64(i)/float64(n))}, Corner{At: Polar(Point{}, inner, 2*math.Pi*(float64(i)+0.5)/float64(n))})
		}
		return o
	}
	ring := func(radii ...float64) []Layer {
		var layers []Layer
		for i, r := range radii {
			layers = append(layers, Layer{palette[i%3], Region{Circle(Point{0.3, 0.2}, r)}})
		}
		return layers
	}
	for name, layers := range map[string][]Layer{
		"rectangle":              {{"red", Region{Rectangle(Point{0, 0}, Point{1, 3})}}},
		"disc":                   ring(1),
		"narrow rings":           ring(1, 0.99, 0.98, 0.5, 0.49),
		"stripe that tapers":     {{"red", Region{Polygon(Point{0, 0}, Point{5.6, 0}, Point{5.6, 0.08}, Point{0, 0.22})}}},
		"slot":                   {{"red", Region{RoundedRectangle(Point{0, 0}, Point{2, 1}, 0.5)}}},
		"five-pointed star":      {{"red", Region{star(5, 0.381966)}}},
		"star in a disc":         {{"blue", Region{Circle(Point{}, 1.2)}}, {"white", Region{star(5, 0.381966)}}},
		"ring, both ways round":  {{"red", Region{Circle(Point{}, 1), Circle(Point{}, 0.9).Reversed()}}},
		"boxes apart":            {{"red", Region{Rectangle(Point{0, 0}, Point{1, 1}), Rectangle(Point{0, 1.001}, Point{1, 2})}}},
		"box in a box in a disc": {{"red", Region{Circle(Point{}, 3)}}, {"white", Region{Rectangle(Point{-1, -1}, Point{1, 1})}}, {Base, Region{Rectangle(Point{-0.9, -0.9}, Point{0.9, 0.9})}}},
	} {
		cut, taken, clusters := cutOnly(t, layers)
		assert.Equal(t, clusters, taken, name)
		direct, err := Arrange(layers)
		require.NoError(t, err)
		identical(t, cut, direct)
	}
	for name, layers := range map[string][]Layer{
		"bow tie":        {{"red", Region{Polygon(Point{0, 0}, Point{1, 1}, Point{1, 0}, Point{0, 1})}}},
		"one disc twice": ring(1, 1),
		"discs touching": {{"red", Region{Circle(Point{}, 1), Circle(Point{2, 0}, 1)}}},
		"discs crossing": {{"red", Region{Circle(Point{}, 1), Circle(Point{1, 0}, 1)}}},
		"needle":         {{"red", Region{Polygon(Point{0, 0}, Point{1, 0}, Point{0, 1e-5})}}},
		"twice round":    {{"red", Region{append(Circle(Point{}, 1), Circle(Point{}, 1)...)}}},
	} {
		_, taken, _ := cutOnly(t, layers)
		assert.Zero(t, taken, name)
	}
}
