package marking

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The dark area of a panel is the mean over its height of the dark length of a
// level line, which the rule gives directly: an independent way, by the
// midpoint rule, whose error falls with the number of lines.
func TestHazardAgreesWithLevelLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := newHazard()
		f.WidthM = rapid.Float64Range(0.2, 2).Draw(t, "width")
		f.HeightM = rapid.Float64Range(0.05, 1).Draw(t, "height")
		f.StripeWidthM = rapid.Float64Range(0.02, 0.5).Draw(t, "stripe")
		f.AngleDeg = rapid.Float64Range(10, 90).Draw(t, "angle")
		f.PhaseRatio = rapid.Float64Range(0, 0.999).Draw(t, "phase")
		m, err := Measure(f)
		require.NoError(t, err)

		sin, cos := math.Sincos(f.AngleDeg * math.Pi / 180)
		p := 2 * f.StripeWidthM / sin
		// darkTo is the dark length from 0 to x where a dark stripe begins at 0.
		darkTo := func(x float64) float64 {
			whole := math.Floor(x / p)
			return whole*p/2 + min(x-whole*p, p/2)
		}
		const lines = 4000
		dark := 0.0
		for i := range lines {
			y := (float64(i) + 0.5) / lines * f.HeightM
			begin := -y*cos/sin - f.PhaseRatio*p
			dark += (darkTo(begin+f.WidthM) - darkTo(begin)) * f.HeightM / lines
		}
		got := 0.0
		for _, c := range m.Colours {
			if c.Colour == f.DarkColour {
				got = c.AreaM2
			}
		}
		assert.InDelta(t, dark, got, 1e-4*f.WidthM*f.HeightM)
		assert.InEpsilon(t, f.WidthM*f.HeightM, m.AreaM2, 1e-9)
	})
}
