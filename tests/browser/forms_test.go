package browser

import (
	"encoding/json"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// document is the job of the page as a tree.
func (p *page) document() map[string]any {
	p.t.Helper()
	var job map[string]any
	require.NoError(p.t, json.Unmarshal(p.job(), &job))
	return job
}

// put types into a field without waiting for what is seen of it.
func (p *page) put(selector, text string) {
	p.t.Helper()
	p.do(chromedp.WaitVisible(selector), chromedp.Focus(selector), chromedp.Evaluate[chromedp.Void](`document.activeElement.select()`), chromedp.SendKeys(selector, text))
}

// Somebody who needs primer for a panel answers four questions and stands
// before the list of what to buy.
func TestGuideFromAPanelToTheList(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-guide="panel"]`), chromedp.WaitVisible("dialog"))
	p.put("#guide-width_m", "50 in")
	p.put("#guide-height_m", "1")
	p.put("#guide-count", "3")
	p.do(chromedp.Click(`[data-guide="go"]`))
	p.until(`document.activeElement.id === "buy"`)
	assert.Equal(t, "3.81 m²", p.figure("Area"), "50 · 0.0254 m by 1 m, one side, three of them: identity")
	answer := p.estimate(p.job())
	require.NotEmpty(t, answer.Order)
	for _, line := range answer.Order {
		assert.Equal(t, packs(line), bought(p, line.Product), line.Product)
	}
	p.do(chromedp.Click("#replaced [data-undo]"))
	p.settled()
	assert.Contains(t, string(p.job()), "Primer for one access panel", "what stood there before comes back")
}

// A marking is added, drawn, sized and placed without a line of JSON.
func TestMarkingIsDrawnAndPlaced(t *testing.T) {
	p := open(t)
	p.do(chromedp.SetValue(`[aria-labelledby="markings-head"] .add select`, "disc"), chromedp.Click(`[data-focus="/markings+"]`))
	p.settled()
	p.fill("/markings/0/size_m", "20 in")
	p.until(`document.querySelector('[data-sketch="/markings/0"] img')?.naturalWidth > 0`)
	const place = `[name="/markings/0/place/"]`
	const choose = `(select => { select.value = "from two edges"; select.dispatchEvent(new Event("change")) })(document.querySelector('` + place + `'))`
	p.do(chromedp.Focus(`[data-card="/markings/0"] .more > summary`), chromedp.KeyEvent("\r"), chromedp.WaitVisible(place), chromedp.Evaluate[chromedp.Void](choose))
	p.until(`Boolean(document.querySelector('[name="/markings/0/place/offsets/from_a_m"]'))`)
	p.fill("/markings/0/place/offsets/from_a_m", "0.4")
	marking := p.document()["markings"].([]any)[0].(map[string]any)
	assert.Equal(t, "20 in", marking["size_m"])
	assert.Equal(t, "panel", marking["on"])
	assert.InDelta(t, 0.4, marking["place"].(map[string]any)["offsets"].(map[string]any)["from_a_m"], 0)

	p.do(chromedp.SetValue(`[aria-labelledby="steps-head"] .add select`, "mark"), chromedp.Click(`[data-focus="/steps+"]`))
	p.settled()
	steps := p.estimate(p.job()).Steps
	assert.InDelta(t, 3.14159265/4*0.508*0.508, steps[len(steps)-1].AreaM2, 1e-6, "disc of 20 in: identity")
}

// A region is named, measured and painted by a step of its own.
func TestRegionIsPainted(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-focus="/regions+"]`))
	p.fill("/regions/0/name", "orange corner")
	p.fill("/regions/0/area_m2", "0.25")
	job := p.document()
	region := job["regions"].([]any)[0].(map[string]any)
	assert.Equal(t, "orange corner", region["name"])
	assert.Equal(t, []any{"panel"}, region["of"])
	assert.Equal(t, "done", ask[string](p, `document.querySelector("#results").dataset.state`))
}

