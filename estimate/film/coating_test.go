package film_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/film"
	"filmbuild/surfaces/quantity"
)

// sound is an invented job that Check accepts.
func sound() *film.Coating {
	c := film.NewCoating()
	c.AreaM2, c.DryFilmUm, c.VolumeSolidsPercent = 12, 60, 55
	c.TransferEfficiencyPercent, c.LossPercent = 45, 10
	return c
}

func faults(c *film.Coating) map[string]string {
	found := map[string]string{}
	c.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func TestCheckAcceptsDefaults(t *testing.T) {
	assert.Empty(t, faults(sound()))
}

func TestCheckRefuses(t *testing.T) {
	cases := map[string]struct {
		spoil   func(c *film.Coating)
		pointer string
		code    string
	}{
		"no solids":            {func(c *film.Coating) { c.VolumeSolidsPercent = 0 }, "/volume_solids_percent", "out_of_range"},
		"solids over 100":      {func(c *film.Coating) { c.VolumeSolidsPercent = 101 }, "/volume_solids_percent", "out_of_range"},
		"nothing lands":        {func(c *film.Coating) { c.TransferEfficiencyPercent = 0 }, "/transfer_efficiency_percent", "out_of_range"},
		"more lands than is":   {func(c *film.Coating) { c.TransferEfficiencyPercent = 100.5 }, "/transfer_efficiency_percent", "out_of_range"},
		"all lost":             {func(c *film.Coating) { c.LossPercent = 100 }, "/loss_percent", "out_of_range"},
		"negative loss":        {func(c *film.Coating) { c.LossPercent = -1 }, "/loss_percent", "out_of_range"},
		"area NaN":             {func(c *film.Coating) { c.AreaM2 = math.NaN() }, "/area_m2", "out_of_range"},
		"area infinite":        {func(c *film.Coating) { c.AreaM2 = math.Inf(1) }, "/area_m2", "out_of_range"},
		"no area":              {func(c *film.Coating) { c.AreaM2 = 0 }, "/area_m2", "out_of_range"},
		"no coats":             {func(c *film.Coating) { c.Coats = 0 }, "/coats", "out_of_range"},
		"film in millimetres":  {func(c *film.Coating) { c.DryFilmUm = 6000 }, "/dry_film_um", "out_of_range"},
		"negative thinner":     {func(c *film.Coating) { c.ThinnerPercent = -5 }, "/thinner_percent", "out_of_range"},
		"profile too deep":     {func(c *film.Coating) { c.ProfileUm = 501 }, "/profile_um", "out_of_range"},
		"profile over-filled":  {func(c *film.Coating) { c.ProfileFillRatio = 1.1 }, "/profile_fill_ratio", "out_of_range"},
		"density in kg per m³": {func(c *film.Coating) { c.DryFilmDensityKgL = new(1500.0) }, "/dry_film_density_kg_l", "out_of_range"},
		"unknown rule":         {func(c *film.Coating) { c.FilmRule = "min_50_50" }, "/film_rule", "unknown_kind"},
		"no mean is enough":    {func(c *film.Coating) { c.FilmRule, c.FilmCovRatio = film.Min90Of10, 0.8 }, "/film_cov_ratio", "inconsistent"},
		"absurd mean":          {func(c *film.Coating) { c.FilmRule, c.FilmCovRatio = film.Min90Of10, 0.55 }, "/film_cov_ratio", "inconsistent"},
	}
	for name, tc := range cases {
		t.Run(name, func(t *testing.T) {
			c := sound()
			tc.spoil(c)
			assert.Equal(t, map[string]string{tc.pointer: tc.code}, faults(c))
			if tc.code != "inconsistent" || tc.pointer == "/film_cov_ratio" {
				_, err := c.Calculate()
				assert.Error(t, err, "Calculate must not give a number for what Check refuses")
			}
		})
	}
}

func TestCheckReportsAllFaults(t *testing.T) {
	c := sound()
	c.AreaM2, c.VolumeSolidsPercent, c.TransferEfficiencyPercent, c.FilmRule = -1, 0, 0, "most"
	assert.Len(t, faults(c), 4)
}

func TestCovIsOnlyJudgedByRulesThatUseIt(t *testing.T) {
	c := sound()
	c.FilmCovRatio = 0.9
	assert.Empty(t, faults(c))
}

func TestTypedError(t *testing.T) {
	_, err := film.WetFilm(60, 0, 0)
	var outside *quantity.RangeError
	require.ErrorAs(t, err, &outside)
	assert.Equal(t, "volume solids", outside.Quantity)
	_, err = film.MeanFactor(film.Min80Of20, 1)
	require.ErrorAs(t, err, &outside)
	assert.Equal(t, "mean over nominal film", outside.Quantity)
}

func TestNoDensityNoKilograms(t *testing.T) {
	r, err := sound().Calculate()
	require.NoError(t, err)
	assert.Nil(t, r.DryFilmKg)
	assert.Nil(t, r.LostSolidsKg)
	assert.Nil(t, r.FurtherCoatPaintL, "one coat has no further coats")
}

func TestWorkingShowsEveryNumberOnce(t *testing.T) {
	c := sound()
	c.DryFilmDensityKgL = new(1.5)
	r, err := c.Calculate()
	require.NoError(t, err)
	seen := map[string]bool{}
	for _, w := range r.Working {
		assert.False(t, seen[w.Quantity], w.Quantity)
		seen[w.Quantity] = true
		assert.NotEmpty(t, w.Source, w.Quantity)
		assert.NotEmpty(t, w.Terms, w.Quantity)
	}
	assert.True(t, seen["paint_l"])
}

// The limits in the tags of Coating and those of the functions are two
// descriptions of one thing; here they are held together.
func TestTagsAgreeWithFunctions(t *testing.T) {
	within := func(name string, value float64) bool {
		c := sound()
		c.DryFilmDensityKgL = new(1.5)
		switch name {
		case "/dry_film_um":
			c.DryFilmUm = value
		case "/volume_solids_percent":
			c.VolumeSolidsPercent = value
		case "/transfer_efficiency_percent":
			c.TransferEfficiencyPercent = value
		case "/loss_percent":
			c.LossPercent = value
		case "/thinner_percent":
			c.ThinnerPercent = value
		case "/profile_um":
			c.ProfileUm = value
		case "/dry_film_density_kg_l":
			c.DryFilmDensityKgL = &value
		case "/area_m2":
			c.AreaM2 = value
		}
		_, err := c.Calculate()
		_, refused := faults(c)[name]
		assert.Equal(t, refused, err != nil, "%s = %g", name, value)
		return !refused
	}
	for name, ends := range map[string][2]float64{
		"/dry_film_um": {0.1, 5000}, "/volume_solids_percent": {1, 100}, "/transfer_efficiency_percent": {1, 100},
		"/loss_percent": {0, 95}, "/thinner_percent": {0, 300}, "/profile_um": {0, 500}, "/dry_film_density_kg_l": {0.5, 10},
		"/area_m2": {1e-9, 100000},
	} {
		assert.True(t, within(name, ends[0]), name)
		assert.True(t, within(name, ends[1]), name)
		assert.False(t, within(name, -0.001), name)
		assert.False(t, within(name, ends[1]*1.001), name)
	}
}

// A litre that is half solids of 2 kg/L and half solvent of 0.88 kg/L weighs
// 1.44 kg, 1 kg of it solids; the dry film has 2 kg/L again (identity).
func TestSolidsDensity(t *testing.T) {
	density, err := film.SolidsDensity(1/1.44, 1.44, 0.5)
	require.NoError(t, err)
	assert.InDelta(t, 2, density, 1e-12)
	_, err = film.SolidsDensity(0, 1.44, 0.5)
	assert.Error(t, err)
}
