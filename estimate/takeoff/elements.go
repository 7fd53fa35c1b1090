package takeoff

import (
	"fmt"
	"strings"

	"filmbuild/estimate/fault"
)

// elements reads the rows of a table into its list.
func (in *intake) elements(f filled) {
	heads := in.headings(f)
	for i := f.head + 1; i < len(f.rows); i++ {
		at := fault.Cell{Sheet: f.name, Row: i + 1}
		row := &line{intake: in, filled: f, heads: heads, cells: f.rows[i], at: at}
		if !row.blank() {
			row.read()
		}
	}
}

// headings finds the column of every head; one that is refused is nil.
func (in *intake) headings(f filled) []*heading {
	heads := make([]*heading, len(f.rows[f.head]))
	seen := map[string]string{}
	for k, c := range f.rows[f.head] {
		if c.blank() {
			continue
		}
		at := fault.Cell{Sheet: f.name, Row: f.head + 1, Column: letters(k), Head: c.said}
		h, bad := f.table.heading(strings.TrimSpace(c.said))
		switch {
		case c.bad != nil:
			in.faults.add(at, "", c.bad.code, c.bad.detail)
		case bad != nil:
			in.faults.add(at, "", bad.code, bad.detail)
		case seen[h.column.path] != "":
			in.faults.add(at, "", "duplicate_name", fmt.Sprintf("the column is there twice, also as %s; keep one of them", seen[h.column.path]))
		default:
			seen[h.column.path] = letters(k)
			heads[k] = &h
			in.priced(h, at)
		}
	}
	if key := f.table.key; key != "" && seen[key] == "" {
		in.faults.add(fault.Cell{Sheet: f.name, Row: f.head + 1}, "", "required", "the column "+key+" is missing; it names what each row belongs to")
	}
	return heads
}

// priced keeps the currency that the head of a price tells.
func (in *intake) priced(h heading, at fault.Cell) {
	switch {
	case h.currency == "":
	case in.currency == "":
		in.currency = h.currency
	case in.currency != h.currency:
		in.faults.add(at, "", "inconsistent", fmt.Sprintf("this head says %s and another one %s; a job has one currency", h.currency, in.currency))
	}
}

// line is one row on its way into the job.
type line struct {
	*intake
	filled
	heads   []*heading
	cells   []cell
	at      fault.Cell
	element element
}

func (l *line) blank() bool {
	for _, c := range l.cells {
		if !c.blank() {
			return false
		}
	}
	return true
}

func (l *line) cell(k int) fault.Cell {
	at := l.at
	at.Column = letters(k)
	if head := l.rows[l.head]; k < len(head) {
		at.Head = strings.TrimSpace(head[k].said)
	}
	return at
}

func (l *line) read() {
	if !l.enter() {
		return
	}
	for k, c := range l.cells {
		if c.blank() {
			continue
		}
		if k >= len(l.heads) || l.rows[l.head][k].blank() {
			l.intake.faults.add(l.cell(k), "", "unknown_field", "the cell has no head; name its column, or clear it")
			continue
		}
		if h := l.heads[k]; h != nil && (l.table.key == "" || h.column.path != l.table.key) {
			l.intake.put(*h, c, l.cell(k), l.element, l.commas)
		}
	}
	if id, ok := l.element.object.of["id"].(string); ok {
		if l.ids[l.table.name] == nil {
			l.ids[l.table.name] = map[string]*element{}
		}
		if _, twice := l.ids[l.table.name][id]; !twice {
			l.ids[l.table.name][id] = &l.element
		}
	}
}

// enter adds an element for the row: to the job, or to the parent that it names.
func (l *line) enter() bool {
	holder := element{object: l.job}
	if l.table.parent != "" {
		column := -1
		for k, h := range l.heads {
			if h != nil && h.column.path == l.table.key {
				column = k
			}
		}
		if column < 0 {
			return false // told once, at the head
		}
		id := ""
		if column < len(l.cells) {
			id = strings.TrimSpace(l.cells[column].said)
		}
		parent := l.ids[l.table.parent][id]
		if parent == nil {
			l.faults.add(l.cell(column), "", "unknown_reference", fmt.Sprintf("there is no row with the id %q in the table %s", id, l.table.parent))
			return false
		}
		holder = *parent
	}
	l.element.object = newObject()
	i := holder.object.appendTo(l.table.list, l.element.object)
	if i < 0 {
		l.faults.add(l.at, "", "inconsistent", fmt.Sprintf("%s is given elsewhere already, and not as a list; keep one of them", l.table.list))
		return false
	}
	l.element.pointer = holder.pointer + pointerOf(l.table.list) + index(i)
	l.faults.cells[l.element.pointer] = l.at
	return true
}

// put sets the field of a cell.
func (in *intake) put(h heading, c cell, at fault.Cell, into element, commas bool) {
	pointer := into.pointer + pointerOf(h.column.path)
	value, bad := any(nil), c.bad
	if bad == nil {
		value, bad = h.value(c.said, commas)
	}
	if bad != nil {
		in.faults.add(at, pointer, bad.code, bad.detail)
		return
	}
	if h.column.path == rest {
		more, ok := value.(*object)
		if !ok {
			in.faults.add(at, "", "wrong_type", "rest must be a JSON object, such as {\"note\": \"…\"}")
		} else if twice := into.object.merge(more); twice != "" {
			in.faults.add(at, "", "duplicate_name", twice+" is in rest and in a column too; keep one of them")
		}
		for _, name := range more.namesOf() {
			if _, known := in.faults.cells[into.pointer+"/"+name]; !known {
				in.faults.cells[into.pointer+"/"+name] = at
			}
		}
		return
	}
	if !into.object.put(h.column.path, value) {
		in.faults.add(at, pointer, "duplicate_name", "what this cell says is given already, in another column or row; keep one of them")
		return
	}
	in.faults.cells[pointer] = at
}

// namesOf lists the members of an object; of none there are none.
func (o *object) namesOf() []string {
	if o == nil {
		return nil
	}
	return o.names
}

// jobFields reads the table job: a field and its value to a row.
func (in *intake) jobFields(f filled) {
	field, value := -1, -1
	for k, c := range f.rows[f.head] {
		at := fault.Cell{Sheet: f.name, Row: f.head + 1, Column: letters(k), Head: c.said}
		switch plainName(c.said) {
		case "":
		case "field":
			field = k
		case "value":
			value = k
		case "meaning":
		default:
			in.faults.add(at, "", "unknown_field", "the table job has the columns field, value and meaning; the last is for people")
		}
	}
	if field < 0 || value < 0 {
		in.faults.add(fault.Cell{Sheet: f.name, Row: f.head + 1}, "", "required", "the table job needs the columns field and value")
		return
	}
	for i := f.head + 1; i < len(f.rows); i++ {
		row := f.rows[i]
		if value >= len(row) || row[value].blank() {
			continue
		}
		at := fault.Cell{Sheet: f.name, Row: i + 1, Column: letters(field), Head: "field"}
		if field >= len(row) || row[field].blank() {
			in.faults.add(at, "", "required", "the value has no field; name it, or clear the row")
			continue
		}
		h, bad := f.table.heading(strings.TrimSpace(row[field].said))
		if bad != nil {
			in.faults.add(at, "", bad.code, bad.detail)
			continue
		}
		at.Column, at.Head = letters(value), strings.TrimSpace(row[field].said)
		in.priced(h, at)
		in.put(h, row[value], at, element{object: in.job}, f.commas)
	}
}
