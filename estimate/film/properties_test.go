package film_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/film"
)

// anyCoating draws input over the whole of its limits, ends included.
func anyCoating(t *rapid.T) *film.Coating {
	c := film.NewCoating()
	c.AreaM2 = rapid.Float64Range(1e-6, 100000).Draw(t, "area")
	c.Coats = rapid.IntRange(1, 50).Draw(t, "coats")
	c.DryFilmUm = rapid.Float64Range(0.1, 5000).Draw(t, "film")
	c.VolumeSolidsPercent = rapid.Float64Range(1, 100).Draw(t, "solids")
	c.TransferEfficiencyPercent = rapid.Float64Range(1, 100).Draw(t, "efficiency")
	c.LossPercent = rapid.Float64Range(0, 95).Draw(t, "loss")
	c.ThinnerPercent = rapid.Float64Range(0, 300).Draw(t, "thinner")
	c.ProfileUm = rapid.Float64Range(0, 500).Draw(t, "profile")
	c.ProfileFillRatio = rapid.Float64Range(0, 1).Draw(t, "fill")
	c.FilmRule = rapid.SampledFrom(film.Rules()).Draw(t, "rule")
	c.FilmCovRatio = rapid.Float64Range(0, 0.5).Draw(t, "cov")
	if rapid.Bool().Draw(t, "density known") {
		c.DryFilmDensityKgL = new(rapid.Float64Range(0.5, 10).Draw(t, "density"))
	}
	return c
}

func calculate(t require.TestingT, c *film.Coating) film.Result {
	r, err := c.Calculate()
	require.NoError(t, err)
	return r
}

func same(t assert.TestingT, want, got float64) {
	assert.InEpsilon(t, want, got, 1e-12)
}

// JSON has no NaN and no infinity, so what encodes is finite throughout.
func TestWhatPassesCheckIsFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		c.FilmCovRatio = rapid.Float64Range(0, 1).Draw(t, "any cov")
		refused := false
		c.Check(func(pointer, _, _ string) { refused = true })
		if refused {
			return
		}
		_, err := json.Marshal(calculate(t, c))
		require.NoError(t, err)
	})
}

func TestLitresScaleWithAreaAndFilm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		k := rapid.Float64Range(0.1, 1).Draw(t, "k")
		whole := calculate(t, c).PaintL
		part := *c
		part.AreaM2 *= k
		same(t, whole*k, calculate(t, &part).PaintL)
		c.ProfileUm, c.DryFilmUm = 0, max(c.DryFilmUm, 1)
		whole = calculate(t, c).PaintL
		part = *c
		part.DryFilmUm *= k
		same(t, whole*k, calculate(t, &part).PaintL)
	})
}

func TestMoreLossNeverMeansLessPaint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		before := calculate(t, c)
		worse := *c
		switch rapid.SampledFrom([]string{"efficiency", "loss", "profile", "fill", "cov"}).Draw(t, "worse") {
		case "efficiency":
			worse.TransferEfficiencyPercent = rapid.Float64Range(1, c.TransferEfficiencyPercent).Draw(t, "worse efficiency")
		case "loss":
			worse.LossPercent = rapid.Float64Range(c.LossPercent, 95).Draw(t, "worse loss")
		case "profile":
			worse.ProfileUm = rapid.Float64Range(c.ProfileUm, 500).Draw(t, "worse profile")
		case "fill":
			worse.ProfileFillRatio = rapid.Float64Range(c.ProfileFillRatio, 1).Draw(t, "worse fill")
		case "cov":
			worse.FilmCovRatio = rapid.Float64Range(c.FilmCovRatio, 0.5).Draw(t, "worse cov")
		}
		after := calculate(t, &worse)
		assert.GreaterOrEqual(t, after.PaintL, before.PaintL*(1-1e-12))
		assert.LessOrEqual(t, after.AchievedSpreadingRateM2L, before.AchievedSpreadingRateM2L*(1+1e-12))
	})
}

func TestThinningNeverChangesSolids(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		thinned := *c
		thinned.ThinnerPercent = rapid.Float64Range(0, 300).Draw(t, "other thinner")
		a, b := calculate(t, c), calculate(t, &thinned)
		assert.Equal(t, a.PaintL, b.PaintL)
		assert.Equal(t, a.DryFilmKg, b.DryFilmKg)
		same(t, a.TotalL*a.VolumeSolidsThinnedPercent, b.TotalL*b.VolumeSolidsThinnedPercent)
		same(t, a.WetFilmUm*a.VolumeSolidsThinnedPercent, b.WetFilmUm*b.VolumeSolidsThinnedPercent)
	})
}

// Solids in = solids on the surface + solids lost, in kilograms, by two routes.
func TestSolidsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		c.DryFilmDensityKgL = new(rapid.Float64Range(0.5, 10).Draw(t, "known density"))
		r := calculate(t, c)
		mixed := r.PaintL * c.VolumeSolidsPercent / 100 * *c.DryFilmDensityKgL
		same(t, mixed, *r.DryFilmKg+*r.LostSolidsKg)
		assert.GreaterOrEqual(t, *r.LostSolidsKg, *r.OversprayKg*(1-1e-12))
	})
}

func TestCoatsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCoating(t)
		r := calculate(t, c)
		sum := r.FirstCoatPaintL
		if r.FurtherCoatPaintL != nil {
			sum += float64(c.Coats-1) * *r.FurtherCoatPaintL
		}
		same(t, r.PaintL, sum)
		dry, err := film.DryFilm(r.WetFilmUm, c.VolumeSolidsPercent/100, c.ThinnerPercent/100)
		require.NoError(t, err)
		same(t, c.DryFilmUm, dry)
	})
}

func BenchmarkCalculate(b *testing.B) {
	c := sound()
	c.DryFilmDensityKgL = new(1.5)
	for b.Loop() {
		if _, err := c.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}
