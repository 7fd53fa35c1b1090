package properties

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// More loss, and a worse efficiency, never mean less paint.
func TestMoreLossNeverMeansLessPaint(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		components := parts(t)(1)
		step := coat.with(object{"on": names(components)})
		little, much := length(0, 60).Draw(t, "loss"), length(0, 35).Draw(t, "more loss")
		good, worse := length(30, 100).Draw(t, "efficiency"), length(0, 28).Draw(t, "less efficient")
		before := b.run(t, job(components, step.with(object{"loss_percent": little, "transfer_efficiency_percent": good})))
		after := b.run(t, job(components, step.with(object{"loss_percent": little + much, "transfer_efficiency_percent": good - worse})))
		require.GreaterOrEqual(t, after.Totals.Litres, before.Totals.Litres*(1-1e-12))
		require.GreaterOrEqual(t, after.Totals.WasteKg, before.Totals.WasteKg*(1-1e-9))
		require.GreaterOrEqual(t, after.Order[0].Bought, before.Order[0].Needed)
		require.GreaterOrEqual(t, after.Budget.Total.Float64(), before.Budget.Total.Float64())
		same(t, before.Totals.DryFilmKg, after.Totals.DryFilmKg, "the film is the same")
		same(t, before.Totals.Litres*good/100*(1-little/100), after.Totals.Litres*(good-worse)/100*(1-(little+much)/100), "what lands")
	})
}

// However many removal steps follow one another, whole or in parts, no more
// paint comes off than is there; and all of it does once all was treated.
func TestNoMorePaintComesOffThanIsThere(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		components := parts(t)(1)
		ids := names(components)
		there := 0.0
		for i, a := range b.run(t, job(components)).Areas {
			there += a.AreaM2 * components[i].(object)["existing_film_um"].(float64) / 1000 * 1.5 // kg/L, assumed where not given
		}
		share := length(0.05, 0.95).Draw(t, "share")
		regions := []any{object{"id": "some", "of": ids, "share_ratio": share, "edge_m": 1}, object{"id": "whole", "of": ids}}
		removals := []object{
			{"operation": "blast", "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 380, "strip_rate_m2_h": 3},
			{"operation": "strip", "product": "stripper"}, {"operation": "sand", "product": "disc-80"},
		}
		places := []any{"some", "whole", ids[0]}
		var work []any
		all := false
		for i := range rapid.IntRange(1, 5).Draw(t, "removals") {
			place := rapid.SampledFrom(places).Draw(t, "place")
			all = all || place == "whole"
			work = append(work, rapid.SampledFrom(removals).Draw(t, "removal").with(object{"id": string(rune('a' + i)), "on": []any{place}}))
		}
		e := b.run(t, job(components, work...).with(object{"regions": regions}))
		require.LessOrEqual(t, e.Totals.RemovedKg, there*(1+1e-9))
		if all {
			same(t, there, e.Totals.RemovedKg, "all of it")
		}
		for _, s := range e.Steps {
			require.GreaterOrEqual(t, s.RemovedKg, 0.0)
			require.GreaterOrEqual(t, s.WasteKg, s.RemovedKg)
		}
	})
}
