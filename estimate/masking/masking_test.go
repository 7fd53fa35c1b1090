package masking_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/formula"
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
		"negative edge":  {func(m *masking.Masking) { m.FilmEdgeM = new(-1.0) }, "/film_edge_m"},
		"wide overlap":   {func(m *masking.Masking) { m.OverlapM = 2 }, "/overlap_m"},
		"no film roll":   {func(m *masking.Masking) { m.FilmRollM = new(0.0) }, "/film_roll_width_m"},
		"broad fine":     {func(m *masking.Masking) { m.FineTapeWidthMm = new(60.0) }, "/fine_tape_width_mm"},
		"no fine roll":   {func(m *masking.Masking) { m.FineTapeWidthMm, m.FineRollM = new(6.0), new(0.0) }, "/fine_roll_m"},
		"no radius":      {func(m *masking.Masking) { m.RadiusM = new(0.0) }, "/radius_m"},
		"no rate":        {func(m *masking.Masking) { m.RateMH = new(0.0) }, "/rate_m_h"},
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
			FilmEdgeM:    new(rapid.Float64Range(0, 1000).Draw(t, "film edge")),
			OverlapM:     rapid.Float64Range(0, 1).Draw(t, "overlap"),
			FilmRollM:    new(rapid.Float64Range(0.05, 20).Draw(t, "film roll")),

			FineTapeWidthMm: new(rapid.Float64Range(0.5, 50).Draw(t, "fine")),
			FineRollM:       new(rapid.Float64Range(0.5, 5000).Draw(t, "fine roll")),
			RadiusM:         new(rapid.Float64Range(0.005, 1000).Draw(t, "radius")),
			RateMH:          new(rapid.Float64Range(0.01, 1000).Draw(t, "rate")),
		}
		require.Empty(t, faults(&m))
		r, err := m.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(*r.Rolls)**m.RollM, r.TapeM-1e-8**m.RollM)
		assert.Less(t, float64(*r.Rolls-1)**m.RollM, r.TapeM, "one roll fewer would not do")
		assert.GreaterOrEqual(t, r.TapeM, m.EdgeM)
		for _, w := range r.Working {
			f, err := formula.Read(w.Formula)
			require.NoError(t, err, w.Formula)
			value, err := f.Work(w.Terms)
			require.NoError(t, err, w.Formula)
			assert.InDelta(t, w.Value, value, 1e-9*math.Max(1, math.Abs(w.Value)), w.Formula)
		}
		more := m
		more.EdgeM, more.Passes, more.WastePercent = min(100000, m.EdgeM*1.5), min(20, m.Passes+1), min(100, m.WastePercent+5)
		longer, err := more.Calculate()
		require.NoError(t, err)
		assert.GreaterOrEqual(t, longer.TapeM, r.TapeM, "more edge, passes and waste never take less tape")
		assert.GreaterOrEqual(t, *longer.FineTapeM, *r.FineTapeM)
		assert.GreaterOrEqual(t, *longer.Hours, *r.Hours)
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

// A canopy of 1.48 m² with 6.2 m of edge under film of 0.9 m that reaches half an
// inch beyond (USAF TO 1-1-8 para 2.3, read; the canopy is invented), and two
// tapes along 10 m of edge laid at 20 m/h (identity).
func TestFilmFineTapeAndHours(t *testing.T) {
	m := masking.NewMasking()
	m.EdgeM, m.FilmAreaM2, m.FilmEdgeM, m.FilmRollM = 10, new(1.48), new(6.2), new(0.9)
	m.FineTapeWidthMm, m.FineRollM, m.RateMH, m.WastePercent = new(6.0), new(55.0), new(20.0), 10
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 1.48+6.2*0.0127, *r.FilmM2, 1e-12)
	assert.InDelta(t, (1.48+6.2*0.0127)/0.9, *r.FilmM, 1e-12)
	assert.InDelta(t, 11, *r.FineTapeM, 1e-12)
	assert.Equal(t, 1, *r.FineRolls)
	assert.InDelta(t, 1, *r.Hours, 1e-12, "waste is not laid")
	assert.InDelta(t, 0.3, r.TapeAreaM2, 1e-12)
	assert.Nil(t, r.StretchPercent)
}
