package meshmodels_test

import (
	"bytes"
	"context"
	"encoding/json"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/mesh"
	meshmodels "filmbuild/tests/mesh"
)

// Three readers written by others, none of which knows this one.
//
//	three    npm three 0.187.0, its STL, OBJ and PLY loaders
//	numpy    Debian python3-stl
//	assimp   Debian assimp-utils
//
// They hold coordinates in single precision. Binary files do too, so there the
// areas agree to 1e-12; of text files they round the digits, which is worth up
// to 1e-7 of a coordinate (IEEE 754) and, on the small facets of these models,
// a few times that in the area.
const (
	fromBinary = 1e-12
	fromText   = 3e-7
)

var models = []struct {
	file   string
	by     string // t three, n numpy, a assimp
	within float64
}{
	{"stl-models/objects/gearwheel.bin.stl", "tna", fromBinary},
	{"stl-models/objects/gearwheel.ascii.stl", "tna", fromText},
	{"stl-models/objects/bunny.bin.stl", "tna", fromBinary},
	{"stl-models/objects/bunny.ascii.stl", "tna", fromText},
	{"stl-models/polytopes/tetrahedron.bin.stl", "tna", fromBinary},
	{"stl-models/polytopes/tetrahedronMinusZero.bin.stl", "tna", fromBinary},
	{"stl-models/polytopes/cubeLarge.ascii.stl", "tna", fromBinary},
	{"stl-models/broken/wrongHeader.bin.stl", "tna", fromBinary},
	{"assimp/STL/Spider_binary.stl", "tna", fromBinary},
	{"assimp/STL/Wuson.stl", "tna", fromBinary},
	{"assimp/STL/upper_case_export.STL", "tna", fromBinary},
	{"assimp/STL/sphereWithHole.stl", "ta", fromText},
	{"assimp/STL/triangle_with_two_solids.stl", "ta", fromBinary},
	{"assimp/OBJ/box.obj", "ta", fromBinary},
	{"assimp/OBJ/WusonOBJ.obj", "ta", fromText},
	{"assimp/OBJ/spider.obj", "ta", fromText},
	{"assimp/PLY/cube.ply", "ta", fromBinary},
	{"assimp/PLY/cube_binary.ply", "ta", fromBinary},
	{"assimp/PLY/cube_uv.ply", "ta", fromText},
}

func TestOtherReadersAgree(t *testing.T) {
	dir, err := meshmodels.Dir()
	require.NoError(t, err)
	readers := map[rune][]string{
		't': {"node", "area_three.mjs", dir},
		'n': {"/usr/bin/python3", "area_numpy.py"},
		'a': {"/usr/bin/python3", "area_assimp.py"},
	}
	for letter, command := range readers {
		t.Run(command[1], func(t *testing.T) {
			var asked []int
			for i, m := range models {
				if strings.ContainsRune(m.by, letter) {
					path, err := meshmodels.Path(m.file)
					require.NoError(t, err)
					asked, command = append(asked, i), append(command, path)
				}
			}
			answers := run(t, command)
			require.Len(t, answers, len(asked))
			for k, i := range asked {
				compare(t, models[i].file, models[i].within, answers[k])
			}
		})
	}
}

func compare(t *testing.T, file string, within float64, theirs reading) {
	path, err := meshmodels.Path(file)
	require.NoError(t, err)
	ours, err := mesh.MeasureFile(context.Background(), path, mesh.Options{Unit: "m"})
	require.NoError(t, err, file)
	require.Empty(t, theirs.Error, file)
	assert.InEpsilon(t, theirs.Area, ours.AreaM2, within, file)
	if mesh.FormatOf(file) == mesh.FormatSTL {
		assert.EqualValues(t, theirs.Facets, ours.Facets, file)
	}
	if theirs.OwnArea > 0 {
		assert.InEpsilon(t, theirs.OwnArea, ours.AreaM2, 1e-6, "%s: the library's own areas, in single precision", file)
	}
}

type reading struct {
	Facets  int     `json:"facets"`
	Area    float64 `json:"area"`
	OwnArea float64 `json:"own_area"`
	Error   string  `json:"error"`
}

// run starts a script and returns its lines.
func run(t *testing.T, command []string) []reading {
	t.Helper()
	var out, problems bytes.Buffer
	c := exec.Command(command[0], command[1:]...)
	c.Stdout, c.Stderr = &out, &problems
	require.NoError(t, c.Run(), "%v: %s; is it installed? run bash tests/mesh/install.sh", command[:2], problems.String())
	var answers []reading
	for decoder := json.NewDecoder(&out); decoder.More(); {
		var r reading
		require.NoError(t, decoder.Decode(&r))
		answers = append(answers, r)
	}
	return answers
}
