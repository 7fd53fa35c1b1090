package risk

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

// weighted is a simulation of outputs that are sums of weighted inputs.
func weighted(t *testing.T, inputs []Input, weights [][]float64, trials, workers int) Plan {
	t.Helper()
	s, err := NewSampler(inputs, nil, 1)
	require.NoError(t, err)
	keep := make([]int, len(weights))
	for k := range keep {
		keep[k] = k
	}
	return Plan{Sampler: s, Inputs: len(inputs), Outputs: len(weights), Keep: keep, Trials: trials, Workers: workers,
		Worker: func() func(in, out [][]float64) {
			return func(in, out [][]float64) {
				for k, row := range weights {
					for t := range out[k] {
						out[k][t] = 0
						for i, w := range row {
							out[k][t] += w * in[i][t]
						}
					}
				}
			}
		}}
}

func three() []Input {
	return []Input{{Key: "a", Spread: Spread{1, 2, 9, PERT}}, {Key: "b", Spread: Spread{10, 20, 30, Triangular}}, {Key: "c", Spread: Spread{4, 5, 9, PERT}}}
}

// The outcome is the same, to the last bit, for any number of goroutines, also
// where the last block is not full.
func TestAnyNumberOfProcessors(t *testing.T) {
	weights := [][]float64{{1, 2, 3}, {0, 1, 0}}
	for _, trials := range []int{1000, 12345} {
		one, err := Simulate(context.Background(), weighted(t, three(), weights, trials, 1))
		require.NoError(t, err)
		for _, workers := range []int{2, 3, 7, 100} {
			more, err := Simulate(context.Background(), weighted(t, three(), weights, trials, workers))
			require.NoError(t, err)
			assert.Equal(t, one.Kept, more.Kept)
			assert.Equal(t, one.Moments, more.Moments)
			assert.Equal(t, one.Drivers(0), more.Drivers(0))
			for k := range weights {
				for share := 0.0; share <= 1; share += 0.01 {
					assert.Equal(t, one.Tallies[k].Percentile(share), more.Tallies[k].Percentile(share))
				}
			}
		}
	}
}

// Mean and standard deviation of a sum of independent inputs, against the closed
// form and against a general library on the kept trials; percentiles of the
// tally against those of the trials themselves.
func TestTheOutcome(t *testing.T) {
	inputs, weights := three(), []float64{1, 2, 3}
	o, err := Simulate(context.Background(), weighted(t, inputs, [][]float64{weights}, 200_000, 2))
	require.NoError(t, err)
	mean, variance := 0.0, 0.0
	for i, in := range inputs {
		mean += weights[i] * in.Spread.Mean()
		variance += weights[i] * weights[i] * in.Spread.Variance()
	}
	kept := o.Kept[0]
	assert.InDelta(t, mean, o.Moments[0].Mean(), 5*math.Sqrt(variance/200_000))
	assert.InEpsilon(t, math.Sqrt(variance), o.Moments[0].StandardDeviation(), 0.01)
	libraryMean, libraryDeviation := stat.MeanStdDev(kept, nil)
	assert.InEpsilon(t, libraryMean, o.Moments[0].Mean(), 1e-12)
	assert.InEpsilon(t, libraryDeviation, o.Moments[0].StandardDeviation(), 1e-10)

	sorted := slices.Sorted(slices.Values(kept))
	for _, share := range []float64{0, 0.001, 0.1, 0.5, 0.8, 0.9, 0.999, 1} {
		exact := Percentile(sorted, share)
		assert.InEpsilon(t, exact, o.Tallies[0].Percentile(share), 1.0/4096, "a class")
	}
	assert.Equal(t, sorted[0], o.Tallies[0].Least())
	assert.Equal(t, sorted[len(sorted)-1], o.Tallies[0].Most())

	sum := 0.0
	for _, b := range Histogram(sorted, 40) {
		sum += b.Share
	}
	assert.InDelta(t, 1, sum, 1e-12)
	curve := SCurve(sorted)
	require.Len(t, curve, 101)
	for _, p := range curve {
		assert.InDelta(t, p.Share, ShareWithin(sorted, p.Value), 1e-4)
	}
}

