package forms_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/ranges"
	"filmbuild/products"
)

func TestEveryFormIsWritten(t *testing.T) {
	ex, err := example.Find("jet-trainer")
	require.NoError(t, err)
	catalogue, err := products.Load()
	require.NoError(t, err)
	g, err := estimate.NewReader(nil).Work(ex.Job, catalogue)
	require.NoError(t, err)
	require.NoError(t, ranges.Add(t.Context(), g, ranges.Usual()))
	begins := map[string]string{"table": "", "json": "{", "csv": "step", "svg": "<svg", "xlsx": "PK", "pdf": "%PDF-"}
	for _, format := range forms.Formats() {
		var b bytes.Buffer
		require.NoError(t, forms.Write(&b, g, forms.Wanted{Format: format, Table: "steps"}), format)
		start, known := begins[format]
		require.True(t, known, format)
		assert.True(t, bytes.HasPrefix(b.Bytes(), []byte(start)), "%s begins with %q", format, b.Bytes()[:10])
		assert.Greater(t, b.Len(), 500, format)
	}
}

func TestAllThatIsWrongIsSaid(t *testing.T) {
	var fields []string
	forms.Wanted{Format: "doc", Table: "tables", Pages: "all", Paper: "a0", Date: "today"}.Check(func(field, _ string) { fields = append(fields, field) })
	assert.Equal(t, []string{"format", "table", "pages", "paper", "date"}, fields)
}
