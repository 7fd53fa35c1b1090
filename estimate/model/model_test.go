package model

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/formula"
	"filmbuild/surfaces/quantity"
)

var (
	area   = quantity.Node{Kind: "face", ID: "panel", Quantity: "front"}
	solids = quantity.Node{Kind: "product", ID: "primer", Quantity: "volume_solids_percent"}
	litres = quantity.StepWorking("prime", "paint_l", "primer")
	cost   = quantity.Node{Kind: "order", ID: "primer", Quantity: "cost"}
	total  = quantity.Node{Kind: "budget", Quantity: "total"}
)

// packs is whole packs of 5 at 140 each (identity).
func packs(x float64) (float64, float64) {
	n := math.Ceil(x / 5)
	return 140 * n, 5 * n
}

func build(t *testing.T) *Model {
	t.Helper()
	b := NewBuilder()
	b.Add(total, quantity.Working{Quantity: "total", Value: 280.5, Formula: "sum of the lines", Terms: map[string]float64{"primer": 280, "freight": 0.5},
		Links: []quantity.Link{quantity.From("primer", cost)}})
	b.AddSteps(cost, quantity.Working{Quantity: "cost", Value: 280, Formula: "by whole packs", Terms: map[string]float64{"need": 6},
		Links: []quantity.Link{quantity.From("need", litres)}}, packs)
	b.Add(litres, quantity.Working{Quantity: "paint_l", Value: 6, Formula: "A·t/(1000·VS)", Terms: map[string]float64{"A": 100, "t": 33, "VS": 0.55},
		Links: []quantity.Link{quantity.From("A", area), quantity.Scaled("VS", solids, 0.01)}})
	m, err := b.Build()
	require.NoError(t, err)
	return m
}

func TestAProgramFollowsTheGraph(t *testing.T) {
	m := build(t)
	a, _ := m.Find(area)
	s, _ := m.Find(solids)
	l, _ := m.Find(litres)
	sum, _ := m.Find(total)
	assert.Equal(t, 55.0, m.Vertices[s].Value, "the factor is undone to the digit")
	p, err := m.Compile([]Varied{{a, 50, 200}, {s, 40, 60}}, []int{sum, l})
	require.NoError(t, err)
	out := [][]float64{make([]float64, 3), make([]float64, 3)}
	p.Worker()([][]float64{{100, 200, 50}, {55, 40, 60}}, out)
	assert.InDeltaSlice(t, []float64{6, 16.5, 2.75}, out[1], 1e-12)
	assert.InDeltaSlice(t, []float64{280.5, 560.5, 140.5}, out[0], 1e-12, "2, 4 and 1 packs")

	p, err = m.Compile(nil, []int{sum})
	require.NoError(t, err)
	one := [][]float64{{0}}
	p.Worker()(nil, one)
	assert.Equal(t, 280.5, one[0][0])
}

func TestWhatIsNoGraphIsRefused(t *testing.T) {
	one := quantity.StepWorking("a", "x", "")
	two := quantity.StepWorking("a", "y", "")
	for name, parts := range map[string][]quantity.Working{
		"a circle":      {{Formula: "b", Terms: map[string]float64{"b": 0}, Links: []quantity.Link{quantity.From("b", two)}}, {Formula: "b", Terms: map[string]float64{"b": 0}, Links: []quantity.Link{quantity.From("b", one)}}},
		"a wrong value": {{Value: 3, Formula: "b", Terms: map[string]float64{"b": 2}}, {Formula: "b", Terms: map[string]float64{"b": 0}}},
		"no formula":    {{Formula: "b c", Terms: map[string]float64{"b": 2}}, {Formula: "b", Terms: map[string]float64{"b": 0}}},
		"two values of an input": {{Value: 2, Formula: "b", Terms: map[string]float64{"b": 2}, Links: []quantity.Link{quantity.From("b", area)}},
			{Value: 3, Formula: "b", Terms: map[string]float64{"b": 3}, Links: []quantity.Link{quantity.From("b", area)}}},
	} {
		b := NewBuilder()
		b.Add(one, parts[0])
		b.Add(two, parts[1])
		_, err := b.Build()
		assert.Error(t, err, name)
	}
	b := NewBuilder()
	b.Add(one, quantity.Working{Formula: "b", Terms: map[string]float64{"b": 0}})
	b.Add(one, quantity.Working{Formula: "b", Terms: map[string]float64{"b": 0}})
	_, err := b.Build()
	assert.Error(t, err, "twice")
}

// Every operator gives in columns what it gives one by one (identity).
func TestColumnsAgreeWithNumbers(t *testing.T) {
	texts := []string{"a + b", "a − b", "a·b", "a/b", "2 − a", "a/3", "3/a", "min(a, b, 2)", "max(a, b)", "if(a < b, a, b)", "⌈a⌉ + ⌊b⌋", "round(a, 2)", "round(a, 1 + 1)", "√a·ln(b)", "a^b", "−a", "abs(a − b)", "exp(−a) + log10(b)", "a² + 2·b³"}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(texts).Draw(t, "formula")
		terms := map[string]float64{"a": rapid.Float64Range(0.01, 9).Draw(t, "a"), "b": rapid.Float64Range(0.01, 9).Draw(t, "b")}
		f, err := formula.Read(text)
		require.NoError(t, err)
		at, err := f.Work(map[string]float64{"a": 1, "b": 1})
		require.NoError(t, err)
		b := NewBuilder()
		b.Add(total, quantity.Working{Value: at, Formula: text, Terms: map[string]float64{"a": 1, "b": 1}, Links: []quantity.Link{quantity.From("a", area), quantity.From("b", solids)}})
		b.Add(quantity.StepWorking("x", "y", ""), quantity.Working{Value: 2, Formula: "a + b", Terms: map[string]float64{"a": 1, "b": 1}, Links: []quantity.Link{quantity.From("a", area), quantity.From("b", solids)}})
		m, err := b.Build()
		require.NoError(t, err)
		i, _ := m.Find(area)
		k, _ := m.Find(solids)
		o, _ := m.Find(total)
		p, err := m.Compile([]Varied{{i, 0.01, 9}, {k, 0.01, 9}}, []int{o})
		require.NoError(t, err)
		out := [][]float64{{0, 0}}
		p.Worker()([][]float64{{terms["a"], 1}, {terms["b"], 1}}, out)
		want, err := f.Work(terms)
		require.NoError(t, err)
		assert.InDelta(t, want, out[0][0], 1e-12*max(1, math.Abs(want)), text)
		assert.InDelta(t, at, out[0][1], 1e-12)
	})
}

// A table has the value of its function everywhere between its bounds.
func TestATableHoldsTheSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 100).Draw(t, "low")
		high := low + rapid.Float64Range(0, 100).Draw(t, "width")
		table, err := newTable(packs, interval{low, high})
		require.NoError(t, err)
		x := rapid.Float64Range(low, high).Draw(t, "x")
		want, _ := packs(x)
		assert.Equal(t, want, table.at(x))
	})
	_, err := newTable(packs, interval{0, math.Inf(1)})
	assert.Error(t, err)
}
