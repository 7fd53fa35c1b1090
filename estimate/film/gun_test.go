package film_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/film"
)

// What stays in the gun is on no part: the paint grows by it and the film does
// not; litres grow with every loss (identities).
func TestLitresGrowWithEveryLoss(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		c.Batches, c.BatchLossL = rapid.IntRange(1, 50).Draw(t, "batches"), rapid.Float64Range(0, 2).Draw(t, "left")
		c.PassWetFilmUm = new(rapid.Float64Range(20, 300).Draw(t, "pass"))
		before := calculate(t, c)
		worse := *c
		switch rapid.IntRange(0, 4).Draw(t, "which") {
		case 0:
			worse.TransferEfficiencyPercent = max(1, c.TransferEfficiencyPercent*0.8)
		case 1:
			worse.LossPercent = min(95, c.LossPercent+3)
		case 2:
			worse.BatchLossL += 0.3
		case 3:
			worse.Batches++
		default:
			worse.ProfileUm = min(500, c.ProfileUm+20)
		}
		after := calculate(t, &worse)
		require.GreaterOrEqual(t, after.PaintL, before.PaintL*(1-1e-12))
		same(t, before.WetFilmUm*before.FilmFactorRatio, before.WetFilmAimUm)
		require.GreaterOrEqual(t, float64(*before.Passes)**c.PassWetFilmUm, before.WetFilmAimUm*(1-1e-6))
		c.BatchLossL = 0
		bare := calculate(t, c)
		same(t, bare.PaintL+before.LeftInGunL/(1+c.ThinnerPercent/100), before.PaintL)
		if bare.DryFilmKg != nil {
			same(t, *bare.DryFilmKg, *before.DryFilmKg)
		}
	})
}

func TestGunRefusals(t *testing.T) {
	_, err := film.Passes(100, 0)
	assert.Error(t, err)
	_, err = film.BatchLoss(-1, 1)
	assert.Error(t, err)
	_, err = film.BatchLoss(1, -1)
	assert.Error(t, err)
	c := sound()
	c.BatchLossL = 0.2
	assert.Equal(t, map[string]string{"/batches": "required"}, faults(c))
	c.Batches = 3
	assert.Empty(t, faults(c))
	_, _, err = film.LeastReadingFactor("most", 0.2)
	assert.Error(t, err)
}
