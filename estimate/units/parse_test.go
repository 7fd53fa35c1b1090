package units

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestTablesLoad(t *testing.T) {
	require.NoError(t, errTables)
}

// Expected values are written out from the definitions: 1 in = 25.4 mm, 1 lb =
// 0.45359237 kg (yard and pound agreement of 1959), 1 US gal = 231 in³, 1 imp gal
// = 4.54609 L, g_n = 9.80665 m/s². They are compared bit by bit.
func TestParseFollowsTheDefinitions(t *testing.T) {
	cases := []struct {
		text, suffix string
		want         string
	}{
		{"0.8 mil", "um", "20.32"},
		{"20 µm", "um", "20"}, {"20 μm", "um", "20"}, {"20 microns", "um", "20"}, {"1 micron", "um", "1"}, {"0.05 mm", "um", "50"},
		{"2 thou", "um", "50.8"}, {"1/8 in", "mm", "3.175"}, {"0.25\"", "mm", "6.35"}, {"2.54 cm", "m", "0.0254"},
		{"12 ft 10 1/2 in", "m", "3.9243"}, {"12ft 10-1/2in", "m", "3.9243"}, {"12' 10½\"", "m", "3.9243"}, {"12′ 10 ½″", "m", "3.9243"},
		{"12'-10 1/2\"", "m", "3.9243"}, {"12' - 10 1/2\"", "m", "3.9243"}, {"12 feet, 10.5 inches", "m", "3.9243"},
		{"5' 7\"", "m", "1.7018"}, {"5'7\"", "m", "1.7018"}, {"5'7''", "m", "1.7018"}, {"5 ft. 7 in.", "m", "1.7018"}, {"5ft7in", "m", "1.7018"},
		{"5 ft2in", "m", "1.5748"}, {"5 ft 7-1/2 in", "m", "1.7145"}, {"5’ 7½”", "m", "1.7145"}, {"7 1/2\"", "m", "0.1905"}, {"3/8 in", "mm", "9.525"},
		{"1/4in", "mm", "6.35"}, {"1⁄4 in", "mm", "6.35"}, {"⅜ in", "mm", "9.525"}, {"9/8 in", "mm", "28.575"}, {"5 ft 15 in", "m", "1.905"}, {"0 ft 6 in", "m", "0.1524"},
		{"-3 ft 2 in", "m", "-0.9652"}, {"−3 ft 2 in", "m", "-0.9652"}, {"+3 ft", "m", "0.9144"}, {"2 1/2 gal", "l", "9.46352946"},
		{"1,234.5 ft", "m", "376.2756"}, {"1,234,567 mm", "m", "1234.567"}, {"1e3 m", "m", "1000"}, {"1E-3 m", "m", "0.001"},
		{"  5 m\t", "m", "5"}, {"5\u00a0m", "m", "5"}, {".5 in", "mm", "12.7"}, {"5. in", "mm", "127"}, {"5 M", "m", "5"}, {"5 FT", "m", "1.524"}, {"3 yd", "m", "2.7432"},
		{"10 sq ft", "m2", "0.9290304"}, {"10 ft²", "m2", "0.9290304"}, {"10 ft^2", "m2", "0.9290304"}, {"10 ft2", "m2", "0.9290304"}, {"10 sqft", "m2", "0.9290304"},
		{"10 Sq. Ft.", "m2", "0.9290304"}, {"2 m²", "m2", "2"}, {"2 m^2", "m2", "2"}, {"2 sq m", "m2", "2"}, {"2 m2", "m2", "2"}, {"250 cm2", "m2", "0.025"}, {"10 in2", "m2", "0.0064516"},
		{"1 gal", "l", "3.785411784"}, {"1 US gal", "l", "3.785411784"}, {"1 U.S. gallon", "l", "3.785411784"}, {"1 imp gal", "l", "4.54609"}, {"2 imperial gallons", "l", "9.09218"},
		{"1 qt", "l", "0.946352946"}, {"16 fl oz", "l", "0.473176473"}, {"750 ml", "l", "0.75"}, {"2 litres", "l", "2"}, {"2 liter", "l", "2"}, {"2 L", "l", "2"}, {"1 m3", "l", "1000"},
		{"1 ft3", "m3", "0.028316846592"}, {"1 cu yd", "m3", "0.764554857984"}, {"300 g", "kg", "0.3"}, {"1 lb", "kg", "0.45359237"}, {"16 oz", "kg", "0.45359237"},
		{"2 lb 8 oz", "kg", "1.133980925"}, {"1 t", "kg", "1000"}, {"1 tonne", "kg", "1000"}, {"1 ton", "kg", "907.18474"}, {"1 long ton", "kg", "1016.0469088"}, {"1 oz", "g", "28.349523125"},
		{"1 psi", "kpa", "4.4482216152605/0.64516"}, {"2.4 bar", "kpa", "240"}, {"0.24 MPa", "kpa", "240"}, {"101325 Pa", "kpa", "101.325"}, {"1013.25 hPa", "kpa", "101.325"}, {"29.92 inHg", "kpa", "101.32075888"},
		{"300 cfm", "m3_min", "8.4950539776"}, {"300 ft³/min", "m3_min", "8.4950539776"}, {"500 L/min", "m3_min", "0.5"}, {"3 m3/min", "m3_min", "3"}, {"180 m³/h", "m3_min", "3"},
		{"8 m2/L", "m2_l", "8"}, {"8 m²/l", "m2_l", "8"}, {"231 ft2/gal", "m2_l", "231*0.09290304/3.785411784"}, {"231 square feet per gallon", "m2_l", "231*0.09290304/3.785411784"},
		{"8 m2 per litre", "m2_l", "8"}, {"231 sq ft / gal", "m2_l", "231*0.09290304/3.785411784"}, {"200 mL/m2", "l_m2", "0.2"}, {"1 lb/ft2", "kg_m2", "0.45359237/0.09290304"},
		{"340 g/L", "g_l", "340"}, {"1.2 kg/L", "g_l", "1200"}, {"1 lb/gal", "kg_l", "0.45359237/3.785411784"}, {"1.6 g/cm3", "kg_l", "1.6"}, {"1450 kg/m3", "kg_l", "1.45"}, {"1 lb/ft3", "kg_m3", "0.45359237/0.028316846592"},
		{"100 lb/h", "kg_h", "45.359237"}, {"2 kg/min", "kg_h", "120"}, {"100 ft2/h", "m2_h", "9.290304"}, {"1 ft2/min", "m2_h", "5.5741824"}, {"10 gal/h", "l_h", "37.85411784"}, {"5 mg/m3", "g_m3", "0.005"},
		{"68 °F", "c", "20"}, {"-40 F", "c", "-40"}, {"212 degF", "c", "100"}, {"20 °C", "c", "20"}, {"20 deg C", "c", "20"}, {"20C", "c", "20"}, {"293.15 K", "c", "20"}, {"-40 °F", "c", "-40"},
		{"5 °F", TemperatureDifference, "25/9"}, {"3 K", TemperatureDifference, "3"},
		{"90 min", "h", "1.5"}, {"1 h 30 min", "h", "1.5"}, {"2 days", "h", "48"}, {"90 s", "min", "1.5"}, {"36 km/h", "m_s", "10"}, {"10 mph", "m_s", "4.4704"}, {"18 kn", "m_s", "9.26"}, {"60 ft/min", "m_h", "1097.28"},
		{"30 deg", "deg", "30"}, {"30°", "deg", "30"}, {"12 %", "percent", "12"}, {"12%", "ratio", "0.12"}, {"12 percent", "ratio", "0.12"}, {"1 kW", "kw", "1"}, {"15 lb/lb", "kg_kg", "15"},
		{"12", "", "12"}, {"1,200,000", "", "1200000"}, {"12 pcs", "", "12"}, {"35 psi", "kpa", "35*4.4482216152605/0.64516"},
	}
	for _, c := range cases {
		got, err := Parse(c.text, c.suffix)
		require.NoError(t, err, c.text)
		assert.Equal(t, nearest(t, c.want), got, "%s as %s", c.text, c.suffix)
	}
	radian, err := Parse("1 rad", "deg")
	require.NoError(t, err)
	assert.Equal(t, 180/math.Pi, radian)
}

