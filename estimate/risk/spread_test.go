package risk

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func spreads() *rapid.Generator[Spread] {
	return rapid.Custom(func(t *rapid.T) Spread {
		low := rapid.Float64Range(-1e6, 1e6).Draw(t, "low")
		width := rapid.Float64Range(1e-3, 1e6).Draw(t, "width")
		part := rapid.Float64Range(0, 1).Draw(t, "part")
		return Spread{Low: low, Likely: min(low+part*width, low+width), High: low + width, Distribution: rapid.SampledFrom([]string{PERT, Triangular}).Draw(t, "distribution")}
	})
}

// Reference planning U04 and U05 (mark A) and U06 (mark D): mean and exact
// variance; the textbook's ((b−a)/6)² beside it is another number.
func TestMoments(t *testing.T) {
	for _, c := range []struct{ low, likely, high, mean, variance, textbook float64 }{
		{1, 2, 3, 2, 0.142857, 0.111111},
		{1, 2, 9, 3, 1.714286, 1.777778},
		{5, 8, 17, 9, 4.571429, 4.000000},
		{0, 10, 100, 23.333333, 255.5556, 277.7778},
	} {
		s := Spread{c.low, c.likely, c.high, PERT}
		assert.InDelta(t, c.mean, s.Mean(), 1e-6)
		assert.InDelta(t, c.variance, s.Variance(), 1e-4)
		assert.InDelta(t, c.textbook, (c.high-c.low)*(c.high-c.low)/36, 1e-4)
		assert.Greater(t, math.Abs(c.textbook-s.Variance()), 1e-2)

		a, m, b := c.low, c.likely, c.high
		tri := Spread{a, m, b, Triangular}
		assert.InDelta(t, (a+m+b)/3, tri.Mean(), 1e-12, "U04")
		assert.InDelta(t, (a*a+m*m+b*b-a*m-a*b-m*b)/18, tri.Variance(), 1e-9, "U04")
	}
}

// Against a general library: its beta and triangular distributions have the
// moments of our closed forms.
func TestMomentsAgainstALibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := spreads().Draw(t, "spread")
		if s.Distribution == Triangular {
			width := s.High - s.Low
			other := distuv.NewTriangle(0, 1, min((s.Likely-s.Low)/width, 1), nil)
			assert.InEpsilon(t, other.Variance()*width*width, s.Variance(), 1e-6)
			assert.InDelta(t, s.Low+width*other.Mean(), s.Mean(), 1e-9*(1+math.Abs(s.Low)+width))
			return
		}
		alpha, beta := s.Shape()
		other := distuv.Beta{Alpha: alpha, Beta: beta}
		width := s.High - s.Low
		assert.InEpsilon(t, other.Variance()*width*width, s.Variance(), 1e-6)
		assert.InDelta(t, s.Low+width*other.Mean(), s.Mean(), 1e-9*(1+math.Abs(s.Low)+width))
	})
}

// Reference planning U08 (mark D, a spreadsheet's BETA.INV and BETA.DIST).
func TestBetaQuantile(t *testing.T) {
	s := Spread{5, 8, 17, PERT}
	alpha, beta := s.Shape()
	assert.Equal(t, []float64{2, 4}, []float64{alpha, beta})
	assert.InDelta(t, 10.882308, s.Quantile(distuv.UnitNormal.Quantile(0.8)), 1e-6)
	assert.InDelta(t, 0.539095, mathext.RegIncBeta(alpha, beta, (9.0-5)/(17-5)), 1e-6)
	assert.InDelta(t, 9, s.Quantile(distuv.UnitNormal.Quantile(0.5390947265625)), 1e-5)
}

// The quantile of any spread is undone by a general library's distribution.
func TestQuantileAgainstALibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := spreads().Draw(t, "spread")
		z := rapid.Float64Range(-5, 5).Draw(t, "z")
		x := (s.Quantile(z) - s.Low) / (s.High - s.Low)
		mode := (s.Likely - s.Low) / (s.High - s.Low)
		if s.Distribution == Triangular {
			assert.InDelta(t, distuv.UnitNormal.CDF(z), distuv.NewTriangle(0, 1, mode, nil).CDF(x), 1e-5)
			return
		}
		alpha, beta := s.Shape()
		assert.InDelta(t, distuv.UnitNormal.CDF(z), mathext.RegIncBeta(alpha, beta, x), 1e-5)
	})
}

// The table that draws go by follows the distribution within 10^-8 of the
// range, for every shape from one end to the other.
func TestTheTableFollowsTheDistribution(t *testing.T) {
	worst := 0.0
	for _, alpha := range []float64{1, 1.02, 1.3, 1.8, 2.5, 3, 3.7, 4.4, 4.99, 5} {
		table := &betaTable{}
		table.build(alpha)
		before := -1.0
		for z := -tableEnd; z <= tableEnd; z += 0.0137 {
			got := table.at(z)
			want := distuv.Beta{Alpha: alpha, Beta: 6 - alpha}.Quantile(distuv.UnitNormal.CDF(z))
			if z > 0 {
				want = 1 - distuv.Beta{Alpha: 6 - alpha, Beta: alpha}.Quantile(distuv.UnitNormal.CDF(-z))
			}
			worst = max(worst, math.Abs(got-want))
			assert.GreaterOrEqual(t, got, before, "α %g z %g: a higher score is never a lower value", alpha, z)
			before = got
		}
		assert.Equal(t, table.at(-tableEnd), table.at(-20))
		assert.InDelta(t, table.at(tableEnd), table.at(20), 1e-15)
	}
	assert.Less(t, worst, 1e-8)
}

func TestValid(t *testing.T) {
	for _, s := range []Spread{{1, 2, 3, PERT}, {1, 1, 1, Triangular}, {0, 0, 5, PERT}, {0, 5, 5, Triangular}} {
		assert.True(t, s.Valid(), "%v", s)
	}
	nan := math.NaN()
	for _, s := range []Spread{{3, 2, 1, PERT}, {1, 4, 3, PERT}, {2, 1, 3, PERT}, {1, 2, 3, "normal"}, {1, 2, 3, ""}, {nan, 2, 3, PERT}, {1, nan, 3, PERT}, {1, 2, nan, PERT}, {1, 2, math.Inf(1), PERT}, {-1e308, 2, 1e308, PERT}} {
		assert.False(t, s.Valid(), "%v", s)
	}
}
