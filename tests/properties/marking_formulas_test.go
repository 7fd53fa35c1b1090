package properties

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/example"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/placing"
)

// Every figure of a marking is what its formula gives (identity), for every kind
// and for the ways of drawing one that have dimensions of their own.
func TestEveryFigureOfAMarkingIsExplained(t *testing.T) {
	figures := map[string]marking.Figure{}
	for _, k := range marking.Kinds() {
		figures[k.Name] = k.Example
	}
	of := func(kind string) marking.Figure {
		f, found := marking.New(kind)
		require.True(t, found, kind)
		return f
	}
	width, radius, angle, round := 0.07, 3.0, 40.0, 1.2
	bar := of("star_and_bar").(*marking.StarAndBar)
	bar.SizeM, bar.BarEnd, bar.BorderWidthM = 0.6, "circle", &width
	figures["bar to the circle"] = bar
	bent := of("stripe").(*marking.Stripe)
	bent.WidthM, bent.Colour, bent.RadiusM, bent.AngleDeg = 0.1, "red", &radius, &angle
	figures["bent stripe"] = bent
	about := of("stripe").(*marking.Stripe)
	about.WidthM, about.Colour, about.RoundDiameterM = 0.1, "red", &round
	figures["stripe round a body"] = about
	path := of("outline").(*marking.Outline)
	path.Path, path.Colour, path.WidthM = "M0 0H3V1H0Z", "red", &round
	figures["outline of a width"] = path
	seen := of("disc").(*marking.Disc)
	seen.SizeM, seen.Colour, seen.SkinRadiusM, seen.Sizes = 0.5, "red", &round, "projected"
	figures["seen from the side"] = seen
	for name, f := range figures {
		m, err := marking.Measure(f)
		require.NoError(t, err, name)
		require.NotEmpty(t, m.Working, name)
		for i := range m.Working {
			worksOut(t, name, &m.Working[i])
		}
	}
}

// Every figure of a place is what its formula gives, in the built-in jobs and for
// each way of giving a place.
func TestEveryFigureOfAPlaceIsExplained(t *testing.T) {
	tapes := []placing.Tape{{DistanceM: 5}, {XM: 8, DistanceM: 5}, {XM: 4, YM: 9, DistanceM: 6.001}}
	for name, set := range map[string]func(p *placing.Place){
		"two tapes":   func(p *placing.Place) { p.Tapes = tapes[:2] },
		"three tapes": func(p *placing.Place) { p.Tapes = tapes },
		"edges":       func(p *placing.Place) { p.Offsets = &placing.Offsets{FromAM: 0.3, FromBM: 0.5, AngleDeg: 80} },
		"station":     func(p *placing.Place) { p.Station = &placing.Station{StationM: 3, Face: "upper", Datum: "nose"} },
	} {
		p := placing.NewPlace()
		set(p)
		f, err := p.Locate()
		require.NoError(t, err, name)
		require.NotEmpty(t, f.Working, name)
		for i := range f.Working {
			worksOut(t, name, &f.Working[i])
		}
	}
	b := newBench(t)
	all, err := example.All()
	require.NoError(t, err)
	placed := 0
	for _, ex := range all {
		e, err := b.reader.Estimate(ex.Job, b.catalogue)
		require.NoError(t, err)
		for _, p := range e.Placings {
			placed++
			for i := range p.Working {
				worksOut(t, p.Marking, &p.Working[i])
			}
		}
	}
	assert.Positive(t, placed)
}
