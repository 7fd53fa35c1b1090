package ranges

import (
	"context"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"filmbuild/estimate/example"
	"filmbuild/estimate/risk"
)

// What 10,000 trials of example (a) cost, to what drawing the same variates costs
// alone: with our own draws, and with those of a general library. Targets: at
// most 3 times, and two processors at least 1.7 times as fast as one.
func BenchmarkTrials(b *testing.B) {
	one, err := example.Find("jet-trainer")
	require.NoError(b, err)
	g := traced(b, string(one.Job))
	p, err := newPlan(g)
	require.NoError(b, err)
	for _, workers := range []int{1, 2} {
		b.Run("whole/processors="+strconv.Itoa(workers), func(b *testing.B) {
			for b.Loop() {
				_, _, err := Work(context.Background(), g, Options{Trials: UsualTrials, Seed: 1, Workers: workers})
				require.NoError(b, err)
			}
		})
		b.Run("million/processors="+strconv.Itoa(workers), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _, err := Work(context.Background(), g, Options{Trials: risk.MostTrials, Seed: 1, Workers: workers})
				require.NoError(b, err)
			}
		})
	}
	b.Run("draws", func(b *testing.B) {
		columns := make([][]float64, len(p.inputs))
		for i := range columns {
			columns[i] = make([]float64, risk.Block)
		}
		for b.Loop() {
			s, err := risk.NewSampler(p.inputs, nil, 1)
			require.NoError(b, err)
			scratch := s.Scratch()
			for block := range UsualTrials/risk.Block + 1 {
				s.Draw(scratch, block, columns)
			}
		}
	})
	b.Run("library", func(b *testing.B) {
		sum := 0.0
		for b.Loop() {
			for _, in := range p.inputs {
				alpha, beta := in.Spread.Shape()
				d := distuv.Beta{Alpha: alpha, Beta: beta}
				for range UsualTrials {
					sum += in.Spread.Low + (in.Spread.High-in.Spread.Low)*d.Rand()
				}
			}
		}
		require.NotZero(b, sum)
	})
}
