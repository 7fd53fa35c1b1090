// Package command runs the program as people do, as a process.
package command

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
)

const goodJob = `{"name": "One panel", "currency": "USD", "components": [{"id": "panel", "shape": {"kind": "panel", "width_m": 1.2, "height_m": 0.8}}],
	"steps": [{"id": "prime", "operation": "coat", "on": ["panel"], "product": "epoxy-primer", "method": "brush"}]}`

const badJob = `{"name": "", "currency": "USD", "colour": "red", "components": [{"id": "panel", "shape": {"kind": "panel", "width_m": "35 psi", "height_m": 0.8}}],
	"steps": [{"id": "prime", "operation": "coat", "on": ["tail"], "product": "nothing", "method": "brush"}]}`

// Exit codes of the program.
const (
	done      = 0
	jobFault  = 1
	lineFault = 2
)

// program is the path of the built program.
var program = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "filmbuild-command-")
	if err != nil {
		return "", err
	}
	path := filepath.Join(folder, "program")
	said, err := exec.Command("go", "build", "-o", path, "filmbuild").CombinedOutput()
	if err != nil {
		err = fmt.Errorf("%w: %s", err, said)
	}
	return path, err
})

func TestMain(m *testing.M) {
	code := m.Run()
	if path, err := program(); err == nil {
		_ = os.RemoveAll(filepath.Dir(path)) // a folder of our own in the temporary one
	}
	os.Exit(code)
}

// call runs a command line and returns its exit code and what it wrote.
func call(stdin string, args ...string) (code int, out, err string) {
	path, broken := program()
	if broken != nil {
		return -1, "", broken.Error()
	}
	var stdout, stderr bytes.Buffer
	c := exec.Command(path, args...)
	c.Stdin, c.Stdout, c.Stderr = strings.NewReader(stdin), &stdout, &stderr
	if failed := c.Run(); c.ProcessState == nil {
		return -1, "", failed.Error()
	}
	return c.ProcessState.ExitCode(), stdout.String(), stderr.String()
}

func fileOf(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "job.json")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
	return name
}

func TestEstimateWithoutAFileWorksTheExampleOut(t *testing.T) {
	code, out, err := call("", "estimate")
	assert.Equal(t, done, code)
	assert.Empty(t, err)
	one, fault := example.Find(example.Default)
	require.NoError(t, fault)
	var job struct {
		Name string `json:"name"`
	}
	require.NoError(t, json.Unmarshal(one.Job, &job))
	assert.True(t, strings.HasPrefix(out, job.Name))
	assert.Contains(t, out, "BUDGET")
}

func TestEstimateReadsAFileAndStandardInput(t *testing.T) {
	_, fromFile, _ := call("", "estimate", fileOf(t, goodJob))
	code, fromInput, err := call(goodJob, "estimate", "-")
	assert.Equal(t, done, code)
	assert.Empty(t, err)
	assert.Equal(t, fromFile, fromInput)
	assert.Contains(t, fromInput, "One panel")
}

func TestEveryExampleCanBeAskedFor(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, one := range all {
		code, out, said := call("", "estimate", "-example", one.ID, "-units", "us")
		assert.Equal(t, done, code, said)
		assert.Contains(t, out, "ft²")
	}
	code, _, said := call("", "estimate", "-example", "nothing")
	assert.Equal(t, lineFault, code)
	assert.Contains(t, said, "nothing")
}

// The three formats say the same: the JSON is the estimate, the CSV its steps.
func TestFormats(t *testing.T) {
	file := fileOf(t, goodJob)
	code, text, _ := call("", "estimate", "-format", "json", file)
	require.Equal(t, done, code)
	var e estimate.Estimate
	require.NoError(t, json.Unmarshal([]byte(text), &e))
	assert.Equal(t, "One panel", e.Job)
	assert.InEpsilon(t, 0.96, e.Totals.AreaM2, 1e-12)
	for _, table := range []string{"steps", "order", "areas", "budget"} {
		code, text, _ = call("", "estimate", "-format", "csv", "-table", table, file)
		require.Equal(t, done, code)
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		require.NoError(t, err)
		assert.Greater(t, len(rows), 1, table)
	}
}

