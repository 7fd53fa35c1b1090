package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// What was changed can be taken back and done again, also after a reload.
func TestUndoAndRedoOutliveAReload(t *testing.T) {
	p := open(t)
	first := string(p.job())
	p.fill("/components/0/shape/width_m", "2")
	second := string(p.job())
	p.do(chromedp.Click(`[data-focus="/steps+"]`))
	p.settled()
	third := string(p.job())

	p.do(chromedp.Reload(), chromedp.WaitVisible("#headline dd"))
	p.do(chromedp.Click("#undo"))
	p.settled()
	assert.Equal(t, second, string(p.job()))
	p.do(chromedp.Click("#undo"))
	p.settled()
	assert.Equal(t, first, string(p.job()))
	assert.Equal(t, "1.92 m²", p.figure("Area"), "the estimate follows")
	p.do(chromedp.Click("#redo"), chromedp.Click("#redo"))
	p.settled()
	assert.Equal(t, third, string(p.job()))
	assert.True(t, ask[bool](p, `document.querySelector("#redo").disabled`))
}

// What another window keeps is not overwritten, and this one's job not lost.
// The other window is a frame: what it stores is told to the page like that of
// a window.
func TestAnotherWindowIsNotOverwritten(t *testing.T) {
	p := open(t)
	p.fill("/components/0/shape/width_m", "2")
	p.do(chromedp.Evaluate[chromedp.Void](`
		const frame = document.body.appendChild(document.createElement("iframe"))
		const held = JSON.parse(localStorage.getItem("filmbuild.job"))
		held.document.name = "of the other window"
		held.text = JSON.stringify(held.document, null, 2)
		held.stamp = "other"
		frame.contentWindow.localStorage.setItem("filmbuild.job", JSON.stringify(held))`))
	p.do(chromedp.WaitVisible("#windows"))
	p.fill("/components/0/shape/height_m", "1.5")
	mine := string(p.job())
	const shared = `JSON.parse(localStorage.getItem("filmbuild.job")).document.name`
	assert.Equal(t, "of the other window", ask[string](p, shared))

	p.do(chromedp.Reload(), chromedp.WaitVisible("#windows"))
	assert.Equal(t, mine, string(p.job()), "a reload loses nothing")
	p.do(chromedp.Click(`[data-window="theirs"]`))
	p.settled()
	assert.Contains(t, string(p.job()), "of the other window")
	p.do(chromedp.Click("#undo"))
	p.settled()
	assert.Equal(t, mine, string(p.job()), "what was given up comes back")
	assert.Equal(t, "Primer for one access panel", ask[string](p, shared))
}
