package class

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The published table, figure by figure (U01 and U02, mark B: read in secondary
// pages).
func TestU01U02(t *testing.T) {
	all, err := All()
	require.NoError(t, err)
	require.Len(t, all, 5)
	for i, want := range [][7]float64{
		{5, -50, -20, 30, 100, 0, 2}, {4, -30, -15, 20, 50, 1, 15}, {3, -20, -10, 10, 30, 10, 40}, {2, -15, -5, 5, 20, 30, 75}, {1, -10, -3, 3, 15, 65, 100},
	} {
		c := all[i]
		assert.Equal(t, want, [7]float64{float64(c.Number), c.LowFrom, c.LowTo, c.HighFrom, c.HighTo, c.KnownFrom, c.KnownTo})
		assert.Contains(t, c.Source, "mark B")
		assert.NotEmpty(t, c.Name)
	}
}

// The definition of the class lies in its own published band or above it, where
// the weakest share holds it back.
func TestOf(t *testing.T) {
	for _, c := range []struct {
		known Known
		class int
	}{
		{Known{}, 5}, {Known{1, 0, 0}, 4}, {Known{1, 0.1, 0.05}, 3}, {Known{1, 0.5, 0.6}, 2}, {Known{1, 1, 0}, 4},
		{Known{1, 1, 1}, 1}, {Known{1, 0.8, 0.9}, 1}, {Known{0.1, 0.1, 0.1}, 4}, {Known{0.2, 0.2, 0.2}, 3}, {Known{1, 1, 0.1}, 3},
	} {
		class, definition, err := Of(c.known)
		require.NoError(t, err)
		assert.Equal(t, c.class, class.Number, "%+v", c.known)
		assert.GreaterOrEqual(t, definition, class.KnownFrom)
	}
}

// To know more never makes the class worse.
func TestKnowingMoreHelps(t *testing.T) {
	share := rapid.Float64Range(0, 1)
	rapid.Check(t, func(t *rapid.T) {
		k := Known{share.Draw(t, "areas"), share.Draw(t, "rates"), share.Draw(t, "prices")}
		more := k
		switch rapid.IntRange(0, 2).Draw(t, "which") {
		case 0:
			more.Areas += (1 - k.Areas) * share.Draw(t, "more")
		case 1:
			more.Rates += (1 - k.Rates) * share.Draw(t, "more")
		default:
			more.Prices += (1 - k.Prices) * share.Draw(t, "more")
		}
		before, _, err := Of(k)
		require.NoError(t, err)
		after, _, err := Of(more)
		require.NoError(t, err)
		assert.LessOrEqual(t, after.Number, before.Number)
	})
}
