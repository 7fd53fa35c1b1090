package takeoff

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/products"
)

func engine(t testing.TB) (*estimate.Reader, *products.Catalogue) {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	return estimate.NewReader(nil), catalogue
}

// worked is the estimate of a job as JSON.
func worked(t *testing.T, job []byte) string {
	t.Helper()
	reader, catalogue := engine(t)
	e, err := reader.Estimate(job, catalogue)
	require.NoError(t, err)
	data, err := json.MarshalIndent(e, "", " ")
	require.NoError(t, err)
	return string(data)
}

// Identity: what is exported and imported again gives the same estimate, to the
// byte.
func TestExamplesComeBackTheSame(t *testing.T) {
	reader, catalogue := engine(t)
	all, err := example.All()
	require.NoError(t, err)
	for _, e := range all {
		t.Run(e.ID, func(t *testing.T) {
			data, err := Export(e.Job, reader, catalogue)
			require.NoError(t, err)
			back, err := Import([]File{{Name: "any.xlsx", Data: data}}, reader, catalogue)
			require.NoError(t, err)
			assert.Equal(t, worked(t, e.Job), worked(t, back))

			files, err := ExportCSV(e.Job, reader, catalogue)
			require.NoError(t, err)
			require.Greater(t, len(files), 2)
			back, err = Import(files, reader, catalogue)
			require.NoError(t, err)
			assert.Equal(t, worked(t, e.Job), worked(t, back))
		})
	}
}
