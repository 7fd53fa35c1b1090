package command

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTablesInAndOut(t *testing.T) {
	dir := t.TempDir()
	code, book, said := call("", "export", "-example", "lock-gate")
	require.Equal(t, done, code, said)
	path := filepath.Join(dir, "gate.xlsx")
	require.NoError(t, os.WriteFile(path, []byte(book), 0o600))

	code, job, said := call("", "import", path)
	require.Equal(t, done, code, said)
	_, direct, _ := call("", "estimate", "-single", "-example", "lock-gate")
	code, again, said := call(job, "estimate", "-single", "-")
	require.Equal(t, done, code, said)
	assert.Equal(t, direct, again)
	code, again, said = call("", "estimate", "-single", path)
	require.Equal(t, done, code, said)
	assert.Equal(t, direct, again)
	code, out, _ := call("", "check", path)
	assert.Equal(t, done, code)
	assert.Equal(t, "no faults\n", out)
}

func TestFaultsOfTablesAreToldByTheirCell(t *testing.T) {
	path := filepath.Join(t.TempDir(), "components.csv")
	require.NoError(t, os.WriteFile(path, []byte("id,kind,area [m²]\na,measured,3 kg\nb,blob,1\n"), 0o600))
	for _, command := range []string{"import", "estimate"} {
		code, _, said := call("", command, path)
		assert.Equal(t, jobFault, code)
		assert.Contains(t, said, "components, row 2, column C (area [m²]): ")
		assert.Contains(t, said, "components, row 3, column B (kind): ")
	}
	code, _, _ := call("", "import")
	assert.Equal(t, lineFault, code)
	code, _, _ = call("", "import", path+"x")
	assert.Equal(t, lineFault, code)
	code, _, _ = call("", "export", "-format", "ods")
	assert.Equal(t, lineFault, code)
}
