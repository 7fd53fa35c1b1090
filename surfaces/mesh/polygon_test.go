package mesh

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Areas by hand: identities of elementary geometry.
func TestPolygons(t *testing.T) {
	for name, c := range map[string]struct {
		corners []Point
		area    float64
		form    int
	}{
		"triangle":         {[]Point{{0, 0, 0}, {3, 0, 0}, {0, 4, 0}}, 6, formConvex},
		"square":           {[]Point{{0, 0, 5}, {2, 0, 5}, {2, 2, 5}, {0, 2, 5}}, 4, formConvex},
		"corner in a side": {[]Point{{0, 0, 0}, {1, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}}, 4, formConvex},
		"corner twice":     {[]Point{{0, 0, 0}, {2, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}}, 4, formConvex},
		"an L":             {[]Point{{0, 0, 0}, {2, 0, 0}, {2, 1, 0}, {1, 1, 0}, {1, 2, 0}, {0, 2, 0}}, 3, formConcave},
		"arrow from its notch": {
			[]Point{{0, 1, 0}, {-2, -1, 0}, {0, 3, 0}, {2, -1, 0}}, 4, formConcave},
		"hole by a bridge": {
			[]Point{{0, 0, 0}, {3, 0, 0}, {3, 3, 0}, {0, 3, 0}, {0, 0, 0}, {1, 1, 0}, {1, 2, 0}, {2, 2, 0}, {2, 1, 0}, {1, 1, 0}}, 8, formConcave},
		"figure of eight": {[]Point{{0, 0, 0}, {2, 2, 0}, {2, 0, 0}, {0, 2, 0}}, 4, formCrossing},
		"pentagram": {
			star(5, 2), 0.5 * (3*math.Sin(0.8*math.Pi) + 4*math.Sin(0.4*math.Pi)), formCrossing},
		"no area":    {[]Point{{0, 0, 0}, {1, 1, 1}, {2, 2, 2}, {3, 3, 3}}, 0, formConvex},
		"all in one": {[]Point{{1, 1, 1}, {1, 1, 1}, {1, 1, 1}, {1, 1, 1}}, 0, formConvex},
		"folded":     {[]Point{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {0, 0, 0}}, math.Sqrt(3)/2 + 0.5, formWarped},
	} {
		p := measurePolygon(c.corners)
		assert.InDelta(t, c.area, p.area, 1e-14, name)
		assert.Equal(t, c.form, p.form, name)
	}
}

// star joins every step-th of n points on the unit circle. A triangle between
// points at arcs a, b, c of it has the area ½·(sin a + sin b + sin c).
func star(n, step int) []Point {
	var list []Point
	for i := range n {
		a := 2 * math.Pi * float64(i*step) / float64(n)
		list = append(list, Point{math.Cos(a), math.Sin(a), 0})
	}
	return list
}

// A side crossing that turns once: two loops of opposite turn and one more.
func TestCrossingThatTurnsOnce(t *testing.T) {
	p := measurePolygon([]Point{{0, 0, 0}, {4, 0, 0}, {4, 2, 0}, {1, 2, 0}, {1, -1, 0}, {2, -1, 0}, {2, 3, 0}, {0, 3, 0}})
	assert.Equal(t, formCrossing, p.form)
}
