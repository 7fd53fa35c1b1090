package takeoff

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/products"
)

// sheet is a table to be written.
type sheet struct {
	name  string
	table *table
	heads []string
	rows  [][]any // string, json.Number, bool or nil for an empty cell
}

// Export writes a job document as the tables of a workbook. What is written is
// read back: where it is not the same job, as with a text longer than a cell can
// hold, nothing is returned but the fault.
//
// The error is a *wire.SyntaxError or a *fault.Error with every fault of the
// job.
func Export(job []byte, reader *estimate.Reader, catalogue *products.Catalogue) ([]byte, error) {
	sheets, err := tabled(job, reader, catalogue)
	if err != nil {
		return nil, err
	}
	data, err := writeWorkbook(sheets)
	if err != nil {
		return nil, err
	}
	return data, same(job, []File{{Name: "job.xlsx", Data: data}}, reader, catalogue)
}

// ExportCSV writes a job document as CSV files, one to each table. The errors
// are those of Export.
func ExportCSV(job []byte, reader *estimate.Reader, catalogue *products.Catalogue) ([]File, error) {
	sheets, err := tabled(job, reader, catalogue)
	if err != nil {
		return nil, err
	}
	var files []File
	for _, s := range sheets {
		data, err := writeCSV(s)
		if err != nil {
			return nil, err
		}
		files = append(files, File{Name: s.name + ".csv", Data: data})
	}
	return files, same(job, files, reader, catalogue)
}

// tabled lays a job out in tables, once it is known to have no fault.
func tabled(job []byte, reader *estimate.Reader, catalogue *products.Catalogue) ([]sheet, error) {
	if _, err := reader.Estimate(job, catalogue); err != nil {
		return nil, err
	}
	whole, err := parse(job)
	if err != nil {
		return nil, err
	}
	return layOut(whole.(*object)), nil // a job that could be worked out is an object
}

func layOut(job *object) []sheet {
	b := theBook()
	var sheets []sheet
	listed := map[string]bool{}
	for _, t := range b.tables {
		if t.parent != "" {
			continue
		}
		elements := objects(job.of[t.list])
		if elements == nil {
			continue
		}
		listed[t.list] = true
		sheets = append(sheets, b.lists(t, elements)...)
	}
	return append([]sheet{b.fields(job, listed)}, sheets...)
}

// objects are the elements of a list that holds nothing but objects; nil for
// anything else, and for an empty list, which says nothing.
func objects(v any) []*object {
	list, _ := v.([]any)
	var found []*object
	for _, one := range list {
		o, ok := one.(*object)
		if !ok {
			return nil
		}
		found = append(found, o)
	}
	return found
}

// lists writes a table and those of the lists in its elements.
func (b *book) lists(t *table, elements []*object) []sheet {
	own := drafted(t)
	children := b.childrenOf(t.name)
	below := make([]*draft, len(children))
	for i, child := range children {
		below[i] = drafted(child)
	}
	for _, e := range elements {
		inner := map[string]bool{}
		id, _ := e.of["id"].(string)
		for i, child := range children {
			v, _ := e.get(child.list)
			for _, one := range objects(v) {
				inner[child.list] = true
				below[i].add(one, nil, id)
			}
		}
		own.add(e, inner, "")
	}
	sheets := []sheet{own.sheet()}
	for _, d := range below {
		if len(d.rows) > 0 {
			sheets = append(sheets, d.sheet())
		}
	}
	return sheets
}

// draft is a table whose columns are known once all rows are.
type draft struct {
	table *table
	used  map[string]bool
	rows  []map[string]any // by path
}

func drafted(t *table) *draft { return &draft{table: t, used: map[string]bool{}} }

// add writes an element as a row; elsewhere are the paths of what other tables
// hold.
func (d *draft) add(e *object, elsewhere map[string]bool, key string) {
	row, left := map[string]any{}, newObject()
	d.spread(e, "", elsewhere, row, left)
	if d.table.key != "" {
		row[d.table.key] = key
	}
	if len(left.names) > 0 {
		row[rest] = jsonText(left)
	}
	for path := range row {
		d.used[path] = true
	}
	d.rows = append(d.rows, row)
}

// spread puts every value below an object into the cell of its column, and into
// left where there is none that gives it back.
func (d *draft) spread(o *object, prefix string, elsewhere map[string]bool, row map[string]any, left *object) {
	for _, name := range o.names {
		path, v := prefix+name, o.of[name]
		if elsewhere[path] || v == nil {
			continue
		}
		i, known := d.table.byName[path]
		inner, deeper := v.(*object)
		switch {
		case known && d.table.columns[i].path == path && path != rest && path != d.table.key:
			if said, ok := d.table.columns[i].cell(v); ok {
				row[path] = said
				continue
			}
			left.put(path, v)
		case deeper && len(inner.names) > 0 && !strings.Contains(name, "."):
			d.spread(inner, path+".", elsewhere, row, left)
		default:
			left.put(path, v)
		}
	}
}

