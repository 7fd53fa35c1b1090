package climate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"filmbuild/estimate/climate"
)

// Reference planning C08: the highest surface temperature sustained for an hour
// or more; a peak of half an hour does not count.
func TestHottestSustained(t *testing.T) {
	hottest, found := climate.HottestSustained([]float64{9, 9.5, 10, 10.5, 11}, []float64{20, 30, 45, 31, 30})
	assert.True(t, found)
	assert.Equal(t, 30.0, hottest)
	_, found = climate.HottestSustained([]float64{9, 9.5}, []float64{20, 30})
	assert.False(t, found)
	_, found = climate.HottestSustained(nil, nil)
	assert.False(t, found)
}
