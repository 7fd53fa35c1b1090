package workbook

import (
	"strings"

	"filmbuild/estimate/formula"
	"filmbuild/estimate/model"
)

// writeWorking gives every figure of the graph a row with its formula, and a row
// to each of its terms below it.
func (b *book) writeWorking() {
	s := &b.working
	s.add(cell{value: "Working", style: title})
	s.add(cell{value: "Each figure with its formula, alive: below it the terms it is worked out from.", style: note})
	s.add(headings("Where", "Figure", "Of, or term", "Value", "Unit", "Formula", "Source")...)
	m := b.graph.Model
	for i := range m.Vertices { // each after those it comes from
		v := &m.Vertices[i]
		if v.Kind != model.Input {
			b.explain(i, v)
		}
	}
}

func (b *book) explain(i int, v *model.Vertex) {
	s := &b.working
	row := len(s.rows) + 1
	references := map[string]string{}
	for k, t := range v.Terms {
		references[t.Name] = s.at("D", row+1+k)
	}
	b.cells[i] = s.at("D", row)
	s.add(cell{value: place(v), style: section}, text(v.Node.Quantity), text(of(v)), worked(b.formulaOf(v, row, references), v.Value, figure), text(v.Unit), words(v.Text), words(v.Source))
	for _, t := range v.Terms {
		value := cell{value: t.Value, style: figure}
		switch {
		case t.From >= 0:
			value = worked(b.termFrom(t), t.Value, figure)
		case v.Node.Kind == "face" && t.Name == "A":
			value = worked(b.faces[i], t.Value, figure)
		}
		s.add(empty(), empty(), text(t.Name), value)
	}
}

// formulaOf writes a vertex as a formula of its terms' cells.
func (b *book) formulaOf(v *model.Vertex, row int, references map[string]string) string {
	switch {
	case v.Kind == model.Stepped:
		if chosen, known := b.choice[nodeKey(v)]; known {
			return chosen
		}
		return number(v.Value)
	case v.Formula.Kind == formula.Summed:
		if len(v.Terms) == 0 {
			return "0"
		}
		return "SUM(" + b.working.span("D", row+1, row+len(v.Terms)) + ")"
	}
	return inCells(v.Formula.Expression, func(name string) string { return references[name] })
}

func (b *book) termFrom(t model.TermOf) string {
	from := b.cells[t.From]
	switch {
	case t.Inverse:
		return number(t.Times) + "/" + from
	case t.Times == 1:
		return from
	}
	return from + "*" + number(t.Times)
}

func place(v *model.Vertex) string {
	return strings.TrimSpace(v.Node.Kind + " " + v.Node.ID)
}

func of(v *model.Vertex) string {
	if v.Node.Kind == "face" {
		return v.Node.Quantity
	}
	return v.Node.Of
}

func nodeKey(v *model.Vertex) string {
	return v.Node.Kind + "/" + v.Node.ID + "/" + v.Node.Quantity + "/" + v.Node.Of
}
