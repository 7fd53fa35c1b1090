package example

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/products"
)

var update = flag.Bool("update", false, "rewrite the golden estimates")

// Each example is worked out and compared with its golden estimate, byte for
// byte; -update rewrites them, and the change is then read in the diff.
func TestExamplesAgainstTheirGoldenEstimates(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	all, err := All()
	require.NoError(t, err)
	require.Len(t, all, 5)
	for _, e := range all {
		t.Run(e.ID, func(t *testing.T) {
			got, err := estimate.NewReader(nil).Estimate(e.Job, catalogue)
			require.NoError(t, err)
			var text bytes.Buffer
			encoder := json.NewEncoder(&text)
			encoder.SetEscapeHTML(false)
			encoder.SetIndent("", " ")
			require.NoError(t, encoder.Encode(got))
			golden := filepath.Join("testdata", e.ID+".golden.json")
			if *update {
				require.NoError(t, os.MkdirAll("testdata", 0o755))
				require.NoError(t, os.WriteFile(golden, text.Bytes(), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			assert.Empty(t, firstDifference(string(want), text.String()), "run with -update and read the diff")
		})
	}
}

// firstDifference returns the first line in which two texts differ; whole
// estimates are too long to print.
func firstDifference(want, got string) string {
	wanted, found := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(wanted), len(found)) {
		if wanted[i] != found[i] {
			return fmt.Sprintf("line %d: want %s, got %s", i+1, wanted[i], found[i])
		}
	}
	if len(wanted) != len(found) {
		return fmt.Sprintf("want %d lines, got %d", len(wanted), len(found))
	}
	return ""
}

func TestAnUnknownExample(t *testing.T) {
	_, err := Find("nothing")
	assert.Error(t, err)
	e, err := Find(Default)
	require.NoError(t, err)
	assert.Equal(t, Default, e.ID)
}
