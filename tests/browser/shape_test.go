package browser

import (
	"encoding/json"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const firstHole = "/components/0/shape/holes/0"

// holes are those of the first part of the job.
func (p *page) holes() []map[string]any {
	p.t.Helper()
	var job struct {
		Components []struct {
			Shape struct {
				Holes []map[string]any `json:"holes"`
			} `json:"shape"`
		} `json:"components"`
	}
	require.NoError(p.t, json.Unmarshal(p.job(), &job))
	return job.Components[0].Shape.Holes
}

// A hole is added in the open, with all of its fields in sight on every screen.
func TestHoleOfAPanel(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-focus="/components/0/shape/holes+"]`))
	p.fill(firstHole+"/diameter_m", "0.2")
	assert.Equal(t, []map[string]any{{"diameter_m": 0.2}}, p.holes(), "its place may be left open")

	for _, width := range []int64{1280, 390} {
		p.do(chromedp.EmulateViewport(width, 900))
		right := ask[[]float64](p, `[...document.querySelectorAll('[data-at="`+firstHole+`"] :is(input, select, button)')].map(field => field.getBoundingClientRect().right)`)
		require.Len(t, right, 5, "form, diameter, two distances, remove")
		for _, edge := range right {
			assert.LessOrEqual(t, edge, ask[float64](p, `document.querySelector('[data-card="/components/0"]').getBoundingClientRect().right`), width)
		}
	}

	p.fill(firstHole+"/x_m", "0.6")
	p.fill(firstHole+"/y_m", "0.4")
	assert.Equal(t, "1.857 m²", p.figure("Area"), "both sides of 1.2 m by 0.8 m less two discs of 0.2 m across: identity")

	p.do(chromedp.Evaluate[chromedp.Void](`{
		const form = document.querySelector('[name="` + firstHole + `/"]');
		form.selectedIndex = 1;
		form.dispatchEvent(new Event("change"));
	}`))
	p.fill(firstHole+"/width_m", "0.3")
	p.fill(firstHole+"/height_m", "0.2")
	assert.Equal(t, []map[string]any{{"width_m": 0.3, "height_m": 0.2, "x_m": 0.6, "y_m": 0.4}}, p.holes(), "a hole of another form stays where it is")
	assert.Equal(t, "1.8 m²", p.figure("Area"), "2 · (1.2 · 0.8 − 0.3 · 0.2) m²: identity")

	p.do(chromedp.Click(`[aria-label="Remove hole 1"]`))
	p.settled()
	assert.Equal(t, "1.92 m²", p.figure("Area"))
}

// A step offers the faces that the shape has at present, and no others.
func TestOnlyFacesThatThereAre(t *testing.T) {
	p := open(t)
	offered := `[...document.querySelectorAll('[data-card="/steps/0"] .more .ticks label')].map(label => label.textContent)`
	p.until(offered + `.length > 0`)
	assert.Equal(t, []string{"access panel, off the machine: front", "access panel, off the machine: back"}, ask[[]string](p, offered))

	p.do(chromedp.Evaluate[chromedp.Void](`[...document.querySelectorAll('[data-card="/components/0"] .more')].forEach(more => { more.open = true; })`))
	p.fill("/components/0/shape/thickness_mm", "3")
	assert.Equal(t, []string{"access panel, off the machine: front", "access panel, off the machine: back", "access panel, off the machine: edges"}, ask[[]string](p, offered))
	assert.Equal(t, "/components/0/shape/thickness_mm", ask[string](p, `document.activeElement.name`), "who types is not disturbed")
}

// The part is drawn to scale beside its sizes, anew when they change; a size at
// fault takes the drawing away.
func TestDrawingOfThePart(t *testing.T) {
	p := open(t)
	shown := `(() => { const figure = document.querySelector('[data-sketch="/components/0/shape"]'); const picture = figure.querySelector("img"); return !figure.hidden && picture.complete && picture.naturalWidth > 0 && picture.src; })()`
	p.until(`Boolean(` + shown + `)`)
	first := ask[string](p, shown)
	assert.Contains(t, first, "blob:")
	assert.Contains(t, ask[string](p, `document.querySelector("[data-sketch] img").alt`), "access panel, off the machine")

	p.fill("/components/0/shape/width_m", "2")
	p.until(`Boolean(` + shown + `) && ` + shown + ` !== ` + quoted(first))
	p.fill("/components/0/shape/width_m", "0")
	p.until(`document.querySelector("[data-sketch]").hidden`)
	p.fill("/components/0/shape/width_m", "2")
	p.until(`Boolean(` + shown + `)`)

	p.do(chromedp.Click(`[name="units"][value="us"]`))
	p.until(`Boolean(` + shown + `)`)
	assert.True(t, ask[bool](p, `performance.getEntriesByType("resource").some(thing => thing.name.endsWith("/v1/calculations/area?units=us"))`), "its dimensions are in the units chosen")
}
