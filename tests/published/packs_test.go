package published

import (
	"math"
	"testing"

	"filmbuild/products"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func catalogueOf(t *testing.T) *products.Catalogue {
	t.Helper()
	c, err := products.Load()
	require.NoError(t, err)
	return c
}

// valueOf returns a sourced number of an abrasive.
func valueOf(t *testing.T, c *products.Catalogue, id, quantity, substrate string) products.Value {
	t.Helper()
	for _, v := range c.Values(id) {
		if v.Quantity == quantity && v.Substrate == substrate {
			return v
		}
	}
	require.Fail(t, "no value", "%s %s %s", id, quantity, substrate)
	return products.Value{}
}

// limitOf returns a published bound for an abrasive; NaN for a bound it lacks.
func limitOf(t *testing.T, c *products.Catalogue, id, quantity, substrate string) (low, high float64) {
	t.Helper()
	low, high = math.NaN(), math.NaN()
	for _, l := range c.Limits(id) {
		if l.Quantity == quantity && l.Substrate == substrate {
			if l.Low != nil {
				low = *l.Low
			}
			if l.High != nil {
				high = *l.High
			}
			return low, high
		}
	}
	require.Fail(t, "no limit", "%s %s %s", id, quantity, substrate)
	return low, high
}

// Rolls of tape: 60 yd of the federal roll (MK-6, L-T-80C 3.3, read) and the
// 55 m of the trade (MK-7, from memory); the counts are worked out in markings
// 5.1 (mark D).
func TestMK6Rolls(t *testing.T) {
	for _, c := range []struct {
		metres float64
		rolls  int
	}{{123.4 * 1.10, 3}, {14.074006374 * 6 * 1.15, 2}} {
		for _, roll := range []float64{55, 54.864} {
			p, err := products.Cover(c.metres, []products.PackOffer{{Pack: roll}})
			require.NoError(t, err)
			require.Len(t, p.Packs, 1)
			assert.Equal(t, c.rolls, p.Packs[0].Count, "%g m in rolls of %g m", c.metres, roll)
		}
	}
	tape, _ := catalogueOf(t).Product("masking-tape-48")
	assert.InDelta(t, 60*0.9144, tape.Base().Packs[0].Size(), 0.2, "MK-7: 60 yd ~ 55 m")
}

// The catalogue's abrasives hold what the sources print, turned into SI and
// rounded to the digits in the data files.
func TestMediaOfTheCatalogue(t *testing.T) {
	c := catalogueOf(t)
	const poundFoot = 16.01846 // kg/m³ in lb/ft³
	chart := "equipment trade chart of media properties"
	density := func(id string) products.Value { return valueOf(t, c, id, "bulk_density_kg_m3", "") }
	breakdown := func(id, substrate string) float64 {
		return valueOf(t, c, id, "breakdown_percent", substrate).Likely
	}
	size := func(id string) products.Value { return valueOf(t, c, id, "size_um", "") }
	handbook := "handbook chapter on impact blasting with glass beads"
	bead := "bead size chart citing MIL-PRF-9954"
	checkFigures(t, []figure{
		{"B-38 glass bead low", "C", chart, 85 * poundFoot, 0.5, density("glass-bead-fine").Low},
		{"B-38 glass bead high", "C", chart, 90 * poundFoot, 0.5, density("glass-bead-fine").High},
		{"B-38 plastic low", "C", chart, 45 * poundFoot, 0.5, density("plastic-type-ii").Low},
		{"B-38 plastic high", "C", chart, 60 * poundFoot, 0.5, density("plastic-type-v").High},
		{"B-38 aluminium oxide", "C", chart, 125 * poundFoot, 0.5, density("aluminium-oxide").Likely},
		{"B-38 garnet low", "C", chart, 130 * poundFoot, 0.5, density("garnet").Low},
		{"B-38 garnet high", "C", chart, 145 * poundFoot, 0.5, density("garnet").High},
		{"B-38 bicarbonate", "C", chart, 60 * poundFoot, 0.5, density("bicarbonate").Likely},
		{"B-38 wheat starch", "C", chart, 45 * poundFoot, 0.5, density("wheat-starch").Likely},
		{"B-38 bicarbonate, 1 cycle", "C", chart, 1, 0, 100 / breakdown("bicarbonate", "")},
		{"B-38 wheat starch, 12 to 15 cycles", "C", chart, 13.5, 1.5, 100 / breakdown("wheat-starch", "")},
		{"B-32 walnut shell low", "M", "from memory", 40 * poundFoot, 0.5, density("walnut-shell").Low},
		{"B-32 walnut shell high", "M", "from memory", 45 * poundFoot, 0.5, density("walnut-shell").High},
		{"D-4 glass bead on aluminium, uses", "C*", handbook, 47.6, 0.05, 100 / breakdown("glass-bead-fine", "aluminium")},
		{"D-5 glass bead on steel, uses", "C*", handbook, 28.6, 0.05, 100 / breakdown("glass-bead-fine", "steel")},
		{"D-8 glass bead, steel over aluminium", "D", handbook, 1.67, 0.0167, breakdown("glass-bead-fine", "steel") / breakdown("glass-bead-fine", "aluminium")},
		{"D-8 aluminium oxide, steel over aluminium", "D", handbook, 1.12, 0.0112, breakdown("aluminium-oxide", "steel") / breakdown("aluminium-oxide", "aluminium")},
		{"B-24 size 6 low", "C", bead, 0.0083 * 25400, 0.5, size("glass-bead-coarse").Low},
		{"B-24 size 6 high", "C", bead, 0.0117 * 25400, 0.5, size("glass-bead-coarse").High},
		{"B-25 size 8 low", "M", bead, 0.0059 * 25400, 0.5, size("glass-bead-medium").Low},
		{"B-25 size 10 low", "M", bead, 0.0035 * 25400, 0.5, size("glass-bead-fine").Low},
		{"B-25 size 10 high", "M", bead, 0.0059 * 25400, 0.5, size("glass-bead-fine").High},
	})
}

// B-8: in the trade's table of abrasive life, loss in one use times uses is 0.90
// to 1.05 in every row (mark C), so a life is one over the loss.
func TestB8LifeTable(t *testing.T) {
	c := catalogueOf(t)
	for id, uses := range map[string][2]float64{"garnet": {3, 5}, "plastic-type-ii": {7, 9}, "glass-bead-fine": {9, 12}, "aluminium-oxide": {10, 12}} {
		loss := valueOf(t, c, id, "breakdown_percent", "").Likely / 100
		assert.InDelta(t, 0.975, loss*(uses[0]+uses[1])/2, 0.08, id) // 13 % times 8 uses is 1.04, 10 % times 10.5 is 1.05
	}
}

// Pressures and skins for blasting, in the sources' psi and inches.
func TestBlastLimitsOfTheCatalogue(t *testing.T) {
	c := catalogueOf(t)
	const circular, manual = "FAA AC 43.13-1B ch. 6", "TM 1-1500-344-23-2"
	for _, l := range []struct {
		id, mark, source, media, quantity, substrate string
		low, high                                    float64 // NaN: no such bound
		unit                                         float64 // SI in the source's unit
	}{
		{"B-40", "C", circular, "glass-bead-fine", "pressure_kpa", "clad_aluminium", 30, 40, psiKPa},
		{"B-41", "C", circular, "glass-bead-fine", "pressure_kpa", "aluminium", 40, 45, psiKPa},
		{"B-44", "C", circular, "glass-bead-fine", "pressure_kpa", "magnesium", 10, 35, psiKPa},
		{"B-45", "C*", manual, "glass-bead-fine", "pressure_kpa", "steel", 40, 50, psiKPa},
		{"B-49", "C", manual, "plastic-type-ii", "pressure_kpa", "", 25, 40, psiKPa},
		{"B-42", "C", circular, "glass-bead-coarse", "skin_mm", "aluminium", 0.0625, math.NaN(), inchMm},
		{"B-50", "C", manual, "plastic-type-v", "skin_mm", "", 0.032, math.NaN(), inchMm},
		{"B-43", "C", circular, "glass-bead-medium", "dwell_s", "aluminium", math.NaN(), 15, 1},
	} {
		low, high := limitOf(t, c, l.media, l.quantity, l.substrate)
		for _, bound := range []struct{ want, got float64 }{{l.low, low}, {l.high, high}} {
			require.Equal(t, math.IsNaN(bound.want), math.IsNaN(bound.got), l.id)
			if !math.IsNaN(bound.want) {
				assert.InDelta(t, bound.want*l.unit, bound.got, 0.01, "%s %s [%s]", l.id, l.source, l.mark) // kPa to two places
			}
		}
		assert.False(t, l.low*l.unit < low || l.high*l.unit > high, "%s: the printed values themselves are inside", l.id)
	}
}

// Transfer efficiencies and rates of the methods are those printed.
func TestMethodsOfTheCatalogue(t *testing.T) {
	c := catalogueOf(t)
	method := func(id string) products.Method {
		m, ok := c.Method(id)
		require.True(t, ok, id)
		return m
	}
	rate := func(id string) products.Value { return method(id).RateM2H }
	efficiency := func(id string) products.Value { return method(id).TransferEfficiencyPercent }
	const note, primer = "Economics of Painting", "trade primer on transfer efficiency"
	checkFigures(t, []figure{
		{"L01 brush low", "B", note, 100 * squareFoot, 0.05, rate("brush").Low},
		{"L01 brush high", "B", note, 200 * squareFoot, 0.05, rate("brush").High},
		{"L01 roller low", "B", note, 200 * squareFoot, 0.05, rate("roller").Low},
		{"L01 roller high", "B", note, 400 * squareFoot, 0.05, rate("roller").High},
		{"L01 spray low", "B", note, 300 * squareFoot, 0.05, rate("conventional").Low},
		{"L01 spray high", "B", note, 600 * squareFoot, 0.05, rate("conventional").High},
		{"T1 air-atomised", "T", "NR 440.48 Table 1", 25, 0, efficiency("conventional").Low},
		{"T1 manual electrostatic", "T", "NR 440.48 Table 1", 60, 0, efficiency("electrostatic").Likely},
		{"T2 air-assisted airless", "T", "1200-03-16-.57 Table 1", 40, 0, efficiency("air_assisted_airless").Low},
		{"T7 HVLP threshold", "T", "South Coast AQMD", 65, 0, efficiency("hvlp").High},
		{"T8 HVLP low", "T2", primer, 50, 0, efficiency("hvlp").Low},
		{"T8 airless high", "T2", primer, 50, 0, efficiency("airless").High},
		{"T8 conventional cup", "T2", primer, 30, 0, efficiency("conventional").Likely},
		{"T8 air-assisted airless high", "T2", primer, 80, 0, efficiency("air_assisted_airless").High},
		{"T13 brush", "M", "trade practice", 95, 0, efficiency("brush").Likely},
	})
	p, _ := c.Product("stripper")
	stripper := p.(*products.Liquid)
	assert.InDelta(t, (0.794+1.588)/2, stripper.CoverageLM2, 0.005, "G-2 [D]: the middle of one brushed coat")
}
