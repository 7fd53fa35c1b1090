package ranges

import (
	"fmt"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"filmbuild/estimate"
	"filmbuild/estimate/money"
	"filmbuild/estimate/risk"
)

// bars is how many bars the histogram of the total has.
const bars = 40

// telling puts an outcome into the form of the estimate.
type telling struct {
	graph    *estimate.Graph
	plan     *plan
	outcome  *risk.Outcome
	currency money.Currency
	sources  []string
}

func (t *telling) all(o Options) *estimate.Range {
	e := t.graph.Estimate
	var drivers []risk.Driver
	var group sync.WaitGroup
	group.Go(func() { drivers = t.outcome.Drivers(0) }) // beside the sorting
	totals := sorted(t.outcome.Kept[0])
	single := e.Budget.Total
	r := &estimate.Range{Trials: o.Trials, Seed: o.Seed, SingleFigure: single,
		Holds: risk.ShareWithin(totals, single.Float64()+halfCoin(t.currency)),
		Total: t.money(exact(totals), outTotal), CashNeeded: t.money(t.counted(outCash), outCash),
		Hours: t.number(t.counted(outHours), outHours),
		Steps: []estimate.StepRange{}, Order: []estimate.NeedRange{}, Drivers: []estimate.Driver{}, Inputs: []estimate.DrawnInput{},
		Histogram: risk.Histogram(totals, bars), SCurve: risk.SCurve(totals)}
	for i := range e.Steps {
		cost, hours := t.plan.stepCost(i), t.plan.stepHours(i)
		r.Steps = append(r.Steps, estimate.StepRange{Step: e.Steps[i].ID, Cost: t.money(t.counted(cost), cost), Hours: t.number(t.counted(hours), hours)})
	}
	for i := range e.Order {
		need := t.plan.need(i)
		r.Order = append(r.Order, estimate.NeedRange{Product: e.Order[i].Product, Unit: e.Order[i].Unit, Needed: t.number(t.counted(need), need)})
	}
	for _, u := range t.graph.Uncertain {
		r.Inputs = append(r.Inputs, estimate.DrawnInput{Input: u.Key, Name: u.Name, Group: u.Group, Unit: u.Unit, Spread: u.Spread, Source: u.Source})
	}
	group.Wait()
	t.drivers(r, drivers)
	r.Method = t.method(o)
	return r
}

// halfCoin is half the smallest coin: a total that comes to the single figure
// holds, whatever the last bits of a sum of floats.
func halfCoin(c money.Currency) float64 {
	half := 0.5
	for range c.MinorUnits() {
		half /= 10
	}
	return half
}

// exact gives the percentiles that are told, of sorted numbers.
func exact(sorted []float64) []float64 {
	return []float64{risk.Percentile(sorted, 0.1), risk.Percentile(sorted, 0.5), risk.Percentile(sorted, 0.8), risk.Percentile(sorted, 0.9)}
}

// counted gives those of an output that is counted in classes.
func (t *telling) counted(output int) []float64 {
	return t.outcome.Tallies[output].Percentiles(0.1, 0.5, 0.8, 0.9)
}

func (t *telling) money(p []float64, output int) estimate.MoneyRange {
	m := t.outcome.Moments[output]
	return estimate.MoneyRange{P10: t.amount(p[0]), P50: t.amount(p[1]), P80: t.amount(p[2]), P90: t.amount(p[3]), Mean: t.amount(m.Mean()), StandardDeviation: t.amount(m.StandardDeviation())}
}

func (t *telling) amount(x float64) money.Amount { return t.currency.Cost(x, decimal.NewFromInt(1)) }

func (t *telling) number(p []float64, output int) estimate.NumberRange {
	m := t.outcome.Moments[output]
	return estimate.NumberRange{P10: p[0], P50: p[1], P80: p[2], P90: p[3], Mean: m.Mean(), StandardDeviation: m.StandardDeviation()}
}

// drivers names the sources of the uncertainty of the total.
func (t *telling) drivers(r *estimate.Range, drivers []risk.Driver) {
	names := map[string]string{}
	for _, u := range t.graph.Uncertain {
		if u.Group != "" {
			names[u.Group] = "items of the group " + strings.TrimPrefix(u.Group, "group/")
		} else {
			names[u.Key] = u.Name
		}
	}
	for _, d := range drivers {
		source := t.sources[d.Source]
		r.Drivers = append(r.Drivers, estimate.Driver{Input: source, Name: names[source], Share: d.Share, Correlation: d.Correlation})
	}
}

// method says how to read the figures.
func (t *telling) method(o Options) []string {
	list := []string{
		fmt.Sprintf("%d trials from seed %d: in each, every input below is drawn anew and the whole estimate follows, whole packs and rounding to the coin included; an input that several steps share is drawn once", o.Trials, o.Seed),
		"p80 is the figure that is not passed in 80 of 100 trials; what no trial varies (scope, prices without a range, weather) is in none of them",
		"percentiles of the total are exact for the trials, those of everything else within 0.025 %",
		fmt.Sprintf("drivers: the square of each input's rank correlation with the total over the first %d trials at most, as a share of all of them; ranks weigh the largest a little more", risk.RankedTrials),
		"PERT is the beta distribution with the mean (low + 4·likely + high)/6; low and high are the ends, and nothing lies beyond",
	}
	if len(t.graph.Uncertain) == 0 {
		list = append(list, "nothing in this job varies: give numbers as {\"low\", \"likely\", \"high\"}")
	}
	return append(list, t.graph.Notes...)
}
