package takeoff

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/products"
)

// Import makes a job document of tables and checks it: with components or items
// by the whole engine, without (a list of products, say) by the reader of
// documents. The error is a *fault.Error with every fault, each with the cell it
// stands in.
//
// A take-off without a table job gets a name and the currency of its prices'
// heads, or of the catalogue; its note says so.
func Import(files []File, reader *estimate.Reader, catalogue *products.Catalogue) ([]byte, error) {
	in := &intake{book: theBook(), faults: newGathered(), job: newObject(), ids: map[string]map[string]*element{}}
	if len(files) == 0 || len(files) > MostFiles {
		in.faults.add(fault.Cell{Sheet: "take-off"}, "", "too_many", fmt.Sprintf("a take-off is one file, or up to %d", MostFiles))
		return nil, in.faults.err()
	}
	in.take(files)
	if len(in.job.names) == 0 && len(in.faults.faults) == 0 {
		in.faults.add(fault.Cell{Sheet: "take-off"}, "", "required", "there is nothing in the tables; the templates show what a take-off looks like")
	}
	if len(in.job.names) == 0 {
		return nil, in.faults.err()
	}
	in.assume(catalogue)
	compact, err := marshal(in.job)
	if err != nil {
		return nil, err
	}
	if err := in.judge(compact, reader, catalogue); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = json.Indent(&out, compact, "", "  ")
	return append(out.Bytes(), '\n'), err
}

// intake is a take-off on its way in.
type intake struct {
	book     *book
	faults   *gathered
	job      *object
	ids      map[string]map[string]*element // table -> id -> element
	currency string                         // of the heads of prices
	cells    int
}

// element is an element of a list, and where it is in the job.
type element struct {
	object  *object
	pointer string
}

// filled is a grid that is known to be a table.
type filled struct {
	grid
	table *table
	head  int // row of the heads
}

func (in *intake) take(files []File) {
	var all []filled
	for _, file := range files {
		for _, g := range grids(file, in.faults) {
			if f, ok := in.recognise(g); ok {
				all = append(all, f)
			}
		}
	}
	for _, f := range all {
		if f.table == in.book.job {
			in.jobFields(f)
		}
	}
	for _, t := range in.book.tables { // parents before their children
		for _, f := range all {
			if f.table == t {
				in.elements(f)
			}
		}
	}
}

// judge holds the job against the reader of documents and the engine.
func (in *intake) judge(job []byte, reader *estimate.Reader, catalogue *products.Catalogue) error {
	_, parts := in.job.of["components"]
	_, items := in.job.of["items"]
	var err error
	if parts || items {
		_, err = reader.Estimate(job, catalogue)
	} else {
		var faults fault.List
		if _, err = reader.Job(job, &faults); err == nil {
			err = faults.Err()
		}
	}
	var found *fault.Error
	var syntax *wire.SyntaxError
	switch {
	case errors.As(err, &found):
		for _, f := range found.Faults {
			in.faults.engine(f)
		}
	case errors.As(err, &syntax):
		in.faults.engine(fault.Fault{Pointer: syntax.Pointer, Code: syntax.Code, Detail: syntax.Detail})
	case err != nil:
		return err
	}
	return in.faults.err()
}

// assume gives the job what every job needs and a bare table does not say.
func (in *intake) assume(catalogue *products.Catalogue) {
	var said []string
	if _, given := in.job.of["name"]; !given {
		in.job.set("name", "Take-off")
		said = append(said, "its name is not in the tables")
	}
	own, given := in.job.of["currency"].(string)
	switch {
	case given && in.currency != "" && !strings.EqualFold(own, in.currency):
		in.faults.add(in.faults.cells["/currency"], "/currency", "inconsistent", fmt.Sprintf("the job's currency is %s, and the head of a price says %s; make them one", own, in.currency))
	case given:
	case in.currency != "":
		in.job.set("currency", in.currency)
	default:
		in.job.set("currency", catalogue.Currency())
		said = append(said, "no currency is either, and "+catalogue.Currency()+" was taken, that of the catalogue's prices")
	}
	if _, noted := in.job.of["note"]; !noted && len(said) > 0 {
		in.job.set("note", "From a take-off: "+strings.Join(said, "; ")+".")
	}
	order := []string{"name", "note", "currency"}
	slices.SortStableFunc(in.job.names, func(a, b string) int { return place(order, a) - place(order, b) })
}

func place(order []string, name string) int {
	if i := slices.Index(order, name); i >= 0 {
		return i
	}
	return len(order)
}

// recognise finds the table that a grid is: by the name of its sheet or file,
// and for a file of another name by its heads.
func (in *intake) recognise(g grid) (filled, bool) {
	f := filled{grid: g, head: slices.IndexFunc(g.rows, func(row []cell) bool { return slices.ContainsFunc(row, func(c cell) bool { return !c.blank() }) })}
	if f.head < 0 {
		in.faults.add(fault.Cell{Sheet: g.name}, "", "required", "the table is empty; its first row must hold the heads")
		return f, false
	}
	for _, row := range g.rows {
		in.cells += len(row)
	}
	if in.cells > MostCells {
		in.faults.add(fault.Cell{Sheet: g.name}, "", "too_many", fmt.Sprintf("the tables have more than %d cells", MostCells))
		return f, false
	}
	if f.table = in.book.find(plainName(g.name)); f.table != nil {
		return f, true
	}
	if g.sheet {
		in.faults.add(fault.Cell{Sheet: g.name}, "", "unknown_kind", "no table has the name of this sheet; name it one of "+strings.Join(Tables(), ", ")+", or begin its name with note to leave it out")
		return f, false
	}
	var fit []string
	for _, t := range in.book.all {
		if in.fits(t, g.rows[f.head]) {
			f.table = t
			fit = append(fit, t.name)
		}
	}
	if len(fit) == 1 {
		return f, true
	}
	detail := "its heads are those of no table"
	if len(fit) > 1 {
		detail = "its heads fit " + strings.Join(fit, " and ")
	}
	in.faults.add(fault.Cell{Sheet: g.name}, "", "unknown_kind", detail+"; name the file after its table, such as components.csv, steps.csv, products.csv or items.csv")
	return f, false
}

// fits reports whether all heads are columns of a table, the id or the key of
// its parent among them.
func (in *intake) fits(t *table, heads []cell) bool {
	keyed := false
	for _, c := range heads {
		if c.blank() {
			continue
		}
		if t == in.book.job {
			keyed = keyed || plainName(c.said) == "field"
			if !slices.Contains([]string{"field", "value", "meaning"}, plainName(c.said)) {
				return false
			}
			continue
		}
		h, bad := t.heading(c.said)
		if bad != nil {
			return false
		}
		keyed = keyed || h.column.path == t.key || h.column.path == "id" || (t.key == "" && (h.column.path == "product" || h.column.path == "for"))
	}
	return keyed
}
