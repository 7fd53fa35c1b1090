package climate

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Three minutes are no time to mix and spray a batch (assumption: a quarter of
// an hour is the least), and four hours are.
func TestATooShortPotLifeIsSaid(t *testing.T) {
	for life, warned := range map[float64]bool{0.05: true, 4: false} {
		p := NewPotLife()
		p.PotLifeH, p.AtC, p.TemperatureC = life, 21, new(21.0)
		r, err := p.Calculate()
		require.NoError(t, err)
		assert.Equal(t, warned, len(r.Warnings) > 0, "%v h: %v", life, r.Warnings)
	}
}
