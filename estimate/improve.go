package estimate

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"filmbuild/estimate/model"
	"filmbuild/estimate/money"
	"filmbuild/estimate/spread"
	"filmbuild/surfaces/quantity"
)

// Improvement is something that nobody has tried or measured yet and that the
// cost hangs on: what would make the estimate better.
type Improvement struct {
	Text   string       `json:"text"`
	Input  string       `json:"input"` // the number that is taken without trial, by its key
	Value  float64      `json:"value"`
	Low    float64      `json:"low"`
	High   float64      `json:"high"`
	Unit   string       `json:"unit,omitempty"`
	Effect money.Amount `json:"effect"`       // what the work costs more at one end than at the other
	Share  float64      `json:"effect_ratio"` // of what the work costs in all
	Steps  []string     `json:"steps"`        // the steps whose cost it moves
	Source string       `json:"source"`       // where its range comes from
}

// mostImprovements is how many are listed.
const mostImprovements = 8

// trialled is one number that the steps rest on, with what it does to them.
type trialled struct {
	Uncertain
	node   quantity.Node
	value  float64
	effect float64
	steps  []string

	in    *StepEstimate // the step that was looked at last, and its place there
	place int
}

// improve lists the numbers with a range, the largest effect on the cost of the
// work first: material used up and labour of the steps, worked out again at both
// ends of the range of one number while all others stay. Whole packs, contingency
// and tax are left out.
func (r *run) improve() error {
	rules, err := spread.Load()
	if err != nil {
		return err
	}
	list := r.trialled(rules)
	slices.SortStableFunc(list, func(a, b *trialled) int { return sign(math.Abs(b.effect) - math.Abs(a.effect)) })
	total := r.estimate.Totals.StepsCost.Float64()
	r.estimate.Improve = []Improvement{}
	for _, u := range list {
		effect := math.Abs(u.effect)
		amount := r.currency.Cost(effect, decimal.New(1, 0))
		if len(r.estimate.Improve) == mostImprovements || amount.IsZero() {
			break
		}
		u.Key, u.Name = r.key(u.node), r.nameOf(u.node)
		r.estimate.Improve = append(r.estimate.Improve, Improvement{Text: u.advice(r.currency.Code(), amount), Input: u.Key, Value: u.value, Low: u.Spread.Low, High: u.Spread.High,
			Unit: u.Unit, Effect: amount, Share: effect / total, Steps: u.steps, Source: u.Source})
	}
	return nil
}

// trialled lists the numbers with a range that the steps rest on, with what each
// does to their cost.
func (r *run) trialled(rules spread.Rules) []*trialled {
	var list []*trialled
	known := map[quantity.Node]*trialled{}
	ranged := func(n quantity.Node, value float64) *trialled {
		u, seen := known[n]
		if seen {
			return u
		}
		u = &trialled{node: n, value: value, Uncertain: Uncertain{Pointer: r.pointerOf(n), Unit: r.unitOf(n)}}
		if !r.rangeOf(&u.Uncertain, &model.Vertex{Node: n, Value: value}, rules) || !u.Spread.Varies() {
			u = nil
		} else {
			list = append(list, u)
		}
		known[n] = u
		return u
	}
	e := newElasticity(ranged)
	for i := range r.estimate.Steps {
		e.take(&r.estimate.Steps[i])
		for k, u := range e.leaves {
			if moved := e.cost(k, u.Spread.High) - e.cost(k, u.Spread.Low); moved != 0 && !math.IsNaN(moved) && !math.IsInf(moved, 0) {
				u.effect += moved
				u.steps = append(u.steps, r.estimate.Steps[i].ID)
			}
		}
	}
	return list
}

// advice says what to do about a number.
func (u *trialled) advice(currency string, effect money.Amount) string {
	between := fmt.Sprintf("taken as %.3g%s, it may be %.3g to %.3g", u.value, unitAfter(u.Unit), u.Spread.Low, u.Spread.High)
	moves := fmt.Sprintf("the work costs %s %s more at one end than at the other", currency, effect)
	steps := strings.Join(u.steps, ", ")
	switch u.node.Kind {
	case "component":
		return fmt.Sprintf("measure %s better: its area may be off by %.0f %%; %s", u.node.ID, 100*(u.Spread.High-1), moves)
	case "patches":
		return fmt.Sprintf("do a larger test patch, or a second one, for %s: %s is %s; %s", steps, u.Name, between, moves)
	case "product", "method", "operation":
		if !patchable(u.node) {
			return fmt.Sprintf("look %s up in the data sheet of what you buy: %s; %s", u.Name, between, moves)
		}
		return fmt.Sprintf("do a test patch for %s: %s is %s; %s", steps, u.Name, between, moves)
	}
	if patchable(u.node) {
		return fmt.Sprintf("do a test patch for %s: %s is %s; %s", steps, u.Name, between, moves)
	}
	return fmt.Sprintf("try or measure %s: %s; %s", u.Name, between, moves)
}

// patchable says whether a test patch can measure a number.
func patchable(n quantity.Node) bool {
	return slices.Contains([]string{"strip_rate_m2_h", "rate_m2_h", "rate", "transfer_efficiency_percent", "coverage_l_m2", "breakdown_percent", "media_flow_kg_h", "disc_area_m2", "area_m2"}, n.Quantity)
}

func unitAfter(unit string) string {
	if unit == "" {
		return ""
	}
	return " " + unit
}
