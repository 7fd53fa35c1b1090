package structure

import (
	"go/ast"
	"go/token"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// No init functions: what a package needs it makes where it is used.
func TestNoInitFunctions(t *testing.T) {
	for _, f := range files(t) {
		for _, d := range f.tree.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok {
				assert.False(t, fn.Recv == nil && fn.Name.Name == "init", "%s:%d has an init function", f.path, f.line(fn))
			}
		}
	}
}

// fixed are the initializers whose values do not change, or that are made once.
func fixed(call string) bool {
	switch call {
	case "errors.New", "regexp.MustCompile", "sync.OnceValue", "sync.OnceValues", "reflect.TypeFor", "reflect.TypeOf", "decimal.New", "decimal.NewFromInt":
		return true
	}
	return false
}

// reasons name the package-level variables that are none of these.
func reasons() map[string]string {
	return map[string]string{
		"estimate/money/currencies":    "the embedded ISO 4217 table, read once and never written",
		"estimate/money/errCurrencies": "the fault of that table, for CurrencyOf to return",
		"estimate/units/tables":        "the embedded tables of units, read once and never written",
		"estimate/units/errTables":     "the fault of those tables",
		"estimate/wire/layouts":        "cache of struct types, which never change",
		"surfaces/quantity/described":  "cache of struct types, which never change",
		"surfaces/quantity/suffixes":   "a table of unit suffixes that nothing writes",
		"estimate/caution/columns":     "the column names of a table, which nothing writes",
		"surfaces/planar/Unmoved":      "the placement that moves nothing: a plain value",
	}
}

// A package-level variable is embedded data, a compiled expression, an error, a
// value made once, limits, or has its reason in the list above.
func TestPackageVariablesAreFixed(t *testing.T) {
	named := map[string]bool{}
	for _, f := range code(t) {
		for _, spec := range variables(f) {
			for i, name := range spec.Names {
				key := f.folder() + "/" + name.Name
				if reasons()[key] != "" {
					named[key] = true
					continue
				}
				assert.True(t, name.Name == "_" || isEmbedded(f, spec) || isFixed(spec, i), "%s:%d: variable %s may change; make it a function or a sync.OnceValue", f.path, f.line(name), name.Name)
			}
		}
	}
	for key := range reasons() {
		assert.True(t, named[key], "%s has a reason and is no variable", key)
	}
}

// No package-level variable is assigned to, in no function of its package.
func TestPackageVariablesAreNotAssigned(t *testing.T) {
	ours := map[string]map[string]bool{}
	for _, f := range code(t) {
		for _, spec := range variables(f) {
			for _, name := range spec.Names {
				if ours[f.folder()] == nil {
					ours[f.folder()] = map[string]bool{}
				}
				ours[f.folder()][name.Name] = true
			}
		}
	}
	for _, f := range code(t) {
		ast.Inspect(f.tree, func(n ast.Node) bool {
			var targets []ast.Expr
			switch s := n.(type) {
			case *ast.AssignStmt:
				if s.Tok != token.DEFINE {
					targets = s.Lhs
				}
			case *ast.IncDecStmt:
				targets = []ast.Expr{s.X}
			}
			for _, target := range targets {
				name := base(target)
				if name == nil || !ours[f.folder()][name.Name] {
					continue
				}
				//nolint:staticcheck // the parser's own resolution tells a local of the same name apart
				local := name.Obj != nil && !topLevel(f, name.Obj)
				assert.True(t, local, "%s:%d assigns to the package's %s", f.path, f.line(target), name.Name)
			}
			return true
		})
	}
}

func variables(f file) []*ast.ValueSpec {
	var found []*ast.ValueSpec
	for _, d := range f.tree.Decls {
		if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.VAR {
			for _, s := range g.Specs {
				found = append(found, s.(*ast.ValueSpec))
			}
		}
	}
	return found
}

// isEmbedded reports whether the comment right above is a go:embed directive.
func isEmbedded(f file, spec *ast.ValueSpec) bool {
	for _, group := range f.tree.Comments {
		for _, c := range group.List {
			if strings.HasPrefix(c.Text, "//go:embed ") && f.line(spec)-f.line(c) == 1 {
				return true
			}
		}
	}
	return false
}

func isFixed(spec *ast.ValueSpec, i int) bool {
	if i >= len(spec.Values) {
		return false
	}
	switch v := spec.Values[i].(type) {
	case *ast.CallExpr:
		fun := v.Fun
		if generic, ok := fun.(*ast.IndexExpr); ok {
			fun = generic.X
		}
		return fixed(selector(fun))
	case *ast.CompositeLit: // limits are plain values
		return selector(v.Type) == "quantity.Limits"
	}
	return false
}

func selector(e ast.Expr) string {
	if s, ok := e.(*ast.SelectorExpr); ok {
		if x, ok := s.X.(*ast.Ident); ok {
			return x.Name + "." + s.Sel.Name
		}
	}
	return ""
}

// base is the variable that an assignment goes to in the end: x in x.f[i].
func base(e ast.Expr) *ast.Ident {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x
		case *ast.IndexExpr:
			e = x.X
		case *ast.SelectorExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}

func topLevel(f file, o *ast.Object) bool { //nolint:staticcheck // see above
	spec, ok := o.Decl.(*ast.ValueSpec)
	if !ok {
		return false
	}
	for _, v := range variables(f) {
		if v == spec {
			return true
		}
	}
	return false
}
