package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/mesh"
)

// Source: the broken test models of the npm package stl-models and of Debian's
// assimp-testmodels, with what each is broken by.
//
// TestMeshG6cMeasured checks reference 6c, first column: broken files that can
// be measured are, with the warning that is due. A warning "" means that the
// file is sound for an area.
func TestMeshG6cMeasured(t *testing.T) {
	tetrahedron := 1.5 + math.Sqrt(3)/2
	for _, c := range []struct {
		file    string
		area    float64
		warning string
	}{
		{"stl-models/broken/wrongHeader.bin.stl", 60000, ""},
		{"stl-models/broken/fourVertices.ascii.stl", tetrahedron + 0.5, "warped_facets"},
		{"stl-models/broken/quad.ascii.stl", tetrahedron, "more_than_three_corners"},
		{"stl-models/broken/missingEndsolid.ascii.stl", tetrahedron, "missing_endsolid"},
		{"stl-models/broken/solidNameMismatch.ascii.stl", tetrahedron, "solid_name_mismatch"},
		{"stl-models/broken/missingFace.ascii.stl", 1.5, "open_edges"},
		{"stl-models/broken/singleFace.ascii.stl", 0.5, "open_edges"},
		{"stl-models/broken/missingNormal.ascii.stl", tetrahedron, ""},
		{"stl-models/broken/notANumberNormal.ascii.stl", tetrahedron, ""},
		{"stl-models/broken/wrongNormal.ascii.stl", tetrahedron, ""},
		{"stl-models/broken/wrongNormals.ascii.stl", tetrahedron, ""},
		{"stl-models/misc/multiWordName.ascii.stl", tetrahedron, ""},
		{"stl-models/misc/namelessSolid.ascii.stl", tetrahedron, ""},
		{"assimp/STL/triangle_with_empty_solid.stl", 2, "empty_solid"},
		{"assimp/OBJ/box_longline.obj", 5 + 234, "crossing_facets"}, // five sides, and a line that goes round the sixth 234 times
		{"assimp/OBJ/testmixed.obj", 6, ""},
	} {
		t.Run(c.file, func(t *testing.T) {
			r, err := measureModel(t, c.file)
			require.NoError(t, err)
			assert.InEpsilon(t, c.area, r.AreaM2, 1e-12)
			if c.warning != "" {
				_, found := warned(r, c.warning)
				assert.True(t, found, "%v", r.Warnings)
			} else {
				for _, w := range r.Warnings {
					assert.Equal(t, "very_large", w.Code, "the large cube is 100 units wide")
				}
			}
		})
	}
}

// TestMeshG6cRefused checks the files whose numbers cannot be trusted: each is
// refused with its code, the place, and both numbers where two disagree.
func TestMeshG6cRefused(t *testing.T) {
	for _, c := range []struct {
		file, code string
		at         mesh.Place
		want, got  int64
	}{
		{"stl-models/broken/incorrectFaceCounter.bin.stl", "count_mismatch", mesh.Place{Byte: 80}, 84 + 50*66, 284},
		{"stl-models/misc/multiWordName.bin.stl", "count_mismatch", mesh.Place{Byte: 80}, 284, 333},
		{"stl-models/broken/twoVertices.ascii.stl", "too_few_corners", mesh.Place{Line: 2}, 3, 2},
		{"stl-models/misc/faceless.ascii.stl", "empty", mesh.Place{Line: 1}, 0, 0},
		{"stl-models/broken/empty.stl", "empty", mesh.Place{Line: 1}, 0, 0},
		{"assimp/OBJ/box_UTF16BE.obj", "wrong_format", mesh.Place{Line: 1}, 0, 0},
		{"assimp/OBJ/number_formats.obj", "syntax", mesh.Place{Line: 11}, 0, 0},
		{"assimp/OBJ/point_cloud.obj", "empty", mesh.Place{Line: 1}, 0, 0},
		{"assimp/OBJ/testline.obj", "empty", mesh.Place{Line: 1}, 0, 0},
		{"assimp/PLY/points.ply", "empty", mesh.Place{Line: 1}, 0, 0},
		{"assimp/PLY/issue623.ply", "syntax", mesh.Place{Line: 13}, 0, 0},
		{"assimp/invalid/empty.ply", "empty", mesh.Place{Line: 1}, 0, 0},
		{"assimp/invalid/malformed.obj", "unknown_reference", mesh.Place{Line: 23}, 12, 8},
		{"assimp/invalid/malformed2.obj", "too_few_corners", mesh.Place{Line: 23}, 3, 0},
	} {
		t.Run(c.file, func(t *testing.T) {
			_, err := measureModel(t, c.file)
			var broken *mesh.FileError
			require.ErrorAs(t, err, &broken)
			assert.Equal(t, c.code, broken.Code)
			assert.Equal(t, c.at, broken.At)
			assert.Equal(t, c.want, broken.Want)
			assert.Equal(t, c.got, broken.Got)
			assert.NotEmpty(t, broken.Detail)
		})
	}
}
