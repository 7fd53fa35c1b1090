package model

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"filmbuild/estimate/formula"
	"filmbuild/surfaces/quantity"
)

// Builder gathers the workings of an estimate.
type Builder struct {
	parts []part
	index map[quantity.Node]int
}

type part struct {
	node    quantity.Node
	working quantity.Working
	steps   Steps
}

// NewBuilder starts an empty graph.
func NewBuilder() *Builder { return &Builder{index: map[quantity.Node]int{}} }

// Add takes a working in.
func (b *Builder) Add(node quantity.Node, w quantity.Working) { b.add(part{node: node, working: w}) }

// AddSteps takes a working in that goes up in steps with its one linked term.
func (b *Builder) AddSteps(node quantity.Node, w quantity.Working, s Steps) {
	b.add(part{node, w, s})
}

func (b *Builder) add(p part) {
	if _, known := b.index[p.node]; !known {
		b.index[p.node] = len(b.parts)
	}
	b.parts = append(b.parts, p)
}

// Build makes the graph. Nodes that are linked to and were not added become
// inputs. The error names a node that was added twice, a formula that cannot be
// read, a circle, a node that two workings take for different values, or a
// working whose formula does not give its value.
func (b *Builder) Build() (*Model, error) {
	g := &building{Builder: b, model: &Model{index: map[quantity.Node]int{}}, open: map[quantity.Node]bool{}}
	for i := range b.parts {
		if b.index[b.parts[i].node] != i {
			return nil, fmt.Errorf("%v is worked out twice", b.parts[i].node)
		}
		if _, done := g.model.index[b.parts[i].node]; done {
			continue
		}
		if _, err := g.vertex(b.parts[i].node, 0); err != nil {
			return nil, err
		}
	}
	return g.model, nil
}

type building struct {
	*Builder
	model *Model
	open  map[quantity.Node]bool // being worked on, to find circles
}

// vertex returns the index of a node, after those it comes from. value is what
// a link takes it for, should it be an input.
func (g *building) vertex(node quantity.Node, value float64) (int, error) {
	if k, done := g.model.index[node]; done {
		return k, g.agrees(k, value)
	}
	i, added := g.index[node]
	if !added {
		return g.append(Vertex{Node: node, Kind: Input, Value: value}), nil
	}
	if g.open[node] {
		return 0, fmt.Errorf("%v follows from itself", node)
	}
	g.open[node] = true
	p := &g.parts[i]
	v := Vertex{Node: node, Kind: Worked, Value: p.working.Value, Unit: p.working.Unit, Text: p.working.Formula, Source: p.working.Source}
	var err error
	if v.Formula, err = formula.Read(p.working.Formula); err != nil {
		return 0, fmt.Errorf("%v: %w", node, err)
	}
	if v.Terms, err = g.terms(&p.working); err != nil {
		return 0, err
	}
	switch {
	case p.steps != nil:
		v.Kind, v.Steps = Stepped, p.steps
	case v.Formula.Kind == formula.Described:
		v.Kind, v.Terms = Input, nil // nothing here can work it out
	default:
		if got, err := v.Formula.Work(p.working.Terms); err != nil || !near(got, v.Value) {
			return 0, fmt.Errorf("%v is %v, and its formula %s gives %v (%v)", node, v.Value, v.Text, got, err)
		}
	}
	return g.append(v), nil
}

func (g *building) append(v Vertex) int {
	g.model.Vertices = append(g.model.Vertices, v)
	g.model.index[v.Node] = len(g.model.Vertices) - 1
	return len(g.model.Vertices) - 1
}

// terms resolves the terms of a working.
func (g *building) terms(w *quantity.Working) ([]TermOf, error) {
	list := make([]TermOf, 0, len(w.Terms))
	for _, name := range slices.Sorted(maps.Keys(w.Terms)) {
		term := TermOf{Name: name, Value: w.Terms[name], From: -1}
		k := slices.IndexFunc(w.Links, func(l quantity.Link) bool { return l.Term == name })
		if k >= 0 {
			link := w.Links[k]
			if term.Times, term.Inverse = link.Times, link.Inverse; term.Times == 0 {
				term.Times = 1
			}
			var err error
			if term.From, err = g.vertex(link.Node, term.source()); err != nil {
				return nil, err
			}
		}
		list = append(list, term)
	}
	return list, nil
}

// source is the value of the vertex that gives a term its value, tidied to 15
// digits, which undoes the rounding of a factor such as 0.01.
func (t TermOf) source() float64 {
	if t.Inverse {
		return tidy(t.Times / t.Value)
	}
	return tidy(t.Value / t.Times)
}

func tidy(x float64) float64 {
	if x == 0 || math.IsInf(x, 0) || math.IsNaN(x) {
		return x
	}
	places := 14 - math.Floor(math.Log10(math.Abs(x)))
	if math.Abs(places) > 300 {
		return x
	}
	if places < 0 {
		unit := math.Pow(10, -places)
		return math.Round(x/unit) * unit
	}
	unit := math.Pow(10, places)
	return math.Round(x*unit) / unit
}

// agrees checks that a link takes a vertex for the value it has.
func (g *building) agrees(k int, value float64) error {
	if v := &g.model.Vertices[k]; v.Kind == Input && !near(v.Value, value) {
		return fmt.Errorf("%v is taken for %v and for %v", v.Node, v.Value, value)
	}
	return nil
}

func near(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a), math.Abs(b))
}