// nearest returns the float64 nearest to a product over a quotient of decimals,
// such as 231*0.09290304/3.785411784.
func nearest(t *testing.T, expression string) float64 {
	over, under, _ := strings.Cut(expression, "/")
	value := big.NewRat(1, 1)
	for _, factor := range strings.Split(over, "*") {
		decimal, ok := new(big.Rat).SetString(factor)
		require.True(t, ok, expression)
		value.Mul(value, decimal)
	}
	if under != "" {
		decimal, ok := new(big.Rat).SetString(under)
		require.True(t, ok, expression)
		value.Quo(value, decimal)
	}
	result, _ := value.Float64()
	return result
}

func TestParseRefusals(t *testing.T) {
	cases := []struct{ text, suffix, message string }{
		{"35 psi", "m", "35 psi is a pressure; a length is expected: m, mm, cm, ft, in, yd"},
		{"5 m", "m2", "5 m is a length; an area is expected: m², cm², ft², in²"},
		{"5 kg/m2", "m2_l", "5 kg/m2 is a mass per area; an area per volume is expected: m²/L, ft²/gal, ft²/imp gal"},
		{"5 m", "", "5 m is a length; a plain number is expected"},
		{"12 %", "", "12 % is a share; a plain number is expected"},
		{"12 furlong", "m", `"12 furlong": the unit "furlong" is not known; a length is expected: m, mm, cm, ft, in, yd`},
		{"1 mpa", "kpa", `"1 mpa": the unit "mpa" is not known; a pressure is expected: kPa, bar, psi, MPa, Pa, inHg`},
		{"1 Mg", "kg", `"1 Mg": the unit "Mg" is not known; a mass is expected: kg, g, t (metric), lb, oz, ton (US short)`},
		{"3 m 2 kg", "m", `"3 m 2 kg" adds kg to m; only ft and in, lb and oz, h and min go together, each once and the larger first`},
		{"3 in 2 ft", "m", `"3 in 2 ft" adds ft to in; only ft and in, lb and oz, h and min go together, each once and the larger first`},
		{"3 ft 2 in 1 in", "m", `"3 ft 2 in 1 in" adds in to ft; only ft and in, lb and oz, h and min go together, each once and the larger first`},
		{"3 ft 2 zz", "m", `"3 ft 2 zz": the unit "zz" is not known; a length is expected: m, mm, cm, ft, in, yd`},
		{"1 m/m/m", "m", `"1 m/m/m": the unit "m/m/m" is not known; a length is expected: m, mm, cm, ft, in, yd`},
		{"1 °C/h", "c", `"1 °C/h": the unit "°C/h" is not known; a temperature is expected: °C, °F, K`},
		{"12", "m", `"12" has no unit; a length is expected: m, mm, cm, ft, in, yd`},
		{"0.12", "ratio", `"0.12" has no unit; a share is expected: %`},
		{"1,5 m", "m", `"1,5 m" has an ambiguous comma; write 1.5`},
		{"0,125 m", "m", `"0,125 m" has an ambiguous comma; write 0.125`},
		{"12,34,567 m", "m", `"12,34,567 m" has misplaced commas; write the number with a decimal point and no commas`},
		{"1.234,5 m", "m", `"1.234,5 m" has misplaced commas; write the number with a decimal point and no commas`},
		{"", "m", `"" is empty`}, {"  ", "m", `"" is empty`},
		{"NaN", "m", `"NaN" is not a number`}, {"Inf m", "m", `"Inf m" is not a number`}, {"ft", "m", `"ft" is not a number`}, {"--5 m", "m", `"--5 m" is not a number`},
		{". m", "m", `". m" is not a number`}, {"1.2.3 m", "m", `"1.2.3 m" is not a number`}, {"0x10 m", "m", `"0x10 m" is not a plain decimal number`}, {"1_000 m", "m", `"1_000 m" is not a plain decimal number`},
		{"1e400 m", "m", `"1e400 m" is too large a number`}, {"1e99999999999999999999 m", "m", `"1e99999999999999999999 m" is too large a number`},
		{"1e308 m", "um", `"1e308 m" is too large a number`}, {"1e-400 m", "m", `"1e-400 m" is too small a number`}, {"1e-401 m", "m", `"1e-401 m" is too small a number`},
		{"5-7 m", "m", `"5-7 m" holds more than one number`}, {"1 234 m", "m", `"1 234 m" holds more than one number`},
		{"5' 7", "m", `"5' 7" has a second number without a unit`}, {"5 ft -7 in", "m", `"5 ft -7 in" has a sign inside`}, {"5.5 ft 3 in", "m", `"5.5 ft 3 in" has a fraction in both of its numbers; the first must be whole`},
		{"1/0 in", "m", `"1/0 in" divides by zero`}, {"1 3/2 in", "m", `"1 3/2 in" has a fraction of one or more after a whole number`}, {"1/1234567890 in", "m", `"1/1234567890 in" has too long a fraction`},
		{"1/2.5 in", "m", `"1/2.5 in" is not a number`},
		{strings.Repeat("1", 65), "", `"11111111111111111111111111111111…" has more than 64 bytes`},
		{"1 m", "furlongs", "no unit is known for names ending in _furlongs"},
	}
	for _, c := range cases {
		_, err := Parse(c.text, c.suffix)
		assert.EqualError(t, err, c.message)
	}
}

