package trial

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Student's t for one tail of 0.10: 3.078, 1.886, 1.638, 1.533 at 1 to 4 degrees
// of freedom (standard table, from memory). Trials of 1 m² that took x: the mean
// is off by t·s/√n.
func TestSpreadBetweenTrials(t *testing.T) {
	table := []float64{3.078, 1.886, 1.638, 1.533}
	for _, values := range [][]float64{{1, 1.4}, {1, 1.2, 2}, {1, 2, 3, 2}, {1, 3, 1, 3, 2}} {
		n := float64(len(values))
		var patches []Patch
		mean, squares := 0.0, 0.0
		for _, x := range values {
			patches = append(patches, Patch{AreaM2: 1, Weight: 1, Amount: x})
			mean += x / n
		}
		for _, x := range values {
			squares += (x - mean) * (x - mean)
		}
		f, err := Combine(patches)
		require.NoError(t, err)
		want := table[len(values)-2] * math.Sqrt(squares/(n-1)) / math.Sqrt(n) / mean
		assert.InDelta(t, want, f.Off, 0.001, "%v", values)
		assert.True(t, f.Spread)
		assert.InEpsilon(t, mean, f.Value, 1e-12)
	}
}

// By size: 30 % at 1 m², half of it at 4 m², 10 % from 9 m² up, all at 0.09 m².
func TestOffBySize(t *testing.T) {
	for area, off := range map[float64]float64{1: 0.3, 4: 0.15, 9: 0.1, 100: 0.1, 0.09: 1, 0.0001: 1} {
		assert.InEpsilon(t, off, OffBySize(area), 1e-12, "%g m²", area)
	}
}

func TestNoTrial(t *testing.T) {
	for _, patches := range [][]Patch{nil, {{1, 1, 0}}, {{0, 1, 1}}, {{1, 0, 1}}, {{1, 1, math.NaN()}}, {{math.Inf(1), 1, 1}}} {
		_, err := Combine(patches)
		assert.Error(t, err)
	}
}

// Alike trials are as good as one of their whole size; the value lies between
// the lowest and the highest; the interval holds it.
func TestTrialsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "n")
		x := rapid.Float64Range(0.01, 100).Draw(t, "x")
		var alike, some []Patch
		area, low, high := 0.0, math.Inf(1), 0.0
		for range n {
			a := rapid.Float64Range(0.01, 20).Draw(t, "area")
			y := rapid.Float64Range(0.01, 100).Draw(t, "y")
			area += a
			low, high = min(low, y), max(high, y)
			alike = append(alike, Patch{a, a, a * x})
			some = append(some, Patch{a, a, a * y})
		}
		f, err := Combine(alike)
		require.NoError(t, err)
		assert.InEpsilon(t, x, f.Value, 1e-9)
		assert.InEpsilon(t, OffBySize(area), f.Off, 1e-6)
		g, err := Combine(some)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, g.Value, low*(1-1e-9))
		assert.LessOrEqual(t, g.Value, high*(1+1e-9))
		assert.GreaterOrEqual(t, g.Off, f.Off*(1-1e-6), "trials that differ are never surer than alike ones")
		assert.LessOrEqual(t, g.Off, 1.0)
		assert.Less(t, g.Low(), g.Value)
		assert.Greater(t, g.High(), g.Value)
		assert.NotEmpty(t, g.Text())
	})
}
