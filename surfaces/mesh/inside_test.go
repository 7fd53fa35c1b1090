package mesh

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A tank inside a hull, both drawn as solids: none of the tank's 6 m² can be
// painted, of 6 + 54 (identity). As a cavity, facing inward, it has air inside.
func TestInsideOfATank(t *testing.T) {
	hull, tank := cubeTriangles(Point{}, 3), cubeTriangles(Point{1, 1, 1}, 1)
	r := measureBytes(t, binarySTL(append(hull, tank...)), DefaultOptions("m"))
	assert.LessOrEqual(t, r.Inside.LowRatio, 0.1)
	assert.GreaterOrEqual(t, r.Inside.HighRatio, 0.1)
	assert.Contains(t, codes(r), "inside_faces")

	for i, f := range tank {
		tank[i] = triangle{f[0], f[2], f[1]}
	}
	r = measureBytes(t, binarySTL(append(cubeTriangles(Point{}, 3), tank...)), DefaultOptions("m"))
	assert.Zero(t, r.Inside.BothSides)
	assert.Zero(t, r.Inside.Unsure)
	assert.Empty(t, r.Warnings)
}

func TestSameSeedSamePoints(t *testing.T) {
	data := binarySTL(append(cubeTriangles(Point{}, 2), cubeTriangles(Point{1, 1, 1}, 2)...))
	o := DefaultOptions("m")
	first := measureBytes(t, data, o).Inside
	assert.Equal(t, first, measureBytes(t, data, o).Inside)
	o.Seed = 2
	second := measureBytes(t, data, o).Inside
	assert.NotEqual(t, first.BothSides, second.BothSides)
	o.Samples = 0
	r := measureBytes(t, data, o)
	assert.Nil(t, r.Inside)
	assert.Contains(t, codes(r), "inside_left_out")
}

func TestParityWhereFacetsFaceOppositeWays(t *testing.T) {
	cube := cubeTriangles(Point{}, 1)
	cube[0] = triangle{cube[0][0], cube[0][2], cube[0][1]}
	r := measureBytes(t, binarySTL(cube), DefaultOptions("m"))
	require.NotNil(t, r.Inside)
	assert.Zero(t, r.Inside.BothSides)
	assert.Contains(t, r.Inside.Method, "parity")
}

func TestOpenSheet(t *testing.T) {
	r := measureText(t, square+"f 1 2 3 4\n")
	assert.Equal(t, r.Inside.Samples, r.Inside.NeitherSide)
	assert.Contains(t, codes(r), "sheet_faces")
}

// Exact bounds where they have a closed form (identity): with none or all of n
// found, 1 − 0.025^(1/n); and those of 10 in 100, 0.0490 to 0.1762, as printed
// in tables of Clopper and Pearson's limits (from memory).
func TestShareBounds(t *testing.T) {
	low, high := shareBounds(0, 1000)
	assert.Zero(t, low)
	assert.InDelta(t, 0.003682084, high, 1e-9)
	low, high = shareBounds(1000, 1000)
	assert.InDelta(t, 1-0.003682084, low, 1e-9)
	assert.Equal(t, 1.0, high)
	low, high = shareBounds(10, 100)
	assert.InDelta(t, 0.0490, low, 5e-5)
	assert.InDelta(t, 0.1762, high, 5e-5)
}
