package blast_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/blast"
)

// maybe draws an optional number over the whole of its limits.
func maybe(t *rapid.T, name string, low, high float64) *float64 {
	if rapid.Bool().Draw(t, name+" given") {
		return new(rapid.Float64Range(low, high).Draw(t, name))
	}
	return nil
}

func anyBlasting(t *rapid.T) *blast.Blasting {
	b := blast.NewBlasting()
	*b = blast.Blasting{
		AreaM2:                maybe(t, "area", 0.0001, 100000),
		NozzleBoreMm:          rapid.Float64Range(0.5, 50).Draw(t, "bore"),
		Nozzles:               rapid.IntRange(1, 50).Draw(t, "nozzles"),
		PressureKPa:           rapid.Float64Range(10, 1400).Draw(t, "pressure"),
		Feed:                  rapid.SampledFrom([]blast.Feed{"", blast.Pressure, blast.Suction}).Draw(t, "feed"),
		DischargeCoefficient:  maybe(t, "discharge", 0.3, 1),
		AmbientPressureKPa:    rapid.Float64Range(50, 110).Draw(t, "ambient"),
		BulkDensityKgM3:       maybe(t, "density", 100, 6000),
		BreakdownPercent:      maybe(t, "breakdown", 0.1, 100),
		MediaFlowKgH:          maybe(t, "flow", 0.1, 10000),
		StripRateM2H:          maybe(t, "rate", 0.001, 500),
		Recovered:             rapid.Bool().Draw(t, "recovered"),
		WorkingChargeKg:       rapid.Float64Range(0, 100000).Draw(t, "charge"),
		RemovedFilmUm:         rapid.Float64Range(0, 20000).Draw(t, "film"),
		RemovedFilmDensityKgL: maybe(t, "film density", 0.5, 10),
		CollectedDebrisKg:     maybe(t, "collected", 0, 1e7),
		AvailabilityPercent:   rapid.Float64Range(1, 100).Draw(t, "availability"),
		RateBasis:             rapid.SampledFrom([]blast.RateBasis{"", blast.NozzleOn, blast.Burdened}).Draw(t, "basis"),
		DrumL:                 b.DrumL, DrumFillPercent: b.DrumFillPercent, DrumMostKg: b.DrumMostKg,
		OtherAirM3Min:         rapid.Float64Range(0, 500).Draw(t, "other air"),
		CompressorSupplyM3Min: maybe(t, "supply", 0.01, 5000),
		DustAs:                rapid.SampledFrom([]blast.DustClass{"", blast.SandDust, blast.GritDust, blast.ShotDust}).Draw(t, "dust"),
		WindMS:                maybe(t, "wind", 0, 50),
	}
	return b
}

// JSON has no NaN and no infinity, so what encodes is finite throughout.
func TestWhatPassesCheckIsFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBlasting(t)
		refused := false
		b.Check(func(pointer, code, _ string) {
			refused = true
			assert.Equal(t, "required", code, pointer)
		})
		r, err := b.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		asked := b.AreaM2 != nil && b.StripRateM2H != nil
		if !refused && asked {
			assert.NotNil(t, r.MediaBoughtKg, "what Check accepts is answered")
			assert.NotNil(t, r.WasteKg)
		}
	})
}

func TestMorePressureNeverMeansLessAir(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBlasting(t)
		more := *b
		more.PressureKPa = rapid.Float64Range(b.PressureKPa, 1400).Draw(t, "more pressure")
		low, err := b.Calculate()
		require.NoError(t, err)
		high, err := more.Calculate()
		require.NoError(t, err)
		assert.GreaterOrEqual(t, high.AirM3Min, low.AirM3Min*(1-1e-9))
		if low.MediaFlowKgH != nil {
			assert.GreaterOrEqual(t, *high.MediaFlowKgH, *low.MediaFlowKgH*(1-1e-12))
		}
	})
}

// At the choked border the two forms of the flow and their first derivatives
// meet.
func TestFlowIsContinuousAtTheChokedBorder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore := rapid.Float64Range(0.5, 50).Draw(t, "bore")
		ambient := rapid.Float64Range(50, 110).Draw(t, "ambient")
		border := ambient * (blast.ChokedRatio() - 1)
		below, err := blast.FreeAir(bore, border*(1-1e-6), ambient, 0.81)
		require.NoError(t, err)
		above, err := blast.FreeAir(bore, border*(1+1e-6), ambient, 0.81)
		require.NoError(t, err)
		assert.InEpsilon(t, below, above, 2e-6)
	})
}

func TestNoPressureNoAir(t *testing.T) {
	air, err := blast.FreeAir(10, 0, blast.SeaLevelKPa, 1)
	require.NoError(t, err)
	assert.Zero(t, air)
}

// Near zero pressure a gas flows as a liquid does: m = Cd·A·√(2·ρ·Δp) (identity
// of the incompressible limit).
func TestSmallPressureIsIncompressible(t *testing.T) {
	const bore, drop = 10.0, 0.05 // mm, kPa
	mass, err := blast.AirMass(bore, drop, blast.SeaLevelKPa, 1)
	require.NoError(t, err)
	density := blast.SeaLevelKPa * 1000 / (287.05 * 293.15)
	assert.InEpsilon(t, math.Pi/4*bore*bore*1e-6*math.Sqrt(2*density*drop*1000), mass, 1e-3)
}

func TestMediaScaleWithAreaAndNeverGrowWithRecovery(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBlasting(t)
		b.AreaM2, b.StripRateM2H = new(rapid.Float64Range(1, 1000).Draw(t, "some area")), new(rapid.Float64Range(0.1, 50).Draw(t, "some rate"))
		b.MediaFlowKgH, b.BreakdownPercent = new(rapid.Float64Range(1, 1000).Draw(t, "some flow")), new(rapid.Float64Range(0.1, 100).Draw(t, "some breakdown"))
		b.Recovered = false
		once, err := b.Calculate()
		require.NoError(t, err)
		b.Recovered = true
		again, err := b.Calculate()
		require.NoError(t, err)
		assert.LessOrEqual(t, *again.MediaUsedKg, *once.MediaUsedKg)
		assert.InEpsilon(t, *once.MediaUsedKg, *again.MediaUsedKg**again.Uses, 1e-12)
		*b.AreaM2 *= 2
		twice, err := b.Calculate()
		require.NoError(t, err)
		assert.InEpsilon(t, 2**again.MediaUsedKg, *twice.MediaUsedKg, 1e-12)
		assert.InEpsilon(t, 2**again.Hours, *twice.Hours, 1e-12)
	})
}

func BenchmarkCalculate(b *testing.B) {
	job := sound()
	for b.Loop() {
		if _, err := job.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}
