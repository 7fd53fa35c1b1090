package marking

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
)

// faultsOf gathers the codes that Check reports, by pointer.
func faultsOf(f Figure) map[string]string {
	found := map[string]string{}
	f.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func TestKindsAreComplete(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			assert.False(t, seen[k.Name])
			seen[k.Name] = true
			assert.NotEmpty(t, k.Doc)
			assert.NotEmpty(t, k.Source)
			for _, field := range k.Fields {
				assert.NotEmpty(t, field.Doc, field.Name)
			}
			assert.Equal(t, k.Name, k.Example.Kind())
			f, ok := New(k.Name)
			require.True(t, ok)
			assert.Equal(t, k.Name, f.Kind())
			assert.Equal(t, 0.05, f.StencilMargin())
			assert.NotEmpty(t, faultsOf(f), "an empty figure is no figure")
		})
	}
	_, ok := New("blot")
	assert.False(t, ok)
}

// Every number of every kind has a limit, and zero-value figures made without
// a constructor are checked, never measured.
func TestNumbersHaveLimits(t *testing.T) {
	for _, k := range Kinds() {
		made := reflect.TypeOf(k.Example).Elem()
		for _, f := range reflect.VisibleFields(made) {
			kind := f.Type.Kind()
			if kind == reflect.Pointer {
				kind = f.Type.Elem().Kind()
			}
			if kind == reflect.Float64 || kind == reflect.Int {
				assert.NotEmpty(t, f.Tag.Get("limit"), "%s.%s", k.Name, f.Name)
			}
		}
		_, err := Measure(reflect.New(made).Interface().(Figure))
		var faults surfaces.Faults
		assert.ErrorAs(t, err, &faults, k.Name)
	}
}

func TestExamplesMeasure(t *testing.T) {
	for _, k := range Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			assert.Empty(t, faultsOf(k.Example))
			m, err := Measure(k.Example)
			require.NoError(t, err)
			assert.NotEmpty(t, m.Colours)
			assert.Positive(t, m.AreaM2)
			assert.Less(t, m.AreaM2, m.WidthM*m.HeightM*(1+1e-12))
			assert.Greater(t, m.StencilFilmM2, m.WidthM*m.HeightM)
			for _, w := range m.Working {
				assert.False(t, math.IsNaN(w.Value) || w.Value < 0, w.Quantity)
				assert.NotEmpty(t, w.Formula)
				assert.NotEmpty(t, w.Source)
				assert.NotEmpty(t, w.Terms)
			}
		})
	}
}

// Every text field of a kind that names a colour refuses none, the ground and
// anything but lower-case words.
func TestColoursAreChecked(t *testing.T) {
	for colour, want := range map[string]string{
		"": "required", "base": "not_applicable", "White": "wrong_type", "-": "wrong_type", " red": "wrong_type", "red;": "wrong_type",
		strings.Repeat("x", 61): "out_of_range", "insignia blue": "", "grey-36": "", "grün": "", "olive_drab": "",
	} {
		f := newStar()
		f.SizeM, f.Colour = 1, colour
		assert.Equal(t, want, faultsOf(f)["/colour"], "colour %q", colour)
	}
}

