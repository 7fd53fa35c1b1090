package report

import (
	"fmt"
	"strconv"
	"strings"

	"filmbuild/estimate"
)

// masking lists for each step the edges that it tapes; steps that tape the same
// ones are told together.
func (t *table) masking() {
	told := map[string]string{} // the list -> the step that has it first
	var lines []string
	for i := range t.e.Steps {
		s := &t.e.Steps[i]
		if len(s.Masking) == 0 {
			continue
		}
		edges := make([]string, len(s.Masking))
		for k, m := range s.Masking {
			edges[k] = t.edge(m)
		}
		list := strings.Join(edges, "; ")
		if before, again := told[list]; again {
			list = "the same as in " + before
		} else {
			told[list] = s.ID
		}
		lines = append(lines, fmt.Sprintf("%s (%s): %s", s.ID, t.measured(s.MaskingHours, "h"), list))
	}
	if len(lines) == 0 {
		return
	}
	t.section("MASK (time to lay it; each edge with its length, of all parts together)")
	for _, line := range lines {
		paragraph(&t.out, "- ", line)
	}
}

// edge tells one edge.
func (t *table) edge(m estimate.MaskedEdge) string {
	text := m.Name
	switch {
	case m.Kind == "marking" && m.Tapes > 0:
		text += ", " + m.Between[0] + " against " + m.Between[1]
	case m.Kind != "opening" && m.Kind != "open_end" && m.Kind != "marking":
		text += " against " + m.Between[1]
	}
	text += " " + t.measured(m.LengthM, "m")
	switch {
	case m.Passes == 0 && m.ServedBy != "":
		return text + " (tape of " + m.ServedBy + ")"
	case m.Passes == 0:
		return text + " (no tape: " + m.Note + ")"
	case m.Tapes == 0:
		return text + " (" + m.Note + ")"
	}
	if m.Tapes == 2 {
		text += " fine and wide"
	}
	if m.Passes > 1 {
		text += fmt.Sprintf(" × %d", m.Passes)
	}
	return text
}

// maskingRows is one row for each edge of each step.
func maskingRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"step", "kind", "name", "treated", "beside", "colour", "length_m", "passes", "tapes", "tape_m", "cover_m2", "served_by", "note"}}
	for i := range e.Steps {
		for _, m := range e.Steps[i].Masking {
			rows = append(rows, []string{text(e.Steps[i].ID), m.Kind, text(m.Name), text(m.Between[0]), text(m.Between[1]), text(m.Colour), number(m.LengthM),
				strconv.Itoa(m.Passes), strconv.Itoa(m.Tapes), number(m.TapeM), number(m.CoverM2), text(m.ServedBy), text(m.Note)})
		}
	}
	return rows
}

// colourRows is one row for each colour of the markings of each step.
func colourRows(e *estimate.Estimate) [][]string {
	rows := [][]string{{"step", "layer", "colour", "product", "area_m2", "small_m2", "coats", "transfer_efficiency_percent", "litres", "thinner_l", "hours"}}
	for i := range e.Steps {
		for _, c := range e.Steps[i].Colours {
			rows = append(rows, []string{text(e.Steps[i].ID), strconv.Itoa(c.Layer), text(c.Colour), text(c.Product), number(c.AreaM2), number(c.SmallM2),
				strconv.Itoa(c.Coats), number(c.Efficiency), number(c.Litres), number(c.ThinnerL), number(c.Hours)})
		}
	}
	return rows
}

// colours lists what each colour of the markings takes.
func (t *table) colours() {
	g := grid{columns: []column{{"colour", false}, {"step", false}, {t.unit("m2"), true}, {"paint " + t.unit("l"), true}, {"hours", true}, {"lands %", true}}}
	for i := range t.e.Steps {
		for _, c := range t.e.Steps[i].Colours {
			g.row(c.Colour, t.e.Steps[i].ID, t.number(c.AreaM2, "m2", 3), t.number(c.Litres, "l", 3), fixed(c.Hours, 2), fixed(c.Efficiency, 0))
		}
	}
	if len(g.rows) == 0 {
		return
	}
	t.section("COLOURS of markings, in the order of painting")
	g.write(&t.out)
}
