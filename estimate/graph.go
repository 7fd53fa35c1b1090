package estimate

import (
	"fmt"
	"math"
	"slices"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/model"
	"filmbuild/estimate/risk"
	"filmbuild/estimate/wire"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// Graph is an estimate with the graph of its figures: which follows from which.
// Ranges and the workbook are made from it.
type Graph struct {
	Estimate  *Estimate
	Model     *model.Model
	Uncertain []Uncertain // inputs that have a range: given in the job, or the catalogue's
	Notes     []string    // what the graph cannot follow, for the assumptions

	Correlations []risk.Correlation // between keys and groups of uncertain inputs

	run *run
}

// Trace works a job out as Run does, and its graph. The error, a *fault.Error,
// lists every fault of the job.
func Trace(job *Job, catalogue *products.Catalogue) (*Graph, error) {
	r, err := runThrough(job, catalogue, &fault.List{})
	if err != nil {
		return nil, err
	}
	return r.trace(catalogue)
}

// trace builds the graph of a run.
func (r *run) trace(catalogue *products.Catalogue) (*Graph, error) {
	g := &Graph{Estimate: r.estimate, Correlations: r.job.Correlated(), run: r}
	parts := r.parts()
	if loose := r.looseRanges(parts); len(loose) > 0 {
		responses, notes := r.responses(parts, loose, catalogue)
		parts, g.Notes = append(parts, responses...), notes
	}
	b := model.NewBuilder()
	for _, p := range parts {
		if p.steps != nil {
			b.AddSteps(p.node, p.working, p.steps)
		} else {
			b.Add(p.node, p.working)
		}
	}
	var err error
	if g.Model, err = b.Build(); err != nil {
		return nil, fmt.Errorf("the graph of the estimate is broken, which is a mistake of the program: %w", err)
	}
	g.Uncertain, err = r.uncertain(g.Model)
	return g, err
}

// graphPart is a working with the node it is the value of.
type graphPart struct {
	node    quantity.Node
	working quantity.Working
	steps   model.Steps
}

// parts gathers the workings of an estimate: of faces, steps, order and budget.
func (r *run) parts() []graphPart {
	var list []graphPart
	for i := range r.surfaces {
		s := &r.surfaces[i]
		for k := range s.faces {
			list = append(list, s.facePart(&s.faces[k]))
		}
	}
	for i := range r.estimate.Steps {
		s := &r.estimate.Steps[i]
		for _, w := range s.Working {
			list = append(list, graphPart{node: quantity.StepWorking(s.ID, w.Quantity, w.Of), working: w})
		}
	}
	for i := range r.estimate.Order {
		line := &r.estimate.Order[i]
		for _, w := range line.Working {
			p := graphPart{node: line.node(w.Quantity), working: w}
			switch w.Quantity {
			case "bought":
				p.steps = r.covering(line, func(l *OrderLine) float64 { return l.Bought })
			case "cost":
				p.steps = r.covering(line, func(l *OrderLine) float64 { return l.Cost.Float64() })
			}
			list = append(list, p)
		}
	}
	for _, w := range r.estimate.Budget.Working {
		list = append(list, graphPart{node: quantity.Node{Kind: "budget", Quantity: w.Quantity, Of: w.Of}, working: w})
	}
	return list
}

// coverSlack is how much a need may be above what is bought: a little more than
// products.Cover lets pass, so that the next step is another purchase.
const coverSlack = 2e-9

// covering says what a line of the order comes to for another need. It stays so
// up to what is bought: a smaller purchase would not do for more.
func (r *run) covering(line *OrderLine, figure func(*OrderLine) float64) model.Steps {
	p, known := r.catalogue.Product(line.Product)
	if !known || len(line.offers) == 0 {
		return func(x float64) (float64, float64) { return figure(&OrderLine{Cost: r.currency.Zero()}), math.Inf(1) }
	}
	return func(x float64) (float64, float64) {
		other := OrderLine{Product: line.Product, ToBuy: x, SameBatch: line.SameBatch, Cost: r.currency.Zero()}
		if x == 0 {
			return figure(&other), 0
		}
		if err := r.buy(&other, p, line.offers); err != nil {
			return math.NaN(), x
		}
		return figure(&other), math.Max(other.Bought*(1+coverSlack), x)
	}
}

// facePart is the area of a face: as measured, times what the measuring may be
// off, which is 1 in the estimate and the same for all faces of a component.
func (s *surface) facePart(f *face) graphPart {
	node := quantity.Node{Kind: "face", ID: s.component.ID, Quantity: f.name}
	return graphPart{node: node, working: quantity.Working{Quantity: "area_m2", Of: f.name, Value: f.areaM2, Unit: "m²", Formula: "A·e",
		Terms: map[string]float64{"A": f.areaM2, "e": 1}, Source: "identity", Links: []quantity.Link{quantity.From("e", measuring(s.component.ID))}}}
}

// measuring is the node of how far the area of a component may be off: 1 ± its
// accuracy.
func measuring(component string) quantity.Node {
	return quantity.Node{Kind: "component", ID: component, Quantity: "measured_to_true_ratio"}
}

// looseRanges lists the pointers of ranges whose numbers are no node of the
// graph, such as the sizes of shapes and markings, sorted.
func (r *run) looseRanges(parts []graphPart) []string {
	tied := map[string]bool{}
	for _, p := range parts {
		for _, l := range p.working.Links {
			tied[r.pointerOf(l.Node)] = true
		}
	}
	var loose []string
	for pointer := range r.job.Ranges {
		if !tied[pointer] {
			loose = append(loose, pointer)
		}
	}
	slices.Sort(loose)
	return loose
}

// withNumber returns the job with one number replaced.
func (r *run) withNumber(pointer string, x float64) (*Job, error) {
	job, err := wire.Replace(r.job, pointer, x)
	if err == nil {
		job.Ranges = nil
	}
	return job, err
}

// Node names a working of a line of the order in the graph.
func (line *OrderLine) Node(name string) quantity.Node { return line.node(name) }
