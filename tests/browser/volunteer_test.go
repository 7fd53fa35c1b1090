package browser

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

// A volunteer with a tape measure gets from the example to the kits for their
// own panel, without a line of JSON.
func TestVolunteerOrdersPrimerForOnePanel(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="one-panel"]`))
	p.settled()
	p.fill("/components/0/shape/width_m", "4 ft 2 in")
	p.fill("/components/0/shape/height_m", "3 ft 1 in")

	// 50 in by 37 in, both sides, an inch being 0.0254 m: identity
	assert.Equal(t, fmt.Sprintf("%.3f m²", 2*50*37*0.0254*0.0254), p.figure("Area"))

	var job map[string]any
	require.NoError(t, json.Unmarshal(p.job(), &job))
	shape := job["components"].([]any)[0].(map[string]any)["shape"].(map[string]any)
	assert.Equal(t, "4 ft 2 in", shape["width_m"], "the size stays as it was typed")

	answer := p.estimate(p.job())
	require.NotEmpty(t, answer.Order)
	for _, line := range answer.Order {
		assert.Equal(t, packs(line), bought(p, line.Product), line.Product)
	}
	assert.Contains(t, ask[string](p, `document.querySelector(".mixes").innerText`), "hardener", "how to mix stands beside it")
	for _, step := range answer.Steps {
		require.NotEmpty(t, step.Wear, step.ID)
		for _, thing := range step.Wear {
			assert.True(t, ask[bool](p, `document.querySelector('[data-wear="`+step.ID+`"]').innerText.toLowerCase().includes(`+quoted(strings.ToLower(thing))+`)`), step.ID+": "+thing)
		}
	}
	assert.Equal(t, []string{"What to wear", "How to mix", "Before you start, and while you work"},
		ask[[]string](p, `[...document.querySelectorAll("#results-body > section > h3")].map(head => head.innerText).filter(head => /wear|mix|Before/.test(head))`),
		"what to wear is read first")
	for _, caution := range answer.Cautions {
		assert.True(t, ask[bool](p, `document.querySelector("#cautions").innerText.includes(`+quoted(caution.Text)+`)`), caution.Code)
	}
}

// packs writes the packs of a line as a shop would read them.
func packs(line estimate.OrderLine) []string {
	var texts []string
	for _, pack := range line.Packs {
		size := strconv.FormatFloat(pack.Pack, 'f', -1, 64) + " " + line.Unit
		switch {
		case line.Unit == "pcs":
			size = "pack of " + strconv.FormatFloat(pack.Pack, 'f', -1, 64)
		case line.Unit == "L" && pack.Pack < 0.995:
			size = strconv.FormatFloat(pack.Pack*1000, 'f', -1, 64) + " mL"
		}
		texts = append(texts, fmt.Sprintf("%d × %s", pack.Count, size))
	}
	return texts
}

func bought(p *page, product string) []string {
	return ask[[]string](p, `[...document.querySelectorAll('[data-product="`+product+`"] .packs > div')].map(pack => pack.textContent)`)
}

// In US units a bare number is taken in the unit beside the field.
func TestUnitsSwitch(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="one-panel"]`), chromedp.Click(`[name="units"][value="us"]`))
	p.settled()
	assert.Equal(t, "20.67 ft²", p.figure("Area"), "1.92 m² over 0.3048² m² to the square foot: identity")
	assert.Equal(t, "3.937", ask[string](p, `document.querySelector('[name="/components/0/shape/width_m"]').value`), "1.2 m over 0.3048 m: identity")
	assert.Contains(t, ask[string](p, `document.querySelector('[data-at="/components/0/shape/width_m"] .hint').innerText`), "0.0394 in to 1640 ft", "1 mm over 25.4 mm and 500 m over 0.3048 m: identity")
	assert.Equal(t, []string{"1 × 1 qt"}, bought(p, "epoxy-primer"), "0.946 L over the quart of 0.946352946 L: identity")
	assert.Contains(t, ask[string](p, `document.querySelector(".mixes").innerText`), "at 70 °F", "21 °C · 9/5 + 32: identity")

	p.fill("/components/0/shape/width_m", "4 1/2")
	p.fill("/components/0/shape/height_m", "2")
	assert.Equal(t, "18 ft²", p.figure("Area"), "4½ ft by 2 ft, both sides: identity")
	assert.Contains(t, string(p.job()), `"height_m": "2 ft"`)

	p.do(chromedp.Reload(), chromedp.WaitVisible("#headline dd"))
	assert.Equal(t, "18 ft²", p.figure("Area"), "the units stay chosen")
}
