package estimate

import (
	"math"

	"filmbuild/estimate/calendar"
	"filmbuild/estimate/stamp"
	"filmbuild/products"
)

// needs adds up how much of each product the steps consume, in the order in
// which the products are first needed.
type needs struct {
	lines []need
	index map[string]int
}

type need struct {
	product products.Product
	uses    []use
}

// use is what one step consumes of a product, and when where the job says so.
type use struct {
	step     string
	quantity float64
	start    calendar.Date
	dated    bool
}

func (n *needs) add(p products.Product, u use) {
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
	line := &n.lines[k]
	if last := len(line.uses) - 1; last >= 0 && line.uses[last].step == u.step {
		line.uses[last].quantity += u.quantity
		return
	}
	line.uses = append(line.uses, u)
}

// use notes that a step consumes a quantity of a product, in the unit in which
// the product is sold.
func (r *run) use(s *StepEstimate, p products.Product, quantity float64) {
	if quantity == 0 {
		return
	}
	r.needs.add(p, use{step: s.ID, quantity: quantity})
	for i := range s.Materials {
		if s.Materials[i].Product == p.Base().ID {
			s.Materials[i].Quantity += quantity
			return
		}
	}
	s.Materials = append(s.Materials, Material{Product: p.Base().ID, Name: p.Base().Name, Quantity: quantity, Unit: p.Base().Unit()})
}

// startDay is the day on which a step starts, where the job says so.
func startDay(b *StepBase) (calendar.Date, bool) {
	hours, dated, err := stamp.Hours(b.Starts)
	return calendar.Date(math.Floor(hours / 24)), dated && err == nil
}

// dateUses gives every use the date on which its step starts.
func (r *run) dateUses() {
	starts := map[string]calendar.Date{}
	for _, step := range r.job.Steps {
		if d, ok := startDay(step.base()); ok {
			starts[step.base().ID] = d
		}
	}
	for i := range r.needs.lines {
		uses := r.needs.lines[i].uses
		for k := range uses {
			uses[k].start, uses[k].dated = starts[uses[k].step]
		}
	}
}
