package climate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/climate"
)

func anyBatching(t *rapid.T) climate.Batching {
	return climate.Batching{
		CoatL: rapid.Float64Range(0.01, 200).Draw(t, "coat"), HoursH: rapid.Float64Range(0, 100).Draw(t, "hours"),
		UseH: rapid.Float64Range(0.1, 4).Draw(t, "use"), LossL: rapid.Float64Range(0, 2).Draw(t, "loss"), LargerL: rapid.Float64Range(3, 20).Draw(t, "largest"),
	}
}

// The batches cover the coat and what they leave behind; none is larger than
// allowed, takes longer to use than it lasts, and one fewer would not do
// (identities).
func TestBatchesCoverTheCoat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatching(t)
		got, err := b.Split()
		require.NoError(t, err)
		n := float64(got.Count)
		require.InEpsilon(t, b.CoatL+n*b.LossL, n*got.EvenL, 1e-9, "the batches are what is mixed")
		require.LessOrEqual(t, got.EvenL, got.BatchL*(1+1e-9))
		require.LessOrEqual(t, got.BatchL, b.LargerL*(1+1e-9))
		usable := got.BatchL - b.LossL
		require.GreaterOrEqual(t, n*usable, b.CoatL*(1-1e-6))
		if got.Count > 1 {
			require.Less(t, (n-1)*usable, b.CoatL, "one fewer would not do")
			require.LessOrEqual(t, usable/b.CoatL*b.HoursH, b.UseH*(1+1e-9), "used in time")
		}
	})
}

// More left in the gun, less time or a smaller pot never means fewer batches.
func TestBatchesGrowWithEveryHindrance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatching(t)
		before, err := b.Split()
		require.NoError(t, err)
		worse := b
		switch rapid.IntRange(0, 3).Draw(t, "which") {
		case 0:
			worse.LossL += 0.5
		case 1:
			worse.UseH *= 0.7
		case 2:
			worse.LargerL = max(2.6, b.LargerL*0.8)
		default:
			worse.HoursH *= 1.5
		}
		after, err := worse.Split()
		require.NoError(t, err)
		require.GreaterOrEqual(t, after.Count, before.Count)
	})
}

func TestBatchesRefuse(t *testing.T) {
	sound := climate.Batching{CoatL: 5, HoursH: 2, UseH: 1, LargerL: 11}
	for name, spoil := range map[string]func(b *climate.Batching){
		"no paint":              func(b *climate.Batching) { b.CoatL = 0 },
		"no time":               func(b *climate.Batching) { b.UseH = 0 },
		"negative loss":         func(b *climate.Batching) { b.LossL = -1 },
		"all stays in the gun":  func(b *climate.Batching) { b.LossL = 11 },
		"more batches than any": func(b *climate.Batching) { b.HoursH = 2e5 },
	} {
		b := sound
		spoil(&b)
		_, err := b.Split()
		assert.Error(t, err, name)
	}
}

// The calculator: 3 L/h for 4 h less 0.5 h of standing is 10.5 L a batch and 0.1 L
// in the gun; 20 L are two batches, cleaned up after with 0.5 L each (identity).
func TestThePotLifeCalculatorCountsBatches(t *testing.T) {
	p := climate.NewPotLife()
	p.PotLifeH, p.TemperatureC, p.SprayRateLH, p.VolumeL = 6, new(21.0), new(3.0), new(20.0)
	p.InductionH, p.BatchLossL, p.CupL, p.CleaningL = new(0.5), 0.1, new(0.6), new(0.5)
	p.Check(func(pointer, code, detail string) { t.Errorf("%s %s: %s", pointer, code, detail) })
	r, err := p.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 3.5, r.UseH, 1e-12)
	assert.InDelta(t, 10.6, *r.BatchL, 1e-12)
	assert.Equal(t, 2, *r.Batches)
	assert.InDelta(t, 10.1, *r.EvenBatchL, 1e-12)
	assert.InDelta(t, 0.2, *r.LeftInGunL, 1e-12)
	assert.InDelta(t, 1, *r.CleaningL, 1e-12)
	assert.Equal(t, 17, *r.CupFillings, "10.1 L by cups of 0.6 L")
	p.InductionH = new(4.0)
	_, err = p.Calculate()
	assert.ErrorContains(t, err, "nothing of a batch can be used")
}
