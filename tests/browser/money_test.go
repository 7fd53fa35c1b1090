package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A product without a price costs an unknown sum, not nothing, and every total
// says so.
func TestProductWithoutAPrice(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click("#paste"))
	p.paste(`{"name": "unpriced", "currency": "USD",
		"components": [{"id": "hull", "shape": {"kind": "measured", "area_m2": 12}}],
		"products": [{"id": "own-wash", "name": "own wash", "kind": "liquid", "use": "cleaner", "coverage_l_m2": 0.2, "packs": [{"pack_l": 5}]}],
		"steps": [{"id": "clean", "operation": "wash", "on": ["hull"], "product": "own-wash"},
			{"id": "again", "operation": "wash", "on": ["hull"], "product": "wipe-solvent"}]}`)
	p.settled()
	answer := p.estimate(p.job())
	require.Equal(t, []string{"own-wash"}, answer.Budget.Unpriced)

	assert.Equal(t, "no price", ask[string](p, `document.querySelector('[data-product="own-wash"] .cost').textContent`))
	assert.NotContains(t, ask[string](p, `document.querySelector('[data-product="wipe-solvent"] .cost').textContent`), "no price")
	for _, place := range []string{"#headline .total", "#headline .split", "#voice", "#glance", "#buy .sum"} {
		assert.Contains(t, ask[string](p, `document.querySelector("`+place+`").textContent`), "without 1 product that has no price", place)
	}
	assert.Equal(t, "no price", ask[string](p, `document.querySelector('[data-step="clean"] .materials .value:last-child').textContent`))

	cells := ask[[]string](p, `[...document.querySelectorAll("[aria-labelledby=steps-result-head] tbody tr:first-child td")].slice(-3).map(cell => cell.textContent)`)
	assert.Equal(t, []string{"no price", "0.00", "no price"}, cells, "hours without a rate cost nothing, the liquid an unknown sum")

	p.do(chromedp.Click(`[data-example="one-panel"]`), chromedp.WaitVisible("dialog"), chromedp.Click(`dialog [data-answer="replace"]`))
	p.settled()
	assert.NotContains(t, ask[string](p, `document.querySelector("#results").innerText`), "no price")
}

// Money for hours is called by its name, and adds up with the material.
func TestCostsOfStepsAreNamed(t *testing.T) {
	p := open(t)
	answer := p.estimate(p.job())
	table := `document.querySelector("[aria-labelledby=steps-result-head] table")`
	assert.Equal(t, []string{"Material cost USD", "Labour cost USD", "Cost USD"},
		ask[[]string](p, `[...`+table+`.querySelectorAll("thead th")].slice(-3).map(cell => cell.textContent)`))
	assert.Equal(t, []string{answer.Totals.StepsMaterialCost.String(), answer.Totals.StepsLabourCost.String(), answer.Totals.StepsCost.String()},
		ask[[]string](p, `[...`+table+`.querySelectorAll("tfoot td")].slice(-3).map(cell => cell.textContent.replaceAll(",", ""))`))
}
