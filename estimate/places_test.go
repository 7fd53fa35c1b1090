package estimate

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A set of places holds what a map holds (identity).
func TestPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var sets [3]places
		var kept [3]map[int]bool
		for k := range sets {
			kept[k] = map[int]bool{}
			for _, n := range rapid.SliceOfN(rapid.IntRange(0, 300), 0, 20).Draw(t, "numbers") {
				sets[k], kept[k][n] = sets[k].with(n), true
			}
		}
		both := sets[0].and(sets[1])
		for n := range 400 {
			for k := range sets {
				require.Equal(t, kept[k][n], sets[k].has(n))
			}
			require.Equal(t, kept[0][n] || kept[1][n], both.has(n))
		}
	})
}
