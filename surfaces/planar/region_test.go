package planar

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By the even-odd rule two overlapping figures leave out what they have in
// common: |A| + |B| − 2·|A ∩ B| (identity), here with the lens of two circles.
func TestEvenOddLeavesOutWhatIsCommon(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, s := rapid.Float64Range(0.5, 2).Draw(t, "r"), rapid.Float64Range(0.5, 2).Draw(t, "s")
		d := rapid.Float64Range(0.1, 3.5).Draw(t, "d")
		common, _, _ := lens(r, s, d)
		odd, err := Region{Circle(Point{}, r), Circle(Point{d, 0}, s)}.EvenOdd()
		require.NoError(t, err)
		a := arranged(t, Layer{"white", odd})
		assert.InDelta(t, math.Pi*(r*r+s*s)-2*common, areaOf(a, "white"), 1e-7)
		again, err := odd.EvenOdd()
		require.NoError(t, err)
		assert.InDelta(t, areaOf(a, "white"), areaOf(arranged(t, Layer{"white", again}), "white"), 1e-7, "it stays so")
	})
	_, err := Region{Polygon(Point{math.NaN(), 0})}.EvenOdd()
	assert.ErrorIs(t, err, ErrNotFinite)
}

func TestSimpleRegions(t *testing.T) {
	square := Rectangle(Point{}, Point{2, 2})
	assert.NoError(t, Region{square, Circle(Point{1, 1}, 0.5)}.Simple())
	assert.NoError(t, Region(nil).Simple())
	for name, c := range map[string]struct {
		region Region
		pair   [2]int
	}{
		"two that cross": {Region{square, Circle(Point{5, 5}, 1), Circle(Point{2, 1}, 0.5)}, [2]int{0, 2}},
		"two that touch": {Region{square, Rectangle(Point{2, 0}, Point{3, 1})}, [2]int{0, 1}},
		"one by itself":  {Region{square, Polygon(Point{5, 5}, Point{6, 6}, Point{6, 5}, Point{5, 6})}, [2]int{1, 1}},
	} {
		var crossing *CrossingError
		require.ErrorAs(t, c.region.Simple(), &crossing, name)
		assert.Equal(t, c.pair, crossing.Outlines, name)
	}
	assert.ErrorIs(t, Region{{{At: Point{}, Sweep: 1, Bend: &Bend{}}, {At: Point{1, 1}}}}.Simple(), ErrTwoWays)
	assert.ErrorIs(t, Region{{{At: Point{0, 0}, Sweep: 1e-6}, {At: Point{1, 0}}, {At: Point{1, 1}}}}.Simple(), ErrFlatArc)
}

func TestBoxOfRegions(t *testing.T) {
	box := Region{Circle(Point{3, 4}, 2), parabola(5)}.Box()
	assert.InDelta(t, 0, box.Min.minus(Point{0, 0}).length(), 1e-12)
	assert.InDelta(t, 0, box.Max.minus(Point{5, 6}).length(), 1e-12)
	assert.Equal(t, Box{}, Region(nil).Box())
}

// An upright line through a ring crosses it at ±√(r² − x²) of both circles, and
// one through a parabola at its height (identities).
func TestAcross(t *testing.T) {
	a := arranged(t, Layer{"white", Region{Circle(Point{}, 2), Circle(Point{}, 1).Reversed()}})
	for _, x := range []float64{-1.5, -0.3, 0.01, 0.6, 1.9} {
		var want []float64
		outer := math.Sqrt(4 - x*x)
		want = append(want, -outer)
		if math.Abs(x) < 1 {
			inner := math.Sqrt(1 - x*x)
			want = append(want, -inner, inner)
		}
		assert.InDeltaSlice(t, append(want, outer), a.Across(x), 1e-12, "%g", x)
	}
	assert.Empty(t, a.Across(2.5))
	curve, err := Together([]Copies{{arranged(t, Layer{"white", Region{parabola(3)}}), []Point{{10, 1}}}})
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{1, 1 + 3*0.5*1.5}, curve.Across(10.5), 1e-12)
	assert.InDeltaSlice(t, []float64{0, 1}, arranged(t, Layer{"white", Region{Polygon(Point{}, Point{2, 0}, Point{2, 2})}}).Across(1), 1e-12)
}

// A square as wide as it is high, seen on a cylinder, grows across the axis
// alone; a diagonal has the length of its unrolled curve, by many short chords.
func TestOnCylinder(t *testing.T) {
	const r = 1.0
	triangle := Polygon(Point{-0.8, -0.8}, Point{0.8, -0.8}, Point{0.8, 0.8})
	for _, upright := range []bool{false, true} {
		m := arranged(t, Layer{"white", Region{triangle}}).OnCylinder(r, upright)
		roll := func(p Point) Point {
			if upright {
				return Point{r * math.Asin(p.X/r), p.Y}
			}
			return Point{p.X, r * math.Asin(p.Y/r)}
		}
		area, length := 0.0, 0.0
		const steps = 20_000
		for i, c := range triangle {
			next := triangle[(i+1)%3].At
			last := roll(c.At)
			for k := 1; k <= steps; k++ {
				p := roll(c.At.plus(next.minus(c.At).times(float64(k) / steps)))
				area += last.cross(p) / 2
				length += p.minus(last).length()
				last = p
			}
		}
		assert.InEpsilon(t, area, m.Areas[0].Area, 1e-7)
		assert.InEpsilon(t, length, m.Lengths[0].Length, 1e-7)
	}
	// The arrangement of arcs and curves, left and right the same as flat.
	disc := []Layer{{"white", Region{Circle(Point{}, 0.5)}}, {"red", Region{Placement{Scale: 0.3}.Outline(parabola(1))}}}
	for _, upright := range []bool{false, true} {
		flat, laid := arranged(t, disc...), arranged(t, disc...).OnCylinder(1e4, upright)
		middle := flat.Box().Min.plus(flat.Box().Max).times(0.5)
		for i, c := range flat.Areas() {
			assert.InEpsilon(t, c.Area, laid.Areas[i].Area, 1e-7)
			assert.InDelta(t, 0, c.Centre.minus(middle).minus(laid.Areas[i].Centre).length(), 1e-7, "about the middle of the box")
		}
		for i, l := range flat.Lengths() {
			assert.InEpsilon(t, l.Length, laid.Lengths[i].Length, 1e-7)
		}
	}
}
