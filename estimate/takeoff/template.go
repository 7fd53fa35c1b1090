package takeoff

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
)

// The job that the templates show. It is invented and says so.
//
//go:embed template.json
var templateJob []byte

// Template is a file that people fill in.
type Template struct {
	Name string // job.xlsx, components.csv
	Doc  string
}

// Templates lists the templates.
func Templates() []Template {
	return []Template{
		{"job.xlsx", "every table of a job as a sheet, with examples, and a sheet that lists all columns"},
		{"components.csv", "the parts"},
		{"steps.csv", "the operations in their order"},
		{"products.csv", "products of one's own, each with a pack and its price"},
		{"items.csv", "any other money"},
	}
}

// WriteTemplate writes a template. The error names those there are where there
// is none of that name.
func WriteTemplate(name string) ([]byte, error) {
	whole, err := parse(templateJob)
	if err != nil {
		return nil, err
	}
	job := whole.(*object) // a test reads it
	if name == "job.xlsx" {
		return writeWorkbook(append(layOut(job), about()))
	}
	stem, isCSV := strings.CutSuffix(name, ".csv")
	if !isCSV || !slices.ContainsFunc(Templates(), func(t Template) bool { return t.Name == name }) {
		return nil, fmt.Errorf("there is no template %q", name)
	}
	return writeCSV(alone(job, stem))
}

// alone is one table of a job without those of the lists in it: a part that has
// such lists is left out, and the first pack of a product stands in its row.
func alone(job *object, name string) sheet {
	t := theBook().find(name)
	d := drafted(t)
	for _, e := range objects(job.of[t.list]) {
		if v, _ := e.get("shape.stations"); v != nil {
			continue
		}
		packs := objects(e.of["packs"])
		d.add(e, map[string]bool{"packs": true, "openings": true}, "")
		if row := d.rows[len(d.rows)-1]; len(packs) > 0 {
			for _, field := range packs[0].names {
				path := "packs.0." + field
				row[path], _ = t.columns[t.byName[path]].cell(packs[0].of[field])
				d.used[path] = true
			}
		}
	}
	return d.sheet()
}

// about is the sheet that lists every column of every table; reading leaves it
// out.
func about() sheet {
	b := theBook()
	s := sheet{name: "about", heads: []string{"table", "head", "also", "what it is"}}
	for _, t := range append([]*table{b.job}, b.tables...) {
		for _, c := range t.columns {
			s.rows = append(s.rows, []any{t.name, t.head(c), c.path, c.doc})
		}
	}
	return s
}
