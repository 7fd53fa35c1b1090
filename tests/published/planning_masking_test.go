package published

import (
	"testing"

	"filmbuild/estimate/masking"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The worked examples of reference markings 5.1 (arithmetic; the Federal roll of
// 60 yd is 54.864 m, MK-6 [H]).
func TestTapeAndRolls(t *testing.T) {
	checkFigures(t, []figure{
		{"5.1 tape", "D", "markings 5.1", 135.74, 0.005, found(masking.Tape(123.4, 1, 0.10))},
		{"5.1 insignia", "D", "markings 5.1", 97.110644, 5e-7, found(masking.Tape(6*14.074006374, 1, 0.15))},
		{"ID-14 stretch", "H", "markings 0", 0.06, 1e-12, found(masking.Stretch(6, 0.1))},
		{"MK-4 overlap, 1 m by 1 m", "H", "markings 5.1", 1 + 4*0.0127, 1e-12, found(masking.Film(0, 0, 1, 4, 0.0127))},
	})
	for roll, tape := range map[float64]float64{55: 135.74, 54.864: 135.74} {
		rolls, err := masking.Rolls(tape, roll)
		require.NoError(t, err)
		assert.Equal(t, 3, rolls, "markings 5.1, roll of %g m", roll)
	}
	rolls, err := masking.Rolls(97.110644, 55)
	require.NoError(t, err)
	assert.Equal(t, 2, rolls, "markings 5.1")
}
