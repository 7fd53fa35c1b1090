package properties

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
)

var coat = object{"id": "coat", "operation": "coat", "product": "epoxy-primer", "dry_film_um": 25, "method": "hvlp", "loss_percent": 10, "mask": false}

func job(components []any, steps ...any) object {
	return object{"name": "Drawn at random", "currency": "USD", "components": components, "steps": steps}
}

// A shape k times as large has k² times the area, edges k times as long, and
// takes k² times the paint.
func TestAreaScalesWithTheSquare(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		components := parts(t)
		k := length(0.4, 3).Draw(t, "k")
		one, large := components(1), components(k)
		before := b.run(t, job(one, coat.with(object{"on": names(one)})))
		after := b.run(t, job(large, coat.with(object{"on": names(large)})))
		for i, a := range before.Areas {
			same(t, a.AreaM2*k*k, after.Areas[i].AreaM2, "area")
			same(t, a.EdgeM*k, after.Areas[i].EdgeM, "edge")
		}
		same(t, before.Totals.Litres*k*k, after.Totals.Litres, "litres")
		same(t, before.Totals.DryFilmKg*k*k, after.Totals.DryFilmKg, "dry film")
	})
}

// Litres go with the area and with the film.
func TestLitresGoWithAreaAndFilm(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		components := parts(t)(1)
		film, times := length(1, 200).Draw(t, "film"), length(1, 10).Draw(t, "times")
		step := coat.with(object{"on": names(components)})
		thin := b.run(t, job(components, step.with(object{"dry_film_um": film})))
		thick := b.run(t, job(components, step.with(object{"dry_film_um": film * times})))
		same(t, thin.Totals.Litres*times, thick.Totals.Litres, "litres")
		same(t, thin.Totals.DryFilmKg*times, thick.Totals.DryFilmKg, "dry film")
		same(t, thin.Totals.Litres/thin.Totals.AreaM2, thick.Totals.Litres/times/thick.Totals.AreaM2, "litres of one square metre")
	})
}

// A count of n takes what n components of one take.
func TestACountIsSoManyComponents(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		form, faces := shape(t, "part")
		n := rapid.IntRange(2, 6).Draw(t, "n")
		part := object{"id": "part", "shape": form(1), "existing_film_um": 200, "openings": []any{object{"face": faces[0], "area_m2": 0.002, "edge_m": 0.2}}}
		var apart []any
		for i := range n {
			apart = append(apart, part.with(object{"id": fmt.Sprintf("part-%d", i)}))
		}
		work := steps(t, []any{"part"})
		spread := make([]any, len(work))
		for i, s := range work {
			if spread[i] = s; s.(object)["on"] != nil {
				spread[i] = s.(object).with(object{"on": names(apart)})
			}
		}
		marked := object{"markings": []any{object{"id": "roundel", "kind": "rectangle", "width_m": 0.1, "height_m": 0.1, "colour": "white"}}}
		together := b.run(t, job([]any{part.with(object{"count": n})}, work...).with(marked))
		single := b.run(t, job(apart, spread...).with(marked))
		sameTotals(t, together, single)
	})
}

func sameTotals(t *rapid.T, one, other *estimate.Estimate) {
	t.Helper()
	a, b := one.Totals, other.Totals
	for what, pair := range map[string][2]float64{
		"area": {a.AreaM2, b.AreaM2}, "litres": {a.Litres, b.Litres}, "kilograms": {a.Kilograms, b.Kilograms}, "tape": {a.MaskingTapeM, b.MaskingTapeM},
		"hours": {a.Hours, b.Hours}, "waste": {a.WasteKg, b.WasteKg}, "film": {a.DryFilmKg, b.DryFilmKg}, "removed": {a.RemovedKg, b.RemovedKg}, "solvent": {a.VOCKg, b.VOCKg},
	} {
		same(t, pair[0], pair[1], what)
	}
	// a sum in another order may differ in its last digit, and then one cent
	require.InDelta(t, a.StepsCost.Float64(), b.StepsCost.Float64(), 0.01*float64(4*len(one.Steps)), "cost")
	require.InDelta(t, one.Budget.MaterialsOrdered.Float64(), other.Budget.MaterialsOrdered.Float64(), 1e-9, "the same packs")
}

// The order of the components changes no total.
func TestTheOrderOfComponentsDoesNotMatter(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		drawn := anyJob(t)
		shuffled := rapid.Permutation(drawn["components"].([]any)).Draw(t, "shuffled")
		sameTotals(t, b.run(t, drawn), b.run(t, drawn.with(object{"components": shuffled})))
	})
}

// A step over two regions that make up a whole takes what a step over the
// whole takes.
func TestTwoRegionsMakeUpTheWhole(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		components := parts(t)(1)
		ids := names(components)
		share := length(0.01, 0.99).Draw(t, "share")
		regions := []any{object{"id": "most", "of": ids, "share_ratio": share, "edge_m": 0}, object{"id": "rest", "of": ids, "share_ratio": 1 - share, "edge_m": 0}}
		step := coat.with(object{"on": ids})
		whole := b.run(t, job(components, step))
		split := b.run(t, job(components, step.with(object{"on": []any{"most", "rest"}})).with(object{"regions": regions}))
		sameTotals(t, whole, split)
		apart := b.run(t, job(components, step.with(object{"id": "a", "on": []any{"most"}}), step.with(object{"id": "b", "on": []any{"rest"}})).with(object{"regions": regions}))
		same(t, whole.Totals.Litres, apart.Totals.Litres, "litres of two steps")
	})
}
