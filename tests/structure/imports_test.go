package structure

import (
	"go/ast"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const module = "filmbuild"

// mayImport says which of our own packages the code of a folder may import, by
// the longest folder that it lies in. A name stands for itself and what is below.
func mayImport() map[string][]string {
	return map[string][]string{
		".":                  {"api", "estimate", "products", "surfaces"},
		"api":                {"api", "estimate", "products", "surfaces", "openapi"},
		"api/web":            {},
		"openapi":            {},
		"openapi/build":      {"api", "estimate", "products", "surfaces"}, // a tool, above everything it describes
		"openapi/generate":   {"openapi/build"},
		"estimate":           {"estimate", "products", "surfaces"},
		"estimate/blast":     {"surfaces/quantity"},
		"estimate/climate":   {"surfaces/quantity"},
		"estimate/film":      {"surfaces/quantity"},
		"estimate/inspect":   {"surfaces/quantity"},
		"estimate/masking":   {"surfaces/quantity"},
		"estimate/voc":       {"surfaces/quantity"},
		"estimate/calendar":  {},
		"estimate/funding":   {"estimate/money"},
		"estimate/caution":   {},
		"estimate/chart":     {},
		"estimate/class":     {},
		"estimate/risk":      {},
		"estimate/spread":    {"estimate/risk"},
		"estimate/chain":     {},
		"estimate/stamp":     {},
		"estimate/weather":   {"estimate/climate", "estimate/stamp", "estimate/units", "products", "surfaces/quantity"},
		"estimate/fault":     {},
		"estimate/money":     {},
		"estimate/units":     {"surfaces/quantity"},
		"estimate/wire":      {"estimate/fault", "estimate/money", "estimate/units", "surfaces/quantity"},
		"surfaces":           {"surfaces"},
		"surfaces/quantity":  {},
		"surfaces/planar":    {},
		"surfaces/mesh":      {"surfaces"},
		"products":           {},
		"estimate/calculate": {"estimate", "products", "surfaces"},
		"estimate/report":    {"estimate", "surfaces/quantity"},
		"estimate/example":   {},
	}
}

// Imports go downwards only.
func TestImportsGoDownwards(t *testing.T) {
	rules := mayImport()
	for _, f := range code(t) {
		folder := f.folder()
		for rules[folder] == nil && folder != "." {
			folder = parent(folder)
		}
		for _, name := range imports(f) {
			ours, found := strings.CutPrefix(name, module+"/")
			if !found {
				continue
			}
			assert.True(t, within(ours, rules[folder]), "%s imports %s; code in %s may import %v of ours", f.path, name, folder, rules[folder])
		}
	}
}

// HTTP is known under api only, and by main, which serves; gin under api alone.
func TestOnlyTheAPIKnowsHTTP(t *testing.T) {
	for _, f := range code(t) {
		for _, name := range imports(f) {
			above := f.folder() == "api" || strings.HasPrefix(f.path, "api/")
			switch {
			case strings.HasPrefix(name, "github.com/gin-gonic/"):
				assert.True(t, above, "%s imports %s", f.path, name)
			case name == "net/http" || strings.HasPrefix(name, "net/http/"):
				// the tool that writes the description names methods and statuses
				assert.True(t, above || f.path == "main.go" || strings.HasPrefix(f.path, "openapi/build/"), "%s imports %s", f.path, name)
			}
		}
	}
}

// The engine knows no clock, no network and no files (design, section 1); chance
// it draws from a seed alone. Meshes are read from files beside the job.
func TestTheEngineIsPure(t *testing.T) {
	for _, f := range code(t) {
		if !within(f.folder(), []string{"estimate", "surfaces", "products"}) {
			continue
		}
		for _, name := range imports(f) {
			// a PDF carries a date, which the library wants as a time.Time
			assert.False(t, name == "time" && f.folder() != "estimate/document", "%s imports time", f.path)
			assert.NotContains(t, []string{"net", "net/http", "math/rand", "crypto/rand", "os/exec", "log", "log/slog"}, name, f.path)
			assert.False(t, name == "os" && f.folder() != "surfaces/mesh", "%s imports os", f.path)
		}
		ast.Inspect(f.tree, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok && strings.HasPrefix(selector(s), "time.") && slices.Contains(imports(f), "time") {
				assert.Contains(t, []string{"time.Time", "time.Unix", "time.Parse", "time.DateOnly"}, selector(s), "%s:%d: a clock", f.path, f.line(s))
			}
			if s, ok := n.(*ast.SelectorExpr); ok && strings.HasPrefix(selector(s), "rand.") && slices.Contains(imports(f), "math/rand/v2") {
				assert.Contains(t, []string{"rand.New", "rand.NewPCG", "rand.Rand", "rand.PCG", "rand.Source"}, selector(s), "%s:%d: chance without a seed", f.path, f.line(s))
			}
			return true
		})
	}
}

func imports(f file) []string {
	var names []string
	for _, spec := range f.tree.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		if err == nil {
			names = append(names, name)
		}
	}
	return names
}

func within(name string, allowed []string) bool {
	for _, a := range allowed {
		if name == a || strings.HasPrefix(name, a+"/") {
			return true
		}
	}
	return false
}

func parent(folder string) string {
	if i := strings.LastIndexByte(folder, '/'); i >= 0 {
		return folder[:i]
	}
	return "."
}
