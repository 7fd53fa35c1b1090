package browser

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
)

// A newcomer sees the smallest example: two sizes, not a table of stations.
func TestFirstVisitOpensTheSmallestExample(t *testing.T) {
	p := open(t)
	panel, err := example.Find("one-panel")
	require.NoError(t, err)
	assert.JSONEq(t, string(panel.Job), string(p.job()))
	assert.True(t, ask[bool](p, `document.querySelector("#replaced").innerText === ""`), "nothing was replaced yet")
}

// An example that nobody touched goes without a question; whatever went can be
// brought back, and so can what took its place.
func TestUndoBringsTheFormerJobBack(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="lock-gate"]`))
	p.settled()
	assert.False(t, ask[bool](p, `Boolean(document.querySelector("dialog"))`))
	gate := string(p.job())
	total := p.figure("Total")

	p.do(chromedp.Click("#replaced [data-undo]"))
	p.settled()
	assert.NotEqual(t, total, p.figure("Total"))
	assert.Contains(t, string(p.job()), "Primer for one access panel")
	p.do(chromedp.Click("#replaced [data-undo]"))
	p.settled()
	assert.Equal(t, gate, string(p.job()))
	assert.Equal(t, total, p.figure("Total"))

	p.do(chromedp.Click("#paste"))
	p.paste(`{"name": "pasted", "currency": "USD"}`)
	p.settled()
	assert.Contains(t, ask[string](p, `document.querySelector("#replaced").innerText`), "pasted")
	p.do(chromedp.Click("#replaced [data-undo]"))
	p.settled()
	assert.Equal(t, gate, string(p.job()), "a text pasted over the job gives it back too")
}

// What came from a file or was pasted is somebody's own, though nothing in it
// was changed here: it is not replaced without a question.
func TestOwnJobIsNotReplacedUnasked(t *testing.T) {
	own := `{"name": "our hull", "currency": "USD", "components": [{"id": "hull", "shape": {"kind": "measured", "area_m2": 12}}]}`
	file := filepath.Join(t.TempDir(), "hull.json")
	require.NoError(t, os.WriteFile(file, []byte(own), 0o600))
	ways := map[string]func(p *page){
		"from a file": func(p *page) { p.do(chromedp.SetUploadFiles("#open-file", []string{file})) },
		"pasted":      func(p *page) { p.do(chromedp.Click("#paste")); p.paste(own) },
	}
	for way, bring := range ways {
		t.Run(way, func(t *testing.T) {
			p := open(t)
			bring(p)
			p.until(`document.querySelector("#job-name").textContent === "our hull"`)
			p.do(chromedp.Reload(), chromedp.WaitVisible("#headline dd"))
			p.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("#start").open = true`))
			p.do(chromedp.Click(`[data-example="lock-gate"]`), chromedp.WaitVisible("dialog"))
			assert.Contains(t, ask[string](p, `document.querySelector("dialog").innerText`), "our hull")
			p.do(chromedp.Click(`dialog [data-answer="keep"]`))
			p.settled()
			assert.JSONEq(t, own, string(p.job()))
		})
	}
}

// From nothing to an estimate, with the two buttons.
func TestEmptyJobGrows(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="empty-job"]`))
	p.settled()
	assert.JSONEq(t, `{"name": "New job", "currency": "USD"}`, string(p.job()))
	assert.Contains(t, ask[string](p, `document.querySelector("#results").innerText`), "Nothing to work out yet")
	assert.True(t, ask[bool](p, `document.querySelector("#faults").hidden && document.querySelector("#headline").innerText === ""`), "neither faults nor the figures of the job before")

	p.do(chromedp.Click(`[data-focus="/components+"]`), chromedp.Click(`[data-focus="/steps+"]`))
	p.settled()
	assert.Equal(t, "done", ask[string](p, `document.querySelector("#results").dataset.state`))
	answer := p.estimate(p.job())
	require.Len(t, answer.Areas, 1)
	require.Len(t, answer.Steps, 1)
	assert.Positive(t, answer.Steps[0].Litres)
	assert.False(t, ask[bool](p, `document.querySelector("#results").innerText.includes("Nothing to work out")`))
}
