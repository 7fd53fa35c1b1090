package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces"
	"filmbuild/surfaces/quantity"
)

// Described is what people are told of an input of the graph.
type Described struct {
	Name    string
	Unit    string
	Pointer string // in the job, where the job gives the number
	Source  string
}

// Describe tells of an input of the graph.
func (g *Graph) Describe(n quantity.Node) Described {
	d := Described{Name: g.run.nameOf(n), Unit: quantity.UnitOf(n.Quantity), Pointer: g.run.pointerOf(n), Source: "the job"}
	switch value, known := g.run.bookValue(n); {
	case known && d.Pointer == "":
		d.Unit, d.Source = value.Unit, value.Text()
	case n.Kind == "component" && n == measuring(n.ID):
		d.Source = "1 as measured; its range is the accuracy of the area"
	case n.Kind == "patches":
		d.Source = "test patch"
	case n.Kind == "marking":
		d.Source = "the exact figure, of all that are painted"
	case d.Pointer == "":
		d.Source = "the estimate"
	}
	return d
}

// Node names the line's amount in the graph; it is the zero Node where the
// amount is no working.
func (l *BudgetLine) Node() quantity.Node { return l.node }

// Choice is what one part of a product can be bought in: the whole product, or
// base or hardener where they are sold apart.
type Choice struct {
	Part  string
	Share float64 // of the need
	Packs []ChoicePack
}

// ChoicePack is a pack on sale at the price of the job.
type ChoicePack struct {
	Size  float64
	Price float64
}

// Choices lists what a line of the order can be bought in, leaving aside packs
// without a price where others have one, as the order does.
func (g *Graph) Choices(line *OrderLine) []Choice {
	p, known := g.run.catalogue.Product(line.Product)
	if !known || len(line.offers) == 0 {
		return nil
	}
	var list []Choice
	for _, part := range sharesOf(p) {
		c := Choice{Part: part.Part, Share: part.Ratio}
		priced := false
		for _, o := range line.offers {
			priced = priced || o.part == part.Part && o.price != nil
		}
		for _, o := range line.offers {
			switch {
			case o.part != part.Part || (priced && o.price == nil):
			case o.price == nil:
				c.Packs = append(c.Packs, ChoicePack{Size: o.pack})
			default:
				c.Packs = append(c.Packs, ChoicePack{Size: o.pack, Price: o.price.InexactFloat64()})
			}
		}
		list = append(list, c)
	}
	return list
}

// MinimumOrder is the least of a product that is sold at a time.
func (g *Graph) MinimumOrder(line *OrderLine) float64 {
	if p, known := g.run.catalogue.Product(line.Product); known {
		return p.Base().MinimumOrder
	}
	return 0
}

// sharesOf lists what a product is bought in, with each part's share of it.
func sharesOf(p products.Product) []products.MixShare {
	paint, ok := p.(*products.Paint)
	if !ok || !paint.SoldApart() {
		return []products.MixShare{{Ratio: 1}}
	}
	parts := paint.Mix.Parts()
	whole := 0.0
	for _, part := range parts {
		whole += part.Ratio
	}
	for k := range parts {
		parts[k].Ratio /= whole
	}
	return parts
}

// InputsOfJob describes the inputs of the graph that the job gives, by pointer.
func (g *Graph) InputsOfJob() []Described {
	var list []Described
	for _, k := range g.Model.Inputs() {
		if d := g.Describe(g.Model.Vertices[k].Node); d.Pointer != "" {
			list = append(list, d)
		}
	}
	return list
}

// Shape returns the shape of a component, nil where there is none of that id.
func (g *Graph) Shape(component string) surfaces.Shape {
	if k, known := g.run.componentAt[component]; known {
		return g.run.job.Components[k].Shape
	}
	return nil
}
