package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

func lettered(t *testing.T, text string, height float64) *marking.Lettering {
	f := figureOf[*marking.Lettering](t, "lettering")
	f.Text, f.HeightM, f.Colour = text, height, "black"
	return f
}

// RG-1 to RG-6: length of registration marks. The rule is exactly a grid of 4
// by 6 units with strokes and gaps of 1.
func TestMarkingsRegistrationLengths(t *testing.T) {
	const rule = "14 CFR 45.29: width two-thirds of the height, 1 one-sixth, M and W up to the height, gap a quarter of the width"
	narrow := lettered(t, "N73MW", 12*markingInch)
	narrow.WideLetters = false
	half := lettered(t, "NABC", 12*markingInch)
	half.GapRule = "half"
	for _, row := range []struct {
		id, source string
		figure     *marking.Lettering
		inches     float64
	}{
		{"RG-1", rule, lettered(t, "N12345", 12*markingInch), 52},
		{"RG-2", rule, lettered(t, "N4297U", 12*markingInch), 58},
		{"RG-3 full width", rule, lettered(t, "N73MW", 12*markingInch), 56},
		{"RG-3 two-thirds", rule, narrow, 48},
		{"RG-5", rule, lettered(t, "N12345", 3*markingInch), 13},
		{"RG-6", "Air Regulations of 1938, as transcribed by a museum: gap half the width", half, 44},
		{"RG-6 by today's rule", rule, lettered(t, "NABC", 12*markingInch), 38},
	} {
		markingCase{id: row.id, source: row.source, mark: "H", figure: row.figure,
			sums: map[string]float64{"width_m": row.inches * markingInch}}.run(t, 1e-9)
	}
}

// Table of block letters on the grid: area and perimeter in units; the letters
// are built by the construction of the reference.
func TestMarkingsBlockLetters(t *testing.T) {
	for _, row := range []struct {
		letters         string
		area, perimeter float64
	}{
		{"1I", 6, 14}, {"LT", 9, 20}, {"F", 11, 24}, {"C", 12, 26}, {"P", 13.5, 27}, {"HUE", 14, 30},
		{"S", 15, 32}, {"OA", 16, 32}, {"8", 18, 34}, {"-", 4, 10},
	} {
		for _, letter := range row.letters {
			m, err := marking.Measure(lettered(t, string(letter), 6))
			require.NoError(t, err)
			assert.InEpsilon(t, row.area, m.AreaM2, 1e-12, "area of %c", letter)
			assert.InEpsilon(t, row.perimeter, m.OutlineM, 1e-12, "perimeter of %c", letter)
		}
	}
}
