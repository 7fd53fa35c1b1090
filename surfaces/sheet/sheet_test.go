package sheet

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

// example is a figure of every kind, and some that are harder.
func examples(t require.TestingT) map[string]marking.Figure {
	all := map[string]marking.Figure{}
	for _, k := range marking.Kinds() {
		all[k.Name] = k.Example
	}
	of := func(kind string) marking.Figure {
		f, found := marking.New(kind)
		require.True(t, found, kind)
		return f
	}
	sans := of("lettering").(*marking.Lettering)
	sans.Text, sans.HeightM, sans.Font, sans.Colour = "Rescue 08 & Co", 0.15, "sans", "insignia blue"
	all["sans"] = sans
	flag := of("flag").(*marking.Flag)
	flag.Design, flag.HoistM = "uk_3_5", 0.9
	all["flag of many pieces"] = flag
	stars := of("flag").(*marking.Flag)
	stars.Design, stars.HoistM = "us", 0.9
	all["flag with stars"] = stars
	under := of("roundel").(*marking.Roundel)
	under.SizeM, under.UnderColour = 0.75, "white"
	under.Rings = []marking.RoundelRing{{Ratio: 1, Colour: "red"}, {Ratio: 2, Colour: "white"}, {Ratio: 3, Colour: "sky blue"}}
	all["under colour"] = under
	radius := 0.7
	curved := of("star_and_bar").(*marking.StarAndBar)
	curved.SizeM, curved.SkinRadiusM, curved.Sizes = 0.635, &radius, "projected"
	all["seen from the side"] = curved
	upright := of("disc").(*marking.Disc)
	upright.SizeM, upright.Colour, upright.SkinRadiusM, upright.Sizes, upright.SkinAxis = 0.6, "red", &radius, "projected", "upright"
	all["seen from the side, upright"] = upright
	bent := of("outline").(*marking.Outline)
	bent.Path, bent.Colour, bent.FillRule = "M0 0C40 -60 80 60 120 0S180 90 90 120Q20 160 0 90ZM40 40a20 20 0 1 0 40 0a20 20 0 1 0 -40 0z", "red", "evenodd"
	all["bent"] = bent
	return all
}

// What is read back from a sheet has the areas that were measured, colour by
// colour, to 1e-6; and with one colour the length of its edges, one group for
// each pass in the order of painting.
func TestAreasReadBack(t *testing.T) {
	for name, f := range examples(t) {
		t.Run(name, func(t *testing.T) {
			m, err := marking.Measure(f)
			require.NoError(t, err)
			data, err := Figure(f, Look{})
			require.NoError(t, err)
			s := readSVG(t, data)
			passes := 0
			for id, g := range s.groups {
				if g.attributes["data-pass"] == "" {
					continue
				}
				passes++
				k, err := strconv.Atoi(g.attributes["data-pass"])
				require.NoError(t, err)
				want := m.Painted[k-1]
				assert.Equal(t, want.Colour, g.attributes["data-colour"])
				assert.Equal(t, strings.NewReplacer(" ", "-", "_", "-").Replace(want.Colour), id)
				require.Len(t, g.paths, 1)
				rings := readPath(t, g.paths[0])
				assert.InEpsilon(t, want.AreaM2*1e6, enclosed(rings), 1e-6, want.Colour)
				if len(m.Painted) == 1 && !strings.HasPrefix(name, "stripe") {
					length := 0.0
					for _, r := range rings {
						length += r.length
					}
					assert.InEpsilon(t, m.OutlineM*1e3, length, 1e-3, "chords of curves")
				}
			}
			assert.Equal(t, len(m.Painted), passes)
		})
	}
}

// One user unit is 1 mm: width and height are those of the viewBox.
func TestTrueScale(t *testing.T) {
	for name, f := range examples(t) {
		data, err := Figure(f, Look{})
		require.NoError(t, err)
		s := readSVG(t, data)
		require.Len(t, s.box, 4, name)
		for i, said := range []string{s.width, s.height} {
			mm, err := strconv.ParseFloat(strings.TrimSuffix(said, "mm"), 64)
			require.NoError(t, err)
			assert.InDelta(t, s.box[2+i], mm, 0, name)
		}
		// The bar by which a print is checked is 100 mm long, whatever the sheet.
		bar := readPath(t, strings.NewReplacer("h", "H", "v", "V").Replace(barPath(t, s)))
		assert.InDelta(t, 100, bar[0].points[0][0], 0, name)
		// Everything lies on the sheet.
		for id, g := range s.groups {
			for _, d := range g.paths {
				if strings.ContainsAny(d, "hv") {
					continue
				}
				for _, r := range readPath(t, d) {
					for _, p := range r.points {
						assert.True(t, p[0] >= 0 && p[0] <= s.box[2] && p[1] >= 0 && p[1] <= s.box[3], "%s: %s leaves the sheet at %v", name, id, p)
					}
				}
			}
		}
	}
}

// barPath is the path of the checking bar, its beginning moved to 0.
func barPath(t *testing.T, s svg) string {
	g := s.groups["check-100-mm"]
	require.NotNil(t, g)
	_, rest, found := strings.Cut(g.paths[0], "h")
	require.True(t, found)
	return "M0 0h" + rest[:strings.IndexByte(rest, 'v')] + "Z"
}

