package browser

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

type violation struct {
	ID    string `json:"id"`
	Help  string `json:"help"`
	Nodes []struct {
		HTML    string `json:"html"`
		Summary string `json:"failureSummary"`
	} `json:"nodes"`
}

// No rule of axe-core 4.14.1 (WCAG 2.0 to 2.2, levels A and AA, and its best
// practices) is broken: the page with all it has opened, a job with faults, and
// the guided start; wide and 360 px, light and dark.
func TestNoViolationOfAccessibility(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-guide="panel"]`), chromedp.WaitVisible("dialog"))
	p.inEveryLook("guided start")
	p.do(chromedp.Click(`[data-guide="back"]`))
	p.fill("/components/0/count", "-2")
	p.inEveryLook("a fault")
	p.fill("/components/0/count", "1")
	p.do(chromedp.Click(`[data-example="jet-trainer"]`), chromedp.WaitVisible("dialog"), chromedp.Click(`[data-answer="replace"]`))
	p.settled()
	p.do(chromedp.Click(`[data-range="start"]`), chromedp.WaitVisible(`[data-figure="P80"]`))
	p.do(chromedp.Evaluate[chromedp.Void](everyLineOpen), chromedp.Sleep(time.Second))
	p.inEveryLook("jet trainer, all open")
}

const everyLineOpen = `for (const details of document.querySelectorAll("details")) details.open = true`

// inEveryLook runs the checker in both schemes and both widths.
func (p *page) inEveryLook(what string) {
	p.t.Helper()
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range []int64{1400, 360} {
			p.do(chromedp.EmulateViewport(width, 1000))
			_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
			require.NoError(p.t, err)
			checked, violations := p.axe()
			assert.Greater(p.t, checked, 15, "rules that applied and passed")
			for _, found := range violations {
				assert.Fail(p.t, what+", "+scheme+": "+found.ID, "%d px: %s, %d times: %s %s", width, found.Help, len(found.Nodes), found.Nodes[0].HTML, found.Nodes[0].Summary)
			}
		}
	}
	p.do(chromedp.EmulateViewport(1400, 1000))
}

// axe runs the checker and returns how many rules passed and what broke one.
func (p *page) axe() (int, []violation) {
	p.t.Helper()
	if !ask[bool](p, `"axe" in window`) {
		script, err := os.ReadFile(filepath.Join(axeFolder(p.t), "axe.min.js"))
		require.NoError(p.t, err, "run tests/browser/install.sh, which fetches axe-core")
		p.do(chromedp.Evaluate[chromedp.Void](string(script)))
	}
	answer, err := chromedp.Run(p.ctx, chromedp.Evaluate[string](`axe.run(document, {resultTypes: ["violations"]}).then(found => JSON.stringify({passed: found.passes.length, violations: found.violations}))`,
		func(params *runtime.EvaluateParams) { params.AwaitPromise = new(true) }))
	require.NoError(p.t, err)
	var found struct {
		Passed     int         `json:"passed"`
		Violations []violation `json:"violations"`
	}
	require.NoError(p.t, json.Unmarshal([]byte(answer), &found))
	return found.Passed, found.Violations
}

// axeFolder is where tests/browser/install.sh puts the checker.
func axeFolder(t *testing.T) string {
	t.Helper()
	if folder := os.Getenv("FILMBUILD_AXE_DATA"); folder != "" {
		return folder
	}
	cache, err := os.UserCacheDir()
	require.NoError(t, err)
	return filepath.Join(cache, "filmbuild", "axe-core-4.14.1")
}
