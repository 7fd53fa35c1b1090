package ranges

import (
	"fmt"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/model"
	"filmbuild/estimate/risk"
	"filmbuild/surfaces/quantity"
)

// The outputs of a trial, in their order: total, cash, hours of the whole job,
// then the cost and the hours of each step, then the need of each line of the
// order.
const (
	outTotal = iota
	outCash
	outHours
	firstStep
)

// plan is the program of an estimate's trials.
type plan struct {
	estimate *estimate.Estimate
	inputs   []risk.Input
	program  *model.Program
	from     []int // output -> output of the program, −1 for a figure that does not vary
	fixed    []float64
	outputs  int
}

func (p *plan) stepCost(i int) int  { return firstStep + 2*i }
func (p *plan) stepHours(i int) int { return firstStep + 2*i + 1 }
func (p *plan) need(i int) int      { return firstStep + 2*len(p.estimate.Steps) + i }

// newPlan compiles the graph of an estimate. The error is a *fault.Error where
// the ranges are too wide to follow.
func newPlan(g *estimate.Graph) (*plan, error) {
	e := g.Estimate
	p := &plan{estimate: e, outputs: firstStep + 2*len(e.Steps) + len(e.Order)}
	p.from, p.fixed = make([]int, p.outputs), make([]float64, p.outputs)
	var varied []model.Varied
	for _, u := range g.Uncertain {
		p.inputs = append(p.inputs, risk.Input{Key: u.Key, Group: u.Group, Spread: u.Spread})
		varied = append(varied, model.Varied{Vertex: u.Vertex, Low: u.Spread.Low, High: u.Spread.High})
	}
	var wanted []int
	ask := func(output int, node quantity.Node, value float64) {
		p.from[output], p.fixed[output] = -1, value
		if vertex, known := g.Model.Find(node); known {
			p.from[output] = len(wanted)
			wanted = append(wanted, vertex)
		}
	}
	ask(outTotal, quantity.Node{Kind: "budget", Quantity: "total"}, e.Budget.Total.Float64())
	ask(outCash, quantity.Node{Kind: "budget", Quantity: "cash_needed"}, e.Budget.CashNeeded.Float64())
	for i := range e.Steps {
		s := &e.Steps[i]
		ask(p.stepCost(i), quantity.StepWorking(s.ID, "cost", ""), s.Cost.Float64())
		ask(p.stepHours(i), quantity.StepWorking(s.ID, "hours", ""), s.Hours)
	}
	for i := range e.Order {
		ask(p.need(i), e.Order[i].Node("needed"), e.Order[i].Needed)
	}
	var err error
	if p.program, err = g.Model.Compile(varied, wanted); err != nil {
		var list fault.List
		list.Addf("", "too_many", "the ranges of this job are too wide to follow: %s; narrow them", err)
		return nil, list.Err()
	}
	return p, nil
}

// worker makes what computes a block of trials.
func (p *plan) worker() func(in, out [][]float64) {
	run := p.program.Worker()
	var asked [][]float64
	return func(in, out [][]float64) {
		asked = asked[:0]
		for k, from := range p.from {
			switch {
			case k == outHours:
			case from >= 0:
				asked = append(asked, out[k])
			default:
				fill(out[k], p.fixed[k])
			}
		}
		run(in, asked)
		clear(out[outHours])
		for i := range p.estimate.Steps {
			for t, h := range out[p.stepHours(i)] {
				out[outHours][t] += h
			}
		}
	}
}

func fill(column []float64, value float64) {
	for t := range column {
		column[t] = value
	}
}

// describe names an error of the sampler that the check of the job should have
// found.
func describe(err error) error {
	return fmt.Errorf("the ranges of a checked job cannot be drawn: %w", err)
}
