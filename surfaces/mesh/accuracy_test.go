package mesh

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/quantity"
)

func TestTessellationDeficitLimits(t *testing.T) {
	var out *quantity.RangeError
	_, err := TessellationDeficit(2)
	require.ErrorAs(t, err, &out)
	_, err = TessellationDeficit(math.NaN())
	require.ErrorAs(t, err, &out)
}

// The true areas are 2πrh, 4πr² and 4π²·R·r (identity):
// what the estimate says facets cut off is what they did cut off.
func TestDeficitIsWhatFacetsCutOff(t *testing.T) {
	for _, n := range []int{16, 32, 64} {
		var ball, ring [][2]float64
		for i := 0; i <= n; i++ {
			a := 2 * math.Pi * float64(i) / float64(n)
			ring = append(ring, [2]float64{3 - math.Cos(a), -math.Sin(a)})
			if i <= n/2 {
				ball = append(ball, [2]float64{math.Sin(a), -math.Cos(a)})
			}
		}
		ball[0][0], ball[n/2][0] = 0, 0
		ring[n] = ring[0]
		slices.Reverse(ring)
		for name, c := range map[string]struct {
			profile [][2]float64
			area    float64
		}{
			"tube":   {[][2]float64{{1, 0}, {1, 5}}, 2 * math.Pi * 5},
			"sphere": {ball, 4 * math.Pi},
			"torus":  {ring, 4 * math.Pi * math.Pi * 3},
		} {
			r := measureBytes(t, binarySTL(revolve(c.profile, n)), DefaultOptions("m"))
			lost := 100 * (1 - r.AreaM2/c.area)
			within := 3 / float64(n) // the estimate is of second order, and finds the angles from the mesh itself
			assert.InEpsilon(t, lost, r.Checks.Tessellation, within, "%s, %d facets a turn", name, n)
		}
		tube, err := TessellationDeficit(float64(n))
		require.NoError(t, err)
		r := measureBytes(t, binarySTL(revolve([][2]float64{{1, 0}, {1, 5}}, n)), DefaultOptions("m"))
		assert.InDelta(t, 1-r.AreaM2/(2*math.Pi*5), tube, 1e-7, "%d", n)
	}
}

func TestAccuracy(t *testing.T) {
	cube := binarySTL(cubeTriangles(Point{}, 1))
	assert.Equal(t, modelPercent, measureBytes(t, cube, DefaultOptions("m")).Accuracy.Percent, "flat sides lose nothing")
	o := DefaultOptions("m")
	o.FacetsPerTurn = 32
	a := measureBytes(t, cube, o).Accuracy
	assert.InDelta(t, 0.16, a.DeficitPercent, 0.005, "reference 6d.8")
	assert.Equal(t, modelPercent+a.DeficitPercent, a.Percent)
	unknown := measureBytes(t, cube, Options{Unit: "m"}).Accuracy
	assert.InDelta(t, 1.14, unknown.DeficitPercent, 0.005, "12 facets a turn: 1 − (12/π)·sin 15°")
	assert.NotEmpty(t, unknown.Basis)
}
