package published

import (
	"context"
	"math"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"filmbuild/estimate/risk"
)

// airVehicle is the published cost case: seven elements of an air vehicle, in
// thousands of dollars, as low, likely and high.
//
// Source: GAO-20-195G table 12 (U09, mark A: read).
func airVehicle(distribution string) []risk.Spread {
	var spreads []risk.Spread
	for _, e := range [][3]float64{{17955, 19645, 21785}, {8500, 10553, 13000}, {4000, 4306, 5100}, {4100, 4305, 4650}, {550, 600, 650}, {32300, 35547, 52500}, {1950, 2136, 2600}} {
		spreads = append(spreads, risk.Spread{Low: e[0], Likely: e[1], High: e[2], Distribution: distribution})
	}
	return spreads
}

// summed simulates the sum of the elements.
func summed(t *testing.T, spreads []risk.Spread, group string, correlations []risk.Correlation) *risk.Outcome {
	t.Helper()
	inputs := make([]risk.Input, len(spreads))
	for i, s := range spreads {
		inputs[i] = risk.Input{Key: strconv.Itoa(i), Group: group, Spread: s}
	}
	sampler, err := risk.NewSampler(inputs, correlations, 1)
	require.NoError(t, err)
	o, err := risk.Simulate(context.Background(), risk.Plan{Sampler: sampler, Inputs: len(inputs), Outputs: 1, Keep: []int{0}, Trials: risk.MostTrials,
		Worker: func() func(in, out [][]float64) {
			return func(in, out [][]float64) {
				clear(out[0])
				for _, column := range in {
					for t, x := range column {
						out[0][t] += x
					}
				}
			}
		}})
	require.NoError(t, err)
	return o
}

// The likely values add up to the published 77 million; mean and standard
// deviation of independent elements are sums of the closed forms (identity), and
// 1,000,000 trials meet them within five standard errors.
func TestU09IndependentElements(t *testing.T) {
	for _, distribution := range []string{risk.PERT, risk.Triangular} {
		likely, mean, variance := 0.0, 0.0, 0.0
		for _, s := range airVehicle(distribution) {
			likely += s.Likely
			mean += s.Mean()
			variance += s.Variance()
		}
		assert.Equal(t, 77_092.0, likely, "published as $77 million")
		assert.Equal(t, 2_466_944.0, likely*32, "published as $2.47 billion for 32")
		o := summed(t, airVehicle(distribution), "", nil)
		assert.InDelta(t, mean, o.Moments[0].Mean(), 5*math.Sqrt(variance/risk.MostTrials), distribution)
		assert.InEpsilon(t, math.Sqrt(variance), o.Moments[0].StandardDeviation(), 5/math.Sqrt(2*risk.MostTrials), distribution)
	}
}

// Correlation of 0, 0.2 and 0.3 between all elements: the reference's standard
// deviations are those of triangular elements.
//
// Source: U12 (mark D, within 0.2 %).
func TestU12Correlation(t *testing.T) {
	for _, c := range []struct{ ratio, deviation float64 }{{0, 4600}, {0.2, 5072}, {0.3, 5293}} {
		var pairs []risk.Correlation
		for i := range 7 {
			for j := range i {
				if c.ratio != 0 {
					pairs = append(pairs, risk.Correlation{A: strconv.Itoa(i), B: strconv.Itoa(j), Ratio: c.ratio})
				}
			}
		}
		o := summed(t, airVehicle(risk.Triangular), "", pairs)
		assert.InEpsilon(t, c.deviation, o.Moments[0].StandardDeviation(), 0.002, "ratio %g", c.ratio)
	}
}

// Fully correlated elements add up quantile by quantile; mean and variance of
// that sum are integrals over the score, by a general library's quadrature.
func TestU12FullyCorrelated(t *testing.T) {
	for _, distribution := range []string{risk.PERT, risk.Triangular} {
		spreads := airVehicle(distribution)
		moment := func(about float64, power float64) float64 {
			return quad.Fixed(func(z float64) float64 {
				sum := -about
				for _, s := range spreads {
					sum += s.Quantile(z)
				}
				return math.Pow(sum, power) * distuv.UnitNormal.Prob(z)
			}, -8, 8, 2000, nil, 0)
		}
		mean, most := 0.0, 0.0
		for _, s := range spreads {
			mean += s.Mean()
			most += math.Sqrt(s.Variance())
		}
		assert.InEpsilon(t, mean, moment(0, 1), 1e-9, "correlation leaves the mean alone")
		deviation := math.Sqrt(moment(mean, 2))
		assert.Less(t, deviation, most, "the sum of the deviations is only reached by shapes that are alike")
		o := summed(t, spreads, "all", nil)
		assert.InDelta(t, mean, o.Moments[0].Mean(), 5*deviation/math.Sqrt(risk.MostTrials))
		assert.InEpsilon(t, deviation, o.Moments[0].StandardDeviation(), 5/math.Sqrt(2*risk.MostTrials), distribution)
		require.Len(t, o.Drivers(0), 1, "elements of one group are one driver")
	}
}

// The sum of likely values is not the likely sum: in this case it holds in 12 to
// 26 % of the trials, from independent to correlated.
//
// Source: Book, Crosslink 2001 (U13, mark A) for the rule; the figures are the
// reference's own note 8 on the GAO case (mark D).
func TestU13TheSumOfLikelyValues(t *testing.T) {
	for _, distribution := range []string{risk.PERT, risk.Triangular} {
		for _, group := range []string{"", "all"} {
			kept := summed(t, airVehicle(distribution), group, nil).Kept[0]
			slices.Sort(kept)
			assert.Less(t, risk.ShareWithin(kept, 77_092), 0.5)
		}
	}
	kept := summed(t, airVehicle(risk.Triangular), "", nil).Kept[0]
	slices.Sort(kept)
	assert.InDelta(t, 0.12, risk.ShareWithin(kept, 77_092), 0.01)
}

// Four tasks on a critical path: 24 in all, variance 5 by the textbook's
// ((b − a)/6)², and 0.9632 that 28 is enough by the normal curve. The exact
// variance of the same beta distributions is another, and so is the chance.
//
// Source: [FLY] (S03, mark A).
func TestS03TasksOnAPath(t *testing.T) {
	mean, textbook, exact := 0.0, 0.0, 0.0
	spreads := []risk.Spread{{Low: 5, Likely: 8, High: 17}, {Low: 3, Likely: 5, High: 7}, {Low: 4, Likely: 6, High: 8}, {Low: 3, Likely: 4, High: 5}}
	for i := range spreads {
		spreads[i].Distribution = risk.PERT
		mean += spreads[i].Mean()
		textbook += math.Pow((spreads[i].High-spreads[i].Low)/6, 2)
		exact += spreads[i].Variance()
	}
	assert.InDelta(t, 24, mean, 1e-12)
	assert.InDelta(t, 5.0, textbook, 1e-12)
	assert.InDelta(t, 0.9632, distuv.UnitNormal.CDF((28-mean)/math.Sqrt(textbook)), 0.0003)
	o := summed(t, spreads, "", nil)
	assert.InEpsilon(t, math.Sqrt(exact), o.Moments[0].StandardDeviation(), 5/math.Sqrt(2*risk.MostTrials))
}
