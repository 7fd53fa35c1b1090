package browser

import (
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
)

type fetched struct {
	Name     string  `json:"name"`
	Transfer float64 `json:"transfer"` // bytes on the wire, heads included
}

// Limits of a first visit, as this project sets them.
const (
	mostBytes = 300_000 // of the page itself: document, styles, modules, mark
	firstView = 1000.0  // ms until the first estimate shows
)

// A first visit is light and quick, and asks nobody but its own server.
func TestFirstVisit(t *testing.T) {
	p := open(t)
	things := ask[[]fetched](p, `performance.getEntriesByType("navigation").concat(performance.getEntriesByType("resource")).map(thing => ({name: thing.name, transfer: thing.transferSize}))`)
	home, err := url.Parse(p.server.URL)
	require.NoError(t, err)
	require.Greater(t, len(things), 10, "the modules and the catalogue are there")
	own, total := 0.0, 0.0
	for _, thing := range things {
		place, err := url.Parse(thing.Name)
		require.NoError(t, err)
		assert.Equal(t, home.Host, place.Host, "no other host is asked")
		total += thing.Transfer
		if place.Path == "/" || strings.HasPrefix(place.Path, "/web/") {
			own += thing.Transfer
		}
	}
	t.Logf("%d requests; the page is %.0f bytes, with catalogue and estimate %.0f", len(things), own, total)
	assert.Less(t, own, float64(mostBytes))
	shown := ask[float64](p, `performance.getEntriesByName("first estimate shown")[0].startTime`)
	t.Logf("the first estimate shows after %.0f ms", shown)
	assert.Less(t, shown, firstView)
}

// Nothing goes wrong unseen: the console stays silent with every example, and
// no example is wider than a telephone.
func TestExamplesAreQuietAndNarrow(t *testing.T) {
	p := open(t)
	console := chromedp.Console(p.ctx)
	messages := make(chan string, 100)
	go func() {
		for message, err := range console {
			if err != nil {
				return
			}
			messages <- message.Text
		}
	}()
	p.do(chromedp.Reload(), chromedp.WaitVisible("#headline dd"), chromedp.EmulateViewport(360, 760))
	all, err := example.All()
	require.NoError(t, err)
	for _, e := range all {
		p.do(chromedp.Click(`[data-example="` + e.ID + `"]`))
		p.settled()
		p.do(chromedp.Evaluate[chromedp.Void](`for (const details of document.querySelectorAll("details")) details.open = true`), chromedp.Sleep(50*time.Millisecond))
		assert.LessOrEqual(t, ask[int](p, `document.documentElement.scrollWidth`), 360, e.ID)
		assert.Equal(t, "done", ask[string](p, `document.querySelector("#results").dataset.state`), e.ID)
	}
	select {
	case message := <-messages:
		assert.Fail(t, "the console said: "+message)
	default:
	}
}