// In a sum of alike inputs that are nearly normal, Spearman's correlation of one
// with a part w² of the variance is 6/π·asin(w/2) (an identity of the bivariate
// normal distribution); a source that does nothing is no driver.
func TestDrivers(t *testing.T) {
	s := Spread{0, 5, 10, PERT}
	inputs := []Input{{Key: "a", Spread: s}, {Key: "b", Spread: s}, {Key: "idle", Spread: s}, {Key: "c", Spread: s}}
	o, err := Simulate(context.Background(), weighted(t, inputs, [][]float64{{1, -2, 0, 4}}, 50_000, 2))
	require.NoError(t, err)
	drivers := o.Drivers(0)
	require.Len(t, drivers, 3)
	rank := func(weight float64) float64 { return 6 / math.Pi * math.Asin(weight/math.Sqrt(21)/2) }
	squares := rank(4)*rank(4) + rank(2)*rank(2) + rank(1)*rank(1)
	sum := 0.0
	for k, want := range []struct {
		source int
		weight float64
	}{{3, 4}, {1, -2}, {0, 1}} {
		assert.Equal(t, want.source, drivers[k].Source)
		assert.InDelta(t, rank(want.weight), drivers[k].Correlation, 0.06, "four standard errors, 1/√n each")
		assert.InDelta(t, rank(want.weight)*rank(want.weight)/squares, drivers[k].Share, 0.04)
		assert.Equal(t, want.weight < 0, drivers[k].Correlation < 0)
		sum += drivers[k].Share
	}
	assert.InDelta(t, 1, sum, 1e-12)

	sampled := draws(t, inputs, nil, 1, RankedTrials/Block)
	for _, d := range drivers {
		assert.InDelta(t, spearman(sampled[d.Source], o.Kept[0][:RankedTrials]), d.Correlation, 1e-3, "ranks by class against exact ranks")
	}
}

// What does not vary has no drivers, and its percentiles are the number itself.
func TestAConstant(t *testing.T) {
	o, err := Simulate(context.Background(), weighted(t, three(), [][]float64{{0, 0, 0}}, 1000, 1))
	require.NoError(t, err)
	assert.Empty(t, o.Drivers(0))
	assert.Zero(t, o.Tallies[0].Percentile(0.5))
	assert.Equal(t, []Bin{{0, 0, 1}}, Histogram(o.Kept[0], 40))

	fixed := []Input{{Key: "a", Spread: Spread{7.3, 7.3, 7.3, PERT}}}
	o, err = Simulate(context.Background(), weighted(t, fixed, [][]float64{{1}}, 1000, 1))
	require.NoError(t, err)
	assert.Equal(t, 7.3, o.Tallies[0].Percentile(0.1))
	assert.Zero(t, o.Moments[0].StandardDeviation())
}

func TestTheNumberOfTrials(t *testing.T) {
	for _, trials := range []int{0, -1, 999, 1_000_001} {
		_, err := Simulate(context.Background(), weighted(t, three(), [][]float64{{1, 1, 1}}, trials, 1))
		assert.ErrorContains(t, err, "1000 to 1000000")
	}
}

// It stops when told to, and says how far it is.
func TestStopAndProgress(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	p := weighted(t, three(), [][]float64{{1, 1, 1}}, 1_000_000, 2)
	last := 0
	p.Progress = func(done int) {
		assert.Greater(t, done, last)
		if last = done; done > 5000 {
			cancel()
		}
	}
	_, err := Simulate(ctx, p)
	assert.ErrorIs(t, err, context.Canceled)
	assert.Less(t, last, 100_000)

	p = weighted(t, three(), [][]float64{{1, 1, 1}}, 2000, 2)
	p.Progress = func(done int) { last = done }
	_, err = Simulate(context.Background(), p)
	require.NoError(t, err)
	assert.Equal(t, 2000, last)
}

// The definition's own example: the 30th percentile of 1, 2, 3, 4 is 1.9 (the
// documentation of PERCENTILE.INC, from memory).
func TestPercentile(t *testing.T) {
	x := []float64{1, 2, 3, 4}
	assert.InDelta(t, 1.9, Percentile(x, 0.3), 1e-12)
	assert.Equal(t, 1.0, Percentile(x, 0))
	assert.Equal(t, 4.0, Percentile(x, 1))
	assert.Equal(t, 7.0, Percentile([]float64{7}, 0.8))
	assert.True(t, math.IsNaN(Percentile(nil, 0.5)))
	assert.Equal(t, []float64{0, 0.25, 0.25, 1}, []float64{ShareWithin(x, 0), ShareWithin(x, 1), ShareWithin(x, 1.5), ShareWithin(x, 4)})
}

// Numbers of 0 count, with others beside them.
func TestTallyWithZeros(t *testing.T) {
	tally := newTally()
	tally.add([]float64{0, 0, 0, 8, 8, 8, 8, 8, 8, 8})
	assert.Zero(t, tally.Percentile(0.3))
	assert.Equal(t, 8.0, tally.Percentile(0.5))
	assert.Equal(t, 8.0, tally.Percentile(1))
	assert.True(t, math.IsNaN(newTally().Percentile(0.5)))
}
