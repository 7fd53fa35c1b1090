package browser

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"filmbuild/estimate/example"
)

// A project manager pastes a job, reads cost, order and cautions, and takes
// files away that say what the API says.
func TestManagerPastesAJobAndSavesTheTables(t *testing.T) {
	p := open(t)
	gate, err := example.Find("lock-gate")
	require.NoError(t, err)
	p.do(chromedp.Click("#paste"))
	p.paste(string(gate.Job))
	p.settled()

	answer := p.estimate(gate.Job)
	assert.Equal(t, answer.Currency, strings.Fields(p.figure("Total"))[1])
	assert.Equal(t, answer.Budget.Total.String(), strings.ReplaceAll(strings.Fields(p.figure("Total"))[0], ",", ""))
	for _, line := range answer.Order {
		assert.True(t, ask[bool](p, `document.querySelector("#buy").innerText.includes(`+quoted(line.Name)+`)`), line.Name)
	}
	assert.Equal(t, len(answer.Steps), ask[int](p, `document.querySelectorAll("[data-step]").length`))
	assert.Equal(t, "skin plates", ask[string](p, `document.querySelector('[data-card="/components/0"] .title').textContent`), "the form shows the pasted job")

	folder := p.downloads()
	p.do(chromedp.Click("#tables > summary"), chromedp.Click(`[data-save="estimate"]`))
	assert.JSONEq(t, string(p.post(gate.Job, "", "application/json")), string(saved(t, folder, ".estimate.json")))
	p.do(chromedp.Click(`[data-save="job"]`))
	assert.JSONEq(t, string(gate.Job), string(saved(t, folder, ".job.json")))
	for _, table := range []string{"steps", "order", "areas", "budget", "buyers", "range"} {
		p.do(chromedp.Click(`[data-save="` + table + `"]`))
		assert.Equal(t, string(p.post(gate.Job, "?table="+table, "text/csv")), string(saved(t, folder, "."+table+".csv")), table)
	}
}

// What is carried to the meeting is what the API gives, dated by the clock of
// the browser.
func TestManagerTakesTheWorkbookAndTheSheetsOfMarkings(t *testing.T) {
	p := open(t)
	p.do(chromedp.Click(`[data-example="jet-trainer"]`))
	p.settled()
	folder := p.downloads()
	p.do(chromedp.Click(`[data-save="workbook"]`))
	book, err := excelize.OpenReader(bytes.NewReader(saved(t, folder, ".xlsx")))
	require.NoError(t, err)
	assert.Contains(t, book.GetSheetList(), "Inputs")
	day := ask[string](p, `new Intl.DateTimeFormat("sv").format(new Date())`)
	for _, pages := range []string{"report", "job-sheets"} {
		p.do(chromedp.Click(`[data-save="` + pages + `"]`))
		file := saved(t, folder, "."+pages+".pdf")
		assert.Equal(t, p.post(p.job(), "?units=si&paper=a4&pages="+pages+"&date="+day, "application/pdf"), file, "%s of %d bytes", pages, len(file))
	}
	p.do(chromedp.Click("#tables > summary"))
	marking := ask[string](p, `document.querySelector("[data-sheet]").dataset.sheet`)
	p.do(chromedp.Click("[data-sheet]"))
	drawing := string(saved(t, folder, "."+marking+".svg"))
	assert.Contains(t, drawing, "<svg")
	assert.Contains(t, drawing, day, "the date of the browser stands on the sheet")
}

// A job file is opened; a changed job is not replaced without asking.
func TestManagerOpensAFile(t *testing.T) {
	p := open(t)
	panel, err := example.Find("one-panel")
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "panel.json")
	require.NoError(t, os.WriteFile(file, panel.Job, 0o600))
	p.do(chromedp.SetUploadFiles("#open-file", []string{file}))
	p.until(`document.querySelector("#job-name").textContent === "Primer for one access panel"`)

	p.fill("/components/0/shape/width_m", "2")
	p.do(chromedp.Click(`[data-example="lock-gate"]`), chromedp.WaitVisible("dialog"), chromedp.Click(`dialog [data-answer="keep"]`))
	p.settled()
	var kept struct {
		Components []struct {
			Shape map[string]any `json:"shape"`
		} `json:"components"`
	}
	require.NoError(t, json.Unmarshal(p.job(), &kept))
	assert.InDelta(t, 2, kept.Components[0].Shape["width_m"], 0, "the changed job is still there")

	p.do(chromedp.Click(`[data-example="lock-gate"]`), chromedp.WaitVisible("dialog"), chromedp.Click(`dialog [data-answer="replace"]`))
	p.until(`document.querySelector("#job-name").textContent.startsWith("Steel lock gate")`)

	notes := filepath.Join(t.TempDir(), "notes.json")
	require.NoError(t, os.WriteFile(notes, []byte("width 4 ft"), 0o600))
	p.do(chromedp.SetUploadFiles("#open-file", []string{notes}))
	p.until(`document.querySelector("#report").textContent.includes("notes.json is not a job")`)
	assert.Contains(t, string(p.job()), "Steel lock gate")
}

// paste puts a text where the focus is, in place of what is chosen there.
func (p *page) paste(text string) {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, input.InsertText, input.InsertTextParams{Text: text})
	require.NoError(p.t, err)
}

// downloads lets the browser save files, and returns the folder they go to.
func (p *page) downloads() string {
	p.t.Helper()
	folder := p.t.TempDir()
	_, err := chromedp.CallBrowser(p.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{Behavior: "allow", DownloadPath: folder})
	require.NoError(p.t, err)
	return folder
}

// saved waits for a file whose name ends so, and reads it.
func saved(t *testing.T, folder, ending string) []byte {
	t.Helper()
	var data []byte
	require.Eventually(t, func() bool {
		found, err := filepath.Glob(filepath.Join(folder, "*"+ending))
		if err != nil || len(found) != 1 {
			return false
		}
		data, err = os.ReadFile(found[0])
		return err == nil && len(data) > 0
	}, patience, 50*time.Millisecond, "no file *%s was saved", ending)
	return data
}
