package published

import (
	"strings"
	"testing"

	"filmbuild/estimate/caution"

	"github.com/stretchr/testify/assert"
)

// The limits that the cautions quote are those of their sources.
//
// Source: the rule, order or manual named in each row, with its mark.
func TestLimitsInTheCautions(t *testing.T) {
	texts := map[string]string{}
	for _, c := range caution.All() {
		texts[c.Code] = c.Text
	}
	for _, c := range []struct{ id, mark, source, code, says string }{
		{"S-1", "C", "29 CFR 1910.1026", "chromate_dust", "limit 5 µg/m³ of hexavalent chromium over 8 h, action level 2.5"},
		{"S-2", "C", "OSHA interpretation of 13 Mar 2018", "chromate_dust", "does not cover taking paint off"},
		{"S-3", "C", "58 FR 4 May 1993", "lead_dust", "limit 50 µg/m³ over 8 h, action level 30"},
		{"S-4", "C", "29 CFR 1926.62(d)(2)(i)", "lead_dust", "up to ten times the limit for scraping and sanding"},
		{"S-5", "M", "29 CFR 1926.62(d)(2)(iv)", "lead_dust", "more than fifty times for blasting"},
		{"S-6", "C, M", "29 CFR 1910.1027", "cadmium_dust", "5 µg/m³ over 8 h, action level 2.5"},
		{"S-7", "M", "29 CFR 1910.1053", "silica", "limit 50 µg/m³, action level 25"},
		{"S-12", "C", "NIOSH", "silica", "1 % free silica"},
		{"S-8", "C", "1997 rule, as reported", "stripper", "25 ppm"},
		{"S-14", "C", "TO 1-1-8 2.11.6", "combustible_dust", "15 m (50 ft)"},
		{"S-16", "C", "AC 43.13-1B p. 6-18", "magnesium", "13 mm (1/2 in)"},
		{"E-7", "C", "40 CFR 261.24 Table 1", "waste_tclp", "lead 5.0, chromium 5.0, cadmium 1.0, arsenic 5.0, barium 100, mercury 0.2, selenium 1.0, silver 5.0"},
		{"E-9", "M", "SW-846 1311", "waste_tclp", "lead and chromium 100, cadmium 20"},
		{"E-8", "C", "22 CCR 66261.24", "waste_california", "total lead 1000, cadmium 100, hexavalent chromium 500, chromium 2500 mg/kg; soluble lead 5, cadmium 1, hexavalent chromium 5 mg/L"},
		{"C20", "A", "NAVEDTRA aviation text", "isocyanate", "5 m (15 ft) of brush or roller and 12 m (40 ft) of spray, for 30 min"},
		{"W15, W16", "A", "UFC 3-190-06, IMO", "weather", "3 °C (5 °F) above the dew point and the air at or below 85 %"},
		{"W20", "A", "UFC 3-190-06 7.4.1", "temperature", "7 to 32 °C (45 to 90 °F) and must not fall below 4 °C (40 °F)"},
		{"C19", "A", "TM 55-1500-345-23", "break", "wash with detergent and wipe again"},
	} {
		assert.True(t, strings.Contains(texts[c.code], c.says), "%s [%s], %s: caution %s must say %q; it says %q", c.id, c.mark, c.source, c.code, c.says, texts[c.code])
	}
}
