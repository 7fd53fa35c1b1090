package planar

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Contours of a ring, two rings apart, a ring in a ring, and a figure that
// touches its own hole's corner: holes = lines − parts (identity).
func TestHolesAreCounted(t *testing.T) {
	ring := func(x, outer, inner float64) Region {
		return Region{Circle(Point{x, 0}, outer), Circle(Point{x, 0}, inner).Reversed()}
	}
	corners := Region{Rectangle(Point{0, 0}, Point{1, 1}), Rectangle(Point{1, 1}, Point{2, 2}), Rectangle(Point{0, 2}, Point{1, 3}), Rectangle(Point{-1, 1}, Point{0, 2})}
	for name, c := range map[string]struct {
		region       Region
		parts, holes int
	}{
		"disc":                         {Region{Circle(Point{}, 1)}, 1, 0},
		"ring":                         {ring(0, 2, 1), 1, 1},
		"two rings":                    {Join(ring(0, 2, 1), ring(5, 2, 1)), 2, 2},
		"ring in ring":                 {Join(ring(0, 4, 3), ring(0, 2, 1)), 2, 2},
		"squares that meet in corners": {corners, 1, 1},
	} {
		a := arranged(t, Layer{"white", c.region})
		require.Len(t, a.Holes(), 1, name)
		assert.Equal(t, Holes{"white", c.parts, c.holes}, a.Holes()[0], name)
	}
	a := arranged(t, Layer{"white", Region{Circle(Point{}, 2)}}, Layer{"red", Region{Circle(Point{}, 1)}})
	assert.Equal(t, []Holes{{"white", 1, 1}, {"red", 1, 0}}, a.Holes())
}

// The lines round a colour enclose its area, run along all its borders and
// close (identity), for any layers.
func TestLoopsEncloseTheirColours(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := arranged(t, gridLayers(t)...)
		sums, lengths := map[string]float64{}, map[string]float64{}
		for _, l := range a.Loops() {
			sums[l.Colour] += l.Area
			assert.InDelta(t, l.Outline.SignedArea(), l.Area, 1e-9)
			for i, c := range l.Outline {
				way := l.Outline[(i+1)%len(l.Outline)].At.minus(c.At).length()
				switch {
				case c.Bend != nil:
					way = (&cubic{c.At, c.Bend.First, c.Bend.Second, l.Outline[(i+1)%len(l.Outline)].At}).length()
				case c.Sweep != 0:
					way *= math.Abs(c.Sweep) / 2 / math.Sin(math.Abs(c.Sweep)/2)
				}
				lengths[l.Colour] += way
			}
		}
		for _, c := range a.Areas() {
			assert.InDelta(t, c.Area, sums[c.Colour], 1e-8, c.Colour)
			border := 0.0
			for _, l := range a.Lengths() {
				if l.Between[0] == c.Colour || l.Between[1] == c.Colour {
					border += l.Length
				}
			}
			assert.InDelta(t, border, lengths[c.Colour], 1e-7, c.Colour)
		}
		again := map[string]float64{}
		for _, l := range a.Loops() {
			for _, c := range arranged(t, Layer{l.Colour, Region{l.Outline}}).Areas() {
				again[l.Colour] += math.Copysign(c.Area, l.Area)
			}
		}
		for _, c := range a.Areas() {
			assert.InDelta(t, c.Area, again[c.Colour], 1e-7, "read back")
		}
	})
}

// Copies are measured as often as they stand (identity): areas, lengths and
// holes times their number, the centroid at their mean shift, the box about all.
func TestCopiesTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := arranged(t, gridLayers(t)...)
		var at []Point
		var mean Point
		for k := range rapid.IntRange(1, 4).Draw(t, "copies") {
			at = append(at, Point{float64(100 * k), 30})
			mean = mean.plus(at[k])
		}
		n := float64(len(at))
		mean = mean.times(1 / n)
		inner, err := Together([]Copies{{one, at}})
		require.NoError(t, err)
		together, err := Together([]Copies{{inner, []Point{{0, 0}, {0, 1000}}}})
		require.NoError(t, err)
		for i, c := range together.Areas() {
			w := one.Areas()[i]
			assert.InDelta(t, 2*n*w.Area, c.Area, 1e-12*n*w.Area)
			if w.Area > 1e-6 {
				assert.InDelta(t, 0, w.Centre.plus(mean).plus(Point{0, 500}).minus(c.Centre).length(), 1e-7)
			}
		}
		for i, l := range together.Lengths() {
			assert.InEpsilon(t, 2*n*one.Lengths()[i].Length, l.Length, 1e-12)
		}
		for i, h := range together.Holes() {
			assert.Equal(t, 2*len(at)*one.Holes()[i].Holes, h.Holes)
			assert.Equal(t, 2*len(at)*one.Holes()[i].Parts, h.Parts)
		}
		assert.Len(t, together.Pieces(), 2*len(at)*len(one.Pieces()))
		assert.Len(t, together.Loops(), 2*len(at)*len(one.Loops()))
		if len(one.Pieces()) > 0 {
			assert.InDelta(t, one.Box().Width()+100*(n-1), together.Box().Width(), 1e-9)
			assert.InDelta(t, one.Box().Height()+1000, together.Box().Height(), 1e-9)
			assert.InDelta(t, one.Box().Min.Y+30, together.Box().Min.Y, 1e-9)
		}
	})
}

// Figures put together are those drawn at once (identity).
func TestTogetherIsAtOnce(t *testing.T) {
	disc, square := []Layer{{"red", Region{Circle(Point{}, 1)}}}, []Layer{{"white", Region{Rectangle(Point{}, Point{1, 1})}}, {"red", Region{Circle(Point{0.5, 0.5}, 0.2)}}}
	far := Point{4, 0}
	together, err := Together([]Copies{{arranged(t, disc...), []Point{{}}}, {arranged(t, square...), []Point{far}}})
	require.NoError(t, err)
	once := arranged(t, append(disc, Placement{Scale: 1, Shift: far}.Layers(square)...)...)
	want, got := summed(once), summed(together)
	same(t, want.areas, got.areas, 1e-12)
	same(t, want.lengths, got.lengths, 1e-12)
	assert.InDelta(t, 0, want.box.Min.minus(got.box.Min).length()+want.box.Max.minus(got.box.Max).length(), 1e-12)
	for i, c := range together.Areas() {
		assert.InDelta(t, 0, once.Areas()[i].Centre.minus(c.Centre).length(), 1e-12)
	}
	_, err = Together([]Copies{{once, []Point{{math.NaN(), 0}}}})
	assert.ErrorIs(t, err, ErrNotFinite)
}
