package inspect_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/inspect"
	"filmbuild/surfaces/quantity"
)

func ExampleInspection_Calculate() {
	// SSPC-PA 2 [coating A2, A6]: 3 areas for 300 to 1000 ft², 5 spots of 3 readings.
	i := inspect.Inspection{AreaM2: 500 * 0.09290304}
	r, _ := i.Calculate()
	fmt.Println(r.Areas, r.Spots, r.Readings)
	// Output:
	// 3 15 45
}

func TestCheckRefuses(t *testing.T) {
	for name, area := range map[string]float64{"none": 0, "negative": -1, "NaN": math.NaN(), "endless": math.Inf(1), "a town": 100001} {
		t.Run(name, func(t *testing.T) {
			i := inspect.NewInspection()
			i.AreaM2 = area
			found := map[string]string{}
			i.Check(func(pointer, code, _ string) { found[pointer] = code })
			assert.Equal(t, map[string]string{"/area_m2": "out_of_range"}, found)
			_, err := i.Calculate()
			var outside *quantity.RangeError
			require.ErrorAs(t, err, &outside)
		})
	}
}

// The borders of the rule in m² (from memory, see the package comment).
func TestAreasAtTheBorders(t *testing.T) {
	for area, want := range map[float64]int{0.1: 1, 10: 1, 10.1: 2, 20: 2, 29: 3, 30: 3, 31: 3, 100: 3, 100.1: 4, 200: 4, 201: 5, 1000: 12} {
		got, err := inspect.Areas(area)
		require.NoError(t, err)
		assert.Equal(t, want, got, "%g m²", area)
	}
}

func TestFeetAreSaidWhereTheyAskForMore(t *testing.T) {
	r, err := inspect.Inspection{AreaM2: 9.9}.Calculate()
	require.NoError(t, err)
	require.NotNil(t, r.AreasByFeet)
	assert.Equal(t, 2, *r.AreasByFeet)
	assert.Len(t, r.Warnings, 1)
	r, err = inspect.Inspection{AreaM2: 9.2}.Calculate()
	require.NoError(t, err)
	assert.Nil(t, r.AreasByFeet)
}

func TestMoreSurfaceNeverMeansFewerReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		small := rapid.Float64Range(1e-300, 100000).Draw(t, "small")
		large := rapid.Float64Range(small, 100000).Draw(t, "large")
		a, err := inspect.Inspection{AreaM2: small}.Calculate()
		require.NoError(t, err)
		b, err := inspect.Inspection{AreaM2: large, DryFilmUm: new(100.0)}.Calculate()
		require.NoError(t, err)
		assert.LessOrEqual(t, a.Readings, b.Readings)
		assert.Equal(t, 15*a.Areas, a.Readings)
		assert.GreaterOrEqual(t, a.Areas, 1)
		assert.Equal(t, 80.0, *b.LeastSpotUm)
	})
}

func BenchmarkCalculate(b *testing.B) {
	i := inspect.Inspection{AreaM2: 240}
	for b.Loop() {
		if _, err := i.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}
