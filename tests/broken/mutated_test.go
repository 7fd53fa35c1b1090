package broken

import (
	"encoding/json"
	"os"
	"path/filepath"
	"sort"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
	"filmbuild/products"
)

// leaf is a value in a JSON tree, with how to replace it or take it away.
type leaf struct {
	value any
	set   func(any)
	drop  func()
}

// leaves lists every value of a tree below its root, in a fixed order.
func leaves(tree any, list []leaf) []leaf {
	switch node := tree.(type) {
	case map[string]any:
		names := make([]string, 0, len(node))
		for name := range node {
			names = append(names, name)
		}
		sort.Strings(names)
		for _, name := range names {
			list = append(list, leaf{node[name], func(v any) { node[name] = v }, func() { delete(node, name) }})
			list = leaves(node[name], list)
		}
	case []any:
		for i := range node {
			list = append(list, leaf{node[i], func(v any) { node[i] = v }, func() { node[i] = nil }})
			list = leaves(node[i], list)
		}
	}
	return list
}

// Whatever is changed in a sound job, it is worked out or refused with its
// faults: no panic, no figure that is not finite, no amount that is none.
func TestMutatedExamples(t *testing.T) {
	catalogue := load(t)
	reader := estimate.NewReader(nil)
	all, err := example.All()
	require.NoError(t, err)
	extremes := []any{0, -1, 1, 0.5, 1e-300, 1e-9, 1e-3, 1e3, 1e6, 1e9, 1e15, 1e300, -1e300, 99.999999, 100, 101, 3.7, "x", "", "1 m", "35 psi", true, nil, []any{}, map[string]any{}, "wing", "wing/upper", "prime", "epoxy-primer", "100000000000000.00"}
	worked, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		var tree any
		require.NoError(t, json.Unmarshal(rapid.SampledFrom(all).Draw(t, "example").Job, &tree))
		for range rapid.IntRange(1, 4).Draw(t, "changes") {
			list := leaves(tree, nil)
			at := list[rapid.IntRange(0, len(list)-1).Draw(t, "place")]
			switch x, number := at.value.(float64); {
			case rapid.IntRange(0, 5).Draw(t, "drop") == 0:
				at.drop()
			case number && rapid.Bool().Draw(t, "scaled"):
				at.set(x * rapid.SampledFrom([]float64{0.01, 0.5, 2, 100, 1e4}).Draw(t, "times"))
			default:
				at.set(rapid.SampledFrom(extremes).Draw(t, "value"))
			}
		}
		document, err := json.Marshal(tree)
		require.NoError(t, err)
		e, err := reader.Estimate(document, catalogue)
		if err != nil {
			var list *fault.Error
			require.ErrorAs(t, err, &list, "only faults")
			require.NotEmpty(t, list.Faults)
			require.Nil(t, e)
			refused++
			return
		}
		worked++
		_, err = json.Marshal(e) // fails for what is not finite and for what is no amount
		require.NoError(t, err, string(document))
		require.NotEmpty(t, report.Table(e, units.US))
		for _, s := range e.Steps {
			for what, value := range map[string]float64{"area": s.AreaM2, "litres": s.Litres, "kilograms": s.Kilograms, "tape": s.MaskingTapeM, "hours": s.Hours, "waste": s.WasteKg, "film": s.DryFilmKg, "removed": s.RemovedKg, "solvent": s.VOCKg} {
				require.GreaterOrEqual(t, value, 0.0, "%s of %s: %s", what, s.ID, document)
			}
			for _, m := range s.Mixing {
				require.GreaterOrEqual(t, m.Batches, 0, string(document))
			}
		}
	})
	require.Positive(t, worked)
	require.Positive(t, refused)
}

// Bytes that are no job at all are refused, too; the broken jobs are the seeds.
func FuzzEstimate(f *testing.F) {
	files, err := filepath.Glob("testdata/*.json")
	require.NoError(f, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(text)
	}
	all, err := example.All()
	require.NoError(f, err)
	for _, e := range all {
		f.Add(e.Job)
	}
	catalogue, err := products.Load()
	require.NoError(f, err)
	reader := estimate.NewReader(nil)
	f.Fuzz(func(t *testing.T, document []byte) {
		e, err := reader.Estimate(document, catalogue)
		if err != nil {
			require.Nil(t, e)
			require.NotEmpty(t, faultsOf(t, err))
			return
		}
		_, err = json.Marshal(e)
		require.NoError(t, err)
	})
}
