package published

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/mesh"
	meshmodels "filmbuild/tests/mesh"
)

// Sources of the mesh checks:
//
//	SLM  npm stl-models 0.12.0
//	ATM  Debian assimp-testmodels 5.2.5~ds0-1
//
// Areas and volumes printed below were found by two or more programs written
// independently of this one (mark A); they are asserted to the digits printed.

// measureModel measures an installed model with every check.
func measureModel(t *testing.T, name string) (mesh.Result, error) {
	t.Helper()
	path, err := meshmodels.Path(name)
	require.NoError(t, err)
	return mesh.MeasureFile(context.Background(), path, mesh.DefaultOptions("m"))
}

// warned says whether a result carries a warning, with its count.
func warned(r mesh.Result, code string) (int64, bool) {
	for _, w := range r.Warnings {
		if w.Code == code {
			return w.Count, true
		}
	}
	return 0, false
}

// TestMeshG6b checks reference section 6b: areas of whole models.
func TestMeshG6b(t *testing.T) {
	tetrahedron := 1.5 + math.Sqrt(3)/2
	for _, c := range []struct {
		id, file     string
		facets       int64
		area, volume float64 // volume 0: not printed in the source
		within       float64
		zero         int64
		boundary     int64
	}{
		{"G6.01 text", "stl-models/polytopes/tetrahedron.ascii.stl", 4, tetrahedron, 1. / 6, 1e-15, 0, 0},
		{"G6.01 binary", "stl-models/polytopes/tetrahedron.bin.stl", 4, tetrahedron, 1. / 6, 1e-15, 0, 0},
		{"G6.01 text without spaces", "stl-models/polytopes/tetrahedron.min.ascii.stl", 4, tetrahedron, 1. / 6, 1e-15, 0, 0},
		{"G6.01 with −0", "stl-models/polytopes/tetrahedronMinusZero.bin.stl", 4, tetrahedron, 1. / 6, 1e-15, 0, 0},
		{"G6.02 cube, text", "stl-models/polytopes/cube.ascii.stl", 12, 24, 8, 1e-15, 0, 0},
		{"G6.02 cube, binary", "stl-models/polytopes/cube.bin.stl", 12, 24, 8, 1e-15, 0, 0},
		{"G6.02 unit cube, text", "stl-models/polytopes/unitCube.ascii.stl", 12, 6, 1, 1e-15, 0, 0},
		{"G6.02 unit cube, binary", "stl-models/polytopes/unitCube.binary.stl", 12, 6, 1, 1e-15, 0, 0},
		{"G6.02 large cube", "stl-models/polytopes/cubeLarge.ascii.stl", 12, 60000, 1e6, 1e-15, 0, 0},
		{"G6.03 text", "stl-models/polytopes/tetrahedronIrregular.ascii.stl", 4, 9, 1, 1e-15, 0, 0},
		{"G6.03 binary", "stl-models/polytopes/tetrahedronIrregular.bin.stl", 4, 9, 1, 1e-15, 0, 0},
		{"G6.04 binary", "stl-models/objects/gearwheel.bin.stl", 2444, 4508.734412628, 8922.636659, 2e-10, 0, 0},
		{"G6.04 text", "stl-models/objects/gearwheel.ascii.stl", 2444, 4508.734980171, 8922.637024, 2e-10, 0, 0},
		{"G6.05 binary", "stl-models/objects/bunny.bin.stl", 69451, 0.0571287834191, 0.000770057, 1e-6, 0, 223},
		{"G6.05 text", "stl-models/objects/bunny.ascii.stl", 69451, 0.0571287834779, 0.000770057, 1e-6, 0, 223},
		{"G6.06", "bunny.obj", 3674, 218.6892712869, 0, 1e-12, 0, -1},
		{"G6.08", "assimp/STL/upper_case_export.STL", 2000, 1734.4157340596, 980.399, 1e-6, 0, 0},
		{"G6.09", "assimp/STL/Spider_binary.stl", 1368, 56.947582704, 0, 1e-10, 56, -1},
		{"G6.10", "assimp/STL/sphereWithHole.stl", 285, 27.4187209655, 0, 1e-12, 0, 9},
		{"G6.11", "assimp/STL/triangle_with_two_solids.stl", 2, 2.5, 0, 1e-15, 0, -1},
		{"G6.12 OBJ", "assimp/OBJ/box.obj", 6, 6, 1, 1e-15, 0, 0},
		{"G6.12 PLY, text", "assimp/PLY/cube.ply", 6, 6, 1, 1e-15, 0, 0},
		{"G6.12 PLY, binary", "assimp/PLY/cube_binary.ply", 12, 6, 1, 1e-15, 0, 0},
	} {
		t.Run(c.id, func(t *testing.T) {
			r, err := measureModel(t, c.file)
			require.NoError(t, err)
			assert.Equal(t, c.facets, r.Facets)
			assert.InEpsilon(t, c.area, r.AreaM2, min(c.within, 1e-10), "area")
			if c.volume > 0 {
				assert.InEpsilon(t, c.volume, r.VolumeM3, max(c.within, 2e-10), "volume")
			}
			assert.Equal(t, c.zero, r.Polygons.ZeroArea)
			if c.boundary >= 0 {
				assert.Equal(t, c.boundary, r.Checks.BoundaryEdges)
			}
		})
	}
}

