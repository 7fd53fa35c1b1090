package spacing

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestRowsSpreadKeepOrderAndDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 20).Draw(t, "places")
		slices.Sort(want)
		got := Spread(want, 6)
		sum := 0.0
		for i := range got {
			sum += got[i] - want[i]
			if i > 0 {
				assert.GreaterOrEqual(t, got[i]-got[i-1], 6-1e-9)
			}
		}
		assert.InDelta(t, 0, sum, 1e-6, "on the whole nothing moves")
	})
	assert.Equal(t, []float64{0, 10, 20}, Spread([]float64{0, 10, 20}, 6))
}