func (d *draft) sheet() sheet {
	s := sheet{name: d.table.name, table: d.table}
	var chosen []column
	for _, c := range d.table.columns {
		if d.used[c.path] {
			chosen = append(chosen, c)
			s.heads = append(s.heads, d.table.head(c))
		}
	}
	for _, row := range d.rows {
		cells := make([]any, len(chosen))
		for i, c := range chosen {
			cells[i] = row[c.path]
		}
		s.rows = append(s.rows, cells)
	}
	return s
}

// fields writes the table job.
func (b *book) fields(job *object, listed map[string]bool) sheet {
	d := drafted(b.job)
	d.add(job, listed, "")
	s := sheet{name: jobTable, table: b.job, heads: []string{"field", "value", "meaning"}}
	for _, c := range b.job.columns {
		if said, ok := d.rows[0][c.path]; ok {
			s.rows = append(s.rows, []any{b.job.head(c), said, c.doc})
		}
	}
	return s
}

// cell writes a value so that value reads it back, and answers false where that
// cannot be.
func (c column) cell(v any) (any, bool) {
	var said any
	switch x := v.(type) {
	case json.Number:
		said = x
	case bool:
		said = x
	case string:
		said = x
		if d, err := decimal.NewFromString(x); c.holds == money && err == nil && d.Exponent() >= -2 && d.Exponent() <= 0 && len(x) <= 15 {
			said = json.Number(d.String())
		}
	case *object:
		said = jsonText(x)
	case []any:
		said = joined(c, x)
	}
	back, bad := heading{column: c}.value(fmt.Sprint(said), false)
	return said, bad == nil && fmt.Sprint(said) != "" && equal(v, back)
}

// joined writes a list as words parted by commas where it is one.
func joined(c column, list []any) string {
	var parts []string
	for _, one := range list {
		word, ok := one.(string)
		if !ok || c.holds != words {
			return jsonText(list)
		}
		parts = append(parts, word)
	}
	said := strings.Join(parts, ", ")
	if back, bad := (heading{column: c}).value(said, false); bad != nil || !equal(list, back) {
		return jsonText(list)
	}
	return said
}

func jsonText(v any) string {
	data, err := marshal(v)
	if err != nil {
		return "" // no value of a document
	}
	return string(data)
}

// equal compares two values of documents: numbers by their value, a decimal
// text with a number likewise, and without members that say nothing.
func equal(a, b any) bool {
	switch x := a.(type) {
	case *object:
		y, ok := b.(*object)
		return ok && covers(x, y) && covers(y, x)
	case []any:
		y, ok := b.([]any)
		return ok && slices.EqualFunc(x, y, equal)
	}
	if a == b {
		return true
	}
	x, errX := decimal.NewFromString(scalar(a))
	y, errY := decimal.NewFromString(scalar(b))
	return errX == nil && errY == nil && x.Equal(y)
}

// scalar is the text of a number or of a text, bounded, since a decimal takes
// any exponent.
func scalar(v any) string {
	said := fmt.Sprint(v)
	if len(said) > 60 || strings.ContainsAny(said, "eE") {
		return ""
	}
	return said
}

func covers(a, b *object) bool {
	for _, name := range a.names {
		if v := a.of[name]; v != nil && !hollow(v) && !equal(v, b.of[name]) {
			return false
		}
	}
	return true
}

// hollow is a list without elements: it says what its absence says.
func hollow(v any) bool {
	list, ok := v.([]any)
	return ok && len(list) == 0
}

// same refuses tables that do not come back as the job that was written.
func same(job []byte, files []File, reader *estimate.Reader, catalogue *products.Catalogue) error {
	back, err := Import(files, reader, catalogue)
	if err != nil {
		return fmt.Errorf("the tables that were written cannot be read: %w", err)
	}
	was, err := parse(job)
	if err != nil {
		return err
	}
	is, err := parse(back)
	if err != nil {
		return err
	}
	for _, name := range was.(*object).names {
		if v := was.(*object).of[name]; v != nil && !hollow(v) && !equal(v, is.(*object).of[name]) {
			return &fault.Error{Faults: []fault.Fault{{Pointer: "/" + name, Code: "not_applicable",
				Detail: name + " holds something that tables cannot give back, such as a text longer than a cell; keep this job as JSON"}}}
		}
	}
	return nil
}
