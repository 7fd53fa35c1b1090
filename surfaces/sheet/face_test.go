package sheet

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/placing"
)

func fixOf(t require.TestingT, set func(p *placing.Place)) placing.Fix {
	p := placing.NewPlace()
	set(p)
	f, err := p.Locate()
	require.NoError(t, err)
	return f
}

func tapedAt(t require.TestingT, set ...func(p *placing.Place)) placing.Fix {
	return fixOf(t, func(p *placing.Place) {
		p.Tapes = []placing.Tape{{DistanceM: 2, Name: "hatch"}, {XM: 3, DistanceM: 2.5}}
		for _, s := range set {
			s(p)
		}
	})
}

// edges finds the extent of a group's lines on the sheet, in mm.
func edges(t require.TestingT, g *svgGroup) (left, top, right, bottom float64) {
	left, top, right, bottom = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, d := range g.paths {
		for _, r := range readPath(t, d) {
			for _, p := range r.points {
				left, top, right, bottom = min(left, p[0]), min(top, p[1]), max(right, p[0]), max(bottom, p[1])
			}
		}
	}
	return left, top, right, bottom
}

// What is read back from a placing sheet: the areas of every figure as measured,
// and the centres of two figures as far apart as their places say.
func TestFaceReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := examples(t)
		names := []string{"star_and_bar", "roundel", "stencil", "sans", "under colour", "exit_band"}
		turn := rapid.Float64Range(-180, 180)
		var list []Placed
		for range rapid.IntRange(1, 4).Draw(t, "markings") {
			name := rapid.SampledFrom(names).Draw(t, "name")
			list = append(list, Placed{name, all[name], fixOf(t, func(p *placing.Place) {
				p.Offsets = &placing.Offsets{FromAM: turn.Draw(t, "y") / 50, FromBM: turn.Draw(t, "x") / 50, AngleDeg: 90}
				p.RotationDeg = turn.Draw(t, "turn")
			})})
		}
		data, err := Face(list, Look{Title: "hull", US: rapid.Bool().Draw(t, "us")})
		require.NoError(t, err)
		s := readSVG(t, data)
		for i, one := range list {
			m, err := marking.Measure(one.Figure)
			require.NoError(t, err)
			for k, want := range m.Painted {
				g := s.groups[fmt.Sprintf("marking-%d-pass-%d", i+1, k+1)]
				require.NotNil(t, g)
				assert.InEpsilon(t, want.AreaM2*1e6, enclosed(readPath(t, g.paths[0])), 1e-6, one.Name)
			}
		}
	})
}

// A disc's centre lies where its place says, as seen on the sheet: x to the right
// and y up, 1 mm to the user unit.
func TestPlacesOnTheSheet(t *testing.T) {
	all := examples(t)
	at := func(x, y float64) placing.Fix {
		return fixOf(t, func(p *placing.Place) {
			p.Station = &placing.Station{StationM: x, WaterLineM: y, Face: "left", Datum: "nose"}
		})
	}
	data, err := Face([]Placed{{"a", all["disc"], at(1, 0.5)}, {"b", all["disc"], at(3.25, -0.75)}}, Look{})
	require.NoError(t, err)
	s := readSVG(t, data)
	middle := func(id string) (x, y float64) {
		left, top, right, bottom := edges(t, s.groups[id])
		return (left + right) / 2, (top + bottom) / 2
	}
	ax, ay := middle("marking-1-pass-1")
	bx, by := middle("marking-2-pass-1")
	assert.InDelta(t, 2250, bx-ax, 1e-3)
	assert.InDelta(t, 1250, by-ay, 1e-3)
	for _, said := range []string{"STA 1000", "STA 3250", "WL 500", "WL −750", "from nose"} {
		assert.True(t, s.says(said), said)
	}
	assert.False(t, s.says("more than one way"))
}

// The other side: the box of a text mirrored, the text itself not. An L has its
// foot to the right of its stem on both sides.
func TestLettersAreNotMirrored(t *testing.T) {
	f, _ := marking.New("lettering")
	letter := f.(*marking.Lettering)
	letter.Text, letter.HeightM, letter.Colour = "L", 0.6, "black"
	fix := tapedAt(t, func(p *placing.Place) { p.Anchor = "lower_left" })
	foot := func(fix placing.Fix) float64 {
		data, err := Face([]Placed{{"l", letter, fix}}, Look{})
		require.NoError(t, err)
		left, top, right, _ := edges(t, readSVG(t, data).groups["marking-1-pass-1"])
		highest := 0.0 // mean x of the points at the top: those of the stem
		count := 0.0
		for _, d := range readSVG(t, data).groups["marking-1-pass-1"].paths {
			for _, p := range readPath(t, d)[0].points {
				if p[1] < top+1 {
					highest, count = highest+p[0], count+1
				}
			}
		}
		return (left+right)/2 - highest/count
	}
	assert.Positive(t, foot(fix), "the stem is left of the middle")
	assert.Positive(t, foot(*fix.OtherSide), "and on the other side too")
	mirrored := tapedAt(t, func(p *placing.Place) { p.Anchor, p.MirrorFigure = "lower_left", true })
	assert.Negative(t, foot(*mirrored.OtherSide), "unless it is to be")
}

func TestTapesAreWritten(t *testing.T) {
	all := examples(t)
	fix := tapedAt(t, func(p *placing.Place) { p.RotationDeg = -15 })
	data, err := Face([]Placed{{"badge", all["roundel"], fix}}, Look{Title: "door", Of: "Hull <1>", Date: "spring"})
	require.NoError(t, err)
	s := readSVG(t, data)
	for _, said := range []string{"2000", "2500", "hatch", "point 2", "badge", "−15°", "Hull <1>", "spring", "1) 2000 from hatch"} {
		assert.True(t, s.says(said), said)
	}
	edged := fixOf(t, func(p *placing.Place) {
		p.Offsets = &placing.Offsets{FromAM: 0.4, FromBM: 0.7, AngleDeg: 75, EdgeA: "sill", EdgeB: "frame 12"}
	})
	data, err = Face([]Placed{{"badge", all["roundel"], fix}, {"plate", all["stencil"], edged}}, Look{US: true})
	require.NoError(t, err)
	s = readSVG(t, data)
	for _, said := range []string{`15 3/4"`, "sill", "frame 12", "more than one way"} {
		assert.True(t, s.says(said), said)
	}
	again, err := Face([]Placed{{"badge", all["roundel"], fix}, {"plate", all["stencil"], edged}}, Look{US: true})
	require.NoError(t, err)
	assert.Equal(t, data, again)
}

func TestFacesThatCannotBeDrawn(t *testing.T) {
	_, err := Face(nil, Look{})
	require.ErrorContains(t, err, "0 markings")
	_, err = Face(make([]Placed, MostPlaced+1), Look{})
	require.ErrorContains(t, err, "201 markings")
	f, _ := marking.New("star")
	_, err = Face([]Placed{{"x", f, tapedAt(t)}}, Look{})
	require.ErrorContains(t, err, "/size_m")
}
