package workbook

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"filmbuild/estimate"
	"filmbuild/estimate/model"
)

// writeInputs lists every number that nothing else gives: what the reader may
// change.
func (b *book) writeInputs() {
	s := &b.inputs
	s.add(cell{value: "Inputs", style: title})
	s.add(cell{value: "Change the numbers on the yellow ground: every sheet follows, but for Ranges. Numbers are SI; a change here does not change the job file.", style: note})
	s.add(headings("What", "Value", "Unit", "Source", "In the job")...)
	m := b.graph.Model
	groups := []struct {
		heading string
		kinds   []string
	}{
		{"Surface", []string{"face", "region", "component", "marking"}},
		{"Steps", []string{"setting", "patches", "given"}},
		{"Products", []string{"product"}},
		{"Rates and efficiencies of the book", []string{"method", "operation"}},
		{"Money", []string{"job", "item"}},
		{"Other", nil},
	}
	used := map[int]bool{}
	for _, g := range groups {
		var list []int
		for i := range m.Vertices {
			v := &m.Vertices[i]
			if !used[i] && b.editable(v) && (g.kinds == nil || slices.Contains(g.kinds, v.Node.Kind)) {
				list, used[i] = append(list, i), true
			}
		}
		if len(list) == 0 {
			continue
		}
		sort.SliceStable(list, func(i, k int) bool { return m.Vertices[list[i]].Node.ID < m.Vertices[list[k]].Node.ID })
		s.add(cell{value: g.heading, style: section})
		for _, i := range list {
			b.input(i)
		}
	}
	b.prices()
}

// prices lists the price of every pack on sale of what is in the order.
func (b *book) prices() {
	b.price = map[string]string{}
	s := &b.inputs
	for i := range b.graph.Estimate.Order {
		line := &b.graph.Estimate.Order[i]
		for _, c := range b.graph.Choices(line) {
			for _, p := range c.Packs {
				name := priceName(line, c, p)
				if _, again := b.price[name]; again {
					continue
				}
				if len(b.price) == 0 {
					s.add(cell{value: "Prices of packs, " + b.graph.Estimate.Currency, style: section})
				}
				row := s.add(text(name), cell{value: p.Price, style: input}, text(b.graph.Estimate.Currency), words("the job's price, or the catalogue's invented one"))
				b.price[name] = s.at("B", row)
			}
		}
	}
}

func priceName(line *estimate.OrderLine, c estimate.Choice, p estimate.ChoicePack) string {
	return fmt.Sprintf("price of %g %s of %s", p.Size, line.Unit, strings.TrimSpace(line.Product+" "+c.Part))
}

// editable reports whether a vertex has a cell among the inputs: the inputs of
// the graph, and faces, whose measured area is a constant of their working.
func (b *book) editable(v *model.Vertex) bool {
	return v.Kind == model.Input || v.Node.Kind == "face"
}

func (b *book) input(i int) {
	v := &b.graph.Model.Vertices[i]
	d := b.graph.Describe(v.Node)
	row := len(b.inputs.rows) + 1
	value := cell{value: v.Value, style: input}
	if v.Node.Kind == "face" {
		b.inputs.add(text("area of "+v.Node.ID+", face "+v.Node.Quantity), value, text("m²"), words("as measured, of all parts together, openings off"), empty())
		b.faces[i] = b.inputs.at("B", row) // its vertex is worked out from this on the sheet Working
		return
	}
	b.inputs.add(text(d.Name), value, text(d.Unit), words(d.Source), text(d.Pointer))
	b.cells[i] = b.inputs.at("B", row)
}
