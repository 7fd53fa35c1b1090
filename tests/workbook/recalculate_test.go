// Package workbook opens our workbook in LibreOffice, a general spreadsheet, lets
// it work every formula out anew, and compares with the engine.
package workbook

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/workbook"
	"filmbuild/products"
)

// always is the setting that makes LibreOffice recalculate a file of another
// program on loading, whatever values it holds.
const always = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`

// recalculated sends workbooks through LibreOffice at once and opens the results.
func recalculated(t *testing.T, files map[string]*excelize.File) map[string]*excelize.File {
	t.Helper()
	program, err := exec.LookPath("soffice")
	require.NoError(t, err, "LibreOffice Calc (soffice) is needed: tests/run installs it on Debian")
	dir := t.TempDir()
	profile := filepath.Join(dir, "profile", "user")
	require.NoError(t, os.MkdirAll(profile, 0o700))
	require.NoError(t, os.WriteFile(filepath.Join(profile, "registrymodifications.xcu"), []byte(always), 0o600))
	arguments := []string{"-env:UserInstallation=file://" + filepath.Join(dir, "profile"), "--headless", "--norestore", "--convert-to", "xlsx", "--outdir", filepath.Join(dir, "out")}
	for name, f := range files {
		path := filepath.Join(dir, name+".xlsx")
		require.NoError(t, f.SaveAs(path))
		arguments = append(arguments, path)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 4*time.Minute)
	defer cancel()
	said, err := exec.CommandContext(ctx, program, arguments...).CombinedOutput()
	require.NoError(t, err, string(said))
	results := map[string]*excelize.File{}
	for name := range files {
		f, err := excelize.OpenFile(filepath.Join(dir, "out", name+".xlsx"))
		require.NoError(t, err, string(said))
		t.Cleanup(func() { require.NoError(t, f.Close()) })
		results[name] = f
	}
	return results
}

func trace(t *testing.T, job []byte) *estimate.Graph {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	g, err := estimate.NewReader(nil).Trace(job, catalogue)
	require.NoError(t, err)
	return g
}

func written(t *testing.T, g *estimate.Graph) *excelize.File {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, workbook.Write(&b, g))
	f, err := excelize.OpenReader(&b)
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, f.Close()) })
	return f
}

func exampleJob(t *testing.T, id string) []byte {
	t.Helper()
	ex, err := example.Find(id)
	require.NoError(t, err)
	return ex.Job
}
