package web

import (
	"path"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a page or a module asks for must be served, and from nowhere else.
func TestEveryReferenceIsServed(t *testing.T) {
	files := Files()
	require.Contains(t, files, "/")
	own := regexp.MustCompile(`(?:src|href)="(/web/[^"]+)"|from "\./([^"]+)"`)
	foreign := regexp.MustCompile(`(?:src|href|action)="(?:https?:)?//|@import|url\(`)
	asked := 0
	for place, file := range files {
		for _, found := range own.FindAllSubmatch(file.Data, -1) {
			wanted := string(found[1])
			if wanted == "" {
				wanted = "/web/" + string(found[2])
			}
			assert.Contains(t, files, wanted, "%s asks for %s", place, wanted)
			asked++
		}
		if path.Ext(place) != ".svg" {
			assert.Empty(t, foreign.FindString(string(file.Data)), place)
		}
		assert.NotEmpty(t, file.Kind, place)
	}
	assert.Greater(t, asked, 20)
}

// The policy of the server allows no script or style within a document.
func TestNothingInline(t *testing.T) {
	inline := regexp.MustCompile(`(?i)<style|\sstyle="|\son[a-z]+="|<script[^>]*>[^<]`)
	for place, file := range Files() {
		if file.Kind == "text/html; charset=utf-8" {
			assert.Empty(t, inline.FindString(string(file.Data)), place)
		}
	}
}

// All modules of the page are asked for at once.
func TestPageNamesItsModules(t *testing.T) {
	files := Files()
	page := string(files["/"].Data)
	for _, deep := range []string{"job.js", "format.js", "unit-table.js", "range-chart.js"} {
		assert.Contains(t, page, `<link rel="modulepreload" href="/web/`+deep+`">`)
	}
	assert.NotContains(t, page, preloads)
}
