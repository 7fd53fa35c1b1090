package properties

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/formula"
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// worksOut asserts that the formula of a working gives its value.
func worksOut(t require.TestingT, where string, w *quantity.Working) {
	f, err := formula.Read(w.Formula)
	require.NoError(t, err, "%s: %s = %s", where, w.Quantity, w.Formula)
	if f.Kind == formula.Described {
		return
	}
	got, err := f.Work(w.Terms)
	require.NoError(t, err, "%s: %s = %s", where, w.Quantity, w.Formula)
	close(t, w.Value, got, "%s: %s %s = %s %v", where, w.Quantity, w.Of, w.Formula, w.Terms)
}

func close(t require.TestingT, want, got float64, text string, args ...any) {
	assert.InDelta(t, want, got, 1e-9*max(1, math.Abs(want)), append([]any{text}, args...)...)
}

// explained asserts that every figure of a step is the value of a working whose
// formula gives it, and that every link leads to the value it stands for.
func explained(t require.TestingT, s *estimate.StepEstimate) {
	values := map[quantity.Node]float64{}
	uses := map[string]float64{}
	for i := range s.Working {
		w := &s.Working[i]
		worksOut(t, s.ID, w)
		node := quantity.StepWorking(s.ID, w.Quantity, w.Of)
		_, again := values[node]
		assert.False(t, again, "%s has two workings for %v", s.ID, node)
		values[node] = w.Value
		if w.Uses != "" {
			uses[w.Uses] += w.Value
		}
	}
	for i := range s.Working {
		for _, l := range s.Working[i].Links {
			term, has := s.Working[i].Terms[l.Term]
			assert.True(t, has, "%s: %s links a term %s that it has not", s.ID, s.Working[i].Quantity, l.Term)
			if l.Node.Kind != "step" || l.Node.ID != s.ID {
				continue
			}
			value, found := values[l.Node]
			if assert.True(t, found, "%s: %s links to %v, which is not there", s.ID, s.Working[i].Quantity, l.Node) {
				close(t, term, l.Carry(value), "%s: %s by %v", s.ID, s.Working[i].Quantity, l)
			}
		}
	}
	for _, m := range s.Materials {
		close(t, m.Quantity, uses[m.Product], "%s uses %s", s.ID, m.Product)
	}
	for name, value := range map[string]float64{"area_m2": s.AreaM2, "litres": s.Litres, "kilograms": s.Kilograms, "masking_tape_m": s.MaskingTapeM,
		"hours": s.Hours, "waste_kg": s.WasteKg, "dry_film_kg": s.DryFilmKg, "removed_film_kg": s.RemovedKg, "voc_kg": s.VOCKg} {
		close(t, value, values[quantity.StepWorking(s.ID, name, "")], "%s: the working of %s", s.ID, name)
	}
}

// TestEveryFigureIsExplained: what a person reads beside a figure is what the
// figure was worked out with (identity).
func TestEveryFigureIsExplained(t *testing.T) {
	b := newBench(t)
	all, err := example.All()
	require.NoError(t, err)
	for _, ex := range all {
		t.Run(ex.ID, func(t *testing.T) {
			e, err := b.reader.Estimate(ex.Job, b.catalogue)
			require.NoError(t, err)
			for i := range e.Steps {
				explained(t, &e.Steps[i])
			}
		})
	}
}

// TestEveryFigureOfADrawnJobIsExplained does the same for jobs drawn at random.
func TestEveryFigureOfADrawnJobIsExplained(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		e := b.run(t, anyJob(t))
		for i := range e.Steps {
			explained(t, &e.Steps[i])
		}
	})
}

// chained asserts that every figure of money is the value of a working, whose
// links lead to the values they stand for, from the steps to the total.
func chained(t require.TestingT, e *estimate.Estimate) {
	values := map[quantity.Node]float64{}
	keep := func(kind, id string, list []quantity.Working) {
		for _, w := range list {
			node := quantity.Node{Kind: kind, ID: id, Quantity: w.Quantity, Of: w.Of}
			_, again := values[node]
			assert.False(t, again, "two workings for %v", node)
			values[node] = w.Value
		}
	}
	places := map[string][]quantity.Working{"the budget": e.Budget.Working}
	keep("budget", "", e.Budget.Working)
	for i := range e.Steps {
		keep("step", e.Steps[i].ID, e.Steps[i].Working)
		places[e.Steps[i].ID] = e.Steps[i].Working
	}
	for i := range e.Order {
		keep("order", e.Order[i].Product, e.Order[i].Working)
		places["order of "+e.Order[i].Product+e.Order[i].OrderBy] = e.Order[i].Working
	}
	for where, list := range places {
		for i := range list {
			w := &list[i]
			worksOut(t, where, w)
			for _, l := range w.Links {
				term, has := w.Terms[l.Term]
				assert.True(t, has, "%s: %s links a term %s that it has not", where, w.Quantity, l.Term)
				if l.Node.Kind != "step" && l.Node.Kind != "order" && l.Node.Kind != "budget" {
					continue
				}
				value, found := values[l.Node]
				if assert.True(t, found, "%s: %s links to %v, which is not there", where, w.Quantity, l.Node) {
					close(t, term, l.Carry(value), "%s: %s by %v", where, w.Quantity, l)
				}
			}
		}
	}
	b := &e.Budget
	for name, amount := range map[string]money.Amount{"cash": b.Cash, "in_kind": b.InKind, "contingency": b.Contingency, "management_reserve": b.ManagementReserve,
		"tax": b.Tax, "cash_needed": b.CashNeeded, "total": b.Total} {
		value, found := values[quantity.Node{Kind: "budget", Quantity: name}]
		assert.True(t, found, "the budget has a working of %s", name)
		close(t, amount.Float64(), value, "the working of %s", name)
	}
	for i := range e.Steps {
		s := &e.Steps[i]
		close(t, s.Cost.Float64(), values[quantity.StepWorking(s.ID, "cost", "")], "cost of %s", s.ID)
	}
	for _, line := range e.Order {
		assert.Positive(t, len(line.Working), line.Product)
	}
}

// TestEveryAmountIsChained: from the litres of a step to the total, every amount
// is worked out by what a person reads beside it (identity).
func TestEveryAmountIsChained(t *testing.T) {
	b := newBench(t)
	all, err := example.All()
	require.NoError(t, err)
	for _, ex := range all {
		e, err := b.reader.Estimate(ex.Job, b.catalogue)
		require.NoError(t, err)
		chained(t, e)
	}
	rapid.Check(t, func(t *rapid.T) { chained(t, b.run(t, anyJob(t))) })
}
