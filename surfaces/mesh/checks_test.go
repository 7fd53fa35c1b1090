package mesh

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestChecksOfACube(t *testing.T) {
	r := measureBytes(t, binarySTL(cubeTriangles(Point{}, 1)), DefaultOptions("m"))
	c := *r.Checks
	assert.True(t, c.Closed)
	assert.Equal(t, 8, c.Vertices)
	assert.Equal(t, 1, c.Components)
	assert.Empty(t, c.Edges)
	assert.Zero(t, c.DuplicateFacets+c.BoundaryEdges+c.NonManifoldEdges+c.WindingConflicts)
	assert.Empty(t, r.Warnings)
}

// Each change to a cube of 12 facets has the effect that its geometry gives it.
func TestChecksOfBrokenCubes(t *testing.T) {
	cube := func() []triangle { return cubeTriangles(Point{}, 1) }
	turned := func(f triangle) triangle { return triangle{f[0], f[2], f[1]} }

	r := measureBytes(t, binarySTL(cube()[1:]), DefaultOptions("m"))
	assert.EqualValues(t, 3, r.Checks.BoundaryEdges)
	assert.InEpsilon(t, 2+math.Sqrt2, r.Checks.BoundaryM, 1e-7)
	assert.Contains(t, codes(r), "open_edges")

	r = measureBytes(t, binarySTL(append(cube(), turned(cube()[3]))), DefaultOptions("m"))
	assert.EqualValues(t, 1, r.Checks.DuplicateFacets)
	assert.Equal(t, 0.5, r.Checks.DuplicateAreaM2)
	assert.EqualValues(t, 3, r.Checks.NonManifoldEdges)
	assert.Equal(t, 6.5, r.AreaM2, "counted, not mended")
	assert.Subset(t, codes(r), []string{"duplicate_facets", "non_manifold_edges"})

	wrong := cube()
	wrong[4] = turned(wrong[4])
	r = measureBytes(t, binarySTL(wrong), DefaultOptions("m"))
	assert.EqualValues(t, 3, r.Checks.WindingConflicts)
	assert.Equal(t, 6.0, r.AreaM2)
	assert.Contains(t, codes(r), "winding_conflicts")

	for i := range wrong {
		wrong[i] = turned(cube()[i])
	}
	r = measureBytes(t, binarySTL(wrong), DefaultOptions("m"))
	assert.Equal(t, -1.0, r.VolumeM3)
	assert.True(t, r.Checks.Closed)
	assert.Contains(t, codes(r), "inside_out")

	r = measureBytes(t, binarySTL(append(cube(), triangle{{0, 0, 0}, {1, 0, 0}, {1, 0, 0}})), DefaultOptions("m"))
	assert.EqualValues(t, 1, r.Polygons.ZeroArea)
	assert.True(t, r.Checks.Closed)
	assert.Contains(t, codes(r), "zero_area_facets")
}

func TestComponents(t *testing.T) {
	r := measureBytes(t, binarySTL(append(cubeTriangles(Point{}, 1), cubeTriangles(Point{5, 0, 0}, 2)...)), DefaultOptions("cm"))
	assert.Equal(t, 2, r.Checks.Components)
	require.Len(t, r.Checks.Largest, 2)
	assert.Equal(t, 2, r.Checks.Largest[0].Number, "the second in the file, the largest")
	assert.InEpsilon(t, 24e-4, r.Checks.Largest[0].AreaM2, 1e-14)
	assert.InEpsilon(t, 0.05, r.Checks.Largest[0].Box.Low[0], 1e-14)
}

func TestChecksAreLeftOutAboveTheirLimit(t *testing.T) {
	data := binarySTL(cubeTriangles(Point{}, 1))
	o := DefaultOptions("m")
	o.CheckFacets = 12
	assert.NotNil(t, measureBytes(t, data, o).Checks)
	o.CheckFacets = 11
	r := measureBytes(t, data, o)
	assert.Nil(t, r.Checks)
	assert.Nil(t, r.Inside)
	assert.Contains(t, codes(r), "checks_left_out")
	assert.Contains(t, measureBytes(t, binarySTL(cubeTriangles(Point{}, 1)[2:]), Options{Unit: "m"}).Warnings[1].Code, "not_closed")
}
