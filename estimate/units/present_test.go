package units

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"filmbuild/surfaces/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestPresentInUS(t *testing.T) {
	cases := []struct {
		value  float64
		suffix string
		want   float64
		unit   string
	}{
		{3.9243, "m", 12.875, "ft"}, {0.09290304, "m2", 1, "ft²"}, {20.32, "um", 0.8, "mil"}, {6.35, "mm", 0.25, "in"}, {3.785411784, "l", 1, "gal"},
		{0.45359237, "kg", 1, "lb"}, {241.31650526089, "kpa", 35, "psi"}, {0.028316846592, "m3_min", 1, "cfm"}, {0.0245424, "m2_l", 1, "ft²/gal"},
		{4.88242764, "kg_m2", 1, "lb/ft²"}, {119.826427, "g_l", 1, "lb/gal"}, {0.119826427, "kg_l", 1, "lb/gal"}, {20, "c", 68, "°F"}, {-40, "c", -40, "°F"},
		{3, TemperatureDifference, 5.4, "°F"}, {9.290304, "m2_h", 100, "ft²/h"}, {45.359237, "kg_h", 100, "lb/h"}, {37.85411784, "l_h", 10, "gal/h"},
		{40.7458, "l_m2", 1, "gal/ft²"}, {16.018463, "kg_m3", 1, "lb/ft³"}, {4.4704, "m_s", 10, "mph"}, {0.3048, "m_h", 1, "ft/h"}, {28.349523125, "g", 1, "oz"},
		{0.74569987158227022, "kw", 1, "hp"}, {0.028316846592, "m3", 1, "ft³"}, {1.5, "h", 1.5, "h"}, {15, "min", 15, "min"}, {12, "percent", 12, "%"}, {0.12, "ratio", 0.12, ""},
		{30, "deg", 30, "°"}, {2, "kg_kg", 2, "lb/lb"}, {5, "g_m3", 5, "g/m³"}, {7, "", 7, ""}, {7, "unheard_of", 7, ""},
	}
	for _, c := range cases {
		got, unit := Present(c.value, c.suffix, US)
		// Some inputs above are printed to six or seven digits only.
		assert.InEpsilon(t, c.want, got, 2e-6, c.suffix)
		assert.Equal(t, c.unit, unit, c.suffix)
	}
	exact, _ := Present(3.9243, "m", US)
	assert.Equal(t, 12.875, exact)
}

func TestPresentUnitGoesByThePrintedUnit(t *testing.T) {
	for _, c := range []struct {
		value float64
		unit  string
		want  float64
		shown string
	}{
		{3.785411784, "L", 1, "gal"}, {0.45359237, "kg", 1, "lb"}, {3.048, "m", 10, "ft"}, {0.9290304, "m²", 10, "ft²"}, {2, "h", 2, "h"},
		{3, "pcs", 3, "pcs"}, {3, "", 3, ""}, {20, "°C", 68, "°F"}, {25.4, "µm", 1, "mil"},
	} {
		got, shown := PresentUnit(c.value, c.unit, US)
		assert.InDelta(t, c.want, got, 1e-12, c.unit)
		assert.Equal(t, c.shown, shown)
		same, unit := PresentUnit(c.value, c.unit, SI)
		assert.Equal(t, c.value, same)
		assert.Equal(t, c.unit, unit)
	}
}

func TestSuffixesAgreeWithTheWireNames(t *testing.T) {
	for _, suffix := range tables.suffixes {
		if suffix == "" || suffix == TemperatureDifference {
			continue
		}
		assert.Equal(t, suffix, quantity.SuffixOf("x_"+suffix))
		_, printed := Present(1, suffix, SI)
		assert.Equal(t, quantity.UnitOf("x_"+suffix), printed, suffix)
	}
}

func TestEverySpellingAndSuggestionParses(t *testing.T) {
	suffixFor := map[dimension]string{}
	for suffix, target := range tables.targets {
		suffixFor[target.unit.dimension] = suffix
	}
	for _, name := range slices.Sorted(maps.Keys(tables.names)) {
		if name != "1" {
			_, found := tables.lookup(name)
			assert.True(t, found, name)
		}
	}
	for _, spellings := range []map[string]*unit{tables.exact, tables.folded} {
		for spelling, unit := range spellings {
			_, err := Parse("2 "+spelling, suffixFor[unit.dimension])
			assert.NoError(t, err, spelling)
			_, err = Parse("2"+spelling, suffixFor[unit.dimension])
			assert.NoError(t, err, spelling)
		}
	}
	for suffix, target := range tables.targets {
		for _, want := range target.want {
			name, _, _ := strings.Cut(want, " (")
			_, err := Parse("2 "+name, suffix)
			assert.NoError(t, err, "%s for %s", want, suffix)
		}
	}
}

func TestPresentThenParseGivesTheValueBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		suffix := rapid.SampledFrom(tables.suffixes).Draw(t, "suffix")
		system := rapid.SampledFrom([]System{SI, US}).Draw(t, "system")
		value := rapid.Float64Range(-1e6, 1e6).Draw(t, "value")
		shown, unit := Present(value, suffix, system)
		back, err := ParseBare(strconv.FormatFloat(shown, 'g', -1, 64)+" "+unit, suffix)
		require.NoError(t, err)
		// A temperature is measured from 0 °C, so near -17.8 °C the bound is absolute.
		require.InDelta(t, value, back, 1e-12*math.Max(math.Abs(value), 40))
	})
}

func TestParseSystem(t *testing.T) {
	for _, system := range []System{SI, US} {
		got, err := ParseSystem(system.String())
		require.NoError(t, err)
		assert.Equal(t, system, got)
	}
	_, err := ParseSystem("cgs")
	assert.EqualError(t, err, `units "cgs" are not known; give si or us`)
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		value  float64
		digits int
		want   string
	}{
		{20.32, 3, "20.3"}, {20, 3, "20"}, {12345.6, 3, "12346"}, {0.00012345, 3, "0.000123"}, {9.999, 3, "10"}, {-0.5, 2, "-0.5"}, {0, 3, "0"}, {1e-15, 3, "0"}, {-1e-15, 3, "0"},
		{math.Copysign(0, -1), 3, "0"}, {1e15, 3, "1000000000000000"}, {1.25, 0, "1"}, {99.96, 3, "100"}, {math.NaN(), 3, "-"}, {math.Inf(1), 3, "-"}, {100, 1, "100"},
	} {
		assert.Equal(t, c.want, Format(c.value, c.digits))
	}
}

func TestFormatKeepsTheDigitsAskedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(1e-3, 1e9).Draw(t, "value")
		digits := rapid.IntRange(1, 6).Draw(t, "digits")
		text := Format(value, digits)
		require.NotContains(t, text, "e")
		back, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		require.InEpsilon(t, value, back, 0.500001*math.Pow10(1-digits))
	})
}
