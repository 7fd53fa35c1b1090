package structure

import (
	"go/ast"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/quantity"
)

// field is one field of a struct, as its tag says.
type field struct {
	name string // on the wire
	kind string
	tag  reflect.StructTag
	line int
}

// structs lists the fields of every struct type of a file.
func structs(t *testing.T, f file) [][]field {
	t.Helper()
	var found [][]field
	ast.Inspect(f.tree, func(n ast.Node) bool {
		s, ok := n.(*ast.StructType)
		if !ok {
			return true
		}
		var fields []field
		for _, one := range s.Fields.List {
			if one.Tag == nil {
				continue
			}
			tag, err := strconv.Unquote(one.Tag.Value)
			require.NoError(t, err)
			name, _, _ := strings.Cut(reflect.StructTag(tag).Get("json"), ",")
			fields = append(fields, field{name, typeName(one.Type), reflect.StructTag(tag), f.line(one)})
		}
		found = append(found, fields)
		return true
	})
	return found
}

func typeName(e ast.Expr) string {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name
	case *ast.StarExpr:
		return typeName(x.X)
	}
	return ""
}

// Every limit tag is an interval, and every field that has one says what it is.
func TestEveryLimitTagParses(t *testing.T) {
	limits := 0
	for _, f := range code(t) {
		for _, fields := range structs(t, f) {
			for _, x := range fields {
				tag, found := x.tag.Lookup("limit")
				if !found {
					continue
				}
				limits++
				_, err := quantity.ParseLimits(tag)
				assert.NoError(t, err, "%s:%d %s", f.path, x.line, x.name)
				assert.NotEmpty(t, x.tag.Get("doc"), "%s:%d %s has limits and no doc", f.path, x.line, x.name)
			}
		}
	}
	assert.Greater(t, limits, 150)
}

// Every number of an input whose name ends in a unit says what it is and has
// limits. A struct is an input when any of its fields has a doc.
func TestEveryNumberOfAnInputIsDescribed(t *testing.T) {
	numbers := 0
	for _, f := range code(t) {
		for _, fields := range structs(t, f) {
			if !isInput(fields) {
				continue
			}
			for _, x := range fields {
				if (x.kind != "float64" && x.kind != "int") || quantity.SuffixOf(x.name) == "" {
					continue
				}
				numbers++
				assert.NotEmpty(t, x.tag.Get("doc"), "%s:%d %s has no doc", f.path, x.line, x.name)
				assert.NotEmpty(t, x.tag.Get("limit"), "%s:%d %s has no limit", f.path, x.line, x.name)
			}
		}
	}
	assert.Greater(t, numbers, 150)
}

func isInput(fields []field) bool {
	for _, x := range fields {
		if x.tag.Get("doc") != "" {
			return true
		}
	}
	return false
}
