package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// meanByGauss is the same integral by brute force.
func meanByGauss(v, w vector) float64 {
	const parts = 200
	sum := 0.0
	for k := range parts {
		for _, n := range gauss() {
			t := (float64(k) + n.at) / parts
			x := vector{v[0] + t*(w[0]-v[0]), v[1] + t*(w[1]-v[1]), v[2] + t*(w[2]-v[2])}
			sum += n.weight * math.Sqrt(x.dot(x)) / parts
		}
	}
	return sum
}

func TestMeanLength(t *testing.T) {
	assert.Zero(t, meanLength(vector{}, vector{}))
	assert.InDelta(t, 2.5, meanLength(vector{0, 3, 4}, vector{}), 1e-15)
	assert.InDelta(t, 0.5, meanLength(vector{1, 0, 0}, vector{-1, 0, 0}), 1e-15)
	assert.InDelta(t, 1.5, meanLength(vector{1, 0, 0}, vector{2, 0, 0}), 1e-15)
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string) vector {
			return vector{number(t, -2, 2, label), number(t, -2, 2, label), number(t, -2, 2, label)}
		}
		v, w := draw("v"), draw("w")
		near := math.Pow(10, number(t, -9, 0, "nearness"))
		for i := range w {
			w[i] = v[i] + near*w[i]
		}
		assert.InDelta(t, meanByGauss(v, w), meanLength(v, w), 1e-11)
	})
}
