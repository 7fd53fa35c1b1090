package estimate_test

import (
	"encoding/json"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/model"
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

func traced(t *testing.T, job any) *estimate.Graph {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	data, raw := job.([]byte)
	if !raw {
		data, err = json.Marshal(job)
		require.NoError(t, err)
	}
	g, err := estimate.NewReader(nil).Trace(data, catalogue)
	require.NoError(t, err)
	return g
}

// at works the graph out with some inputs replaced, by key.
func at(t *testing.T, g *estimate.Graph, output quantity.Node, inputs map[string]float64) float64 {
	t.Helper()
	var varied []model.Varied
	var in [][]float64
	for _, u := range g.Uncertain {
		if x, wanted := inputs[u.Key]; wanted {
			varied, in = append(varied, model.Varied{Vertex: u.Vertex, Low: u.Spread.Low, High: u.Spread.High}), append(in, []float64{x})
		}
	}
	require.Len(t, varied, len(inputs), "inputs of that name")
	k, known := g.Model.Find(output)
	require.True(t, known, "%v", output)
	p, err := g.Model.Compile(varied, []int{k})
	require.NoError(t, err)
	out := [][]float64{{math.NaN()}}
	p.Worker()(in, out)
	return out[0][0]
}

func TestTheGraphOfEveryExample(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, ex := range all {
		t.Run(ex.ID, func(t *testing.T) {
			g := traced(t, ex.Job)
			assert.NotEmpty(t, g.Uncertain)
			assert.Empty(t, g.Notes)
			for i := range g.Estimate.Steps {
				s := &g.Estimate.Steps[i]
				assert.InDelta(t, s.Hours, at(t, g, quantity.StepWorking(s.ID, "hours", ""), nil), 1e-9*max(1, s.Hours), s.ID)
			}
		})
	}
}

// The graph says for other inputs what the engine says for a job that has them
// (identity). A length gives a parabola, which the response follows exactly.
func TestTheGraphFollowsTheEngine(t *testing.T) {
	job := func(span, solids, film any) map[string]any {
		return map[string]any{"name": "j", "currency": "USD",
			"components": []any{map[string]any{"id": "wing", "shape": map[string]any{"kind": "wing", "root_chord_m": 2, "tip_chord_m": 1, "span_m": span, "root_thickness_ratio": 0.1, "tip_thickness_ratio": 0.1, "section": "naca"}}},
			"products":   []any{map[string]any{"id": "p", "kind": "paint", "name": "p", "volume_solids_percent": solids, "packs": []any{map[string]any{"pack_l": 1, "price": "10.00"}}}},
			"steps":      []any{map[string]any{"id": "c", "operation": "coat", "on": []any{"wing"}, "product": "p", "dry_film_um": film, "method": "hvlp", "rate_m2_h": 5}}}
	}
	between := func(low, likely, high float64) any { return map[string]any{"low": low, "likely": likely, "high": high} }
	g := traced(t, job(between(4, 5, 7), between(40, 50, 55), between(20, 25, 40)))
	litres := quantity.StepWorking("c", "litres", "")
	for _, x := range [][3]float64{{5, 50, 25}, {4, 50, 25}, {7, 50, 25}, {6.3, 43, 37}, {4.4, 55, 20}} {
		want := traced(t, job(x[0], x[1], x[2])).Estimate.Totals.Litres
		got := at(t, g, litres, map[string]float64{"given/components/wing/shape/span_m": x[0], "product/p/volume_solids_percent": x[1], "setting/c/dry_film_um": x[2]})
		assert.InDelta(t, want, got, 1e-3*want, "%v", x)
		if x[0] == 5 || x[0] == 4 || x[0] == 7 {
			assert.InDelta(t, want, got, 1e-9*want, "exact at the ends and the middle: %v", x)
		}
	}
}

// followed lists fields of steps and of the job whose numbers move figures.
func followed() []string {
	return []string{"dry_film_um", "loss_percent", "transfer_efficiency_percent", "rate_m2_h", "setup_h", "strip_rate_m2_h", "breakdown_percent",
		"working_charge_kg", "contingency_percent", "tax_percent", "allowance_percent", "existing_film_um", "existing_film_density_kg_l", "area_m2", "amount",
		"span_m", "size_m", "thinner_percent", "coverage_l_m2", "media_flow_kg_h", "pressure_kpa", "nozzle_bore_mm", "profile_um", "volume_solids_percent"}
}

// numbers lists the pointers of the numbers of a document that can be ranged.
func numbers(value any, at string, into map[string]float64) {
	switch v := value.(type) {
	case map[string]any:
		for name, member := range v {
			if x, number := member.(float64); number && x > 0 && slices.Contains(followed(), name) {
				into[at+"/"+name] = x
			}
			numbers(member, at+"/"+name, into)
		}
	case []any:
		for i, member := range v {
			numbers(member, at+"/"+strconv.Itoa(i), into)
		}
	}
}

func put(value any, path []string, x any) {
	switch v := value.(type) {
	case map[string]any:
		if len(path) == 1 {
			v[path[0]] = x
			return
		}
		put(v[path[0]], path[1:], x)
	case []any:
		i, _ := strconv.Atoi(path[0])
		put(v[i], path[1:], x)
	}
}

// Whichever number of an example is given as a range, the graph says at its ends
// what the engine says for them: hours, litres and money to the last digit shown
// (identity).
func TestTheGraphFollowsTheEngineInEveryNumber(t *testing.T) {
	all, err := example.All()
	require.NoError(t, err)
	for _, ex := range all {
		t.Run(ex.ID, func(t *testing.T) {
			var doc any
			require.NoError(t, json.Unmarshal(ex.Job, &doc))
			found := map[string]float64{}
			numbers(doc, "", found)
			require.NotEmpty(t, found)
			for _, pointer := range slices.Sorted(maps.Keys(found)) {
				x := found[pointer]
				low, high := x*0.9, min(x*1.08, max(x, 100))
				give := func(value any) *estimate.Graph {
					var copied any
					require.NoError(t, json.Unmarshal(ex.Job, &copied))
					put(copied, strings.Split(pointer[1:], "/"), value)
					return traced(t, copied)
				}
				g := give(map[string]float64{"low": low, "likely": x, "high": high})
				k := slices.IndexFunc(g.Uncertain, func(u estimate.Uncertain) bool { return u.Pointer == pointer })
				if k < 0 { // then it moves nothing
					assert.Empty(t, g.Notes)
					assert.Equal(t, give(low).Estimate.Budget, give(high).Estimate.Budget, pointer)
					continue
				}
				for _, y := range []float64{low, high} {
					want := give(y).Estimate
					got := func(node quantity.Node) float64 { return at(t, g, node, map[string]float64{g.Uncertain[k].Key: y}) }
					budget := func(name string) quantity.Node { return quantity.Node{Kind: "budget", Quantity: name} }
					assert.InDelta(t, want.Budget.Total.Float64(), got(budget("total")), 0.0051, "total at %s = %v", pointer, y)
					for i := range want.Steps {
						s := &want.Steps[i]
						assert.InDelta(t, s.Hours, got(quantity.StepWorking(s.ID, "hours", "")), 1e-6*max(1, s.Hours), "hours of %s at %s = %v", s.ID, pointer, y)
						assert.InDelta(t, s.Cost.Float64(), got(quantity.StepWorking(s.ID, "cost", "")), 0.0051, "cost of %s at %s = %v", s.ID, pointer, y)
					}
				}
			}
		})
	}
}

// The hours of a crew with sessions, helpers and lost time follow too.
func TestTheGraphFollowsSessions(t *testing.T) {
	job := func(rate any) map[string]any {
		return map[string]any{"name": "j", "currency": "USD", "labour": map[string]any{"volunteer_rate": "20", "session_h": 4, "session_setup_h": 0.5, "availability_percent": 80},
			"components": []any{map[string]any{"id": "deck", "shape": map[string]any{"kind": "measured", "area_m2": 100}}},
			"steps":      []any{map[string]any{"id": "s", "operation": "sand", "on": []any{"deck"}, "product": "disc-150", "rate_m2_h": rate, "crew": 3, "helpers": 1}}}
	}
	g := traced(t, job(map[string]float64{"low": 2, "likely": 4, "high": 6}))
	for _, rate := range []float64{2, 3.3, 6} {
		want := traced(t, job(rate)).Estimate
		in := map[string]float64{"setting/s/rate_m2_h": rate}
		assert.InDelta(t, want.Totals.Hours, at(t, g, quantity.StepWorking("s", "hours", ""), in), 1e-9)
		assert.InDelta(t, want.Budget.Total.Float64(), at(t, g, quantity.Node{Kind: "budget", Quantity: "total"}, in), 0.0051)
	}
}
