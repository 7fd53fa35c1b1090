package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/marking"
)

const markingInch = 0.0254

// HZ-1 to HZ-3: band 2 in wide round standard emergency exits, in inches.
func TestMarkingsExitBands(t *testing.T) {
	const source = "14 CFR 135.178(g), band of 2 in; sizes of 25.807; rounded outer corner assumed"
	for _, row := range []struct {
		id                    string
		width, height, radius float64
		area, inner, outer    float64
	}{
		{"HZ-1", 20, 36, 7, 212.5309649149, 99.9822971503, 112.5486677646},
		{"HZ-2", 19, 26, 6.3, 170.9345054848, 79.1840674352, 91.7504380496},
		{"HZ-3", 20, 44, 7, 244.5309649149, 115.9822971503, 128.5486677646},
	} {
		f := figureOf[*marking.ExitBand](t, "exit_band")
		f.SizeM, f.OpeningWidthM, f.OpeningHeightM, f.CornerRadiusM, f.Colour = 2*markingInch, row.width*markingInch, row.height*markingInch, row.radius*markingInch, "yellow"
		markingCase{id: row.id, source: source, mark: "H", figure: f,
			areas: map[string]float64{"yellow": row.area * markingInch * markingInch},
			sums:  map[string]float64{"outline_m": (row.inner + row.outer) * markingInch}}.run(t, 1e-11)
	}
	f := figureOf[*marking.ExitBand](t, "exit_band")
	f.SizeM, f.OpeningWidthM, f.OpeningHeightM, f.CornerRadiusM, f.Colour = 2*markingInch, 20*markingInch, 36*markingInch, 7*markingInch, "yellow"
	markingCase{id: "HZ-1 metric", source: source, mark: "H", figure: f,
		areas: map[string]float64{"yellow": 0.1371164773}, sums: map[string]float64{"outline_m": 5.3982865}}.run(t, 1e-8)
}

// HZ-6: break-in corner mark, arms of 10 cm, 2.5 cm wide.
func TestMarkingsCornerMark(t *testing.T) {
	f := figureOf[*marking.Polygon](t, "polygon")
	f.Points, f.Colour = [][2]float64{{0, 0}, {0.1, 0}, {0.1, 0.025}, {0.025, 0.025}, {0.025, 0.1}, {0, 0.1}}, "red"
	markingCase{id: "HZ-6", source: "arms from a teaching text on the UK Air Navigation Order; the width of 2.5 cm from memory", mark: "M", figure: f,
		areas: map[string]float64{"red": 43.75e-4}, sums: map[string]float64{"outline_m": 0.4}}.run(t, 1e-12)
}

// HZ-8: stripe 7 cm wide right round a fuselage of 1.2 m diameter: it has no
// ends. HZ-7: DANGER in letters 7 cm wide and 5 cm apart, 15 cm high.
func TestMarkingsPropellerStripe(t *testing.T) {
	f := figureOf[*marking.Stripe](t, "stripe")
	body := 1.2
	f.RoundDiameterM, f.WidthM, f.Colour = &body, 0.07, "red"
	markingCase{id: "HZ-8", source: "French air force technical note of 1974 on danger markings: red, 7 cm wide (HZ-7)", mark: "H", figure: f,
		areas: map[string]float64{"red": 0.2638937829}, sums: map[string]float64{"outline_m": 7.5398223686, "width_m": math.Pi * 1.2}}.run(t, 1e-10)

	const letters, width, gap = 6, 0.07, 0.05
	assert.InDelta(t, 0.67, letters*width+(letters-1)*gap, 1e-12, "HZ-7: 67 cm long, identity on the note's sizes")
}

// HZ-9 to HZ-12: panels of equal stripes at 45°, phase 0: the first dark stripe
// begins in the lower left corner (the phase is our choice).
func TestMarkingsHazardPanels(t *testing.T) {
	for _, row := range []struct {
		id, source, mark     string
		unit                 float64
		width, height, s     float64
		dark, light, between float64
	}{
		{"HZ-9", "MUTCD, chapter 3C in the older wording: type 3 object marker 12 × 36 in, stripes of 3 in", "H", markingInch, 12, 36, 3, 217.4987001723, 214.5012998277, 144.4995667241},
		{"HZ-10", "US Forest Service after MUTCD: type 3 barricade rail of 8 in, stripes of 6 in", "H", markingInch, 48, 8, 6, 200.7030278294, 183.2969721706, 64.4507934888},
		{"HZ-11", "stripes of 4 in on short rails, from memory", "M", markingInch, 36, 8, 4, 140.5887450305, 147.4112549695, 73.7056274848},
		{"HZ-12", "same construction", "H", 0.001, 1000, 100, 50, 49791.8471982869, 50208.1528017131, 2008.3261120685},
	} {
		f := figureOf[*marking.Hazard](t, "hazard")
		f.WidthM, f.HeightM, f.StripeWidthM = row.width*row.unit, row.height*row.unit, row.s*row.unit
		markingCase{id: row.id, source: row.source, mark: row.mark, figure: f,
			areas: map[string]float64{"black": row.dark * row.unit * row.unit, "yellow": row.light * row.unit * row.unit},
			edges: map[[2]string]float64{{"black", "yellow"}: row.between * row.unit}}.run(t, 1e-9)
	}
}