// A product of the catalogue gets the price of the shop; the sum follows.
func TestProductTakesThePriceOfTheShop(t *testing.T) {
	p := open(t)
	p.do(chromedp.SetValue(`[aria-labelledby="products-head"] .add select`, "epoxy-primer"), chromedp.Click(`[data-focus="/products+"]`))
	p.settled()
	p.put(`[name="/products/0/packs/0/price"]`, "71.50")
	p.settled()
	answer := p.estimate(p.job())
	for _, line := range answer.Order {
		if line.Product == "epoxy-primer" {
			assert.Equal(t, "71.50", line.Cost.String())
			assert.Equal(t, "71.50", ask[string](p, `document.querySelector('[data-product="epoxy-primer"] .cost').textContent`))
		}
	}
	p.do(chromedp.Click(`[data-card="/products/0"] [aria-label^="Remove Epoxy"]`))
	p.settled()
	assert.Equal(t, "64.00", ask[string](p, `document.querySelector('[data-product="epoxy-primer"] .cost').textContent`), "the catalogue's own price")
}

// A product of the job's own that is taken away while a step uses it: the step
// says so at its field, and keeps the name.
func TestDeletedProductStillUsed(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click("#paste"))
	p.paste(`{"name": "own", "currency": "USD", "components": [{"id": "hull", "shape": {"kind": "measured", "area_m2": 12}}],
		"products": [{"id": "own-wash", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 0.2, "packs": [{"pack_l": 5, "price": "9.00"}]}],
		"steps": [{"id": "clean", "operation": "wash", "on": ["hull"], "product": "own-wash"}]}`)
	p.settled()
	p.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-card="/products/0"]').open = true`), chromedp.Click(`[data-card="/products/0"] [aria-label$="from the job"]`))
	p.settled()
	assert.Contains(t, ask[string](p, `document.querySelector('[data-at="/steps/0/product"] > .fault').textContent`), "own-wash")
	assert.Contains(t, ask[string](p, `document.querySelector('[name="/steps/0/product"]').selectedOptions[0].text`), "own-wash")
}

// A number that nobody is sure of is typed as three, and becomes one again.
func TestNumberIsTypedAsARange(t *testing.T) {
	p := open(t)
	p.fill("/components/0/shape/width_m", "1.2 / 1.3 / 1.5")
	p.do(chromedp.Focus(`[name="/name"]`))
	p.until(`Boolean(document.querySelector('[name="/components/0/shape/width_m/high"]'))`)
	shape := p.document()["components"].([]any)[0].(map[string]any)["shape"].(map[string]any)
	assert.Equal(t, map[string]any{"low": 1.2, "likely": 1.3, "high": 1.5}, shape["width_m"])
	p.until(`Boolean(document.querySelector('[data-figure="P80"]'))`)
	p.do(chromedp.Click(`[data-at="/components/0/shape/width_m"] fieldset > button`))
	p.settled()
	assert.Equal(t, "1.3", ask[string](p, widthField+`.value`))
}

// Marks of feet and inches as a telephone types them are a unit.
func TestTypographicQuotes(t *testing.T) {
	p := open(t)
	p.fill("/components/0/shape/width_m", "4’ 2”")
	p.fill("/components/0/shape/height_m", "1")
	assert.Equal(t, "2.54 m²", p.figure("Area"), "50 in by 1 m, both sides: identity")
}

// Who works in US units reads limits in them, beside those of the wire.
func TestLimitsInFaultsAreShownInBothUnits(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[name="units"][value="us"]`))
	p.fill("/components/0/shape/width_m", "9000")
	assert.Contains(t, ask[string](p, `document.querySelector('[data-at="/components/0/shape/width_m"] > .fault').textContent`), "500 m (1640 ft)", "500 m over 0.3048 m: identity")
}

// After a primer the next press is white, and the keyboard alone moves a step.
func TestNextStepIsOfferedAndMovedByKey(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`.next button`))
	p.settled()
	steps := p.document()["steps"].([]any)
	last := steps[len(steps)-1].(map[string]any)
	assert.Equal(t, "coat", last["operation"])
	assert.Contains(t, last["product"], "white")
	from := len(steps) - 1
	summary := `[data-card="/steps/` + string(rune('0'+from)) + `"] > summary`
	p.do(chromedp.Focus(summary), chromedp.Evaluate[chromedp.Void](`document.activeElement.dispatchEvent(new KeyboardEvent("keydown", {key: "ArrowUp", altKey: true, bubbles: true, cancelable: true}))`))
	moved := p.document()["steps"].([]any)
	assert.Equal(t, last["id"], moved[from-1].(map[string]any)["id"])
}