func TestEveryFaultIsReported(t *testing.T) {
	roundel := newRoundel()
	roundel.SizeM = -1
	roundel.Rings = []RoundelRing{{0, "red"}, {2, ""}, {1, "base"}}
	assert.Equal(t, map[string]string{
		"/size_m": "out_of_range", "/rings/0/ratio": "out_of_range", "/rings/1/colour": "required", "/rings/2/colour": "not_applicable",
	}, faultsOf(roundel), "no rule between ratios while one of them is out of range")

	roundel.SizeM, roundel.Rings = 1, []RoundelRing{{1, "red"}, {2, "white"}, {2, "blue"}}
	assert.Equal(t, map[string]string{"/rings/2/ratio": "not_increasing"}, faultsOf(roundel))
	roundel.Rings = nil
	assert.Equal(t, map[string]string{"/rings": "required"}, faultsOf(roundel))
	roundel.Rings = make([]RoundelRing, 101)
	assert.Equal(t, "too_many", faultsOf(roundel)["/rings"])

	bar, yes := newStarAndBar(), true
	bar.SizeM, bar.BarEnd, bar.Blue, bar.Border = math.NaN(), "tip", false, &yes
	assert.Equal(t, map[string]string{"/size_m": "out_of_range", "/bar_end": "unknown_kind", "/border": "inconsistent"}, faultsOf(bar))

	rectangle := newRectangle()
	rectangle.WidthM, rectangle.HeightM, rectangle.CornerRadiusM, rectangle.Colour = 0.2, 0.1, 0.06, "red"
	assert.Equal(t, map[string]string{"/corner_radius_m": "inconsistent"}, faultsOf(rectangle))

	ring := newRing()
	ring.SizeM, ring.InnerSizeM, ring.Colour = 0.2, 0.2, "red"
	assert.Equal(t, map[string]string{"/inner_size_m": "inconsistent"}, faultsOf(ring))

	cross := newCross()
	cross.SizeM, cross.ArmWidthM, cross.FlankWidthM, cross.Colour = 1, 0.5, 0.25, "red"
	assert.Equal(t, map[string]string{"/size_m": "inconsistent", "/flank_colour": "required"}, faultsOf(cross))
	cross.FlankWidthM, cross.FlankColour = 0, "white"
	assert.Equal(t, map[string]string{"/flank_colour": "not_applicable"}, faultsOf(cross))

	hazard := newHazard()
	hazard.WidthM, hazard.HeightM, hazard.StripeWidthM, hazard.PhaseRatio = 100, 1, 0.05, 1
	assert.Equal(t, map[string]string{"/phase_ratio": "out_of_range"}, faultsOf(hazard))
	hazard.PhaseRatio = 0
	assert.Equal(t, map[string]string{"/stripe_width_m": "too_many"}, faultsOf(hazard))

	band := newExitBand()
	band.SizeM, band.OpeningWidthM, band.OpeningHeightM, band.CornerRadiusM = 0.05, 0.5, 0.9, 0.3
	assert.Equal(t, map[string]string{"/corner_radius_m": "inconsistent", "/colour": "required"}, faultsOf(band))

	flash := newFinFlash()
	flash.WidthM, flash.HeightM, flash.Bands = 0.6, 0.6, []Band{{0, "red"}, {1, "Blue"}}
	assert.Equal(t, map[string]string{"/bands/0/ratio": "out_of_range", "/bands/1/colour": "wrong_type"}, faultsOf(flash))
}

func TestPolygonsAreChecked(t *testing.T) {
	for name, c := range map[string]struct {
		points [][2]float64
		at     string
		code   string
	}{
		"none":            {nil, "/points", "required"},
		"two":             {[][2]float64{{0, 0}, {1, 1}}, "/points", "out_of_range"},
		"too many":        {make([][2]float64, 2001), "/points", "out_of_range"},
		"far":             {[][2]float64{{0, 0}, {1001, 0}, {0, 1}}, "/points/1/0", "out_of_range"},
		"not a number":    {[][2]float64{{0, 0}, {1, math.NaN()}, {0, 1}}, "/points/1/1", "out_of_range"},
		"bow tie":         {[][2]float64{{0, 0}, {1, 1}, {1, 0}, {0, 1}}, "/points", "self_crossing"},
		"one place":       {[][2]float64{{5, 5}, {5, 5}, {5, 5}}, "/points", "out_of_range"},
		"line":            {[][2]float64{{0, 0}, {1, 1}, {0, 0}}, "/points", "inconsistent"},
		"triangle":        {[][2]float64{{0, 0}, {1, 0}, {0, 1}}, "", ""},
		"other way round": {[][2]float64{{0, 1}, {1, 0}, {0, 0}}, "", ""},
	} {
		f := newPolygon()
		f.Points, f.Colour = c.points, "red"
		want := map[string]string{}
		if c.at != "" {
			want[c.at] = c.code
		}
		assert.Equal(t, want, faultsOf(f), name)
	}
}
