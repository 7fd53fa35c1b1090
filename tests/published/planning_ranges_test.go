package published

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"filmbuild/estimate"
	"filmbuild/estimate/ranges"
	"filmbuild/estimate/risk"
	"filmbuild/products"
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

// Fully correlated elements add up quantile by quantile; the variance of
// that sum is an integral over the score, its mean the sum of the means, by a general library's quadrature.
func TestU12FullyCorrelated(t *testing.T) {
	for _, distribution := range []string{risk.PERT, risk.Triangular} {
		spreads := airVehicle(distribution)
		mean, most := 0.0, 0.0
		for _, s := range spreads {
			mean += s.Mean()
			most += math.Sqrt(s.Variance())
		}
		deviation := togetherDeviation(spreads)
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

// The published cost case as a job of items: the single figure is the published
// sum, and mean and standard deviation of the range are the closed form's, for
// independent items and for items of one group.
//
// Source: GAO-20-195G table 12 (U09, mark A) for the elements; sums of means and
// variances are identities. Money is rounded to the cent, far below the tolerance.
func TestU09AsAJob(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	for _, distribution := range []string{risk.PERT, risk.Triangular} {
		for _, group := range []string{"", "airframe"} {
			items, mean, variance := []map[string]any{}, 0.0, 0.0
			for i, s := range airVehicle(distribution) {
				items = append(items, map[string]any{"id": "element-" + strconv.Itoa(i+1), "correlation_group": group,
					"amount": map[string]any{"low": s.Low, "likely": s.Likely, "high": s.High, "distribution": distribution}})
				mean += s.Mean()
				variance += s.Variance()
			}
			document, err := json.Marshal(map[string]any{"name": "air vehicle", "currency": "USD", "items": items})
			require.NoError(t, err)
			g, err := estimate.NewReader(nil).Trace(document, catalogue)
			require.NoError(t, err)
			r, _, err := ranges.Work(context.Background(), g, ranges.Options{Trials: 400_000, Seed: 1})
			require.NoError(t, err)
			assert.Equal(t, "77092.00", r.SingleFigure.String())
			assert.InEpsilon(t, mean, r.Total.Mean.Float64(), 0.0005, distribution+group)
			deviation := math.Sqrt(variance)
			if group != "" {
				deviation = togetherDeviation(airVehicle(distribution))
			}
			assert.InEpsilon(t, deviation, r.Total.StandardDeviation.Float64(), 5/math.Sqrt(2*400_000.0), distribution+group)
			assert.Less(t, r.Holds, 0.5, "U13: the sum of likely values is not the likely sum")
		}
	}
}

// togetherDeviation is the standard deviation of the sum of fully correlated
// elements, by a general library's quadrature over the score.
func togetherDeviation(spreads []risk.Spread) float64 {
	mean := 0.0
	for _, s := range spreads {
		mean += s.Mean()
	}
	return math.Sqrt(quad.Fixed(func(z float64) float64 {
		sum := -mean
		for _, s := range spreads {
			sum += s.Quantile(z)
		}
		return sum * sum * distuv.UnitNormal.Prob(z)
	}, -8, 8, 2000, nil, 0))
}
