package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

const widthField = `document.querySelector('[name="/components/0/shape/width_m"]')`

// A fault stands at its field and in the list, and goes when it is mended.
func TestFaultAppearsAtItsFieldAndGoes(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="one-panel"]`))
	p.settled()
	before := p.figure("Total")
	p.fill("/components/0/shape/width_m", "4 kg")

	assert.Equal(t, "true", ask[string](p, widthField+`.getAttribute("aria-invalid")`))
	described := ask[string](p, widthField+`.getAttribute("aria-describedby").split(" ").map(id => document.getElementById(id).textContent).join(" ")`)
	assert.Contains(t, described, "4 kg is a mass; a length is expected")
	assert.Contains(t, ask[string](p, `document.querySelector("#faults").innerText`), "1 thing to mend")
	assert.Equal(t, before, p.figure("Total"), "the figures from before stay")
	assert.True(t, ask[bool](p, `getComputedStyle(document.querySelector(".stale")).display !== "none"`), "and are said to be from before")

	p.do(chromedp.Click("#faults button"))
	assert.True(t, ask[bool](p, `document.activeElement === `+widthField), "the list leads to the field")

	p.fill("/components/0/shape/width_m", "4 ft")
	assert.False(t, ask[bool](p, widthField+`.hasAttribute("aria-invalid")`))
	assert.True(t, ask[bool](p, `document.querySelector("#faults").hidden`))
	assert.NotEqual(t, before, p.figure("Total"))
}

// A fault in what the form shows closed is brought to light.
func TestFaultInAStepIsMarkedOnItsClosedLine(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click("#paste"))
	p.paste(`{"name":"x","currency":"USD","components":[{"id":"a","shape":{"kind":"measured","area_m2":3}}],
		"steps":[{"id":"clean","operation":"wash","on":["a"],"product":"no-such"}]}`)
	p.settled()
	assert.Equal(t, "to mend", ask[string](p, `document.querySelector('[data-card="/steps/0"] .faulty').textContent`))
	assert.Contains(t, ask[string](p, `document.querySelector('[data-at="/steps/0/product"] > .fault').textContent`), "no-such")
}

// Text that is no job stays where it is typed, and says where it breaks off.
func TestTextThatIsNoJobIsKept(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click("#paste"))
	p.paste("{\n \"name\": \"half\",\n }")
	p.settled()
	assert.Contains(t, ask[string](p, `document.querySelector("#faults").innerText`), "line 2, column 16", "the comma before the brace")
	assert.True(t, ask[bool](p, `document.querySelector("#form").inert`), "the form does not write over it")
	p.do(chromedp.Reload(), chromedp.WaitVisible("#faults"))
	assert.Equal(t, "{\n \"name\": \"half\",\n }", string(p.job()))
}

// When the server goes away the page says so, and what was typed waits.
func TestServerAway(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="one-panel"]`))
	p.settled()
	p.server.Close()
	p.fill("/components/0/shape/width_m", "5 ft")
	p.do(chromedp.WaitVisible("#away"))
	assert.Contains(t, ask[string](p, `document.querySelector("#away").innerText`), "does not answer")
	assert.Contains(t, string(p.job()), `"5 ft"`)
	assert.Contains(t, ask[string](p, `localStorage.getItem("filmbuild.job")`), "5 ft")
}

// A reload, or a crash, keeps the changed job and the estimate of it.
func TestReloadKeepsTheChangedJob(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="one-panel"]`))
	p.settled()
	p.fill("/components/0/shape/width_m", "4 ft 2 in")
	area := p.figure("Area")
	p.do(chromedp.Reload(), chromedp.WaitVisible("#headline dd"))
	assert.Equal(t, "4 ft 2 in", ask[string](p, widthField+`.value`))
	assert.Equal(t, area, p.figure("Area"))
}
