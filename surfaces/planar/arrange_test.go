package planar

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func arranged(t require.TestingT, layers ...Layer) *Arrangement {
	a, err := Arrange(layers)
	require.NoError(t, err)
	return a
}

func areaOf(a *Arrangement, colour string) float64 {
	for _, c := range a.Areas() {
		if c.Colour == colour {
			return c.Area
		}
	}
	return 0
}

func lengthOf(a *Arrangement, first, second string) float64 {
	for _, l := range a.Lengths() {
		if l.Between == [2]string{first, second} || l.Between == [2]string{second, first} {
			return l.Length
		}
	}
	return 0
}

// lens is the area common to two circles and the arcs of each inside the other
// (identity: two circular segments on the common chord).
func lens(r, s, d float64) (area, arcR, arcS float64) {
	switch {
	case d >= r+s:
		return 0, 0, 0
	case d <= math.Abs(r-s):
		small := min(r, s)
		if r < s {
			return math.Pi * small * small, 2 * math.Pi * r, 0
		}
		return math.Pi * small * small, 0, 2 * math.Pi * s
	}
	a := 2 * math.Acos((d*d+r*r-s*s)/(2*d*r))
	b := 2 * math.Acos((d*d+s*s-r*r)/(2*d*s))
	return r*r/2*(a-math.Sin(a)) + s*s/2*(b-math.Sin(b)), r * a, s * b
}

func TestTwoCirclesAgreeWithTheLens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.1, 3).Draw(t, "r")
		s := rapid.Float64Range(0.1, 3).Draw(t, "s")
		d := rapid.Float64Range(0, 7).Draw(t, "d")
		if d < 1e-4 { // below, the closed form loses its digits
			d = 0
		}
		turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
		common, arcR, arcS := lens(r, s, d)
		a := arranged(t,
			Layer{"white", Region{Circle(Point{}, r)}},
			Layer{"red", Region{Circle(Polar(Point{}, d, turn), s)}})
		if d+math.Abs(r-s) < 1e-9 { // one circle
			assert.InDelta(t, 2*math.Pi*s, lengthOf(a, "red", Base), 1e-8)
			return
		}
		// Near a tangency the common chord is as uncertain as the square root of the rounding.
		near := 1e-9
		if math.Min(math.Abs(d-r-s), math.Abs(d-math.Abs(r-s))) < 1e-6 {
			near = 1e-4
		}
		assert.InDelta(t, math.Pi*r*r-common, areaOf(a, "white"), 5e-8) // 1e-9 of the box
		assert.InDelta(t, math.Pi*s*s, areaOf(a, "red"), 5e-8)
		if s > 0 && d+s > r { // the red arc inside white
			assert.InDelta(t, arcS, lengthOf(a, "red", "white"), near)
		}
		assert.InDelta(t, 2*math.Pi*s-arcS, lengthOf(a, "red", Base), near)
		assert.InDelta(t, 2*math.Pi*r-arcR, lengthOf(a, "white", Base), near)
	})
}
