package properties

import (
	"encoding/json"
	"math/big"
	"strconv"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
)

// The same job gives the same bytes, again and at the same time.
func TestTheSameJobGivesTheSameBytes(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		document, err := json.Marshal(anyJob(t))
		require.NoError(t, err)
		var answers [4]string
		var group sync.WaitGroup
		for i := range answers {
			group.Go(func() {
				e, err := b.reader.Estimate(document, b.catalogue)
				if err != nil {
					return
				}
				encoded, _ := json.Marshal(e) // an empty answer fails below
				answers[i] = string(encoded)
			})
		}
		group.Wait()
		require.NotEmpty(t, answers[0])
		for _, answer := range answers {
			require.Equal(t, answers[0], answer)
		}
	})
}

// An estimate read back from its JSON is the same estimate.
func TestAnEstimateSurvivesItsJSON(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		first := text(t, b.run(t, anyJob(t)))
		var back estimate.Estimate
		require.NoError(t, json.Unmarshal([]byte(first), &back))
		require.Equal(t, first, text(t, &back))
	})
}

// A length as text with its unit gives the bytes that the same length as an SI
// number gives. The number is the one nearest to the exact product.
func TestUnitsGiveTheSameBytesAsSI(t *testing.T) {
	b := newBench(t)
	metres := map[string]*big.Rat{"m": big.NewRat(1, 1), "cm": big.NewRat(1, 100), "mm": big.NewRat(1, 1000), "in": big.NewRat(254, 10000), "ft": big.NewRat(3048, 10000)}
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]string{"m", "cm", "mm", "in", "ft"}).Draw(t, "unit")
		thousandths := rapid.IntRange(1000, 60_000).Draw(t, "thousandths")
		written := strconv.FormatFloat(float64(thousandths)/1000, 'f', -1, 64)
		nearest, _ := new(big.Rat).Mul(big.NewRat(int64(thousandths), 1000), metres[unit]).Float64()
		made := func(width any) string {
			return text(t, b.run(t, job([]any{object{"id": "panel", "shape": object{"kind": "panel", "width_m": width, "height_m": 0.5}}}, coat.with(object{"on": []any{"panel"}}))))
		}
		require.Equal(t, made(nearest), made(written+" "+unit))
	})
}

// A test patch that repeats the values of the book changes nothing but what is
// said about them.
func TestATestPatchThatRepeatsTheBook(t *testing.T) {
	b := newBench(t)
	rapid.Check(t, func(t *rapid.T) {
		components := parts(t)(1)
		on := names(components)
		area := length(0.2, 5).Draw(t, "patch")
		wash, _ := b.catalogue.Operation("wash")
		hvlp, _ := b.catalogue.Method("hvlp")
		spread := 0.07
		plain := job(components,
			object{"id": "wash", "operation": "wash", "product": "detergent", "on": on, "coverage_l_m2": spread},
			object{"id": "bare", "operation": "blast", "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 380, "strip_rate_m2_h": 3, "nozzles": 2, "recovered": true, "on": on},
			coat.with(object{"on": on}))
		before := b.run(t, plain)
		flow := 0.0
		for _, w := range before.Steps[1].Working {
			if w.Quantity == "media_thrown_kg" {
				flow = w.Value / before.Steps[1].AreaM2
			}
		}
		require.Positive(t, flow, "the working says what a square metre takes")
		patches := []any{
			object{"for": []any{"wash"}, "area_m2": area, "minutes": area / wash.Rate.Likely * 60, "litres": area * spread},
			object{"for": []any{"bare"}, "area_m2": area, "minutes": area / (3 * 2) * 60, "media_kg": area * flow},
			object{"for": []any{"coat"}, "area_m2": area, "minutes": area / hvlp.RateM2H.Likely * 60,
				"film_um": 25, "litres": area * 25 / (1000 * 0.60 * hvlp.TransferEfficiencyPercent.Likely / 100)},
		}
		after := b.run(t, plain.with(object{"test_patches": patches}))
		sameTotals(t, before, after)
		require.NotEqual(t, text(t, before), text(t, after), "the sources say where the values are from")
	})
}