// HZ-13: chevron of half-width 10 and stripe 3 at 45°: 2wt/sin θ and
// 4w/sin θ + 2t/sin θ.
func TestMarkingsChevron(t *testing.T) {
	f := figureOf[*marking.Chevron](t, "chevron")
	f.WidthM, f.StripeWidthM, f.Colour = 20, 3, "yellow"
	markingCase{id: "HZ-13", source: "identity; the shape is that of blast pad chevrons in an airport design textbook", mark: "H", figure: f,
		areas: map[string]float64{"yellow": 84.8528137424}, sums: map[string]float64{"outline_m": 65.0538238692}}.run(t, 1e-11)
}

// LT-12: band of 200 mm on both sides of a vehicle body 5.2 m long: the area of
// two stripes and the length of their long edges.
func TestMarkingsVehicleBand(t *testing.T) {
	f := figureOf[*marking.Rectangle](t, "rectangle")
	f.WidthM, f.HeightM, f.Colour = 5.2, 0.2032, "yellow"
	markingCase{id: "LT-12", source: "FAA AC 150/5210-5D 4.c: band of at least 8 in", mark: "H", figure: f,
		areas: map[string]float64{"yellow": 2.11328 / 2}, sums: map[string]float64{"outline_m": 20.8/2 + 2*0.2032}}.run(t, 1e-12)
}

// HZ-5: contrast of the exit band with the skin, 14 CFR 135.178(g) (mark H).
func TestMarkingsExitBandContrast(t *testing.T) {
	for _, row := range []struct {
		darker, lighter float64
		enough          bool
	}{{15, 45, true}, {15, 44.9, false}, {10, 45, true}, {20, 50, true}, {20, 49, false}, {50, 20, true}} {
		got, err := marking.ContrastEnough(row.darker, row.lighter)
		require.NoError(t, err)
		assert.Equal(t, row.enough, got, "HZ-5 %v", row)
	}
	_, err := marking.ContrastEnough(-1, 50)
	assert.Error(t, err)
}

// HZ-14: obstruction bands of a seventh of the height, or 30 m if less; the end
// bands dark. ICAO Annex 14 6.2.4; the US ground rule of TM 5-823-4 7-8 has as
// many bands (mark H).
func TestMarkingsObstructionBands(t *testing.T) {
	bands, width, err := marking.ObstructionBands(21)
	require.NoError(t, err)
	assert.Equal(t, 7, bands, "HZ-14")
	assert.InEpsilon(t, 3, width, 1e-12, "HZ-14")

	f := figureOf[*marking.Flag](t, "flag")
	fly := 1.0
	f.Design, f.HoistM, f.FlyM = "stripes", 21, &fly
	for i := range bands {
		f.Bands = append(f.Bands, marking.Band{Ratio: 1, Colour: []string{"red", "white"}[i%2]})
	}
	markingCase{id: "HZ-14", source: "ICAO Annex 14 6.2.4", mark: "H", figure: f,
		areas: map[string]float64{"red": 12, "white": 9}, edges: map[[2]string]float64{{"red", "white"}: 6}}.run(t, 1e-12)

	for feet, want := range map[float64]int{680: 7, 880: 9, 1080: 11, 1270: 13} {
		bands, width, err := marking.ObstructionBands(feet * 0.3048)
		require.NoError(t, err)
		assert.Equal(t, want, bands, "%g ft", feet)
		assert.LessOrEqual(t, width, 30.0)
	}
	_, _, err = marking.ObstructionBands(0)
	assert.Error(t, err)
}

// HZ-15: chequer, ICAO Annex 14 6.2.3: squares of 1.5 to 3 m, the corners dark.
func TestMarkingsChequer(t *testing.T) {
	f := figureOf[*marking.Chequer](t, "chequer")
	f.SquareM, f.Columns, f.Rows = 1.5, 5, 3
	markingCase{id: "HZ-15", source: "ICAO Annex 14 6.2.3; areas and edges are identities: 8 dark squares, 22 sides between", mark: "H", figure: f,
		areas: map[string]float64{"red": 8 * 2.25, "white": 7 * 2.25}, edges: map[[2]string]float64{{"red", "white"}: 22 * 1.5}}.run(t, 1e-12)
}

// HZ-16: helicopter tail rotor tip, 6 in of yellow (1947 technical order): area
// of the chord times 6 in on each face.
func TestMarkingsRotorTip(t *testing.T) {
	f := figureOf[*marking.Rectangle](t, "rectangle")
	f.WidthM, f.HeightM, f.Colour = 0.2, 6*markingInch, "yellow"
	markingCase{id: "HZ-16", source: "technical order of 1947; the chord of 0.2 m is invented", mark: "H", figure: f,
		areas: map[string]float64{"yellow": 0.2 * 0.1524}}.run(t, 1e-12)
}
