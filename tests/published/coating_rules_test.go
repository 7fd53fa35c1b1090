package published

// Source: ISO 19840 and IMO MSC.215(82) for the rules, normal distribution for
// the factors (mark D); SSPC-PA 2 as told by its newsletter.

import (
	"testing"

	"filmbuild/estimate/film"
	"filmbuild/estimate/inspect"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The table of reference coating 7: mean over nominal film that a rule forces
// when readings scatter normally (mathematics, D).
func TestMeanFilmOfMinimumRules(t *testing.T) {
	const table = "normal distribution; rules A1 (ISO 19840) and A4 (IMO MSC.215(82))"
	checkFigures(t, []figure{
		{"7 c=0.15 80/20", "D", table, 1.14, 0.005, found(film.MeanFactor(film.Min80Of20, 0.15))},
		{"7 c=0.20 80/20", "D", table, 1.20, 0.005, found(film.MeanFactor(film.Min80Of20, 0.20))},
		{"7 c=0.25 80/20", "D", table, 1.27, 0.005, found(film.MeanFactor(film.Min80Of20, 0.25))},
		{"7 c=0.30 80/20", "D", table, 1.34, 0.005, found(film.MeanFactor(film.Min80Of20, 0.30))},
		{"7 c=0.15 90/10", "D", table, 1.24, 0.005, found(film.MeanFactor(film.Min90Of10, 0.15))},
		{"7 c=0.20 90/10", "D", table, 1.34, 0.005, found(film.MeanFactor(film.Min90Of10, 0.20))},
		{"7 c=0.25 90/10", "D", table, 1.47, 0.005, found(film.MeanFactor(film.Min90Of10, 0.25))},
		{"7 c=0.30 90/10", "D", table, 1.62, 0.005, found(film.MeanFactor(film.Min90Of10, 0.30))},
	})
}

// A2: a spot is 3 readings, an area 5 spots of 10 m²; the area's mean reaches
// the specified film and each spot 0.8 of it.
func TestReadingsOfAnArea(t *testing.T) {
	r, err := inspect.Inspection{AreaM2: 10, DryFilmUm: new(150.0)}.Calculate()
	require.NoError(t, err)
	assert.Equal(t, [3]int{1, 5, 15}, [3]int{r.Areas, r.Spots, r.Readings}, "A2 [T]")
	assert.Equal(t, 150.0, *r.LeastAreaMeanUm, "A2 [T]")
	assert.InDelta(t, 120, *r.LeastSpotUm, 1e-9, "A2 [T]")
}

// A6: below 300 ft² every 100 ft², from there to 1000 ft² three areas. The
// standard's metric figures count the same in the middle of each range.
func TestAreasOfSmallSurfaces(t *testing.T) {
	for feet, want := range map[float64]int{50: 1, 100: 1, 150: 2, 250: 3, 300: 3, 500: 3, 900: 3, 1000: 3} {
		byFeet, err := inspect.AreasByFeet(feet * squareFoot)
		require.NoError(t, err)
		assert.Equal(t, want, byFeet, "A6 [T], %g ft²", feet)
		byMetres, err := inspect.Areas(feet * squareFoot)
		require.NoError(t, err)
		assert.Equal(t, want, byMetres, "A6 [T], %g ft² in m²", feet)
	}
}