func TestErrorsAreTyped(t *testing.T) {
	_, err := Parse("12", "m")
	require.ErrorIs(t, err, ErrNoUnit)
	var noUnit *NoUnitError
	require.ErrorAs(t, err, &noUnit)
	_, err = Parse("35 psi", "m")
	var wrong *WrongUnitError
	require.ErrorAs(t, err, &wrong)
	assert.Equal(t, "psi", wrong.Unit)
	assert.Equal(t, []string{"m", "mm", "cm", "ft", "in", "yd"}, wrong.Want)
	_, err = Parse("nan", "m")
	var number *NumberError
	require.ErrorAs(t, err, &number)
	_, err = Parse("1 m", "x")
	var suffix *SuffixError
	require.ErrorAs(t, err, &suffix)
}

func TestParseBareTakesTheUnitOfTheSuffix(t *testing.T) {
	for _, c := range []struct {
		text, suffix string
		want         float64
	}{
		{"12", "m", 12}, {"-12.5", "c", -12.5}, {"70", "c", 70}, {"12", "percent", 12}, {"0.12", "ratio", 0.12}, {"12 %", "ratio", 0.12},
		{"0.8 mil", "um", 20.32}, {"2 1/2", "h", 2.5}, {"7", "", 7},
	} {
		got, err := ParseBare(c.text, c.suffix)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, got, c.text)
	}
}

