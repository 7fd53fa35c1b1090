package risk

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// draws are the columns of a sampler for a number of blocks.
func draws(t *testing.T, inputs []Input, correlations []Correlation, seed uint64, blocks int) [][]float64 {
	t.Helper()
	s, err := NewSampler(inputs, correlations, seed)
	require.NoError(t, err)
	all, one, scratch := make([][]float64, len(inputs)), columns(len(inputs)), s.Scratch()
	for b := range blocks {
		s.Draw(scratch, b, one)
		for i := range one {
			all[i] = append(all[i], one[i]...)
		}
	}
	return all
}

// 400,000 draws have the distribution that they should have: mean and variance
// within five standard errors of the closed form, and the largest distance from
// a general library's distribution function (Kolmogorov and Smirnov) below the
// value that one sample in a thousand passes, 1.95/√n.
func TestDrawsFollowTheirDistribution(t *testing.T) {
	for _, s := range []Spread{{1, 2, 3, PERT}, {1, 2, 9, PERT}, {0, 0, 10, PERT}, {0, 10, 10, PERT}, {1, 2, 3, Triangular}, {0, 0, 10, Triangular}, {0, 10, 10, Triangular}, {50, 55, 65, PERT}} {
		x := draws(t, []Input{{Key: "x", Spread: s}}, nil, 7, 800)[0]
		n := float64(len(x))
		mean, variance := stat.MeanVariance(x, nil)
		assert.InDelta(t, s.Mean(), mean, 5*math.Sqrt(s.Variance()/n), "%v", s)
		assert.InEpsilon(t, s.Variance(), variance, 5*math.Sqrt(2/n), "%v", s)
		slices.Sort(x)
		far := 0.0
		mode := (s.Likely - s.Low) / (s.High - s.Low)
		alpha, beta := s.Shape()
		for i, v := range x {
			unit := (v - s.Low) / (s.High - s.Low)
			p := 0.0
			if s.Distribution == Triangular {
				p = distuv.NewTriangle(0, 1, mode, nil).CDF(unit)
			} else {
				p = mathext.RegIncBeta(alpha, beta, unit)
			}
			far = max(far, math.Abs(p-(float64(i)+0.5)/n))
		}
		assert.Less(t, far, 1.95/math.Sqrt(n), "%v", s)
		assert.GreaterOrEqual(t, x[0], s.Low)
		assert.LessOrEqual(t, x[len(x)-1], s.High)
	}
}

// A draw depends on seed, key and trial: not on what else is drawn, and not on
// its place among the inputs.
func TestSharedKeysShareDraws(t *testing.T) {
	a := Input{Key: "a", Spread: Spread{1, 2, 3, PERT}}
	b := Input{Key: "b", Spread: Spread{1, 2, 3, PERT}}
	c := Input{Key: "c", Spread: Spread{1, 2, 3, Triangular}}
	first, second := draws(t, []Input{a, b}, nil, 1, 3), draws(t, []Input{c, b, a}, nil, 1, 3)
	assert.Equal(t, first[0], second[2])
	assert.Equal(t, first[1], second[1])
	assert.NotEqual(t, first[0], first[1])
	assert.NotEqual(t, first[0], draws(t, []Input{a}, nil, 2, 3)[0], "another seed")
	assert.NotEqual(t, first[0][:Block], first[0][Block:2*Block], "another block")

	wider := Input{Key: "a", Spread: Spread{0, 2, 9, PERT}}
	x, y := first[0], draws(t, []Input{wider}, nil, 1, 3)[0]
	assert.InDelta(t, 1, spearman(x, y), 1e-12, "the same key with another spread keeps the order of its trials")
}

// spearman is the correlation of a general library, of ranks.
func spearman(x, y []float64) float64 { return stat.Correlation(ranks(x), ranks(y), nil) }

func ranks(x []float64) []float64 {
	order := make([]int, len(x))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		if x[a] < x[b] {
			return -1
		}
		return 1
	})
	r := make([]float64, len(x))
	for i, k := range order {
		r[k] = float64(i)
	}
	return r
}

