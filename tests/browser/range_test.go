package browser

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
)

// A project manager asks how sure the total is, and reads what the API says.
func TestManagerAsksHowSure(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="lock-gate"]`))
	p.settled()
	gate, err := example.Find("lock-gate")
	require.NoError(t, err)
	p.do(chromedp.Click(`[data-range="start"]`), chromedp.WaitVisible(`[data-figure="P80"]`))
	p.until(`document.querySelector("[data-range-shown] table caption").textContent.includes("10,000 trials")`)

	var answer estimate.Estimate
	require.NoError(t, json.Unmarshal(p.post(gate.Job, "?trials=10000", "application/json"), &answer))
	total := answer.Range.Total
	cells := ask[[]string](p, `[...document.querySelectorAll("[data-range-shown] tbody tr:first-child td")].slice(0, 4).map(cell => cell.textContent.replaceAll(",", ""))`)
	assert.Equal(t, []string{total.P10.String(), total.P50.String(), total.P80.String(), total.P90.String()}, cells)
	shown := ask[string](p, `document.querySelector("#range").innerText.toLowerCase()`)
	for _, driver := range answer.Range.Drivers {
		assert.Contains(t, shown, strings.ToLower(driver.Name))
	}
	for _, up := range answer.Class.Up {
		assert.Contains(t, shown, strings.ToLower(up))
	}
	assert.Equal(t, len(answer.Range.Histogram), ask[int](p, `document.querySelectorAll("#range .bin").length`))

	p.fill("/contingency_percent", "20")
	assert.True(t, ask[bool](p, `!document.querySelector("[data-range-stale]").hidden`), "a range of the job before is said to be one")
}

// Trials that take long can be stopped; the estimate stands.
func TestTrialsAreStopped(t *testing.T) {
	p := open(t)
	total := p.figure("Total")
	p.do(chromedp.Evaluate[chromedp.Void](`
		const fetched = window.fetch
		window.fetch = (path, options) => !path.includes("trials=") ? fetched(path, options) : new Promise((_, fail) =>
			options.signal.addEventListener("abort", () => fail(options.signal.reason)))`))
	p.do(chromedp.Click(`[data-range="start"]`), chromedp.WaitVisible("#range progress"), chromedp.Click(`[data-range="stop"]`))
	p.until(`document.querySelector("#report").textContent.includes("stopped")`)
	assert.True(t, ask[bool](p, `document.querySelector("#range .running").hidden && !document.querySelector("[data-range=start]").disabled`))
	assert.Equal(t, total, p.figure("Total"))
	assert.True(t, ask[bool](p, `document.activeElement.dataset.range === "start"`), "the focus is not lost")
}
