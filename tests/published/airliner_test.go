package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/products"
)

// The built-in job of a real aircraft, from published dimensions to published
// areas.
//
// Source: NASA Aviary (Apache-2.0), data set large_single_aisle_2, whose wing and
// fuselage areas do not follow from its own formulas (G4.11, mark A: read). The
// tolerance of 8 % is that of the reference: two published codes differ by 11.6 %
// on one fuselage, and outlines of nose and tail are not published.
func TestG4_11AirlinerAreas(t *testing.T) {
	got := airliner(t)
	published := map[string]float64{ // ft²
		"wing": 2423.02, "fuselage": 4142.317, "tailplane": 707.706, "fin": 589.35, "nacelle": 2 * 228.34,
	}
	require.Len(t, got.Areas, len(published))
	sum := 0.0
	for _, a := range got.Areas {
		want := published[a.Component] * squareFoot
		sum += want
		assert.InEpsilon(t, want, a.AreaM2, 0.08, a.Component)
	}
	assert.InEpsilon(t, 8319.07*squareFoot, sum, 1e-6, "the published parts add up to the published total")
	assert.InEpsilon(t, sum, got.Totals.AreaM2, 0.08)
}

// The dry film of primer and two coats of white beside the paint mass that two
// independent design codes use.
//
// Source: FAST-OAD 0.180 kg/m² and NASA Aviary 0.18065 kg/m² of wetted area
// (G4.22, mark A). Film and density of the example are invented within published
// ranges, so the check is of the order only: within a quarter.
func TestG4_22PaintMassPerArea(t *testing.T) {
	got := airliner(t)
	perArea := got.Totals.DryFilmKg / got.Totals.AreaM2
	t.Logf("dry film %.4f kg/m², published 0.180 and 0.1806", perArea)
	assert.InEpsilon(t, 0.180, perArea, 0.25)
}

func airliner(t *testing.T) *estimate.Estimate {
	t.Helper()
	catalogue, err := products.Load()
	require.NoError(t, err)
	job, err := example.Find("airliner")
	require.NoError(t, err)
	got, err := estimate.NewReader(nil).Estimate(job.Job, catalogue)
	require.NoError(t, err)
	return got
}
