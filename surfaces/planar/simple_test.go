package planar

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSimpleOutlines(t *testing.T) {
	for name, o := range map[string]Outline{
		"square":            Rectangle(Point{}, Point{1, 1}),
		"circle":            Circle(Point{3, 4}, 2),
		"rounded":           RoundedRectangle(Point{}, Point{2, 1}, 0.3),
		"two half circles":  RoundedRectangle(Point{}, Point{2, 1}, 0.5),
		"arrow":             Polygon(Point{0, 0}, Point{2, 1}, Point{0, 2}, Point{1, 1}),
		"doubled corner":    Polygon(Point{0, 0}, Point{1, 0}, Point{1, 0}, Point{0, 1}),
		"lens":              {{At: Point{0, 0}, Sweep: 1}, {At: Point{1, 0}, Sweep: 1}},
		"crescent":          {{At: Point{0, 0}, Sweep: 3}, {At: Point{1, 0}, Sweep: -1}},
		"three quarter arc": {{At: Point{1, 0}, Sweep: 1.5 * math.Pi}, {At: Point{0, -1}, Sweep: 0}},
		"nothing":           {},
	} {
		assert.NoError(t, o.Simple(), name)
		assert.NoError(t, o.Reversed().Simple(), name+" reversed")
	}
}

func TestOutlinesThatMeetThemselves(t *testing.T) {
	for name, c := range map[string]struct {
		outline Outline
		at      Point
	}{
		"bow tie":              {Polygon(Point{0, 0}, Point{1, 1}, Point{1, 0}, Point{0, 1}), Point{0.5, 0.5}},
		"corner on an edge":    {Polygon(Point{0, 0}, Point{2, 0}, Point{2, 2}, Point{1, 0}, Point{0, 2}), Point{1, 0}},
		"spike":                {Polygon(Point{0, 0}, Point{2, 0}, Point{1, 0}, Point{0, 1}), Point{1, 0}},
		"two corners in one":   {Polygon(Point{0, 0}, Point{2, 0}, Point{1, 1}, Point{2, 2}, Point{0, 2}, Point{1, 1}), Point{1, 1}},
		"arc across a line":    {Outline{{At: Point{0, 0}, Sweep: 0}, {At: Point{4, 0}, Sweep: 0}, {At: Point{3, 0.8}, Sweep: -math.Pi}, {At: Point{1, 0.8}, Sweep: 0}}, Point{}},
		"arc against the line": {Outline{{At: Point{0, 0}, Sweep: 0}, {At: Point{4, 0}, Sweep: 0}, {At: Point{3, 1}, Sweep: -math.Pi}, {At: Point{1, 1}, Sweep: 0}}, Point{2, 0}},
	} {
		err := c.outline.Simple()
		var crossing *CrossingError
		require.ErrorAs(t, err, &crossing, name)
		if c.at != (Point{}) {
			assert.InDelta(t, c.at.X, crossing.At.X, 1e-9, name)
			assert.InDelta(t, c.at.Y, crossing.At.Y, 1e-9, name)
		}
		assert.Less(t, crossing.First, crossing.Second, name)
		assert.ErrorAs(t, c.outline.Reversed().Simple(), &crossing, name+" reversed")
	}
}