func TestDimensionsAreWritten(t *testing.T) {
	f, _ := marking.New("star_and_bar")
	bar := f.(*marking.StarAndBar)
	bar.SizeM = 0.635
	data, err := Figure(bar, Look{Title: "Left <side> & top", Date: "12 May"})
	require.NoError(t, err)
	s := readSVG(t, data)
	// SB-11 of the markings list, D = 635 mm: 1318.3 × 714.4; the circle through the
	// points, and the heights of the bar over its middle: (sin 18°)·R = 98.1.
	for _, said := range []string{"1318.3", "714.4", "Ø 635", "98.1", "−60.6", "Left <side> & top", "12 May", "scale 1:1", "dimensions in mm", "pass 1: blue"} {
		assert.True(t, s.says(said), said)
	}
	data, err = Figure(bar, Look{US: true})
	require.NoError(t, err)
	s = readSVG(t, data)
	for _, said := range []string{`51 29/32"`, `28 1/8"`, `Ø 25"`, "dimensions in inches"} { // 1318.3/25.4 = 51.902, 714.375/25.4 = 28.125
		assert.True(t, s.says(said), said)
	}
	assert.False(t, s.says("12 May"), "no date but the caller's")
	again, err := Figure(bar, Look{US: true})
	require.NoError(t, err)
	assert.Equal(t, data, again)
}

func TestInches(t *testing.T) {
	for value, want := range map[float64]string{0: `0"`, 1: `1"`, 0.5: `1/2"`, 12.25: `12 1/4"`, -0.75: `−3/4"`, 2.0 / 128: `1/64"`, 11.999: `12"`, -0.001: `0"`} {
		assert.Equal(t, want, inches(value), value)
	}
}

func TestAFaultyFigureIsRefused(t *testing.T) {
	f, _ := marking.New("star")
	for _, draw := range []func(marking.Figure, Look) ([]byte, error){Figure, Cut} {
		_, err := draw(f, Look{})
		assert.ErrorContains(t, err, "/size_m")
	}
}

// Cut lines are plain closed paths in groups of their own; without islands they
// have the areas that were measured.
func TestCutLines(t *testing.T) {
	for name, f := range examples(t) {
		m, err := marking.Measure(f)
		require.NoError(t, err)
		data, err := Cut(f, Look{})
		require.NoError(t, err)
		s := readSVG(t, data)
		assert.InEpsilon(t, m.StencilFilmM2*1e6, s.box[2]*s.box[3], 1e-4, "%s: the sheet is the film", name)
		for _, g := range s.groups {
			if g.attributes["data-pass"] == "" {
				continue
			}
			assert.Equal(t, "none", g.attributes["fill"])
			area := 0.0
			for _, d := range g.paths {
				rings := readPath(t, d)
				require.Len(t, rings, 1, "one closed line is one path")
				assert.Equal(t, byte('Z'), d[len(d)-1])
				area -= rings[0].area // y runs down: what is counter-clockwise on the part is below 0
			}
			k, _ := strconv.Atoi(g.attributes["data-pass"])
			want := m.Painted[k-1]
			if want.Islands == 0 && len(m.Painted) == len(m.Colours) {
				assert.InEpsilon(t, want.AreaM2*1e6, area, 1e-6, "%s %s", name, want.Colour)
			} else {
				assert.LessOrEqual(t, area, want.AreaM2*1e6*(1+1e-6), "bridges only take off")
				assert.Greater(t, area, want.AreaM2*1e6*0.7)
			}
		}
	}
}

// Bridges hold the islands: a closed line within another would fall out of the
// film. A block O of 60 mm with strokes of 10 mm gets two bridges of 3 mm, each
// 3 mm × 10 mm off the area (SB-1b of the markings list).
func TestBridgesHoldIslands(t *testing.T) {
	f, _ := marking.New("lettering")
	o := f.(*marking.Lettering)
	o.Text, o.HeightM, o.Colour = "O", 0.06, "black"
	data, err := Cut(o, Look{})
	require.NoError(t, err)
	s := readSVG(t, data)
	g := s.groups["black"]
	assert.Equal(t, "0", g.attributes["data-islands"])
	require.Len(t, g.paths, 2, "two halves")
	area := 0.0
	for _, d := range g.paths {
		area += math.Abs(readPath(t, d)[0].area)
	}
	assert.InEpsilon(t, 16*100-2*3*10, area, 1e-6)
	assert.True(t, s.says("held by bridges"))

	band, _ := marking.New("ring")
	r := band.(*marking.Ring)
	r.SizeM, r.InnerSizeM, r.Colour = 0.3, 0.2, "orange"
	data, err = Cut(r, Look{})
	require.NoError(t, err)
	assert.Len(t, readSVG(t, data).groups["orange"].paths, 2)

	for name, f := range examples(t) { // no line of a stencil lies within another
		data, err := Cut(f, Look{})
		require.NoError(t, err)
		for id, g := range readSVG(t, data).groups {
			if g.attributes["data-islands"] != "0" {
				continue
			}
			var rings []ring
			for _, d := range g.paths {
				rings = append(rings, readPath(t, d)...)
			}
			for i := range rings {
				for k := range rings {
					assert.False(t, i != k && rings[i].holds(rings[k].points[0], rings[k].points[len(rings[k].points)/3]) && math.Abs(rings[i].area) > math.Abs(rings[k].area), "%s: an island in %s", name, id)
				}
			}
		}
	}
}
