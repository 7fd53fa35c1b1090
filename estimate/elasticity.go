package estimate

import (
	"maps"
	"slices"

	"filmbuild/estimate/formula"
	"filmbuild/surfaces/quantity"
)

// elasticity works the cost of one step out for other values of one number that
// it rests on, by the formulas and links of its workings.
type elasticity struct {
	step     *StepEstimate
	formulas map[string]formula.Formula // of all steps, by text
	byNode   map[quantity.Node]int      // working of the step -> its index
	found    map[quantity.Node]int      // leaf -> its place in order
	order    []quantity.Node
	values   []float64 // of the leaves
	reaches  [][]int   // working -> places of the leaves below it
	reached  []bool
	memo     []float64
	done     []bool
}

func newElasticity(s *StepEstimate, formulas map[string]formula.Formula) *elasticity {
	n := len(s.Working)
	e := &elasticity{step: s, formulas: formulas, byNode: make(map[quantity.Node]int, n), found: make(map[quantity.Node]int, n),
		reaches: make([][]int, n), reached: make([]bool, n), memo: make([]float64, n), done: make([]bool, n)}
	for i := range s.Working {
		e.byNode[quantity.StepWorking(s.ID, s.Working[i].Quantity, s.Working[i].Of)] = i
	}
	return e
}

// leaves lists the numbers that the hours and the materials of the step come
// from, in the order in which they are met. A face stands for the measuring of
// its component.
func (e *elasticity) leaves() []quantity.Node {
	for i := range e.step.Working {
		if w := &e.step.Working[i]; w.Uses != "" || w.Quantity == "hours" {
			e.reach(i)
		}
	}
	return e.order
}

// reach finds the leaves below a working.
func (e *elasticity) reach(i int) []int {
	if e.reached[i] {
		return e.reaches[i]
	}
	e.reached[i] = true
	w := &e.step.Working[i]
	add := func(place int) {
		if !slices.Contains(e.reaches[i], place) {
			e.reaches[i] = append(e.reaches[i], place)
		}
	}
	for _, l := range w.Links {
		if inner, ours := e.byNode[l.Node]; ours {
			for _, place := range e.reach(inner) {
				add(place)
			}
			continue
		}
		n, value := l.Node, backwards(l, w.Terms[l.Term])
		switch n.Kind {
		case "face":
			n, value = measuring(n.ID), 1
		case "step", "order", "budget":
			continue
		}
		place, met := e.found[n]
		if !met {
			place = len(e.order)
			e.found[n] = place
			e.order, e.values = append(e.order, n), append(e.values, value)
		}
		add(place)
	}
	return e.reaches[i]
}

// backwards is the value of the node that a link brings to a term.
func backwards(l quantity.Link, term float64) float64 {
	times := l.Times
	if times == 0 {
		times = 1
	}
	if l.Inverse {
		return times / term
	}
	return term / times
}

// cost is what the step costs when one number has another value: materials in
// proportion to what is used of them, labour in proportion to the hours.
func (e *elasticity) cost(place int, x float64) float64 {
	clear(e.done)
	sum := 0.0
	for i := range e.step.Working {
		if w := &e.step.Working[i]; w.Quantity == "hours" && w.Value > 0 {
			sum += e.step.LabourCost.Float64() * e.value(i, place, x) / w.Value
		}
	}
	for _, m := range e.step.Materials {
		before, after := 0.0, 0.0
		for i := range e.step.Working {
			if w := &e.step.Working[i]; w.Uses == m.Product {
				before += w.Value
				after += e.value(i, place, x)
			}
		}
		if before > 0 {
			sum += m.Cost.Float64() * after / before
		}
	}
	return sum
}

// value works one working out again. What does not depend on the number, and
// what is found by a procedure, stays as it is.
func (e *elasticity) value(i, place int, x float64) float64 {
	w := &e.step.Working[i]
	switch {
	case !slices.Contains(e.reach(i), place):
		return w.Value
	case e.done[i]:
		return e.memo[i]
	}
	e.memo[i], e.done[i] = w.Value, true
	terms := maps.Clone(w.Terms)
	for _, l := range w.Links {
		switch inner, ours := e.byNode[l.Node]; {
		case ours:
			terms[l.Term] = l.Carry(e.value(inner, place, x))
		case l.Node == e.order[place]:
			terms[l.Term] = l.Carry(x)
		case l.Node.Kind == "face" && measuring(l.Node.ID) == e.order[place]:
			terms[l.Term] = w.Terms[l.Term] * x
		}
	}
	if f := e.formula(w.Formula); f.Kind != formula.Described {
		if value, err := f.Work(terms); err == nil {
			e.memo[i] = value
		}
	}
	return e.memo[i]
}

// formula reads a formula once for all steps.
func (e *elasticity) formula(text string) formula.Formula {
	f, read := e.formulas[text]
	if !read {
		f, _ = formula.Read(text) // a test reads every formula
		e.formulas[text] = f
	}
	return f
}
