package published

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"filmbuild/surfaces"
)

// rolled makes one metre of an I or H section.
func rolled(height, width, web, radius float64) *surfaces.Bar {
	return &surfaces.Bar{LengthM: 1, Profile: surfaces.Profile{Kind: "i", HeightMM: &height, WidthMM: &width, WebMM: &web, RadiusMM: &radius}}
}

// TestGeometryG5 checks the m² per metre of rolled sections against printed
// tables, to half of the last digit printed.
func TestGeometryG5(t *testing.T) {
	tube := func(height, width, radius float64) *surfaces.Bar {
		return &surfaces.Bar{LengthM: 1, Profile: surfaces.Profile{Kind: "rect_tube", HeightMM: &height, WidthMM: &width, RadiusMM: &radius}}
	}
	angle := func(leg, root, toe float64) *surfaces.Bar {
		return &surfaces.Bar{LengthM: 1, Profile: surfaces.Profile{Kind: "angle", HeightMM: &leg, WidthMM: &leg, RadiusMM: &root, ToeRadiusMM: &toe}}
	}
	channel := &surfaces.Bar{LengthM: 1, Profile: surfaces.Profile{Kind: "channel", HeightMM: num(200), WidthMM: num(80), WebMM: num(6), RadiusMM: num(13)}}
	const inch = 25.4
	w12 := rolled(12.2*inch, 8.08*inch, 0.37*inch, 0.5*inch)
	top := rolled(12.2*inch, 8.08*inch, 0.37*inch, 0.5*inch)
	top.HiddenFaces = []string{"top"}
	const two, three = 0.005, 0.0005
	for _, c := range []struct {
		id        string
		bar       *surfaces.Bar
		printed   float64
		tolerance float64
		source    string
	}{
		{"G5.01 HE 100 A", rolled(96, 100, 5, 12), 0.56, two, "HEtab, published, A"},
		{"G5.02 HE 200 A", rolled(190, 200, 6.5, 18), 1.14, two, "HEtab, published, A"},
		{"G5.03 HE 240 A", rolled(230, 240, 7.5, 21), 1.37, two, "HEtab, published, A"},
		{"G5.04 HE 300 A", rolled(290, 300, 8.5, 27), 1.72, two, "HEtab, published, A"},
		{"G5.05 HE 400 A", rolled(390, 300, 11, 27), 1.91, two, "HEtab, published, A"},
		{"G5.06 HE 600 A", rolled(590, 300, 13, 27), 2.31, two, "HEtab, published, A"},
		{"G5.07 IPE 80", rolled(80, 46, 3.8, 5), 0.328, three, "Euronorm 19-57 rows, published, A"},
		{"G5.08 IPE A 100", rolled(98, 55, 3.6, 7), 0.397, three, "Euronorm 19-57 rows, published, A"},
		{"G5.09 IPE 100", rolled(100, 55, 4.1, 7), 0.400, three, "Euronorm 19-57 rows, published, A"},
		{"G5.10 RHS 40 × 20 × 2", tube(40, 20, 4), 0.113, three, "EN10219, published, A"},
		{"G5.10 RHS 40 × 20 × 3", tube(40, 20, 6), 0.110, three, "EN10219, published, A"},
		{"G5.11 RHS 50 × 30 × 4", tube(50, 30, 8), 0.146, three, "EN10219, published, A"},
		{"G5.11 RHS 60 × 40 × 4", tube(60, 40, 8), 0.186, three, "EN10219, published, A"},
		{"G5.12 IPE 200", rolled(200, 100, 5.6, 12), 0.768, three, "from memory, M"},
		{"G5.12 IPE 300", rolled(300, 150, 7.1, 15), 1.160, three, "from memory, M"},
		{"G5.12 HE 200 B", rolled(200, 200, 9, 18), 1.151, three, "from memory, M"},
		{"G5.13 L 100 × 100 × 10", angle(100, 12, 6), 0.390, three, "from memory, M"},
		{"G5.13 L 50 × 50 × 5", angle(50, 7, 3.5), 0.194, three, "from memory, M"},
		{"G5.14 UPE 200", channel, 0.697, three, "from memory, M"},
		{"G5.15 W12X50, all round", w12, 55.1 * inch / 1000, 0.05 * inch / 1000, "AISC PB, published, A"},
		{"G5.15 W12X50, top hidden", top, 47.0 * inch / 1000, 0.05 * inch / 1000, "AISC PA, published, A"},
	} {
		t.Run(c.id, func(t *testing.T) {
			assert.InDelta(t, c.printed, areaOf(t, c.bar, ""), c.tolerance, c.source)
		})
	}
}

// TestGeometryG8 checks corrugated sheet: length along the profile for each
// length across it.
func TestGeometryG8(t *testing.T) {
	sheet := func(form string, pitch, depth float64) *surfaces.Corrugated {
		return &surfaces.Corrugated{WidthM: 1, LengthM: 1, PitchMM: pitch, DepthMM: depth, Form: form, Sides: 1}
	}
	deck := sheet("trapezoid", 200, 38)
	deck.CrestMM, deck.ValleyMM = num(100), num(40)
	runGeometry(t, []geometryCase{
		{"G8.07 sine 76.2 × 15.875", sheet("sine", 76.2, 15.875), "", 1.09974135939, 1e-11, "computed, A"},
		{"G8.07 trade's figure", sheet("sine", 76.2, 15.875), "", 1.10, 0.005, "PP907, published about +10 %, A"},
		{"G8.08 sine 67.7 × 12.7", sheet("sine", 67.7, 12.7), "", 1.08186582452, 1e-11, "computed, A"},
		{"G8.08 sine 146 × 48", sheet("sine", 146, 48), "", 1.22865671753, 1e-11, "computed, A"},
		{"G8.08 sine 177 × 51", sheet("sine", 177, 51), "", 1.18091018954, 1e-11, "computed, A"},
		{"G8.09 arcs 76.2 × 19.05", sheet("arc", 76.2, 19.05), "", 1.1591190225, 1e-10, "computed, A"},
		{"G8.10 deck", deck, "", 1.184148737, 1e-9, "computed, A"},
		{"G8.11 corrugated steel", sheet("sine", 76.2, 19.05), "", 1.14, 0.005, "IS1200-13, published 1.14; 3 × 3/4 in sine, B"},
	})
}
