package takeoff

import (
	"encoding"
	"reflect"
	"slices"
	"strings"

	"filmbuild/estimate/wire"
	"filmbuild/surfaces/quantity"
)

// holding is what the cells of a column hold.
type holding int

const (
	text   holding = iota
	number         // a number, with a unit of its own or not, or a range as JSON
	money          // a decimal amount
	flag           // true or false
	words          // ids, parted by commas
	tree           // JSON text
)

// column is one field of an element.
type column struct {
	path   string // dotted, below the element: shape.span_m
	suffix string // unit of its numbers on the wire
	unit   string // the same as printed
	holds  holding
	doc    string
}

// collected is what a type comes to: its columns, and the lists of structs in it
// that can be tables of their own, by dotted path.
type collected struct {
	columns []column
	lists   map[string]reflect.Type
	unions  wire.Unions
}

func columnsOf(t reflect.Type, unions wire.Unions) *collected {
	c := &collected{lists: map[string]reflect.Type{}, unions: unions}
	c.element(t, "", 0)
	return c
}

// mostNested is how deep structs are opened into columns; what lies deeper is
// JSON text.
const mostNested = 4

// element adds the columns of a struct, or of every kind of a union.
func (c *collected) element(t reflect.Type, prefix string, depth int) {
	if union, ok := c.unions[t]; ok {
		c.add(column{path: prefix + union.Key, doc: "one of " + strings.Join(union.Kinds, ", ")})
		for _, kind := range union.Kinds {
			if made, ok := union.New(kind); ok {
				c.element(reflect.TypeOf(made).Elem(), prefix, depth)
			}
		}
		return
	}
	for _, f := range reflect.VisibleFields(t) {
		if f.Tag.Get("wire") == "inline" {
			c.element(f.Type, prefix, depth)
			continue
		}
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || !f.IsExported() || name == "" || name == "-" {
			continue
		}
		c.field(f, name, prefix, depth)
	}
}

var textual = reflect.TypeFor[encoding.TextUnmarshaler]()

func (c *collected) field(f reflect.StructField, name, prefix string, depth int) {
	t := f.Type
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	one := column{path: prefix + name, doc: f.Tag.Get("doc"), holds: tree}
	switch {
	case t.Kind() == reflect.Struct && reflect.PointerTo(t).Implements(textual):
		one.holds = money
	case t.Kind() == reflect.String:
		one.holds = text
	case t.Kind() == reflect.Bool:
		one.holds = flag
	case t.Kind() == reflect.Float64 || t.Kind() == reflect.Int:
		one.holds, one.suffix, one.unit = number, quantity.SuffixOf(name), quantity.UnitOf(name)
		if unit, own := f.Tag.Lookup("unit"); own {
			one.suffix, one.unit = unit, unit
		}
	case t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.String:
		one.holds = words
	case t.Kind() == reflect.Slice && (t.Elem().Kind() == reflect.Struct || t.Elem().Kind() == reflect.Interface):
		c.lists[one.path] = t.Elem()
	case t.Kind() == reflect.Struct || c.unions[t].New != nil:
		if depth < mostNested && f.Tag.Get("wire") != "raw" {
			c.element(t, one.path+".", depth+1)
			return
		}
	}
	c.add(one)
}

// add keeps the first column of a path. Where kinds disagree about what it
// holds, cells are read as numbers before texts, and lists are JSON.
func (c *collected) add(one column) {
	i := slices.IndexFunc(c.columns, func(k column) bool { return k.path == one.path })
	switch {
	case i < 0:
		c.columns = append(c.columns, one)
	case c.columns[i].holds != one.holds && one.holds == number:
		c.columns[i] = one
	}
}
