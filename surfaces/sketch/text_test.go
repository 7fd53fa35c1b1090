package sketch

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces"
)

// written lists what has to stand on the sketch of each kind's example: the
// dimensions of the example as a person would write them.
func written() map[string][2][]string {
	return map[string][2][]string{
		"measured":   {{"3.2 m²", "edge 8.4", "(1.7889)"}, {"34.445 ft²", `edge 27' 6 11/16"`}},
		"panel":      {{"1.2", "0.8", "0.2", "0.4", "A Ø0.09", "B 0.25×0.15 R0.03"}, {`3' 11 1/4"`, `2' 7 1/2"`, `A Ø3 35/64"`}},
		"box":        {{"2", "0.8", "0.5"}, {`6' 6 3/4"`, `2' 7 1/2"`, `1' 7 11/16"`}},
		"cylinder":   {{"Ø0.6", "2.5"}, {`Ø1' 11 5/8"`, `8' 2 7/16"`}},
		"frustum":    {{"R0.5", "R0.3", "1.1"}, {`R1' 7 11/16"`, `R11 13/16"`, `3' 7 5/16"`}},
		"sphere":     {{"R400"}, {`R1' 3 3/4"`}},
		"cap":        {{"R0.9", "0.2", "(Ø1.1314)"}, {`R2' 11 7/16"`, `7 7/8"`}},
		"torus":      {{"R350", "R110", "(Ø920)"}, {`R1' 1 3/4"`, `R4 21/64"`}},
		"ellipsoid":  {{"1.4", "0.6", "0.5"}, {`4' 7 1/8"`, `1' 11 5/8"`, `1' 7 11/16"`}},
		"nose":       {{"Ø1", "2.5", "Profile: haack, C = 0."}, {`Ø3' 3 3/8"`, `8' 2 7/16"`}},
		"vessel":     {{"R0.6", "2.5", "0.3", "(3.1)"}, {`R1' 11 5/8"`, `8' 2 7/16"`, `11 13/16"`}},
		"wing":       {{"1.45", "0.9", "2.1", "sweep 12°", "Section: naca, 9 % thick."}, {`4' 9 1/16"`, `2' 11 7/16"`, `6' 10 11/16"`}},
		"body":       {{"0.8", "1.3", "1.2", "0.5", "0.6", "1.6", "4", "6", "0.7", "1", "0.9", "0.3", "0.2", "2.5"}, {`19' 8 1/4"`, `4' 3 3/16"`}},
		"bar":        {{"200", "100", "web 5.6", "flange 8.5", "R12", "6000"}, {`7 7/8"`, `3 15/16"`, `19' 8 1/4"`}},
		"corrugated": {{"76.2", "19.05", "2400", "3000"}, {`3"`, `3/4"`, `7' 10 1/2"`, `9' 10 1/8"`}},
		"revolved":   {{"0", "100", "300", "600", "R50", "R120", "R200", "R220"}, {`1' 11 5/8"`, `R8 21/32"`}},
		"swept":      {{"0.48", "5.2"}, {`1' 6 7/8"`, `17' 3/4"`}},
	}
}

func TestExamplesCarryTheirDimensions(t *testing.T) {
	list := written()
	for _, k := range surfaces.Kinds() {
		if k.Name == "mesh" {
			continue // TestMeshIsShownByItsBox
		}
		for i, system := range []System{SI, US} {
			t.Run(k.Name+" "+string(system), func(t *testing.T) {
				require.Contains(t, list, k.Name)
				p := readBack(t, sketched(t, k.Example, system))
				var texts []string
				for _, e := range p.texts() {
					texts = append(texts, e.Text)
				}
				for _, want := range list[k.Name][i] {
					assert.Contains(t, texts, want)
				}
				assert.Contains(t, texts, p.Scale)
				assert.Contains(t, p.Title, p.Scale)
			})
		}
	}
}

// The description says each dimension with its unit, for those who cannot see.
func TestDescriptionSaysTheDimensions(t *testing.T) {
	p := readBack(t, sketched(t, &surfaces.Box{LengthM: 2, WidthM: 0.8, HeightM: 0.5}, SI))
	assert.Equal(t, "Box, scale "+p.Scale, p.Title)
	assert.Contains(t, p.Desc, "length 2 m")
	assert.Contains(t, p.Desc, "width 0.8 m")
	assert.Contains(t, p.Desc, "height 0.5 m")
	assert.Contains(t, p.Desc, "Faces: left, right, front, back, top, bottom.")
	p = readBack(t, sketched(t, &surfaces.Box{LengthM: 2, WidthM: 0.8, HeightM: 0.5}, US))
	assert.Contains(t, p.Desc, "length 6 ft 6 3/4 in")
}

// Identities of the international inch; the fractions are the nearest ones.
func TestFeetAndInches(t *testing.T) {
	for inches, want := range map[float64]string{
		0.125: `1/8"`, 1: `1"`, 1.5: `1 1/2"`, 11.984375: `11 63/64"`, 12: `1'`, 12.5: `1' 1/2"`, 154.5: `12' 10 1/2"`,
		23.99: `2'`, 47.25: `3' 11 1/4"`, 0.02: `0.02"`, 0: `0"`, -7.5: `-7 1/2"`, 11.9999: `1'`, 2400.4: `200'`, 3599.7: `300'`,
	} {
		l := lengths{system: US}
		assert.Equal(t, want, l.length(inches*0.0254), "%v in", inches)
	}
	l := lengths{system: US}
	assert.Equal(t, "12 ft 10 1/2 in", l.inWords(3.9243)) // 154.5 in, exactly
	assert.Equal(t, "ft and in", l.unit())
}

func TestMetresAndMillimetres(t *testing.T) {
	l := lengths{system: SI}
	l.upTo(1)
	assert.Equal(t, "m", l.unit())
	for metres, want := range map[float64]string{1: "1", 1.23456: "1.2346", 0.0005: "0.0005", 0.00001234: "0.0000123", 0: "0", -0.3: "-0.3", 500: "500", 1e-12: "0"} {
		assert.Equal(t, want, l.length(metres), "%v", metres)
	}
	l.upTo(0.999)
	assert.Equal(t, "mm", l.unit())
	assert.Equal(t, "19.05", l.length(0.01905))
	assert.Equal(t, "999 mm", l.inWords(0.999))
}

func numberIn(t require.TestingT, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

// A length as written differs from the true one by at most half of the last
// fraction.
func TestFeetAndInchesAreNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inches := rapid.Float64Range(0.125, 12000).Draw(t, "inches")
		part := 64.0
		switch {
		case inches >= 200*12-0.5:
			part = 1
		case inches >= 12-0.5/64:
			part = 16
		}
		text := imperial(inches*0.0254, "' ", `"`, "'")
		got, rest := 0.0, text
		if feet, after, found := strings.Cut(rest, "'"); found {
			got, rest = 12*numberIn(t, feet), after
		}
		for _, word := range strings.Fields(strings.TrimSuffix(rest, `"`)) {
			if over, under, found := strings.Cut(word, "/"); found {
				got += numberIn(t, over) / numberIn(t, under)
			} else {
				got += numberIn(t, word)
			}
		}
		require.InDelta(t, inches, got, 0.5/part+1e-9, text)
	})
}