// Inputs of a group move together, whatever their spreads; others do not.
func TestGroups(t *testing.T) {
	x := draws(t, []Input{{Key: "a", Group: "g", Spread: Spread{1, 2, 9, PERT}}, {Key: "b", Group: "g", Spread: Spread{5, 8, 9, Triangular}},
		{Key: "c", Spread: Spread{1, 2, 9, PERT}}, {Key: "d", Group: "g", Spread: Spread{4, 4, 4, PERT}}}, nil, 3, 40)
	assert.InDelta(t, 1, spearman(x[0], x[1]), 1e-9)
	assert.InDelta(t, 0, spearman(x[0], x[2]), 5/math.Sqrt(float64(len(x[0]))))
	assert.Equal(t, []float64{4, 4}, []float64{slices.Min(x[3]), slices.Max(x[3])})
}

// A matrix gives the values its correlations, as a general library measures
// them, and leaves each with its own distribution.
func TestCorrelations(t *testing.T) {
	inputs := []Input{{Key: "a", Spread: Spread{0, 5, 10, PERT}}, {Key: "b", Spread: Spread{0, 0, 10, PERT}}, {Key: "c", Spread: Spread{7, 9, 9, Triangular}}, {Key: "free", Spread: Spread{1, 2, 9, PERT}}}
	given := []Correlation{{"a", "b", 0.6}, {"b", "c", -0.5}, {"a", "c", 0.1}}
	x := draws(t, inputs, given, 5, 400)
	error5 := 5 / math.Sqrt(float64(len(x[0])))
	for _, c := range given {
		i, j := int(c.A[0]-'a'), int(c.B[0]-'a')
		assert.InDelta(t, c.Ratio, stat.Correlation(x[i], x[j], nil), error5, "%v", c)
	}
	for i := range 3 {
		assert.InDelta(t, 0, spearman(x[i], x[3]), error5)
		s := inputs[i].Spread
		mean, variance := stat.MeanVariance(x[i], nil)
		assert.InDelta(t, s.Mean(), mean, error5*math.Sqrt(s.Variance()))
		assert.InEpsilon(t, s.Variance(), variance, error5*math.Sqrt2)
	}
}

// Correlations that no numbers can have are refused: three that all oppose each
// other by 0.6, and two that are one (a group says that).
func TestNotPositiveDefinite(t *testing.T) {
	inputs := []Input{{Key: "a", Spread: Spread{1, 2, 3, PERT}}, {Key: "b", Spread: Spread{1, 2, 3, Triangular}}}
	_, err := NewSampler(inputs, []Correlation{{"a", "b", 0.99}}, 1)
	assert.NoError(t, err)
	for _, bad := range [][]Correlation{
		{{"a", "b", -0.6}, {"b", "c", -0.6}, {"a", "c", -0.6}},
		{{"a", "b", 1}},
		{{"a", "b", 0.9}, {"b", "c", 0.9}, {"a", "c", 0.1}},
	} {
		_, err := NewSampler(inputs, bad, 1)
		assert.ErrorIs(t, err, ErrNotPositiveDefinite)
	}
}

func TestASpreadOutOfOrderIsRefused(t *testing.T) {
	_, err := NewSampler([]Input{{Key: "wing", Spread: Spread{3, 2, 1, PERT}}}, nil, 1)
	assert.ErrorContains(t, err, "wing")
}

// The coefficients of a spread hold its variance.
func TestHermite(t *testing.T) {
	for _, s := range []Spread{{1, 2, 3, PERT}, {0, 0, 10, PERT}, {1, 2, 9, Triangular}, {0, 0, 10, Triangular}} {
		sum := 0.0
		for _, c := range hermite(s) {
			sum += c * c
		}
		assert.InEpsilon(t, s.Variance(), sum, 1e-4, "%v", s)
	}
	assert.Equal(t, 0.4, scoreRatio(Spread{}, Spread{1, 2, 3, PERT}, 0.4), "what does not vary needs no correction")
}
