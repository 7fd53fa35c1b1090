package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// meanByGauss is the same integral by brute force, in parts that halve towards
// the shortest vector, where the integrand turns sharply.
func meanByGauss(v, w vector) float64 {
	var u vector
	for i := range u {
		u[i] = w[i] - v[i]
	}
	shortest := 0.0
	if uu := u.dot(u); uu > 0 {
		shortest = min(max(-v.dot(u)/uu, 0), 1)
	}
	sum := 0.0
	for _, end := range []float64{0, 1} {
		reach := end - shortest
		for range 60 {
			for _, n := range gauss() {
				t := shortest + reach*(0.5+0.5*n.at)
				x := vector{v[0] + t*u[0], v[1] + t*u[1], v[2] + t*u[2]}
				sum += math.Abs(reach) * 0.5 * n.weight * math.Sqrt(x.dot(x))
			}
			reach /= 2
		}
	}
	return sum
}

func TestMeanLength(t *testing.T) {
	mean := func(v, w vector) float64 { return meanLength(v[0], v[1], v[2], w[0], w[1], w[2]) }
	assert.Zero(t, mean(vector{}, vector{}))
	assert.InDelta(t, 2.5, mean(vector{0, 3, 4}, vector{}), 1e-15)
	assert.InDelta(t, 0.5, mean(vector{1, 0, 0}, vector{-1, 0, 0}), 1e-15)
	assert.InDelta(t, 1.5, mean(vector{1, 0, 0}, vector{2, 0, 0}), 1e-15)
	for _, tiny := range []float64{1e-100, 1e-150, 1e-160, 1e-162, 1e-200} { // down to where squares vanish
		assert.InDelta(t, tiny*math.Sqrt(3), mean(vector{tiny, tiny, tiny}, vector{tiny, tiny, tiny * 0.999}), tiny+1e-150)
	}
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string) vector {
			return vector{number(t, -2, 2, label), number(t, -2, 2, label), number(t, -2, 2, label)}
		}
		v, w := draw("v"), draw("w")
		near := math.Pow(10, number(t, -9, 0, "nearness"))
		for i := range w {
			w[i] = v[i] + near*w[i]
		}
		assert.InDelta(t, meanByGauss(v, w), mean(v, w), 1e-12)
	})
	// At the ends of each rule's range, across and along.
	for _, r := range []float64{1e-5, 1.5e-3, 0.02, 0.07, 0.2, 0.5} {
		for turn := range 32 {
			sin, cos := math.Sincos(2 * math.Pi * float64(turn) / 32)
			v, w := vector{1, 0, 0}, vector{1 + math.Sqrt(r)*cos, math.Sqrt(r) * sin, 0}
			assert.InEpsilon(t, meanByGauss(v, w), mean(v, w), 3e-13, "r = %g", r)
		}
	}
}
