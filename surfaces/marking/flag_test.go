package marking

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func flagged(design string, change func(*Flag)) *Flag {
	f := newFlag()
	f.Design, f.HoistM = design, 1
	change(f)
	return f
}

func TestFlagsAreChecked(t *testing.T) {
	bands := []Band{{1, "red"}, {2, "white"}}
	for name, c := range map[string]struct {
		flag *Flag
		want map[string]string
	}{
		"none":           {flagged("", func(*Flag) {}), map[string]string{"/design": "required"}},
		"unknown":        {flagged("atlantis", func(*Flag) {}), map[string]string{"/design": "unknown_reference"}},
		"own length":     {flagged("fi", func(f *Flag) { f.FlyM = pointer(2) }), map[string]string{"/fly_m": "not_applicable"}},
		"own bands":      {flagged("fi", func(f *Flag) { f.Bands = bands }), map[string]string{"/bands": "not_applicable"}},
		"free, no fly":   {flagged("stripes", func(f *Flag) { f.Bands = bands }), map[string]string{"/fly_m": "required"}},
		"no bands":       {flagged("stripes", func(f *Flag) { f.FlyM = pointer(2) }), map[string]string{"/bands": "required"}},
		"askew":          {flagged("stripes", func(f *Flag) { f.FlyM, f.Bands, f.Direction = pointer(2), bands, "askew" }), map[string]string{"/direction": "unknown_kind"}},
		"no cross":       {flagged("cross", func(f *Flag) { f.FlyM = pointer(2) }), map[string]string{"/field_colour": "required", "/arms": "required"}},
		"cross too wide": {flagged("cross", func(f *Flag) { f.FlyM, f.FieldColour, f.Arms = pointer(2), "red", []FlagArm{{1, "white"}} }), map[string]string{"/arms/0/width_m": "inconsistent"}},
		"wider on top": {flagged("cross", func(f *Flag) {
			f.FlyM, f.FieldColour, f.Arms = pointer(2), "red", []FlagArm{{0.2, "white"}, {0.3, "blue"}}
		}), map[string]string{"/arms/1/width_m": "inconsistent"}},
		"past the edge": {flagged("cross", func(f *Flag) {
			f.FlyM, f.CrossXM, f.FieldColour, f.Arms = pointer(2), pointer(0.05), "red", []FlagArm{{0.2, "white"}}
		}), map[string]string{"/arms/0/width_m": "inconsistent"}},
		"sound": {flagged("cross", func(f *Flag) {
			f.FlyM, f.CrossXM, f.FieldColour, f.Arms = pointer(2), pointer(0.6), "red", []FlagArm{{0.3, "white"}, {0.1, "blue"}}
		}), map[string]string{}},
	} {
		assert.Equal(t, c.want, faultsOf(c.flag), name)
	}
}

// Level bands begin at the top, upright ones at the hoist.
func TestOrderOfBands(t *testing.T) {
	for direction, top := range map[string]bool{"level": true, "upright": false} {
		f := flagged("stripes", func(f *Flag) {
			f.FlyM, f.Direction, f.Bands = pointer(3), direction, []Band{{1, "red"}, {3, "white"}}
		})
		m, err := Measure(f)
		require.NoError(t, err)
		red := m.Colours[0]
		assert.InEpsilon(t, 0.75, red.AreaM2, 1e-12)
		if top {
			assert.InEpsilon(t, 0.875, red.CentroidYM, 1e-9)
		} else {
			assert.InEpsilon(t, 0.375, red.CentroidXM, 1e-9)
		}
		assert.InDelta(t, 0, math.Hypot(m.LeftM, m.BottomM), 1e-12)
		assert.InEpsilon(t, 3, m.WidthM, 1e-12)
	}
}

// The rudder that narrows: stripes of one height, cut off along the trailing
// edge; the band is cut where the rudder is narrower (identities of trapezia).
func TestTaperedRudder(t *testing.T) {
	f := newRudderStripes()
	f.ChordM, f.TipChordM, f.HeightM = 1.2, pointer(0), 1.3
	m, err := Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 1.2*1.3/2, m.AreaM2, 1e-12, "a triangle")
	for _, c := range m.Colours {
		if c.Colour == "blue" {
			assert.InEpsilon(t, 0.78-0.8*(1.3*0.8/1.2)/2, c.AreaM2, 1e-12, "the whole less the triangle behind the band")
		}
	}
	f.TipChordM = pointer(1.3)
	assert.Equal(t, map[string]string{"/tip_chord_m": "inconsistent"}, faultsOf(f))
	f.TipChordM, f.BandRatio = nil, 1e-5
	assert.Equal(t, map[string]string{"/band_ratio": "inconsistent"}, faultsOf(f))
}

func TestOtherFaultsOfKinds(t *testing.T) {
	chequer := newChequer()
	chequer.SquareM, chequer.Columns, chequer.Rows = 1, 100, 100
	assert.Equal(t, map[string]string{"/rows": "too_many"}, faultsOf(chequer))

	roundel := newRoundel()
	roundel.SizeM, roundel.RatioSet = 1, "1-2-4"
	assert.Equal(t, map[string]string{"/ratio_set": "unknown_reference"}, faultsOf(roundel))
	roundel.RatioSet, roundel.Colours, roundel.Rings = "1-2-3", []string{"red", "white"}, []RoundelRing{{1, "red"}}
	assert.Equal(t, map[string]string{"/rings": "not_applicable", "/colours": "inconsistent"}, faultsOf(roundel))
	roundel.Colours, roundel.Rings = []string{"red", "white", "Blue"}, nil
	assert.Equal(t, map[string]string{"/colours/2": "wrong_type"}, faultsOf(roundel))
	roundel.RatioSet, roundel.Rings = "", []RoundelRing{{1, "red"}}
	assert.Equal(t, map[string]string{"/colours": "not_applicable"}, faultsOf(roundel))

	bar := newStarAndBar()
	bar.SizeM, bar.BorderWidthM = 1, pointer(0.5)
	assert.Equal(t, map[string]string{"/border_width_m": "inconsistent"}, faultsOf(bar), "a border wider than the figure")
	bar.BorderWidthM, bar.Blue = pointer(0.05), false
	assert.Equal(t, map[string]string{"/border_width_m": "not_applicable"}, faultsOf(bar))
	bar.Blue, bar.BorderWidthM = true, pointer(0.0625)
	given, err := Measure(bar)
	require.NoError(t, err)
	bar.BorderWidthM = nil
	ruled, err := Measure(bar)
	require.NoError(t, err)
	assert.InEpsilon(t, ruled.AreaM2, given.AreaM2, 1e-12, "R/8 is the rule")

	_, _, err = ObstructionBands(math.NaN())
	assert.Error(t, err)
}
