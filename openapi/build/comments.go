package build

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"strings"
)

// module is the import path that all packages of this program begin with.
const module = "filmbuild/"

// comments reads what the source says about types and their fields.
type comments struct {
	root string                       // directory of the module
	read map[string]map[string]string // package path -> "Type" or "Type.Field" -> text
}

func newComments(root string) *comments {
	return &comments{root: root, read: map[string]map[string]string{}}
}

// ofType returns the first paragraph of a type's doc comment.
func (c *comments) ofType(t reflect.Type) (string, error) { return c.lookUp(t, t.Name()) }

// ofField returns the comment beside or above a field of a struct type.
func (c *comments) ofField(t reflect.Type, field string) (string, error) {
	return c.lookUp(t, t.Name()+"."+field)
}

func (c *comments) lookUp(t reflect.Type, key string) (string, error) {
	if !strings.HasPrefix(t.PkgPath(), module) {
		return "", nil
	}
	texts, known := c.read[t.PkgPath()]
	if !known {
		var err error
		if texts, err = readComments(filepath.Join(c.root, filepath.FromSlash(strings.TrimPrefix(t.PkgPath(), module)))); err != nil {
			return "", err
		}
		c.read[t.PkgPath()] = texts
	}
	return texts[key], nil
}

func readComments(directory string) (map[string]string, error) {
	entries, err := os.ReadDir(directory)
	if err != nil {
		return nil, err
	}
	texts := map[string]string{}
	for _, entry := range entries {
		name := entry.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(directory, name), nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		for _, declaration := range file.Decls {
			if general, ok := declaration.(*ast.GenDecl); ok {
				noteTypes(general, texts)
			}
		}
	}
	return texts, nil
}

func noteTypes(general *ast.GenDecl, texts map[string]string) {
	for _, spec := range general.Specs {
		t, ok := spec.(*ast.TypeSpec)
		if !ok {
			continue
		}
		doc := t.Doc
		if doc == nil {
			doc = general.Doc
		}
		texts[t.Name.Name] = firstParagraph(doc)
		if structure, ok := t.Type.(*ast.StructType); ok {
			noteFields(t.Name.Name, structure, texts)
		}
	}
}

func noteFields(owner string, structure *ast.StructType, texts map[string]string) {
	for _, field := range structure.Fields.List {
		text := firstParagraph(field.Comment)
		if text == "" {
			text = firstParagraph(field.Doc)
		}
		for _, name := range field.Names {
			texts[owner+"."+name.Name] = text
		}
	}
}

func firstParagraph(group *ast.CommentGroup) string {
	if group == nil {
		return ""
	}
	text, _, _ := strings.Cut(group.Text(), "\n\n")
	return strings.Join(strings.Fields(text), " ")
}