// The sheet for a funder: the rows of the form and nothing else, with the byte
// order mark where it is asked for; and a plain answer where the job names no form.
func TestTheFundersSheet(t *testing.T) {
	code, text, _ := call("", "estimate", "-example", "grant-tailplane", "-format", "csv", "-table", "funding")
	require.Equal(t, done, code)
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 13, "a head and the twelve lines of section B")
	assert.Equal(t, "6a", rows[1][0])
	assert.Equal(t, "7", rows[12][0])
	code, marked, _ := call("", "estimate", "-example", "grant-tailplane", "-format", "csv", "-table", "funding", "-bom")
	require.Equal(t, done, code)
	assert.Equal(t, "\xef\xbb\xbf"+text, marked)
	code, text, told := call("", "estimate", "-format", "csv", "-table", "funding", fileOf(t, goodJob))
	assert.NotEqual(t, done, code)
	assert.Empty(t, text)
	assert.Contains(t, told, "the job asks for no form")
}

// A job at fault is exit code 1, its faults are told one to a line, and no figure
// is given.
func TestAJobAtFault(t *testing.T) {
	wanted := []string{"/name", "/colour", "/components/0/shape/width_m", "/steps/0/on/0", "/steps/0/product"}
	code, out, err := call("", "check", fileOf(t, badJob))
	assert.Equal(t, jobFault, code)
	assert.Empty(t, err)
	lines := strings.Split(strings.TrimSpace(out), "\n")
	assert.Len(t, lines, len(wanted), "each fault once, on a line of its own")
	for _, pointer := range wanted {
		assert.Contains(t, out, pointer+": ")
	}

	code, out, err = call(badJob, "estimate", "-")
	assert.Equal(t, jobFault, code)
	assert.Empty(t, out)
	for _, pointer := range wanted {
		assert.Contains(t, err, pointer+": ")
	}

	code, out, _ = call(`{"name": `, "check", "-")
	assert.Equal(t, jobFault, code)
	assert.Contains(t, out, "JSON")

	code, out, _ = call(`{}`, "check", "-")
	assert.Equal(t, jobFault, code)
	assert.Contains(t, out, "the job: the job is empty")
}

func TestCheckOfASoundJob(t *testing.T) {
	code, out, err := call(goodJob, "check", "-")
	assert.Equal(t, done, code)
	assert.Equal(t, "no faults\n", out)
	assert.Empty(t, err)
}

// A command line at fault is exit code 2, told on standard error with what to do.
func TestACommandLineAtFault(t *testing.T) {
	file := fileOf(t, goodJob)
	for name, args := range map[string][]string{
		"unknown command":    {"paint"},
		"unknown flag":       {"estimate", "-colour"},
		"unknown format":     {"estimate", "-format", "docx", file},
		"unknown table":      {"estimate", "-format", "csv", "-table", "secrets", file},
		"unknown units":      {"estimate", "-units", "cubits", file},
		"no such file":       {"estimate", filepath.Join(t.TempDir(), "missing.json")},
		"one word too many":  {"estimate", file, file},
		"check without file": {"check"},
		"check of no file":   {"check", filepath.Join(t.TempDir(), "missing.json")},
		"version of a thing": {"version", "please"},
		"address that is no": {"serve", "-addr", "nowhere:::"},
		"flag of no command": {"-colour"},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, err := call("", args...)
			assert.Equal(t, lineFault, code)
			assert.Empty(t, out)
			assert.NotEmpty(t, err)
		})
	}
}

func TestHelpAndVersion(t *testing.T) {
	for _, args := range [][]string{{"help"}, {"-h"}, {"--help"}} {
		code, out, _ := call("", args...)
		assert.Equal(t, done, code)
		assert.Contains(t, out, "filmbuild estimate")
	}
	code, _, err := call("", "estimate", "-h")
	assert.Equal(t, done, code)
	assert.Contains(t, err, "filmbuild estimate")
	code, out, _ := call("", "version")
	assert.Equal(t, done, code)
	assert.Contains(t, out, estimate.EngineVersion)
}
