package command

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// root is the name of a document's first element; the whole must be XML.
func root(t *testing.T, text string) string {
	t.Helper()
	name := ""
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return name
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok && name == "" {
			name = start.Name.Local
		}
	}
}

func TestSheetPrintsSVG(t *testing.T) {
	for _, args := range [][]string{
		{"sheet", "-marking", "side-roundel", "-date", "in May"},
		{"sheet", "-marking", "cheat-line", "-cut"},
		{"sheet", "-face", "fuselage/left", "-units", "us"},
		{"sheet", "-face", "wing/upper", "-other"},
	} {
		code, out, err := call("", args...)
		require.Equal(t, done, code, err)
		assert.Empty(t, err)
		assert.Equal(t, "svg", root(t, out), args)
	}
	code, out, err := call(goodJob, "sheet", "-marking", "x", "-")
	assert.Equal(t, lineFault, code)
	assert.Empty(t, out)
	assert.Contains(t, err, "there is no marking")
	code, _, err = call(badJob, "sheet", "-marking", "x", "-")
	assert.Equal(t, jobFault, code)
	assert.Contains(t, err, "/name: ")
	code, _, err = call("", "sheet")
	assert.Equal(t, lineFault, code)
	assert.Contains(t, err, "fuselage/left", "what there is to draw is told")
}
