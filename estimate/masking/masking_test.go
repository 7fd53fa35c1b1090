package masking_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/masking"
)

func ExampleMasking_Calculate() {
	// Worked example [markings 5.1]: 123.4 m at 10 % is 135.74 m, 3 rolls of 55 m.
	m := masking.NewMasking()
	m.EdgeM, m.WastePercent, m.RollM = 123.4, 10, new(55.0)
	r, _ := m.Calculate()
	fmt.Printf("%.2f m, %d rolls\n", r.TapeM, *r.Rolls)
	// Output:
	// 135.74 m, 3 rolls
}

// sound is an invented masking that Check accepts.
func sound() *masking.Masking {
	m := masking.NewMasking()
	m.EdgeM, m.RollM, m.FilmWidthM, m.FilmAreaM2 = 20, new(50.0), new(0.6), new(2.0)
	return m
}

func faults(m *masking.Masking) map[string]string {
	found := map[string]string{}
	m.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func TestCheckRefuses(t *testing.T) {
	assert.Empty(t, faults(sound()))
	cases := map[string]struct {
		spoil   func(m *masking.Masking)
		pointer string
	}{
		"no edge":        {func(m *masking.Masking) { m.EdgeM = 0 }, "/edge_m"},
		"edge NaN":       {func(m *masking.Masking) { m.EdgeM = math.NaN() }, "/edge_m"},
		"no tape":        {func(m *masking.Masking) { m.TapeWidthMm = 0 }, "/tape_width_mm"},
		"no passes":      {func(m *masking.Masking) { m.Passes = 0 }, "/passes"},
		"waste over 100": {func(m *masking.Masking) { m.WastePercent = 101 }, "/waste_percent"},
		"empty roll":     {func(m *masking.Masking) { m.RollM = new(0.0) }, "/roll_m"},
		"negative film":  {func(m *masking.Masking) { m.FilmWidthM = new(-0.1) }, "/film_width_m"},
		"negative area":  {func(m *masking.Masking) { m.FilmAreaM2 = new(-1.0) }, "/film_area_m2"},
	}
	for name, tc := range cases {
		t.Run(name, func(t *testing.T) {
			m := sound()
			tc.spoil(m)
			assert.Equal(t, map[string]string{tc.pointer: "out_of_range"}, faults(m))
			_, err := m.Calculate()
			assert.Error(t, err)
		})
	}
}

func TestWhatIsNotAskedIsNotGiven(t *testing.T) {
	m := masking.NewMasking()
	m.EdgeM = 10
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.Equal(t, 10.0, r.TapeM)
	assert.InDelta(t, 0.24, r.TapeAreaM2, 1e-12)
	assert.Nil(t, r.Rolls)
	assert.Nil(t, r.FilmM2)
	r, err = sound().Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 14, *r.FilmM2, 1e-12)
}

func TestRollsHoldTheTape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := masking.Masking{
			EdgeM:        rapid.Float64Range(1e-6, 100000).Draw(t, "edge"),
			TapeWidthMm:  rapid.Float64Range(1, 300).Draw(t, "width"),
			Passes:       rapid.IntRange(1, 20).Draw(t, "passes"),
			WastePercent: rapid.Float64Range(0, 100).Draw(t, "waste"),
			RollM:        new(rapid.Float64Range(0.5, 5000).Draw(t, "roll")),
			FilmWidthM:   new(rapid.Float64Range(0, 20).Draw(t, "film")),
		}
		require.Empty(t, faults(&m))
		r, err := m.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(*r.Rolls)**m.RollM, r.TapeM-1e-8**m.RollM)
		assert.Less(t, float64(*r.Rolls-1)**m.RollM, r.TapeM, "one roll fewer would not do")
		assert.GreaterOrEqual(t, r.TapeM, m.EdgeM)
	})
}

func BenchmarkCalculate(b *testing.B) {
	m := sound()
	for b.Loop() {
		if _, err := m.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}

// Two passes of 25 mm tape along 10 m cover 0.5 m² (identity); the allowance is
// thrown away and covers nothing.
func TestTapeArea(t *testing.T) {
	m := masking.Masking{EdgeM: 10, TapeWidthMm: 25, Passes: 2, WastePercent: 15}
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 0.5, r.TapeAreaM2, 1e-12)
	assert.InDelta(t, 23, r.TapeM, 1e-12)
}
