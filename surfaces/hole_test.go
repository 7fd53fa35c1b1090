package surfaces

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The only hole of a rectangle needs no place: area and edge are the same
// anywhere (identity). Two holes do.
func TestAnOnlyHoleLiesInTheMiddle(t *testing.T) {
	panel := &Panel{WidthM: pointer(1.2), HeightM: pointer(0.8), Sides: 1, Holes: []Hole{{DiameterM: pointer(0.1)}}}
	placed := &Panel{WidthM: pointer(1.2), HeightM: pointer(0.8), Sides: 1, Holes: []Hole{{DiameterM: pointer(0.1), XM: pointer(0.2), YM: pointer(0.2)}}}
	a, err := Measure(panel)
	require.NoError(t, err)
	b, err := Measure(placed)
	require.NoError(t, err)
	assert.InEpsilon(t, b.AreaM2(), a.AreaM2(), 1e-12)
	assert.InEpsilon(t, b.EdgeM(), a.EdgeM(), 1e-12)

	panel.Holes = append(panel.Holes, Hole{DiameterM: pointer(0.1)})
	_, err = Measure(panel)
	assert.ErrorContains(t, err, "x_m")
}
