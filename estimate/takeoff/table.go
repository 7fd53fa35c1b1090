package takeoff

import (
	"reflect"
	"slices"
	"strings"
	"sync"

	"filmbuild/estimate"
	"filmbuild/estimate/wire"
)

// table is one list of a job, or of every element of another table.
type table struct {
	name    string // of the sheet, and of the CSV file
	list    string // dotted path of the list, in the job or in the element of parent
	parent  string // table whose elements hold the list; empty for the job
	key     string // column that names the parent's element
	folded  string // prefix that heads may leave out: shape.
	columns []column
	byName  map[string]int   // by full path and short name
	byBase  map[string][]int // the same without the unit
}

// jobTable is the name of the sheet of what is not a list: a field to a row.
const jobTable = "job"

// rest is the column of what no other column holds.
const rest = "rest"

// book is every table, in the order in which they are read. It does not change.
type book struct {
	tables []*table
	job    *table
	all    []*table // with that of the job
}

// theBook is made once: it follows from types, which do not change.
var theBook = sync.OnceValue(newBook)

// Tables lists the names of the tables that a take-off may have.
func Tables() []string {
	names := []string{jobTable}
	for _, t := range theBook().tables {
		names = append(names, t.name)
	}
	return names
}

func newBook() *book {
	unions := estimate.Unions()
	whole := columnsOf(reflect.TypeFor[estimate.Job](), unions)
	b := &book{tables: []*table{
		{name: "components", list: "components", folded: "shape."},
		{name: "openings", list: "openings", parent: "components", key: "component"},
		{name: "joins", list: "joins", parent: "components", key: "component"},
		{name: "gaps", list: "gaps", parent: "components", key: "component"},
		{name: "laps", list: "laps", parent: "components", key: "component"},
		{name: "stations", list: "shape.stations", parent: "components", key: "component"},
		{name: "holes", list: "shape.holes", parent: "components", key: "component"},
		{name: "regions", list: "regions"},
		{name: "markings", list: "markings"},
		{name: "rings", list: "rings", parent: "markings", key: "marking"},
		{name: "steps", list: "steps"},
		{name: "products", list: "products", folded: "packs.0."},
		{name: "packs", list: "packs", parent: "products", key: "product"},
		{name: "test_patches", list: "test_patches"},
		{name: "items", list: "items"},
		{name: "correlations", list: "correlations"},
		{name: "suppliers", list: "suppliers"},
		{name: "stock", list: "stock"},
	}}
	lists := map[string]*collected{}
	for _, t := range b.tables {
		from := whole
		if t.parent != "" {
			from = lists[t.parent]
		}
		own := columnsOf(from.lists[t.list], unions)
		lists[t.name] = own
		t.columns = own.columns
		if t.key != "" {
			t.columns = append([]column{{path: t.key, doc: "id of the " + t.key + " it belongs to"}}, t.columns...)
		}
		if t.name == "products" {
			t.columns = append(t.columns, packColumns(own, unions)...)
		}
	}
	b.job = &table{name: jobTable, columns: slices.DeleteFunc(whole.columns, func(c column) bool {
		return slices.ContainsFunc(b.tables, func(t *table) bool { return t.name == c.path })
	})}
	b.all = append(slices.Clone(b.tables), b.job)
	for _, t := range b.all {
		t.index()
	}
	return b
}

// packColumns let a product with one pack have it in its own row.
func packColumns(product *collected, unions wire.Unions) []column {
	inner := columnsOf(product.lists["packs"], unions).columns
	for i := range inner {
		inner[i].path = "packs.0." + inner[i].path
	}
	return inner
}

func (b *book) find(name string) *table {
	for _, t := range b.all {
		if t.name == name {
			return t
		}
	}
	return nil
}

// childrenOf lists the tables of lists inside the elements of a table.
func (b *book) childrenOf(name string) []*table {
	var found []*table
	for _, t := range b.tables {
		if t.parent == name {
			found = append(found, t)
		}
	}
	return found
}

func (t *table) index() {
	t.columns = append(t.columns, column{path: rest, holds: tree, doc: "a JSON object with whatever no other column holds"})
	t.byName, t.byBase = map[string]int{}, map[string][]int{}
	for i, c := range t.columns {
		t.byName[c.path] = i
	}
	for i, c := range t.columns {
		if _, taken := t.byName[t.short(c)]; !taken {
			t.byName[t.short(c)] = i
		}
	}
	for name, i := range t.byName {
		if base := baseOf(name, t.columns[i]); base != name {
			t.byBase[base] = append(t.byBase[base], i)
		}
	}
}

// short is the name of a column without the prefix that may be left out.
func (t *table) short(c column) string {
	if t.folded == "" {
		return c.path
	}
	return strings.TrimPrefix(c.path, t.folded)
}

// baseOf is a name without the suffix of its unit.
func baseOf(name string, c column) string {
	if c.suffix == "" {
		return name
	}
	return strings.TrimSuffix(name, "_"+c.suffix)
}

// head is how a column is headed in what is written: span [m].
func (t *table) head(c column) string {
	name := t.short(c)
	if i, ok := t.byName[name]; !ok || t.columns[i].path != c.path {
		name = c.path
	}
	if base := baseOf(name, c); base != name && c.unit != "" {
		return base + " [" + c.unit + "]"
	}
	return name
}
