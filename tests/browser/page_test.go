// Package browser drives the page in a real browser as its users would.
package browser

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/products"
)

// patience is how long a wait may take before the test fails.
const patience = 15 * time.Second

// page is one tab of an empty browser at the page of a real server.
type page struct {
	t      *testing.T
	ctx    context.Context
	server *httptest.Server
}

// open starts a server and a browser, and waits until the first estimate shows.
func open(t *testing.T) *page {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	server := httptest.NewServer(api.Handler(catalogue))
	t.Cleanup(server.Close)
	p := &page{t: t, ctx: tab(t), server: server}
	p.do(chromedp.EmulateViewport(1400, 1000), chromedp.Navigate(server.URL), chromedp.WaitVisible("#headline dd"))
	p.settled()
	return p
}

// tab starts an empty browser that talks to nobody on its own.
func tab(t *testing.T) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.ExecPath(program(t)), chromedp.UserDataDir(t.TempDir()))
	allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, end := chromedp.NewContext(allocator)
	t.Cleanup(end)
	require.NoError(t, chromedp.Do(ctx), "the browser must start")
	return ctx
}

// program finds the browser.
func program(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	require.FailNow(t, "no browser is installed: install the package chromium, so that the program chromium is on the PATH")
	return ""
}

func (p *page) do(actions ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, stop := context.WithTimeout(p.ctx, patience)
	defer stop()
	require.NoError(p.t, chromedp.Do(ctx, actions...))
}

// ask evaluates an expression in the page.
func ask[T any](p *page, expression string) T {
	p.t.Helper()
	value, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression))
	require.NoError(p.t, err, expression)
	return value
}

// until waits for an expression to become true.
func (p *page) until(expression string) {
	p.t.Helper()
	_, err := chromedp.Run(p.ctx, chromedp.Poll[bool](expression, chromedp.WithPollingTimeout(patience)))
	require.NoError(p.t, err, "never came true: %s", expression)
}

// settled waits until the server has answered for the job as it stands.
func (p *page) settled() {
	p.t.Helper()
	p.do(chromedp.Sleep(400 * time.Millisecond)) // longer than the pause after the last key
	p.until(`!document.querySelector("#results").hasAttribute("aria-busy")`)
}

// fill types a text into the field of a JSON pointer in place of what it holds.
func (p *page) fill(pointer, text string) {
	p.t.Helper()
	field := `[name="` + pointer + `"]`
	p.do(chromedp.WaitVisible(field), chromedp.Focus(field), chromedp.Evaluate[chromedp.Void](`document.activeElement.select()`), chromedp.SendKeys(field, text))
	p.settled()
}

// figure reads one of the four numbers of the headline.
func (p *page) figure(what string) string {
	p.t.Helper()
	return ask[string](p, `document.querySelector('[data-figure="`+what+`"]').textContent`)
}

// job is the job that the page holds, as it would be sent.
func (p *page) job() []byte {
	p.t.Helper()
	return []byte(ask[string](p, `document.querySelector("#job-text").value`))
}

// post sends a job to the server as any other client would.
func (p *page) post(job []byte, query, accept string) []byte {
	p.t.Helper()
	request, err := http.NewRequest(http.MethodPost, p.server.URL+"/v1/estimates"+query, bytes.NewReader(job))
	require.NoError(p.t, err)
	request.Header.Set("Content-Type", "application/json")
	request.Header.Set("Accept", accept)
	answer, err := http.DefaultClient.Do(request)
	require.NoError(p.t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(p.t, err)
	require.Equal(p.t, http.StatusOK, answer.StatusCode, string(body))
	return body
}

// estimate is the server's own answer to a job.
func (p *page) estimate(job []byte) estimate.Estimate {
	p.t.Helper()
	var e estimate.Estimate
	require.NoError(p.t, json.Unmarshal(p.post(job, "", "application/json"), &e))
	return e
}

// quoted writes a text as JavaScript would.
func quoted(text string) string { return strconv.Quote(text) }