// strconv rounds decimal text correctly (IEEE 754), which makes it the oracle.
func TestBareNumbersAreRoundedAsStrconvDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64().Draw(t, "value")
		format := rapid.SampledFrom([]byte{'e', 'g'}).Draw(t, "format")
		text := strconv.FormatFloat(value, format, rapid.IntRange(-1, 25).Draw(t, "digits"), 64)
		want, err := strconv.ParseFloat(text, 64)
		got, gotErr := ParseBare(text, "m")
		if err != nil {
			require.Error(t, gotErr)
			return
		}
		require.NoError(t, gotErr)
		require.Equal(t, want, got, text)
	})
}

// The oracle is big.Rat over the definition of the inch.
func TestFeetAndInchesAreRoundedOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feet := rapid.Int64Range(0, 5000).Draw(t, "feet")
		inches := rapid.Int64Range(0, 30).Draw(t, "inches")
		under := rapid.SampledFrom([]int64{2, 3, 4, 8, 16, 32, 64, 7}).Draw(t, "under")
		over := rapid.Int64Range(1, under-1).Draw(t, "over")
		n := func(i int64) string { return strconv.FormatInt(i, 10) }
		got, err := Parse(n(feet)+" ft "+n(inches)+" "+n(over)+"/"+n(under)+" in", "m")
		require.NoError(t, err)
		exact := big.NewRat((feet*12+inches)*under+over, under)
		want, _ := exact.Mul(exact, big.NewRat(254, 10000)).Float64()
		require.Equal(t, want, got)
	})
}

func FuzzParse(f *testing.F)     { fuzz(f, Parse) }
func FuzzParseBare(f *testing.F) { fuzz(f, ParseBare) }

func fuzz(f *testing.F, parse func(text, suffix string) (float64, error)) {
	for _, text := range []string{
		"0.8 mil", "12 ft 10 1/2 in", "5' 7½\"", "5'-7\"", "1,234.5 ft", "1,5 m", "1e400 m", "-40 °F", "3 m 2 kg", "12 %", "231 sq ft / gal", "1/0 in", "½", "5 m per", "\xff m", "1 m³/min", "9/", "1 ⁄", "−", "7-",
	} {
		f.Add(text, "m")
		f.Add(text, "um")
		f.Add(text, "c")
		f.Add(text, "")
	}
	f.Add("1 m", strings.Repeat("x", 1000))
	f.Fuzz(func(t *testing.T, text, suffix string) {
		value, err := parse(text, suffix)
		if err != nil {
			require.Zero(t, value)
			// Twice the text with every byte escaped, and the sentence around it.
			require.LessOrEqual(t, len(err.Error()), 2*4*longest+200)
			return
		}
		require.False(t, math.IsNaN(value) || math.IsInf(value, 0))
		text = strings.TrimSpace(text)
		if len(text) >= longest || strings.HasPrefix(text, "-") || strings.HasPrefix(text, "+") || strings.HasPrefix(text, "−") {
			return
		}
		again, err := parse("+"+text, suffix)
		require.NoError(t, err)
		require.Equal(t, value, again)
		if suffix != "c" { // °F and K do not begin at 0 °C
			opposite, err := parse("-"+text, suffix)
			require.NoError(t, err)
			require.Equal(t, -value, opposite+0)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for _, c := range []struct{ text, suffix string }{
		{"0.8 mil", "um"}, {"35 psi", "kpa"}, {"12 ft 10 1/2 in", "m"}, {"400 ft2/gal", "m2_l"}, {"68 °F", "c"}, {"0.333333333333 m", "mm"},
	} {
		b.Run(c.text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Parse(c.text, c.suffix); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
