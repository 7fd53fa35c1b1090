package browser

import (
	"bytes"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A small job prints on few pages, as this project sets it, and what to wear is
// among what is printed.
func TestPrintIsCompact(t *testing.T) {
	p := open(t)
	paper, err := chromedp.Run(p.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	pages := bytes.Count(paper, []byte("/Type /Page\n"))
	t.Logf("one panel prints on %d pages", pages)
	assert.Positive(t, pages)
	assert.LessOrEqual(t, pages, 4)

	_, err = chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	require.NoError(t, err)
	assert.True(t, ask[bool](p, `document.querySelector(".wear").checkVisibility()`))
	assert.False(t, ask[bool](p, `document.querySelector("#job").checkVisibility()`))
}
