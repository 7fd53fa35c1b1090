package ranges

import (
	"context"
	"slices"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/money"
	"filmbuild/estimate/risk"
)

// Trials are the totals of every trial, in their order: what two jobs that share
// draws are compared by.
type Trials struct {
	Total []float64
}

// Work draws the uncertain inputs of an estimate and tells the range of its
// figures. The error is a *fault.Error where the options are out of bounds or the
// ranges too wide to follow, or the context's.
//
// The outcome depends on the graph, the trials and the seed, and on nothing else.
func Work(ctx context.Context, g *estimate.Graph, o Options) (*estimate.Range, *Trials, error) {
	var faults fault.List
	if o.Check(faults.At("")); !faults.Empty() {
		return nil, nil, faults.Err()
	}
	if err := Bearable(o.Trials, g); err != nil {
		return nil, nil, err
	}
	p, err := newPlan(g)
	if err != nil {
		return nil, nil, err
	}
	sampler, err := risk.NewSampler(p.inputs, g.Correlations, o.Seed)
	if err != nil {
		return nil, nil, describe(err)
	}
	simulated := risk.Plan{Sampler: sampler, Inputs: len(p.inputs), Outputs: p.outputs, Keep: []int{outTotal}, Worker: p.worker, Trials: o.Trials, Workers: o.Workers}
	if o.Progress != nil {
		simulated.Progress = func(done int) { o.Progress(done, o.Trials) }
	}
	outcome, err := risk.Simulate(ctx, simulated)
	if err != nil {
		return nil, nil, err
	}
	currency, err := money.CurrencyOf(g.Estimate.Currency)
	if err != nil {
		return nil, nil, err
	}
	t := &telling{graph: g, plan: p, outcome: outcome, currency: currency, sources: sampler.Sources()}
	r := t.all(o)
	return r, &Trials{Total: outcome.Kept[0]}, nil
}

// Add works the range of an estimate out and puts it into the estimate. The
// errors are those of Work.
func Add(ctx context.Context, w *estimate.Worked, o Options) error {
	g, err := w.Graph()
	if err != nil {
		return err
	}
	w.Estimate().Range, _, err = Work(ctx, g, o)
	return err
}

// sorted returns a column in order; the column itself stays in that of trials.
func sorted(column []float64) []float64 {
	list := slices.Clone(column)
	slices.Sort(list)
	return list
}
