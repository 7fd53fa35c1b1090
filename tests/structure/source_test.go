// Package structure holds the code to the layout and the habits of the house:
// what may import what, what stands at the top, and what no file may have.
package structure

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const root = "../.."

// file is one Go file, with its path from the root.
type file struct {
	path string
	tree *ast.File
	set  *token.FileSet
}

func (f file) folder() string { return path.Dir(f.path) }

func (f file) isTest() bool { return strings.HasSuffix(f.path, "_test.go") }

func (f file) line(n ast.Node) int { return f.set.Position(n.Pos()).Line }

// files parses every Go file of the project.
func files(t *testing.T) []file {
	t.Helper()
	var found []file
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if base := entry.Name(); entry.IsDir() && (base == "testdata" || base == "tmp" || (strings.HasPrefix(base, ".") && name != root)) {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(name, ".go") {
			return nil
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, name, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		relative, err := filepath.Rel(root, name)
		found = append(found, file{filepath.ToSlash(relative), tree, set})
		return err
	})
	require.NoError(t, err)
	require.Greater(t, len(found), 150, "the walk found the project")
	return found
}

// code leaves the tests out: files of tests/ and files beside the code.
func code(t *testing.T) []file {
	t.Helper()
	var found []file
	for _, f := range files(t) {
		if !f.isTest() && !strings.HasPrefix(f.path, "tests/") {
			found = append(found, f)
		}
	}
	return found
}
