package report

import (
	"strings"
	"unicode/utf8"
)

// Width is the number of columns that no line of the table goes beyond.
const Width = 80

// column is one column of a grid: its head, and whether its cells are numbers,
// which stand at the right.
type column struct {
	head   string
	number bool
}

// grid is a table of text. The first text column takes what the others leave;
// cells too long for it go on in lines of their own.
type grid struct {
	columns []column
	rows    [][]string
}

func (g *grid) row(cells ...string) { g.rows = append(g.rows, cells) }

// widths finds the widths of the columns and the flexible one, the first that
// holds text.
func (g *grid) widths() ([]int, int) {
	widths := make([]int, len(g.columns))
	flexible := -1
	used := 2 * (len(g.columns) - 1)
	for k, c := range g.columns {
		widths[k] = utf8.RuneCountInString(c.head)
		for _, row := range g.rows {
			widths[k] = max(widths[k], utf8.RuneCountInString(row[k]))
		}
		if flexible < 0 && !c.number {
			flexible = k
		}
		used += widths[k]
	}
	if over := used - Width; over > 0 && flexible >= 0 {
		widths[flexible] = max(8, widths[flexible]-over)
	}
	return widths, flexible
}

func (g *grid) write(out *strings.Builder) {
	if len(g.rows) == 0 {
		return
	}
	widths, flexible := g.widths()
	heads := make([]string, len(g.columns))
	rules := make([]string, len(g.columns))
	for k, c := range g.columns {
		heads[k], rules[k] = c.head, strings.Repeat("-", widths[k])
	}
	g.line(out, heads, widths)
	g.line(out, rules, widths)
	for _, row := range g.rows {
		first := append([]string(nil), row...)
		var rest []string
		if flexible >= 0 {
			parts := wrap(row[flexible], widths[flexible])
			first[flexible], rest = parts[0], parts[1:]
		}
		g.line(out, first, widths)
		for _, part := range rest {
			more := make([]string, len(row))
			more[flexible] = part
			g.line(out, more, widths)
		}
	}
}

func (g *grid) line(out *strings.Builder, cells []string, widths []int) {
	var line strings.Builder
	for k, cell := range cells {
		if k > 0 {
			line.WriteString("  ")
		}
		space := strings.Repeat(" ", max(0, widths[k]-utf8.RuneCountInString(cell)))
		if g.columns[k].number {
			line.WriteString(space + cell)
		} else {
			line.WriteString(cell + space)
		}
	}
	out.WriteString(strings.TrimRight(line.String(), " ") + "\n")
}

// wrap breaks a text at spaces into lines of at most width characters; a word
// that is longer is cut.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for utf8.RuneCountInString(word) > width {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			runes := []rune(word)
			lines, word = append(lines, string(runes[:width])), string(runes[width:])
		}
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// paragraph writes a text under a bullet, later lines indented below it.
func paragraph(out *strings.Builder, bullet, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(bullet))
	for i, line := range wrap(text, Width-utf8.RuneCountInString(bullet)) {
		if i == 0 {
			out.WriteString(bullet + line + "\n")
		} else {
			out.WriteString(indent + line + "\n")
		}
	}
}
