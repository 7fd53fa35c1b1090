package climate_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/climate"
)

func maybe(t *rapid.T, name string, low, high float64) *float64 {
	if rapid.Bool().Draw(t, name+" given") {
		return new(rapid.Float64Range(low, high).Draw(t, name))
	}
	return nil
}

func TestWeatherIsFiniteAndOrdered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := climate.DewPoint{
			AirC:                    new(rapid.Float64Range(-45, 60).Draw(t, "air")),
			RelativeHumidityPercent: rapid.Float64Range(5e-324, 100).Draw(t, "humidity"),
			SurfaceC:                maybe(t, "surface", -45, 60),
			WindMS:                  maybe(t, "wind", 0, 60),
		}
		if d.RelativeHumidityPercent/100 == 0 {
			t.Skip("less humidity than a number can hold")
		}
		require.Empty(t, faults(&d))
		r, err := d.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		over, err := climate.DewPointOverWater(*d.AirC, d.RelativeHumidityPercent/100)
		require.NoError(t, err)
		assert.LessOrEqual(t, over, *d.AirC, "dew point is never above the air")
		if !r.Frost {
			assert.LessOrEqual(t, r.DewPointC, *d.AirC)
		}
		if r.MayCoat != nil && *r.MayCoat {
			assert.GreaterOrEqual(t, *r.MarginC, 3.0)
			assert.LessOrEqual(t, d.RelativeHumidityPercent, 85.0)
		}
	})
}

func TestDamperAirNeverHasALowerDewPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air := rapid.Float64Range(-45, 60).Draw(t, "air")
		dry := rapid.Float64Range(0.001, 1).Draw(t, "dry")
		damp := rapid.Float64Range(dry, 1).Draw(t, "damp")
		low, err := climate.DewPointOverWater(air, dry)
		require.NoError(t, err)
		high, err := climate.DewPointOverWater(air, damp)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, high, low-1e-9)
	})
}

// A dew point put back into the saturation curve gives the vapour pressure it
// came from (identity).
func TestDewPointInverts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air := rapid.Float64Range(0, 60).Draw(t, "air")
		humidity := rapid.Float64Range(0.1, 1).Draw(t, "humidity")
		dew, err := climate.DewPointOverWater(air, humidity)
		require.NoError(t, err)
		atAir, err := climate.Saturation(air)
		require.NoError(t, err)
		atDew, err := climate.Saturation(dew)
		require.NoError(t, err)
		assert.InEpsilon(t, humidity*atAir, atDew, 1e-9)
	})
}

func TestBatchesCoverTheVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := climate.PotLife{
			PotLifeH:     rapid.Float64Range(0.05, 200).Draw(t, "life"),
			AtC:          rapid.Float64Range(-10, 60).Draw(t, "at"),
			TemperatureC: new(rapid.Float64Range(-10, 60).Draw(t, "temperature")),
			PotLife2H:    maybe(t, "life 2", 0.05, 200),
			SprayRateLH:  new(rapid.Float64Range(0.01, 1000).Draw(t, "rate")),
			VolumeL:      new(rapid.Float64Range(0.001, 100000).Draw(t, "volume")),
		}
		if p.PotLife2H != nil {
			p.At2C = new(rapid.Float64Range(-10, 60).Draw(t, "at 2"))
		}
		if len(faults(&p)) > 0 {
			t.Skip("refused")
		}
		r, err := p.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(*r.Batches)**r.BatchL, *p.VolumeL*(1-1e-8))
		assert.LessOrEqual(t, *r.EvenBatchL, *r.BatchL*(1+1e-8))
		assert.Less(t, float64(*r.Batches-1)**r.BatchL, *p.VolumeL, "one batch fewer would not do")
		assert.LessOrEqual(t, r.PotLifeH, r.HalvedH)
		assert.LessOrEqual(t, r.BatchH, 4.0)
	})
}

func TestHeatNeverLengthensPotLife(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cold := rapid.Float64Range(-10, 60).Draw(t, "cold")
		hot := rapid.Float64Range(cold, 60).Draw(t, "hot")
		long, err := climate.HalvedPotLife(4, 21, cold)
		require.NoError(t, err)
		short, err := climate.HalvedPotLife(4, 21, hot)
		require.NoError(t, err)
		assert.LessOrEqual(t, short, long)
		back, err := climate.FittedPotLife(4, 21, 2, 31, hot)
		require.NoError(t, err)
		assert.InEpsilon(t, short, back, 1e-9, "halving every 10 °C is one of the fitted curves")
	})
}

func BenchmarkDewPoint(b *testing.B) {
	d := soundWeather()
	for b.Loop() {
		if _, err := d.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPotLife(b *testing.B) {
	p := soundPot()
	for b.Loop() {
		if _, err := p.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}
