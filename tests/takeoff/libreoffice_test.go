// Package takeoff sends tables through a real spreadsheet and back.
package takeoff

import (
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/takeoff"
	"filmbuild/products"
)

// saved opens files in LibreOffice and saves them as another kind.
func saved(t *testing.T, kind string, files map[string][]byte, more ...string) map[string][]byte {
	t.Helper()
	program, err := exec.LookPath("soffice")
	require.NoError(t, err, "LibreOffice Calc (soffice) is needed: tests/run installs it on Debian")
	dir := t.TempDir()
	arguments := []string{"-env:UserInstallation=file://" + filepath.Join(dir, "profile"), "--headless", "--norestore", "--convert-to", kind, "--outdir", filepath.Join(dir, "out")}
	arguments = append(arguments, more...)
	for name, data := range files {
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, data, 0o600))
		arguments = append(arguments, path)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 4*time.Minute)
	defer cancel()
	said, err := exec.CommandContext(ctx, program, arguments...).CombinedOutput()
	require.NoError(t, err, string(said))
	found := map[string][]byte{}
	entries, err := os.ReadDir(filepath.Join(dir, "out"))
	require.NoError(t, err, string(said))
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(dir, "out", e.Name()))
		require.NoError(t, err)
		found[e.Name()] = data
	}
	require.Len(t, found, len(files), string(said))
	return found
}

func engine(t *testing.T) (*estimate.Reader, *products.Catalogue) {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	return estimate.NewReader(nil), catalogue
}

func worked(t *testing.T, job []byte) string {
	t.Helper()
	reader, catalogue := engine(t)
	e, err := reader.Estimate(job, catalogue)
	require.NoError(t, err)
	data, err := json.MarshalIndent(e, "", " ")
	require.NoError(t, err)
	return string(data)
}

// A general program opens and saves what we wrote, and it is the same estimate,
// to the byte.
func TestWorkbooksSurviveLibreOffice(t *testing.T) {
	reader, catalogue := engine(t)
	template, err := takeoff.WriteTemplate("job.xlsx")
	require.NoError(t, err)
	files, jobs := map[string][]byte{"template.xlsx": template}, map[string][]byte{}
	jobs["template.xlsx"], err = takeoff.Import([]takeoff.File{{Name: "template.xlsx", Data: template}}, reader, catalogue)
	require.NoError(t, err)
	all, err := example.All()
	require.NoError(t, err)
	for _, e := range all {
		name := e.ID + ".xlsx"
		files[name], err = takeoff.Export(e.Job, reader, catalogue)
		require.NoError(t, err)
		jobs[name] = e.Job
	}
	for name, data := range saved(t, "xlsx:Calc MS Excel 2007 XML", files) {
		back, err := takeoff.Import([]takeoff.File{{Name: name, Data: data}}, reader, catalogue)
		require.NoError(t, err, name)
		assert.Equal(t, worked(t, jobs[name]), worked(t, back), name)
	}
}

// LibreOffice saves CSV with semicolons (44 is a comma, 59 a semicolon), text in
// quotes, as UTF-8 (76).
//
// Source: LibreOffice help, filter options of CSV files.
func TestSheetsSavedAsCSVImport(t *testing.T) {
	reader, catalogue := engine(t)
	for _, name := range []string{"components.csv", "items.csv", "products.csv"} {
		data, err := takeoff.WriteTemplate(name)
		require.NoError(t, err)
		want, err := takeoff.Import([]takeoff.File{{Name: name, Data: data}}, reader, catalogue)
		require.NoError(t, err)
		for _, options := range []string{"44,34,76", "59,34,76"} {
			found := saved(t, "csv:Text - txt - csv (StarCalc):"+options, map[string][]byte{strings.TrimSuffix(name, ".csv") + ".xlsx": asWorkbook(t, name, data)})
			back, err := takeoff.Import([]takeoff.File{{Name: name, Data: found[name]}}, reader, catalogue)
			require.NoError(t, err, string(found[name]))
			assert.Equal(t, string(want), string(back))
		}
	}
}

// asWorkbook opens a CSV file as a person would and saves it as a workbook.
func asWorkbook(t *testing.T, name string, data []byte) []byte {
	t.Helper()
	for _, found := range saved(t, "xlsx:Calc MS Excel 2007 XML", map[string][]byte{name: data}, "--infilter=CSV:44,34,76") {
		return found
	}
	return nil
}
