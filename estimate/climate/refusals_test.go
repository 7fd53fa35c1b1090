package climate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/climate"
	"filmbuild/surfaces/quantity"
)

// Every formula refuses an argument that is no number, whichever it is.
func TestFormulasRefuseNaN(t *testing.T) {
	for name, f := range map[string]struct {
		sound   []float64
		formula func(x []float64) (float64, error)
	}{
		"saturation": {[]float64{20}, func(x []float64) (float64, error) { return climate.Saturation(x[0]) }},
		"dew":        {[]float64{20, 0.5}, func(x []float64) (float64, error) { return climate.DewPointOverWater(x[0], x[1]) }},
		"frost":      {[]float64{5, 0.3}, func(x []float64) (float64, error) { return climate.FrostPoint(x[0], x[1]) }},
		"content":    {[]float64{20}, func(x []float64) (float64, error) { return climate.WaterContent(x[0]) }},
		"surface":    {[]float64{20, 0.5, 18}, func(x []float64) (float64, error) { return climate.SurfaceHumidity(x[0], x[1], x[2]) }},
		"halved":     {[]float64{4, 21, 25}, func(x []float64) (float64, error) { return climate.HalvedPotLife(x[0], x[1], x[2]) }},
		"fitted":     {[]float64{4, 21, 2, 31, 25}, func(x []float64) (float64, error) { return climate.FittedPotLife(x[0], x[1], x[2], x[3], x[4]) }},
	} {
		_, err := f.formula(f.sound)
		require.NoError(t, err, name)
		for i := range f.sound {
			spoilt := append([]float64(nil), f.sound...)
			spoilt[i] = math.NaN()
			_, err := f.formula(spoilt)
			var outside *quantity.RangeError
			assert.ErrorAs(t, err, &outside, "%s, argument %d", name, i)
		}
	}
}
