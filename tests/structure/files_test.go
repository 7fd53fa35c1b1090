package structure

import (
	"go/ast"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The top level is as the design says (section 4), with the test of main beside
// it; files that start with a point, and what .gitignore names, are left aside.
func TestTheTopLevel(t *testing.T) {
	wanted := []string{"DEVELOPERS.md", "Dockerfile", "README.md", "api", "estimate", "go.mod", "go.sum", "main.go", "openapi", "products", "surfaces", "tests"}
	entries, err := os.ReadDir(root)
	require.NoError(t, err)
	var found []string
	for _, e := range entries {
		name := e.Name()
		if strings.HasPrefix(name, ".") || name == "filmbuild" || name == "tmp" || strings.HasSuffix(name, ".test") || strings.HasSuffix(name, ".out") || strings.HasSuffix(name, ".prof") {
			continue
		}
		found = append(found, name)
	}
	assert.Equal(t, wanted, found)
}

// No test is skipped. A drawn case that rapid is told to leave out is no test:
// another is drawn in its place.
func TestNoTestIsSkipped(t *testing.T) {
	for _, f := range files(t) {
		var walk func(n ast.Node, drawn bool)
		walk = func(n ast.Node, drawn bool) {
			ast.Inspect(n, func(inner ast.Node) bool {
				switch x := inner.(type) {
				case *ast.FuncLit:
					if inner != n {
						walk(x, drawsFrom(x.Type, drawn))
						return false
					}
				case *ast.CallExpr:
					if s, ok := x.Fun.(*ast.SelectorExpr); ok && slices.Contains([]string{"Skip", "Skipf", "SkipNow"}, s.Sel.Name) {
						assert.True(t, drawn, "%s:%d skips", f.path, f.line(x))
					}
				}
				return true
			})
		}
		for _, d := range f.tree.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && f.isTest() {
				walk(fn, drawsFrom(fn.Type, false))
			}
		}
	}
}

// drawsFrom reports whether a function's test is rapid's; one without a test of
// its own has that of the function around it.
func drawsFrom(fn *ast.FuncType, outer bool) bool {
	for _, p := range fn.Params.List {
		if star, ok := p.Type.(*ast.StarExpr); ok {
			switch selector(star.X) {
			case "rapid.T":
				return true
			case "testing.T", "testing.B", "testing.F":
				return false
			}
		}
	}
	return outer
}

// Every exported function and type says what it is, its name first.
func TestExportedNamesAreDocumented(t *testing.T) {
	for _, f := range code(t) {
		for _, d := range f.tree.Decls {
			switch x := d.(type) {
			case *ast.FuncDecl:
				if x.Recv == nil && x.Name.IsExported() {
					assert.True(t, startsWith(x.Doc, x.Name.Name), "%s:%d: func %s has no comment that starts with its name", f.path, f.line(x), x.Name.Name)
				}
			case *ast.GenDecl:
				for _, s := range x.Specs {
					if spec, ok := s.(*ast.TypeSpec); ok && spec.Name.IsExported() {
						assert.True(t, spec.Doc.Text() != "" || x.Doc.Text() != "" || spec.Comment.Text() != "", "%s:%d: type %s has no comment", f.path, f.line(spec), spec.Name.Name)
					}
				}
			}
		}
	}
}

func startsWith(doc *ast.CommentGroup, name string) bool {
	return strings.HasPrefix(doc.Text(), name+" ") || strings.HasPrefix(doc.Text(), name+"\n") || strings.HasPrefix(doc.Text(), name+":")
}

// Every package says what it is, in one comment.
func TestEveryPackageHasItsComment(t *testing.T) {
	has := map[string]bool{}
	for _, f := range files(t) {
		has[f.folder()] = has[f.folder()] || f.tree.Doc.Text() != ""
	}
	for folder, commented := range has {
		assert.True(t, commented, "%s has no package comment", folder)
	}
}

// Files are small: half have at most 140 lines and nine in ten at most 350.
func TestFilesAreSmall(t *testing.T) {
	var lengths []int
	for _, f := range code(t) {
		lengths = append(lengths, f.set.File(f.tree.Pos()).LineCount())
	}
	slices.Sort(lengths)
	assert.LessOrEqual(t, lengths[len(lengths)/2], 140)
	assert.LessOrEqual(t, lengths[len(lengths)*9/10], 350)
}

// Nothing is left for later, and nothing names where it was written.
func TestNothingIsLeftBehind(t *testing.T) {
	for _, f := range files(t) {
		for _, group := range f.tree.Comments {
			for _, word := range []string{"TO" + "DO", "FIX" + "ME", "XX" + "X", "HA" + "CK", "/wo" + "rk/"} {
				assert.NotContains(t, group.Text(), word, "%s:%d", f.path, f.line(group))
			}
		}
	}
}
