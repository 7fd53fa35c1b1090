package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Conversions as printed in the trade's and the standards' own texts. The
// tolerance is half a unit of the last digit printed there, a whole one where it
// was cut off.
func TestConversionsPrintedElsewhere(t *testing.T) {
	cases := []struct {
		source, text, suffix string
		want, tolerance      float64
	}{
		{"NIST SP 811 B.8 (read as quoted by others): psi", "1 psi", "kpa", 6.894757, 5e-7},
		{"NIST SP 811 B.8 (from memory): lb/gal", "1 lb/gal", "g_l", 119.8264, 5e-5},
		{"NIST SP 811 B.8 (from memory): lb/ft3", "1 lb/ft3", "kg_m3", 16.01846, 5e-6},
		{"NIST SP 811 B.8 (from memory): gal", "1 gal", "l", 3.785412, 5e-7},
		{"NIST SP 811 B.8 (from memory): hp", "1 hp", "kw", 0.7456999, 5e-8},
		{"blasting.md head, arithmetic: cfm", "1 cfm", "m3_min", 0.0283168, 5e-8},
		{"blasting.md head, arithmetic: lb/ft2", "1 lb/ft2", "kg_m2", 4.88243, 5e-6},
		{"blasting.md head, arithmetic: 100 lb/ft3", "100 lb/ft3", "kg_m3", 1601.85, 5e-3},
		{"guidebook App. B, V7: lb/gal (printed 119.8)", "1 lb/gal", "g_l", 119.8, 0.05},
		{"MIL-PRF-81352C, V7: 340 g/L is 2.837 lb/gal", "2.837 lb/gal", "g_l", 340, 0.06},
		{"MIL-DTL-24441D 1.2, L7: 250 g/L is 2.08 lb/gal (2.086, cut and not rounded)", "2.08 lb/gal", "g_l", 250, 0.01 * 119.83},
		{"MIL-PRF-23377 sheet, S1: 0.6 mil is 15 µm", "0.6 mil", "um", 15, 0.5},
		{"MIL-PRF-23377 sheet, S1: 0.9 mil is 23 µm", "0.9 mil", "um", 23, 0.5},
		{"MIL-PRF-85285 sheet, S5: 1.7 mil is 43 µm", "1.7 mil", "um", 43, 0.5},
		{"MIL-PRF-85285 sheet, S5: 2.3 mil is 58 µm", "2.3 mil", "um", 58, 0.5},
		{"Economics of Painting, L01: 100 ft²/h", "100 ft²/h", "m2_h", 9.3, 0.05},
		{"Economics of Painting, L01: 600 ft²/h", "600 ft²/h", "m2_h", 55.7, 0.05},
		{"USAF depainting study as quoted, L04: 0.22 ft²/min", "0.22 ft2/min", "m2_h", 1.23, 0.005},
		{"UFGS 09973, W21: 60 °F", "60 °F", "c", 16, 0.5},
		{"UFGS 09973, W21: 100 °F", "100 °F", "c", 38, 0.5},
		{"UFGS 09971, C01: 70 °F", "70 °F", "c", 21, 0.5},
		// 1 gal at 1 mil covers 231/144/0.001 = 1604.1667 ft2 (paint trade's column, F3).
		{"Ask-the-Expert May 2004, F3: 1604.1667 ft²·mil/gal", "1604.1667 ft2/gal", "m2_l", 1000 / 25.4, 1e-6},
	}
	for _, c := range cases {
		got, err := Parse(c.text, c.suffix)
		require.NoError(t, err, c.source)
		assert.InDelta(t, c.want, got, c.tolerance, c.source)
	}
}