// TestMeshG609 checks the duplicates of the same source: all 36 of them are
// among the facets without area, so that none of the area is counted twice.
func TestMeshG609(t *testing.T) {
	r, err := measureModel(t, "assimp/STL/Spider_binary.stl")
	require.NoError(t, err)
	assert.EqualValues(t, 36, r.Checks.DuplicateFacets)
	assert.Zero(t, r.Checks.DuplicateAreaM2)
}

// TestMeshG611 checks that solids are told apart: ½·2·2 and ½·1·1 (identity).
func TestMeshG611(t *testing.T) {
	r, err := measureModel(t, "assimp/STL/triangle_with_two_solids.stl")
	require.NoError(t, err)
	require.Len(t, r.Solids, 2)
	assert.Equal(t, mesh.Solid{Name: "testTriangle_1", Facets: 1, AreaM2: 2}, r.Solids[0])
	assert.Equal(t, mesh.Solid{Name: "testTriangle_2", Facets: 1, AreaM2: 0.5}, r.Solids[1])
}

// cubes writes unit cubes at the given corners as one OBJ, outward facing.
func cubes(corners ...[3]float64) *bytes.Buffer {
	var text bytes.Buffer
	for i, c := range corners {
		for n := range 8 {
			fmt.Fprintf(&text, "v %g %g %g\n", c[0]+float64(n&1), c[1]+float64(n>>1&1), c[2]+float64(n>>2&1))
		}
		for _, f := range [][4]int{{1, 3, 4, 2}, {5, 6, 8, 7}, {1, 2, 6, 5}, {3, 7, 8, 4}, {1, 5, 7, 3}, {2, 4, 8, 6}} {
			fmt.Fprintf(&text, "f %d %d %d\nf %d %d %d\n", f[0]+8*i, f[1]+8*i, f[2]+8*i, f[0]+8*i, f[2]+8*i, f[3]+8*i)
		}
	}
	return &text
}

// TestMeshG614 and the next check that faces with material on both sides are
// found: the share is the area that is counted and cannot be painted, over the
// sum (identity). The 95 % bounds of the sample must hold it.
func TestMeshG614(t *testing.T) {
	r, err := mesh.Measure(context.Background(), cubes([3]float64{}, [3]float64{1, 0, 0}), mesh.DefaultOptions("m"))
	require.NoError(t, err)
	require.EqualValues(t, 24, r.Facets)
	assert.InEpsilon(t, 12, r.AreaM2, 1e-15, "sum of both, G6.14")
	hidden := (12. - 10.) / 12.
	assert.GreaterOrEqual(t, hidden, r.Inside.LowRatio)
	assert.LessOrEqual(t, hidden, r.Inside.HighRatio)
	assert.Less(t, r.Inside.HighRatio-r.Inside.LowRatio, 0.06)
	_, found := warned(r, "inside_faces")
	assert.True(t, found)
	assert.EqualValues(t, 2, r.Checks.DuplicateFacets, "the shared face is there twice, back to back")
	assert.InEpsilon(t, 1, r.Checks.DuplicateAreaM2, 1e-15)
}

func TestMeshG615(t *testing.T) {
	r, err := mesh.Measure(context.Background(), cubes([3]float64{}, [3]float64{0.5, 0.5, 0.5}), mesh.DefaultOptions("m"))
	require.NoError(t, err)
	assert.InEpsilon(t, 12, r.AreaM2, 1e-15, "sum of both, G6.15")
	hidden := (12. - 10.5) / 12.
	assert.GreaterOrEqual(t, hidden, r.Inside.LowRatio)
	assert.LessOrEqual(t, hidden, r.Inside.HighRatio)
	assert.Equal(t, 2, r.Checks.Components)
	_, found := warned(r, "inside_faces")
	assert.True(t, found)
}

// TestMeshG6d4 checks the slivers of reference 6d.4, which formulas on edge
// lengths get wrong: ½·base·height (identity).
func TestMeshG6d4(t *testing.T) {
	for _, c := range []struct{ base, height float64 }{{10, 1e-7}, {10, 1e-9}, {1e8, 1e-6}} {
		text := fmt.Sprintf("v 0 0 0\nv %g 0 0\nv %g %g 0\nf 1 2 3\n", c.base, c.base/2, c.height)
		r, err := mesh.Measure(context.Background(), bytes.NewBufferString(text), mesh.Options{Unit: "m"})
		require.NoError(t, err)
		assert.InEpsilon(t, c.base*c.height/2, r.AreaM2, 1e-15)
	}
}

// TestMeshG6d8 checks reference 6d.8: 32 facets a turn cut off 0.16 %.
func TestMeshG6d8(t *testing.T) {
	lacks, err := mesh.TessellationDeficit(32)
	require.NoError(t, err)
	assert.InDelta(t, 0.16, 100*lacks, 0.005)
}
