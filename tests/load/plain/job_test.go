package plain

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
)

// The mirror has a place for every member of the document: nothing is skipped
// that the engine has to read.
func TestTheMirrorHoldsTheWholeDocument(t *testing.T) {
	e, err := example.Find("jet-trainer")
	require.NoError(t, err)
	decoder := json.NewDecoder(bytes.NewReader(e.Job))
	decoder.DisallowUnknownFields()
	var job Job
	require.NoError(t, decoder.Decode(&job))
	require.NotEmpty(t, job.Steps)
}
