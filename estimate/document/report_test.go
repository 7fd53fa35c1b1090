package document_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/document"
	"filmbuild/estimate/example"
	"filmbuild/products"
)

func graph(t *testing.T, id string) *estimate.Graph {
	t.Helper()
	ex, err := example.Find(id)
	require.NoError(t, err)
	catalogue, err := products.Load()
	require.NoError(t, err)
	g, err := estimate.NewReader(nil).Trace(ex.Job, catalogue)
	require.NoError(t, err)
	return g
}

// The same estimate and options give the same bytes.
func TestAReportIsTheSameEachTime(t *testing.T) {
	for _, paper := range document.Papers() {
		var one, two bytes.Buffer
		o := document.Options{Date: "2026-11-25", Paper: paper}
		require.NoError(t, document.Report(&one, graph(t, "jet-trainer"), o))
		require.NoError(t, document.Report(&two, graph(t, "jet-trainer"), o))
		require.Equal(t, one.Bytes(), two.Bytes())
	}
}

func TestOptionsAreChecked(t *testing.T) {
	var fields []string
	document.Options{Date: "25.11.2026", Paper: "a5"}.Check(func(field, detail string) { fields = append(fields, field) })
	require.Equal(t, []string{"paper", "date"}, fields)
	document.Options{Date: "2026-11-25", Paper: "letter"}.Check(func(field, detail string) { require.Fail(t, detail) })
}
