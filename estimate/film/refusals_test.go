package film_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/film"
	"filmbuild/surfaces/quantity"
)

// Every formula refuses an argument that is no number, whichever it is.
func TestFormulasRefuseNaN(t *testing.T) {
	for name, f := range map[string]struct {
		sound   []float64
		formula func(x []float64) (float64, error)
	}{
		"theoretical": {[]float64{0.5, 50}, func(x []float64) (float64, error) { return film.TheoreticalSpreadingRate(x[0], x[1]) }},
		"practical":   {[]float64{10, 0.5, 0.1}, func(x []float64) (float64, error) { return film.PracticalSpreadingRate(x[0], x[1], x[2]) }},
		"wet":         {[]float64{50, 0.5, 0.1}, func(x []float64) (float64, error) { return film.WetFilm(x[0], x[1], x[2]) }},
		"dry":         {[]float64{50, 0.5, 0.1}, func(x []float64) (float64, error) { return film.DryFilm(x[0], x[1], x[2]) }},
		"paint":       {[]float64{10, 50, 0.5, 0.5, 0.1}, func(x []float64) (float64, error) { return film.Paint(x[0], x[1], x[2], x[3], x[4]) }},
		"profile":     {[]float64{50, 0.5}, func(x []float64) (float64, error) { return film.ProfileFilm(x[0], x[1]) }},
		"hose":        {[]float64{9.5, 15}, func(x []float64) (float64, error) { return film.HoseContents(x[0], x[1]) }},
		"mass":        {[]float64{10, 50, 1.5}, func(x []float64) (float64, error) { return film.Mass(x[0], x[1], x[2]) }},
		"solids":      {[]float64{0.6, 1.3, 0.5}, func(x []float64) (float64, error) { return film.SolidsDensity(x[0], x[1], x[2]) }},
		"factor":      {[]float64{0.2}, func(x []float64) (float64, error) { return film.MeanFactor(film.Min80Of20, x[0]) }},
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

func TestWarnings(t *testing.T) {
	for part, spoil := range map[string]func(c *film.Coating){
		"theoretical amount": func(c *film.Coating) { c.TransferEfficiencyPercent, c.LossPercent = 100, 0 },
		"mean film":          func(c *film.Coating) { c.FilmRule, c.FilmCovRatio = film.Min90Of10, 0.45 },
		"ISO 19840":          func(c *film.Coating) { c.FilmRule, c.DryFilmUm = film.Min80Of20, 20 },
		"profile_fill_ratio": func(c *film.Coating) { c.ProfileUm, c.ProfileFillRatio = 50, 0.2 },
	} {
		c := sound()
		r, err := c.Calculate()
		require.NoError(t, err)
		assert.Empty(t, r.Warnings)
		spoil(c)
		r, err = c.Calculate()
		require.NoError(t, err)
		assert.Contains(t, strings.Join(r.Warnings, "\n"), part)
	}
}
