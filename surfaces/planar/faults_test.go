package planar

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestArrangeRefusesWhatItCannotMeasure(t *testing.T) {
	square := Rectangle(Point{}, Point{1, 1})
	for name, c := range map[string]struct {
		layer Layer
		want  error
		said  string
	}{
		"no number":   {Layer{"white", Region{Polygon(Point{math.NaN(), 0}, Point{1, 0}, Point{0, 1})}}, ErrNotFinite, "layer 1, outline 0: corner 0"},
		"no end":      {Layer{"white", Region{square, Polygon(Point{1, 0}, Point{0, math.Inf(-1)}, Point{0, 1})}}, ErrNotFinite, "layer 1, outline 1: corner 1"},
		"no colour":   {Layer{"", Region{square}}, ErrNoColour, "layer 1"},
		"flat arc":    {Layer{"white", Region{{{At: Point{0, 0}, Sweep: 1e-6}, {At: Point{1, 0}, Sweep: 0}, {At: Point{1, 1}, Sweep: 0}}}}, ErrFlatArc, "outline 0: corner 0"},
		"full circle": {Layer{"white", Region{{{At: Point{0, 0}, Sweep: 2 * math.Pi}, {At: Point{1, 0}, Sweep: 0}}}}, nil, "less than a full turn"},
		"no sweep":    {Layer{"white", Region{{{At: Point{0, 0}, Sweep: math.NaN()}, {At: Point{1, 0}, Sweep: 0}}}}, nil, "less than a full turn"},
	} {
		_, err := Arrange([]Layer{{"red", Region{square}}, c.layer})
		require.ErrorContains(t, err, c.said, name)
		if c.want != nil {
			assert.ErrorIs(t, err, c.want, name)
		}
	}
}

func TestNothingToSee(t *testing.T) {
	for name, layers := range map[string][]Layer{
		"no layers":    nil,
		"no outlines":  {{"white", nil}},
		"empty":        {{"white", Region{{}}}},
		"point":        {{"white", Region{Polygon(Point{1, 1})}}},
		"line":         {{"white", Region{Polygon(Point{1, 1}, Point{2, 3})}}},
		"no radius":    {{"white", Region{Circle(Point{1, 1}, 0)}}},
		"bare ground":  {{Base, Region{Circle(Point{1, 1}, 2)}}},
		"cancelled":    {{"white", Region{Circle(Point{}, 1), Circle(Point{}, 1).Reversed()}}},
		"there and on": {{"white", Region{Polygon(Point{}, Point{1, 0}, Point{2, 0}, Point{1, 0})}}},
	} {
		a := arranged(t, layers...)
		assert.Empty(t, a.Areas(), name)
		assert.Empty(t, a.Lengths(), name)
		assert.Empty(t, a.Pieces(), name)
		assert.Equal(t, Box{}, a.Box(), name)
	}
}

// A straight line drawn as an arc of no rise is a straight line.
func TestArcWithoutRise(t *testing.T) {
	a := arranged(t, Layer{"white", Region{{{At: Point{0, 0}, Sweep: 1e-13}, {At: Point{1, 0}, Sweep: 0}, {At: Point{1, 1}, Sweep: 0}, {At: Point{0, 1}, Sweep: 0}}}})
	assert.InDelta(t, 1, areaOf(a, "white"), 1e-12)
	assert.InDelta(t, 4, lengthOf(a, "white", Base), 1e-12)
}
