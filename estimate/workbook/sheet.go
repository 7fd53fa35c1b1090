package workbook

import (
	"fmt"
	"math"

	"github.com/xuri/excelize/v2"
)

// style is how a cell looks.
type style int

const (
	plain   style = iota
	wrapped       // text over several lines
	title
	note // small grey text
	head
	figure  // a number
	cash    // money, with the places of the currency
	whole   // no places
	input   // a number that the reader may change
	total   // a sum
	totals  // a sum of money
	section // a heading within a sheet
)

// cell is one cell of a sheet in the making. A formula has its value beside it.
type cell struct {
	value   any
	formula string
	style   style
}

func text(s string) cell    { return cell{value: s} }
func words(s string) cell   { return cell{value: s, style: wrapped} }
func heading(s string) cell { return cell{value: s, style: head} }
func empty() cell           { return cell{} }

func headings(names ...string) []cell {
	row := make([]cell, len(names))
	for i, name := range names {
		row[i] = heading(name)
	}
	return row
}

// worked is a cell with a formula and its value.
func worked(formula string, value float64, s style) cell {
	return cell{value: value, formula: formula, style: s}
}

// sheet is one sheet in the making.
type sheet struct {
	name   string
	rows   [][]cell
	widths []float64
	frozen int // rows that stay in sight
}

// add puts a row at the end and returns its number, from 1.
func (s *sheet) add(row ...cell) int {
	s.rows = append(s.rows, row)
	return len(s.rows)
}

// at is a reference to a cell of the sheet from any other.
func (s *sheet) at(column string, row int) string {
	return fmt.Sprintf("%s!$%s$%d", s.name, column, row)
}

// span is a reference to the cells of a column.
func (s *sheet) span(column string, first, last int) string {
	return fmt.Sprintf("%s!$%s$%d:$%s$%d", s.name, column, first, column, last)
}

const (
	titleHeight = 27 // points
	lineHeight  = 15
)

// height is what a row needs for its wrapped texts; 0 leaves it to the program.
// Rows are streamed, and not every program measures texts on opening.
func (s *sheet) height(row []cell) float64 {
	if len(row) > 0 && row[0].style == title {
		return titleHeight
	}
	lines := 1.0
	for k, c := range row {
		if shown, ok := c.value.(string); ok && (c.style == wrapped || c.style == head) && k < len(s.widths) {
			lines = math.Max(lines, math.Ceil(float64(len([]rune(shown)))/s.widths[k]))
		}
	}
	if lines == 1 {
		return 0
	}
	return lines * lineHeight
}

// write streams the sheet into a file.
func (s *sheet) write(f *excelize.File, styles map[style]int) error {
	w, err := f.NewStreamWriter(s.name)
	if err != nil {
		return err
	}
	for i, width := range s.widths {
		if err := w.SetColWidth(i+1, i+1, width); err != nil {
			return err
		}
	}
	if s.frozen > 0 {
		below, err := excelize.CoordinatesToCellName(1, s.frozen+1)
		if err != nil {
			return err
		}
		if err := w.SetPanes(&excelize.Panes{Freeze: true, YSplit: s.frozen, TopLeftCell: below, ActivePane: "bottomLeft"}); err != nil {
			return err
		}
	}
	for i, row := range s.rows {
		cells := make([]any, len(row))
		for k, c := range row {
			if c.value != nil || c.formula != "" || c.style != plain {
				cells[k] = excelize.Cell{StyleID: styles[c.style], Formula: c.formula, Value: c.value}
			}
		}
		from, err := excelize.CoordinatesToCellName(1, i+1)
		if err != nil {
			return err
		}
		if err := w.SetRow(from, cells, excelize.RowOpts{Height: s.height(row)}); err != nil {
			return err
		}
	}
	return w.Flush()
}
