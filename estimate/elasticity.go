package estimate

import (
	"maps"
	"slices"

	"filmbuild/estimate/formula"
	"filmbuild/surfaces/quantity"
)

// elasticity works the cost of one step out for other values of one number that
// it rests on, by the formulas and links of its workings. It holds on to those
// numbers alone that have a range. It serves one step after the other, so that
// what it needs is made once.
type elasticity struct {
	ranged    func(quantity.Node, float64) *trialled // the number at a node, nil where it has no range
	formulas  map[string]formula.Formula             // of all steps, by text
	step      *StepEstimate
	byName    map[[2]string]int // quantity and of -> working of the step
	leads     []lead            // of all workings
	workings  []elastic
	leaves    []*trialled // in the order in which they are met
	labour    costPart
	materials []costPart
	changed   []changedTerm // of the workings that are being worked out, the innermost last
}

// elastic is what is known of one working.
type elastic struct {
	reached  bool
	done     bool // with the value at hand
	from, to int  // its leads
	reaches  places
	memo     float64
	names    []string // of the terms of a sum, in their order
}

// lead follows one link: to another working of the step, or to a number.
type lead struct {
	link  *quantity.Link
	inner int  // −1 where it leads to a number
	leaf  int  // place of the number, −1 where it has no range
	face  bool // the number is the measuring of the component of a face
}

// costPart is an amount of the step that moves with some of its workings.
type costPart struct {
	amount   float64
	workings []int
}

type changedTerm struct {
	name  string
	value float64
}

func newElasticity(ranged func(quantity.Node, float64) *trialled) *elasticity {
	return &elasticity{ranged: ranged, formulas: map[string]formula.Formula{}, byName: map[[2]string]int{}}
}

// take turns to a step and follows what its hours and its materials come from. A
// face stands for the measuring of its component.
func (e *elasticity) take(s *StepEstimate) {
	e.step, e.leads, e.leaves, e.materials = s, e.leads[:0], e.leaves[:0], e.materials[:0]
	e.workings = slices.Grow(e.workings[:0], len(s.Working))[:len(s.Working)]
	clear(e.workings)
	clear(e.byName)
	e.labour = costPart{s.LabourCost.Float64(), e.labour.workings[:0]}
	for i := range s.Working {
		w := &s.Working[i]
		e.byName[[2]string{w.Quantity, w.Of}] = i
		if w.Quantity == "hours" && w.Value > 0 {
			e.labour.workings = append(e.labour.workings, i)
		}
	}
	for _, m := range s.Materials {
		part := costPart{amount: m.Cost.Float64()}
		for i := range s.Working {
			if s.Working[i].Uses == m.Product {
				part.workings = append(part.workings, i)
			}
		}
		e.materials = append(e.materials, part)
	}
	for i := range s.Working {
		if w := &s.Working[i]; w.Uses != "" || w.Quantity == "hours" {
			e.reach(i)
		}
	}
}

// reach finds the numbers below a working.
func (e *elasticity) reach(i int) places {
	known := &e.workings[i]
	if known.reached {
		return known.reaches
	}
	known.reached = true
	w := &e.step.Working[i]
	known.from = len(e.leads)
	for k := range w.Links {
		if l, leads := e.lead(&w.Links[k]); leads {
			e.leads = append(e.leads, l)
		}
	}
	known.to = len(e.leads)
	for k := known.from; k < known.to; k++ {
		if l := &e.leads[k]; l.inner < 0 {
			if l.leaf = e.leaf(l, w); l.leaf >= 0 {
				known.reaches = known.reaches.with(l.leaf)
			}
			continue
		}
		known.reaches = known.reaches.and(e.reach(e.leads[k].inner))
	}
	return known.reaches
}

// leaf returns the place of the number that a lead of a working leads to, −1
// where it has no range.
func (e *elasticity) leaf(l *lead, w *quantity.Working) int {
	n, value := l.link.Node, 1.0
	if l.face {
		n = measuring(n.ID)
	} else {
		value = backwards(*l.link, w.Terms[l.link.Term])
	}
	leaf := e.ranged(n, value)
	if leaf == nil {
		return -1
	}
	if leaf.in != e.step {
		leaf.in, leaf.place = e.step, len(e.leaves)
		e.leaves = append(e.leaves, leaf)
	}
	return leaf.place
}

// lead tells where a link leads; the second value is false where that is out of
// the step and no number of the job or the catalogue.
func (e *elasticity) lead(l *quantity.Link) (lead, bool) {
	switch l.Node.Kind {
	case "step":
		inner, ours := e.byName[[2]string{l.Node.Quantity, l.Node.Of}]
		return lead{link: l, inner: inner, leaf: -1}, ours && l.Node.ID == e.step.ID
	case "order", "budget":
		return lead{}, false
	}
	return lead{link: l, inner: -1, leaf: -1, face: l.Node.Kind == "face"}, true
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
func (e *elasticity) cost(leaf int, x float64) float64 {
	for i := range e.workings {
		e.workings[i].done = false
	}
	sum := 0.0
	for _, i := range e.labour.workings {
		sum += e.labour.amount * e.value(i, leaf, x) / e.step.Working[i].Value
	}
	for _, m := range e.materials {
		before, after := 0.0, 0.0
		for _, i := range m.workings {
			before += e.step.Working[i].Value
			after += e.value(i, leaf, x)
		}
		if before > 0 {
			sum += m.amount * after / before
		}
	}
	return sum
}

// value works one working out again. What does not depend on the number, and
// what is found by a procedure, stays as it is.
func (e *elasticity) value(i int, leaf int, x float64) float64 {
	w, known := &e.step.Working[i], &e.workings[i]
	switch {
	case !known.reaches.has(leaf):
		return w.Value
	case known.done:
		return known.memo
	}
	known.memo, known.done = w.Value, true
	f := e.formula(w.Formula)
	if f.Kind == formula.Described {
		return w.Value
	}
	first := len(e.changed)
	for _, l := range e.leads[known.from:known.to] {
		switch {
		case l.inner >= 0:
			e.changed = append(e.changed, changedTerm{l.link.Term, l.link.Carry(e.value(l.inner, leaf, x))})
		case l.leaf != leaf:
		case l.face:
			e.changed = append(e.changed, changedTerm{l.link.Term, w.Terms[l.link.Term] * x})
		default:
			e.changed = append(e.changed, changedTerm{l.link.Term, l.link.Carry(x)})
		}
	}
	if value, worked := known.work(f, w, e.changed[first:]); worked {
		known.memo = value
	}
	e.changed = e.changed[:first]
	return known.memo
}

// work works a formula out with some of its terms changed.
func (w *elastic) work(f formula.Formula, of *quantity.Working, changed []changedTerm) (value float64, worked bool) {
	term := func(name string) (float64, bool) {
		for k := len(changed) - 1; k >= 0; k-- {
			if changed[k].name == name {
				return changed[k].value, true
			}
		}
		v, known := of.Terms[name]
		return v, known
	}
	if f.Kind == formula.Expressed {
		value, err := f.Expression.WorkOf(term)
		return value, err == nil
	}
	if w.names == nil {
		w.names = slices.AppendSeq(make([]string, 0, len(of.Terms)), maps.Keys(of.Terms))
		slices.Sort(w.names) // so that the sum is the same each time
	}
	for _, name := range w.names {
		v, _ := term(name)
		value += v
	}
	return value, true
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
