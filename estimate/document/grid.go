package document

import "strings"

// column is one column of a table: its head, its share of the width and how it
// is set: "L", "R" for numbers.
type column struct {
	head  string
	share float64
	set   string
}

// table prints rows under heads that come again on every page. A row whose
// first cell begins with a tab is a sum: bold, under a rule.
func (p *paper) table(columns []column, rows [][]string) {
	whole := 0.0
	for _, c := range columns {
		whole += c.share
	}
	widths := make([]float64, len(columns))
	for i, c := range columns {
		widths[i] = p.width * c.share / whole
	}
	p.tableHead(columns, widths)
	for _, row := range rows {
		sum := len(row) > 0 && strings.HasPrefix(row[0], "\t")
		style := ""
		if sum {
			style = "B"
		}
		p.face(style, smallSize, ink())
		height := p.rowHeight(row, widths)
		if _, high := p.GetPageSize(); p.GetY()+height > high-bottom {
			p.AddPage()
			p.tableHead(columns, widths)
			p.face(style, smallSize, ink())
		}
		p.row(row, columns, widths, height, sum)
	}
	p.Ln(2)
}

func (p *paper) tableHead(columns []column, widths []float64) {
	p.room(16)
	p.face("B", smallSize, ink())
	c := ground()
	p.SetFillColor(c.r, c.g, c.b)
	heads := make([]string, len(columns))
	for i := range columns {
		heads[i] = columns[i].head
	}
	height := p.rowHeight(heads, widths)
	p.Rect(margin, p.GetY(), p.width, height, "F")
	p.row(heads, columns, widths, height, false)
}

const cellPad = 1.0 // mm above and below the text of a cell

func (p *paper) rowHeight(row []string, widths []float64) float64 {
	lines := 1
	for i, cell := range row {
		if i < len(widths) {
			lines = max(lines, len(p.SplitText(shown(cell), widths[i]-2)))
		}
	}
	return float64(lines)*smallLine + 2*cellPad
}

func (p *paper) row(row []string, columns []column, widths []float64, height float64, sum bool) {
	x, y := margin, p.GetY()
	for i, cell := range row {
		if i >= len(columns) {
			break
		}
		p.SetXY(x, y+cellPad)
		p.MultiCell(widths[i], smallLine, strings.TrimPrefix(shown(strings.TrimPrefix(cell, "\t")), " "), "", columns[i].set, false)
		x += widths[i]
	}
	width, shade := 0.15, rule()
	if sum {
		width, shade = 0.35, ink()
		p.stroke(shade, width)
		p.Line(margin, y, margin+p.width, y)
		p.stroke(rule(), 0.15)
	} else {
		p.stroke(shade, width)
	}
	p.Line(margin, y+height, margin+p.width, y+height)
	p.SetXY(margin, y+height)
}
