// Package clients makes clients of the API description with generators of
// others, compiles them and lets them ask a running service.
package clients

import (
	"context"
	"encoding/json"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/openapi"
	"filmbuild/products"
)

// answer is what a client prints of an estimate.
type answer struct {
	Total string  `json:"total"`
	Area  float64 `json:"area"`
}

// service is a running server, the job that clients send, and what it comes to
// when the engine is asked itself.
func service(t *testing.T) (address string, job []byte, wanted answer) {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	server := httptest.NewServer(api.Handler(catalogue))
	t.Cleanup(server.Close)
	e, err := example.Find("one-panel")
	require.NoError(t, err)
	worked, err := estimate.NewReader(nil).Estimate(e.Job, catalogue)
	require.NoError(t, err)
	data, err := json.Marshal(worked)
	require.NoError(t, err)
	var read struct {
		Budget struct{ Total string }
		Totals struct {
			AreaM2 float64 `json:"area_m2"`
		}
	}
	require.NoError(t, json.Unmarshal(data, &read))
	return server.URL, e.Job, answer{read.Budget.Total, read.Totals.AreaM2}
}

// copied puts files of testdata into a folder.
func copied(t *testing.T, from, to string) {
	t.Helper()
	require.NoError(t, os.MkdirAll(to, 0o700))
	require.NoError(t, os.CopyFS(to, os.DirFS(filepath.Join("testdata", from))))
}

func write(t *testing.T, path string, data []byte) {
	t.Helper()
	require.NoError(t, os.WriteFile(path, data, 0o600))
}

// run runs a program in a folder and returns what it prints.
func run(t *testing.T, dir, hint, program string, arguments ...string) []byte {
	t.Helper()
	_, err := exec.LookPath(program)
	require.NoError(t, err, hint)
	ctx, cancel := context.WithTimeout(context.Background(), 4*time.Minute)
	defer cancel()
	c := exec.CommandContext(ctx, program, arguments...)
	c.Dir, c.Env = dir, append(os.Environ(), "GOFLAGS=-mod=mod -trimpath", "GOWORK=off")
	var out, said = &limited{}, &limited{}
	c.Stdout, c.Stderr = out, said
	require.NoError(t, c.Run(), "%s %v: %s %s", program, arguments, out.data, said.data)
	return out.data
}

// limited keeps the first part of what a program writes.
type limited struct{ data []byte }

func (l *limited) Write(p []byte) (int, error) {
	l.data = append(l.data, p[:min(len(p), 20_000-len(l.data))]...)
	return len(p), nil
}

func asked(t *testing.T, out []byte) answer {
	t.Helper()
	var got answer
	require.NoError(t, json.Unmarshal(out, &got), string(out))
	return got
}

func TestAGeneratedGoClient(t *testing.T) {
	address, job, wanted := service(t)
	dir := t.TempDir()
	const hint = "Go is needed, and its module proxy must be in reach"
	copied(t, "go", dir)
	require.NoError(t, os.Mkdir(filepath.Join(dir, "client"), 0o700))
	write(t, filepath.Join(dir, "openapi.json"), openapi.Document())
	write(t, filepath.Join(dir, "job.json"), job)
	write(t, filepath.Join(dir, "go.mod"), []byte("module client\n\ngo 1.26.0\n\nrequire github.com/oapi-codegen/runtime v1.9.0\n"))
	run(t, dir, hint, "go", "run", "github.com/oapi-codegen/oapi-codegen/v2/cmd/oapi-codegen@v2.8.2", "-generate", "types,client", "-package", "client", "-o", "client/client.gen.go", "openapi.json")
	run(t, dir, hint, "go", "build", "-o", "main", ".")
	assert.Equal(t, wanted, asked(t, run(t, dir, hint, filepath.Join(dir, "main"), address, "job.json")))
}

func TestAGeneratedTypeScriptClient(t *testing.T) {
	address, job, wanted := service(t)
	const hint = "Node and npm are needed (Debian packages nodejs and npm), and tests/run installs them there"
	dir := t.TempDir()
	copied(t, "typescript", dir)
	write(t, filepath.Join(dir, "openapi.json"), openapi.Document())
	write(t, filepath.Join(dir, "job.ts"), []byte("import type { components } from \"./api.js\";\n\nexport const job: components[\"schemas\"][\"Job\"] = "+string(job)+";\n"))
	run(t, dir, hint, "npm", "install", "--prefer-offline", "--no-audit", "--no-fund", "--loglevel=error")
	// members with a default may be left out of what is asked
	run(t, dir, hint, "npx", "--no-install", "openapi-typescript", "openapi.json", "--default-non-nullable=false", "-o", "api.ts")
	run(t, dir, hint, "npx", "--no-install", "tsc", "-p", ".")
	assert.Equal(t, wanted, asked(t, run(t, dir, hint, "node", "out/main.js", address)))
}
