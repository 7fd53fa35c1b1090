package products

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// row is one record of a data file.
type row struct {
	file    string
	line    int
	columns []string
	cells   []string
	faults  *Faults
}

func (r row) text(column string) string {
	if i := slices.Index(r.columns, column); i >= 0 {
		return r.cells[i]
	}
	return ""
}

func (r row) fault(column, format string, args ...any) {
	*r.faults = append(*r.faults, Fault{r.file, r.line, column, fmt.Sprintf(format, args...)})
}

// required returns the text of a cell and notes an empty one.
func (r row) required(column string) string {
	text := r.text(column)
	if text == "" {
		r.fault(column, "is empty; it must be given")
	}
	return text
}

// number reads a cell as a plain decimal number; ok is false for an empty cell
// and for one that is noted as a fault.
func (r row) number(column string) (value float64, ok bool) {
	text := r.text(column)
	if text == "" {
		return 0, false
	}
	value, err := plainNumber(text)
	if err != nil {
		r.fault(column, "%s", err)
	}
	return value, err == nil
}

// plainNumber reads digits with at most one point and a leading minus: no
// exponent, no hexadecimal, no NaN.
func plainNumber(text string) (float64, error) {
	if len(text) > 20 || strings.Trim(text, "-.0123456789") != "" {
		return 0, fmt.Errorf("%q is no plain number such as 12.5", clip(text))
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is no plain number such as 12.5", clip(text))
	}
	return value, nil
}

// readTable reads a data file whose first line names exactly the columns, in
// any order. It returns nil when the file as a whole cannot be used.
func readTable(file string, data []byte, columns []string, faults *Faults) []row {
	whole := func(line int, format string, args ...any) {
		*faults = append(*faults, Fault{File: file, Line: line, Detail: fmt.Sprintf(format, args...)})
	}
	if !utf8.Valid(data) {
		whole(0, "is not UTF-8")
		return nil
	}
	reader := csv.NewReader(strings.NewReader(string(data)))
	reader.FieldsPerRecord = -1
	header, err := reader.Read()
	if err != nil {
		whole(1, "has no header: %v", err)
		return nil
	}
	if !checkHeader(header, columns, whole) {
		return nil
	}
	var rows []row
	for {
		cells, err := reader.Read()
		if errors.Is(err, io.EOF) {
			return rows
		}
		if err != nil {
			var parse *csv.ParseError
			if errors.As(err, &parse) {
				whole(parse.Line, "%v", parse.Err)
			} else {
				whole(0, "%v", err)
			}
			return nil
		}
		line, _ := reader.FieldPos(0)
		if len(cells) != len(header) {
			whole(line, "has %d cells; the header names %d columns", len(cells), len(header))
			continue
		}
		r := row{file, line, header, cells, faults}
		for i, cell := range cells {
			if stray := strayIn(cell); stray != "" {
				r.fault(header[i], "%s", stray)
			}
		}
		rows = append(rows, r)
	}
}

func checkHeader(header, columns []string, whole func(line int, format string, args ...any)) bool {
	good := true
	for i, name := range header {
		switch {
		case !slices.Contains(columns, name):
			whole(1, "unknown column %q; the columns are %s", clip(name), strings.Join(columns, ", "))
			good = false
		case slices.Index(header, name) < i:
			whole(1, "column %q stands twice", name)
			good = false
		}
	}
	for _, name := range columns {
		if !slices.Contains(header, name) {
			whole(1, "missing column %q", name)
			good = false
		}
	}
	return good
}

// strayIn says which characters of a cell nobody means to write, "" when none.
func strayIn(cell string) string {
	if cell != strings.TrimSpace(cell) {
		return "has a space at an end"
	}
	if strings.Contains(cell, "  ") {
		return "has two spaces in a row"
	}
	for _, r := range cell {
		if r > ' ' && r <= '~' {
			continue
		}
		if r != ' ' && (unicode.IsSpace(r) || unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) {
			return fmt.Sprintf("has the invisible character %U", r)
		}
	}
	return ""
}
