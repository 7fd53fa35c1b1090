package compare

import (
	"context"
	"slices"

	"github.com/shopspring/decimal"

	"filmbuild/estimate"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/money"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/risk"
	"filmbuild/products"
)

// Work reads a comparison and works it out. The error is a *wire.SyntaxError, a
// *fault.Error with every fault of the comparison and of each job in it, or the
// context's.
func Work(ctx context.Context, reader *estimate.Reader, catalogue *products.Catalogue, data []byte, o ranges.Options) (*Result, error) {
	faults := &fault.List{}
	o.Check(faults.At(""))
	c, ways, err := read(reader, data, faults)
	if err != nil {
		return nil, err
	}
	if len(ways) == 0 {
		return nil, faults.Err()
	}
	graphs, err := worked(ways, catalogue, faults)
	if err != nil {
		return nil, err
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	if err := ranges.Bearable(o.Trials, graphs...); err != nil {
		return nil, err
	}
	base := graphs[0].Estimate
	r := &Result{Name: c.Name, Currency: base.Currency, CatalogueVersion: base.CatalogueVersion, EngineVersion: base.EngineVersion, Trials: o.Trials, Seed: o.Seed, Method: method()}
	if r.Name == "" {
		r.Name = base.Job
	}
	totals := make([][]float64, len(ways))
	each := o
	for i, w := range ways {
		if o.Progress != nil {
			each.Progress = func(done, total int) { o.Progress(i*total+done, len(ways)*total) }
		}
		spread, trials, err := ranges.Work(ctx, graphs[i], each)
		if err != nil {
			return nil, err
		}
		totals[i] = trials.Total
		r.Ways = append(r.Ways, wayFrom(w, graphs[i].Estimate, spread))
	}
	currency, err := money.CurrencyOf(base.Currency)
	if err != nil {
		return nil, err
	}
	cheapest(r.Ways, totals)
	for i := 1; i < len(r.Ways); i++ {
		difference := r.Ways[i].Figures.less(r.Ways[0].Figures)
		r.Ways[i].Difference = &difference
		r.Ways[i].Against = against(currency, totals[i], totals[0])
	}
	r.Steps = side(graphs, r.Ways, currency)
	return r, nil
}

// worked works every way out. Where the base is at fault the variants, which
// share what is wrong with it, are not told of.
func worked(ways []way, catalogue *products.Catalogue, faults *fault.List) ([]*estimate.Graph, error) {
	var graphs []*estimate.Graph
	for i, w := range ways {
		g, err := estimate.TraceJob(w.job, w.read, catalogue, faults, w.prefix)
		if err != nil {
			return nil, err
		}
		if g == nil && i == 0 {
			return nil, nil
		}
		if g != nil && i > 0 && graphs[0] != nil && g.Estimate.Currency != graphs[0].Estimate.Currency {
			faults.Addf(w.prefix+"/currency", "inconsistent", "the variant is in %s and the base in %s; amounts of two currencies cannot be compared", g.Estimate.Currency, graphs[0].Estimate.Currency)
		}
		graphs = append(graphs, g)
	}
	return graphs, nil
}

func wayFrom(w way, e *estimate.Estimate, r *estimate.Range) Way {
	one := Way{ID: w.id, Name: w.name, Range: *r, Class: e.Class.Class, Cautions: []string{}, Warnings: e.Warnings,
		Figures: Figures{Cost: e.Budget.Total, Cash: e.Budget.CashNeeded, InKind: e.Budget.InKind, P80: r.Total.P80, Hours: e.Totals.Hours,
			Litres: e.Totals.Litres, Kilograms: e.Totals.Kilograms, WasteKg: e.Totals.WasteKg, VOCKg: e.Totals.VOCKg}}
	for _, c := range e.Cautions {
		one.Cautions = append(one.Cautions, c.Code)
	}
	return one
}

// less returns the difference f − g of every figure.
func (f Figures) less(g Figures) Figures {
	return Figures{Cost: f.Cost.Sub(g.Cost), Cash: f.Cash.Sub(g.Cash), InKind: f.InKind.Sub(g.InKind), P80: f.P80.Sub(g.P80), Hours: f.Hours - g.Hours,
		Litres: f.Litres - g.Litres, Kilograms: f.Kilograms - g.Kilograms, WasteKg: f.WasteKg - g.WasteKg, VOCKg: f.VOCKg - g.VOCKg}
}

// cheapest gives each way the share of the trials in which it costs least; ways
// that cost least alike share the trial.
func cheapest(ways []Way, totals [][]float64) {
	for t := range totals[0] {
		least, alike := totals[0][t], 0.0
		for _, column := range totals {
			least = min(least, column[t])
		}
		for _, column := range totals {
			if column[t] == least {
				alike++
			}
		}
		for i, column := range totals {
			if column[t] == least {
				ways[i].Cheapest += 1 / alike
			}
		}
	}
	for i := range ways {
		ways[i].Cheapest /= float64(len(totals[0]))
	}
}

// against is the difference of two ways, trial by trial.
func against(currency money.Currency, way, base []float64) *Against {
	apart := make([]float64, len(way))
	sum, below := 0.0, 0
	for t := range way {
		apart[t] = way[t] - base[t]
		sum += apart[t]
		if apart[t] < 0 {
			below++
		}
	}
	slices.Sort(apart)
	amount := func(x float64) money.Amount { return currency.Cost(x, decimal.NewFromInt(1)) }
	return &Against{P10: amount(risk.Percentile(apart, 0.1)), P50: amount(risk.Percentile(apart, 0.5)), P80: amount(risk.Percentile(apart, 0.8)), P90: amount(risk.Percentile(apart, 0.9)),
		Mean: amount(sum / float64(len(way))), Cheaper: float64(below) / float64(len(way))}
}

func method() []string {
	return []string{
		"cost is the budget's total, cash and in kind, built from whole packs; the figures of a step are what it uses up and its hours, so they do not add up to it: contingency, tax, items and what is left over in packs belong to no step",
		"cash of a step is its cost without the value of volunteers' hours",
		"every way is drawn from the same seed, and an input that two ways share has one value in each trial; differences are taken trial by trial, so the difference of two p80 is not the p80 of the difference",
		"a way is cheapest in a trial where no other costs less; ways that cost the same share it",
	}
}
