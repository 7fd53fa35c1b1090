// Package sheet reads sheets of markings with a general library.
package sheet

import (
	"bytes"
	"encoding/json"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/sheet"
)

// Debian's python3-svg.path 6.1 knows nothing of this project: it reads paths by
// the grammar of the W3C, arcs as arcs. What it finds on a sheet agrees with the
// measures of the marking, areas to 1e-6 and lengths to 1e-5.
func TestAnotherReaderAgrees(t *testing.T) {
	for _, k := range marking.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			m, err := marking.Measure(k.Example)
			require.NoError(t, err)
			picture, err := sheet.Figure(k.Example, sheet.Look{})
			require.NoError(t, err)
			c := exec.Command("/usr/bin/python3", "area_svgpath.py")
			var said, wrong bytes.Buffer
			c.Stdin, c.Stdout, c.Stderr = bytes.NewReader(picture), &said, &wrong
			require.NoError(t, c.Run(), "%s\ninstall python3-svg.path (Debian); tests/run does", wrong.String())
			var found map[string]struct{ Area, Length float64 }
			require.NoError(t, json.Unmarshal(said.Bytes(), &found))
			require.Len(t, found, len(m.Painted))
			all := 0.0
			for _, want := range m.Painted {
				got, known := found[strings.ReplaceAll(want.Colour, " ", "-")]
				require.True(t, known, want.Colour)
				assert.InEpsilon(t, want.AreaM2*1e6, got.Area, 1e-6, want.Colour)
				all += got.Length
			}
			// ID-2 of the markings list: the perimeters of the colours together are what
			// each colour masked by itself takes.
			assert.InEpsilon(t, m.EdgeTwoSidedM*1e3, all, 1e-5)
		})
	}
}
