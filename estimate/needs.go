package estimate

import "filmbuild/products"

// needs adds up how much of each product the steps consume, in the order in
// which the products are first needed.
type needs struct {
	lines []need
	index map[string]int
}

type need struct {
	product  products.Product
	quantity float64
}

func (n *needs) add(p products.Product, quantity float64) {
	id := p.Base().ID
	k, known := n.index[id]
	if !known {
		if n.index == nil {
			n.index = map[string]int{}
		}
		k = len(n.lines)
		n.index[id] = k
		n.lines = append(n.lines, need{product: p})
	}
	n.lines[k].quantity += quantity
}

// use notes that a step consumes a quantity of a product, in the unit in which
// the product is sold.
func (r *run) use(s *StepEstimate, p products.Product, quantity float64) {
	if quantity == 0 {
		return
	}
	r.needs.add(p, quantity)
	for i := range s.Materials {
		if s.Materials[i].Product == p.Base().ID {
			s.Materials[i].Quantity += quantity
			return
		}
	}
	s.Materials = append(s.Materials, Material{Product: p.Base().ID, Name: p.Base().Name, Quantity: quantity, Unit: p.Base().Unit()})
}
