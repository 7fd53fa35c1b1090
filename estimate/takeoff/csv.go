package takeoff

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"filmbuild/estimate/fault"
)

// readCSV reads a table of text. Its head tells whether commas, semicolons or
// tabs part the columns; with semicolons, decimals may have a comma.
func readCSV(name string, data []byte, faults *gathered) (grid, bool) {
	g, at := grid{name: name}, fault.Cell{Sheet: name}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		faults.add(at, "", "wrong_type", "the file is UTF-16; save it as CSV UTF-8")
		return g, false
	case bytes.IndexByte(data, 0) >= 0:
		faults.add(at, "", "wrong_type", "the file is neither CSV nor XLSX")
		return g, false
	case !utf8.Valid(data):
		line := 1
		for rest := data; ; line++ {
			one, below, more := bytes.Cut(rest, []byte("\n"))
			if !utf8.Valid(one) || !more {
				break
			}
			rest = below
		}
		faults.add(fault.Cell{Sheet: name, Row: line}, "", "wrong_type", "the text is not UTF-8; save the file as CSV UTF-8")
		return g, false
	}
	separator, lines, bad := separatorOf(data)
	if lines < 0 {
		faults.add(at, "", "required", "the file is empty; the templates show what a take-off looks like")
		return g, false
	}
	if bad != "" {
		faults.add(fault.Cell{Sheet: name, Row: lines + 1}, "", "inconsistent", bad)
		return g, false
	}
	g.commas = separator == ';'
	for range lines {
		_, data, _ = bytes.Cut(data, []byte("\n"))
		g.rows = append(g.rows, nil)
	}
	return g, g.fill(data, separator, lines, faults)
}

// fill reads the rows behind the first lines, which are blank or tell the
// separator. A row keeps the number of the line it starts on.
func (g *grid) fill(data []byte, separator rune, lines int, faults *gathered) bool {
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma, r.FieldsPerRecord = separator, -1
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			return true
		}
		var broken *csv.ParseError
		if errors.As(err, &broken) {
			faults.add(fault.Cell{Sheet: g.name, Row: lines + broken.Line, Column: letters(max(0, broken.Column-1))}, "", "syntax",
				"the row is not CSV: "+broken.Err.Error()+"; a quote inside a cell is written twice, and the cell in quotes")
			return false
		}
		line, _ := r.FieldPos(0)
		if len(record) > MostColumns || lines+line > MostRows {
			faults.add(fault.Cell{Sheet: g.name, Row: lines + line}, "", "too_many", fmt.Sprintf("a table has at most %d rows and %d columns", MostRows, MostColumns))
			return false
		}
		for len(g.rows) < lines+line-1 {
			g.rows = append(g.rows, nil) // blank lines, which the reader leaves out
		}
		row := make([]cell, len(record))
		for i, said := range record {
			row[i] = cell{said: unguarded(said)}
		}
		g.rows = append(g.rows, row)
	}
}

// separatorOf finds what parts the columns by the head, which is the first line
// that is not blank; names of columns hold none of the three. lines is how many
// stand before it, -1 where there is no such line.
func separatorOf(data []byte) (separator rune, lines int, bad string) {
	for rest, more := data, true; more; {
		var line []byte
		line, rest, more = bytes.Cut(rest, []byte("\n"))
		said := strings.TrimSpace(string(line))
		if told, ok := strings.CutPrefix(strings.ToLower(said), "sep="); ok && len(told) == 1 && strings.Contains(",;\t", told) {
			return rune(told[0]), lines + 1, ""
		}
		if strings.Trim(said, ",; \t\r\"") != "" {
			return separatorIn(string(line), lines)
		}
		lines++
	}
	return ',', -1, ""
}

func separatorIn(line string, lines int) (rune, int, string) {
	found := map[rune]int{}
	quoted := false
	for _, r := range line {
		switch {
		case r == '"':
			quoted = !quoted
		case !quoted && strings.ContainsRune(",;\t", r):
			found[r]++
		}
	}
	if len(found) > 1 {
		return 0, lines, "commas, semicolons or tabs are mixed in the head, so that nobody can tell which of them parts the columns; use one of them"
	}
	for r := range found {
		return r, lines, ""
	}
	return ',', lines, ""
}

// risky are the characters that make a spreadsheet take text for a formula.
const risky = "=+-@\t\r"

// guarded puts an apostrophe before text that a spreadsheet would run.
func guarded(said string) string {
	if said != "" && (strings.ContainsRune(risky, rune(said[0])) || said[0] == '\'') {
		return "'" + said
	}
	return said
}

// unguarded takes that apostrophe off.
func unguarded(said string) string {
	if len(said) > 1 && said[0] == '\'' && (strings.ContainsRune(risky, rune(said[1])) || said[1] == '\'') {
		return said[1:]
	}
	return said
}
