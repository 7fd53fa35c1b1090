package published

// Source: the works named in each case, section X of the check values: what
// they print, and what is right.

import (
	"math"
	"testing"

	"filmbuild/estimate/film"
	"filmbuild/estimate/voc"

	"github.com/stretchr/testify/assert"
)

// The errors of reference coating X, which are in print in real sources. Each
// case shows that we find the right value and that the printed one is not it.
func TestPrintedErrors(t *testing.T) {
	unread := mixed(t, gallons(4, 3.6), gallons(1, 2.2))
	sheet := mixed(t, worksheet()...)
	const sheetMass = 9.225 * lbGalGL // g, of one litre of the worksheet's mix (V21)
	ofMisprint := mixed(t, voc.Part{VolumeL: litresGal, DensityKgL: new(0.97), SolidsWeightPercent: new(0.0)})
	waterborne := found(voc.LessWater(0.06*7.36, 1, 0.52, 0)) // in pounds and gallons
	sprayed := found(film.PracticalSpreadingRate(found(film.TheoreticalSpreadingRate(0.52, 1.5*mil)), 0.3, 0)) * feetPerGallon

	for _, x := range []struct {
		id, source             string
		printed, right, within float64
		got                    float64
	}{
		{"X1", "MIL-HDBK-1110 2.1.5: half solids at 1 mil, ft²/gal; its other rows are right", 600, 800, 0.003 * 800, perGallon(0.5, 1)},
		{"X2", "Ask-the-Expert December 2009: solids and efficiency below the line, against E1", 1604 / (1.5 * 0.52 * 0.3), 167, 0.5, sprayed},
		{"X3", "technical-bulletin chart: 72 % at 2 mil, ft²/gal", 527, 577, 1, perGallon(0.72, 2)},
		{"X4 pounds", "guidebook App. B: 4 parts of 3.6 and 1 of 2.2 lb/gal", 15.9, 16.6, 0.005, unread.VOCTotalG / 1000 / poundKg},
		{"X4 lb/gal", "guidebook App. B: the same mix", 3.18, 3.32, 0.005, unread.VOCGL / lbGalGL},
		// 0.97·8.33 is 8.08; with the density itself, 0.97 kg/L, it is 8.095.
		{"X5", "Ask-the-Expert April 2008: pounds in a gallon of gravity 0.97", 5.83, 8.08, 0.02, ofMisprint.VOCTotalG / 1000 / poundKg},
		{"X6", "Michigan worksheet: weight per cent of VOC, weighted by volume", 72.1, 70.3, 0.05, 100 * sheet.VOCTotalG / sheetMass},
		{"X7", "guidebook App. B ex. 3: 42 % solids and 52 % water, lb/gal", 0.76, 0.92, 0.005, waterborne},
		{"X8", "guidebook ex. 2: 11.1 lb in 4 gal", 2.75, 2.775, 0.0005, mixed(t, gallons(3, 3.1), gallons(1, 1.8), gallonsOfWater(7)).VOCGL / lbGalGL},
		{"X9", "spreading-rate note: 100 for 1000 in the metric line, m²/L", 0.52, 5.2, 1e-9, found(film.TheoreticalSpreadingRate(0.65, 125))},
	} {
		t.Run(x.id, func(t *testing.T) {
			assert.InDelta(t, x.right, x.got, x.within, x.source)
			assert.Greater(t, math.Abs(x.got-x.printed), x.within, "the printed value must not pass: "+x.source)
		})
	}
}

// X11: a builders' forum quotes masses of dry film per square foot; the first
// two would need films of gravity 2.5, which ordinary paint has not.
func TestQuotedFilmMasses(t *testing.T) {
	gravity := func(pounds, mils float64) float64 {
		return pounds * poundKg / found(film.Mass(squareFoot, mils*mil, 1))
	}
	checkFigures(t, []figure{
		{"X11 at 3 mil", "T2", "forum quotation of a supplier's table", 2.48, 0.005, gravity(0.0387, 3)},
		{"X11 at 1 mil", "T2", "forum quotation of a supplier's table", 2.56, 0.005, gravity(0.0133, 1)},
		{"X11 at 2 mil", "T2", "forum quotation of a supplier's table", 1.40, 0.005, gravity(0.0146, 2)},
	})
}
