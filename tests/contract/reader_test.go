package contract

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// browserAt opens an address in an empty browser of a phone's width.
func browserAt(t *testing.T, address string) context.Context {
	t.Helper()
	program, err := exec.LookPath("chromium")
	require.NoError(t, err, "no browser is installed: install the package chromium")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.DisableGPU, chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true), chromedp.ExecPath(program), chromedp.UserDataDir(t.TempDir()))
	allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	tab, end := chromedp.NewContext(allocator)
	t.Cleanup(end)
	require.NoError(t, chromedp.Do(tab)) // starts it; its life must not end with the first wait
	ctx, late := context.WithTimeout(tab, 30*time.Second)
	t.Cleanup(late)
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(360, 800), chromedp.Navigate(address), chromedp.WaitVisible("#parts")))
	return ctx
}

func in[T any](t *testing.T, ctx context.Context, expression string) T {
	t.Helper()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression))
	require.NoError(t, err, expression)
	return value
}

// The reader shows every path, fits a phone, and what it offers to take into a
// spreadsheet answers with the number that it shows.
func TestReader(t *testing.T) {
	server := httptest.NewServer(service(t))
	t.Cleanup(server.Close)
	ctx := browserAt(t, server.URL+"/docs")
	shown := in[[]string](t, ctx, `[...document.querySelectorAll("#routes .route h3 code")].map((code) => code.textContent)`)
	var described []string
	for path := range parsed(t).Paths {
		described = append(described, path)
	}
	assert.ElementsMatch(t, described, shown)
	assert.Equal(t, 0, in[int](t, ctx, `[...document.querySelectorAll("a[href^='#']")].filter((a) => !document.getElementById(a.hash.slice(1))).length`), "links that lead nowhere")

	in[chromedp.Void](t, ctx, `document.querySelectorAll("details").forEach((one) => { one.open = true; })`)
	require.NoError(t, chromedp.Do(ctx, chromedp.WaitVisible("#route-v1-calculations-voc form")))
	assert.LessOrEqual(t, in[int](t, ctx, `document.documentElement.scrollWidth`), 360, "it must not scroll sideways")

	const coating = `document.querySelector("#route-v1-calculations-coating form")`
	in[chromedp.Void](t, ctx, coating+`.requestSubmit()`)
	_, err := chromedp.Run(ctx, chromedp.Poll[bool](coating+`.querySelector("output").textContent.includes("paint_l")`))
	require.NoError(t, err)
	answer := in[string](t, ctx, coating+`.querySelector("output").textContent`)
	cell := in[string](t, ctx, coating+`.querySelectorAll("pre")[1].textContent`)
	address := strings.ReplaceAll(strings.TrimSuffix(strings.TrimPrefix(cell, `=WEBSERVICE("`), `")`), `"&"`, "")
	got, err := http.Get(address)
	require.NoError(t, err, cell)
	defer got.Body.Close()
	number, err := io.ReadAll(got.Body)
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, got.StatusCode)
	assert.Contains(t, answer, `"paint_l": `+string(number))
}
