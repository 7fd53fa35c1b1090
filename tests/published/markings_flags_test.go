package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

type flagPairs = map[[2]string]float64

func flagOf(t *testing.T, design string, hoist float64) *marking.Flag {
	f := figureOf[*marking.Flag](t, "flag")
	f.Design, f.HoistM = design, hoist
	return f
}

// FL rows: flags in the units of their rule.
func TestMarkingsFlags(t *testing.T) {
	for _, row := range []struct {
		markingCase
		within float64
	}{
		{markingCase{id: "FL-US", source: "Executive Order 10834 table, union on tenths and twelfths", mark: "H", figure: flagOf(t, "us", 1),
			areas: map[string]float64{"red": 0.7892307692, "white": 0.7547841990, "blue": 0.3559850318},
			edges: flagPairs{{"red", "white"}: 17.48, {"blue", "white"}: 12.1795241621, {"blue", "red"}: 0.3076923077},
			sums:  map[string]float64{"area_m2": 1.9}}, 1e-9},
		{markingCase{id: "FL-UK35", source: "Flag Institute specification at 3:5", mark: "H", figure: flagOf(t, "uk_3_5", 30),
			areas: map[string]float64{"red": 590.2412555821, "white": 527.9491778309, "blue": 381.8095665869},
			edges: flagPairs{
				{"blue", "white"}: 193.9898301218, {"red", "white"}: 296.2393504313,
				{"blue", "base"}: 82.681907873, {"red", "base"}: 36.4393640423, {"white", "base"}: 40.8787280847,
			}}, 1e-11},
		{markingCase{id: "FL-FI", source: "Finnish Act 380/1978 s.2", mark: "H", figure: flagOf(t, "fi", 11),
			areas: map[string]float64{"blue": 78, "white": 120}, edges: flagPairs{{"blue", "white"}: 46}}, 1e-12},
		{markingCase{id: "FL-SE", source: "Swedish Act 1982:269 s.2", mark: "H", figure: flagOf(t, "se", 10),
			areas: map[string]float64{"yellow": 48, "blue": 112}, edges: flagPairs{{"blue", "yellow"}: 44}}, 1e-12},
		{markingCase{id: "FL-SE3", source: "Swedish Act 1982:269 s.2; straight notch sides assumed", mark: "M", figure: flagOf(t, "se_three_tongued", 10),
			areas: map[string]float64{"yellow": 48, "blue": 112}, edges: flagPairs{{"blue", "yellow"}: 36}}, 1e-12},
		{markingCase{id: "FL-CH", source: "Coat of Arms Protection Act SR 232.21 annex 2 as described by an encyclopaedia", mark: "H", figure: flagOf(t, "ch", 32),
			areas: map[string]float64{"white": 204, "red": 820}, edges: flagPairs{{"red", "white"}: 80}}, 1e-12},
		{markingCase{id: "FL-JP", source: "Japanese Act 127/1999 annex 1", mark: "H", figure: flagOf(t, "jp", 1),
			areas: map[string]float64{"red": 0.2827433388, "white": 1.2172566612}, edges: flagPairs{{"red", "white"}: 1.8849555922}}, 1e-9},
		{markingCase{id: "FL-NO", source: "from memory", mark: "L", figure: flagOf(t, "no", 16),
			areas: map[string]float64{"red": 216, "white": 64, "blue": 72}, edges: flagPairs{{"red", "white"}: 60, {"blue", "white"}: 68}}, 1e-12},
		{markingCase{id: "FL-RC", source: "NAVFAC P-300 2.14.13: 6 in on 8 in; five squares assumed", mark: "M", figure: flagOf(t, "red_cross", 8),
			areas: map[string]float64{"red": 20, "white": 44}, edges: flagPairs{{"red", "white"}: 24}}, 1e-12},
	} {
		row.run(t, row.within)
	}
	m, err := marking.Measure(flagOf(t, "fi", 11))
	require.NoError(t, err)
	assert.Contains(t, m.Working[0].Source, "Finnish Act", "the working names the act")
}

// Three equal upright thirds at 2:3 (the equal thirds are usual; the legal
// proportions are not confirmed): each third of the area, two inner edges of the
// hoist.
func TestMarkingsThirds(t *testing.T) {
	f := flagOf(t, "stripes", 2)
	fly := 3.0
	f.FlyM, f.Direction = &fly, "upright"
	f.Bands = []marking.Band{{Ratio: 1, Colour: "blue"}, {Ratio: 1, Colour: "white"}, {Ratio: 1, Colour: "red"}}
	markingCase{id: "FL thirds", source: "usual practice; geometry is an identity", mark: "M", figure: f,
		areas: map[string]float64{"blue": 2, "white": 2, "red": 2}, edges: flagPairs{{"blue", "white"}: 2, {"white", "red"}: 2}}.run(t, 1e-12)
}

// A free cross against the Act: the same numbers (identity).
func TestMarkingsFreeCross(t *testing.T) {
	f := flagOf(t, "cross", 11)
	fly, at := 18.0, 6.5
	f.FlyM, f.CrossXM, f.FieldColour, f.Arms = &fly, &at, "white", []marking.FlagArm{{WidthM: 3, Colour: "blue"}}
	markingCase{id: "FL-FI as a free cross", source: "Finnish Act 380/1978 s.2", mark: "H", figure: f,
		areas: map[string]float64{"blue": 78, "white": 120}, edges: flagPairs{{"blue", "white"}: 46}}.run(t, 1e-12)
}
