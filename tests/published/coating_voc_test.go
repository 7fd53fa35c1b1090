package published

// Source: Metal Finishing Guidebook 2012-2013 App. B, 40 CFR 59.104, 30 TAC
// 115.423, named with their mark in each case (V rows).

import (
	"testing"

	"filmbuild/estimate/voc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const guidebook = "Metal Finishing Guidebook 2012-2013"

// gallons is a part by volume in the units of the American sources.
func gallons(volume, poundsPerGallon float64) voc.Part {
	return voc.Part{VolumeL: volume * litresGal, VOCGL: new(poundsPerGallon * lbGalGL)}
}

func gallonsOfWater(volume float64) voc.Part {
	return voc.Part{VolumeL: volume * litresGal, VOCGL: new(0.0), WaterVolumePercent: new(100.0)}
}

func mixed(t *testing.T, parts ...voc.Part) voc.Result {
	t.Helper()
	m := voc.Mixture{Parts: parts}
	m.Check(func(pointer, code, detail string) { t.Errorf("%s %s: %s", pointer, code, detail) })
	r, err := m.Calculate()
	require.NoError(t, err)
	return r
}

func TestVOCOfMixtures(t *testing.T) {
	thinned := mixed(t, gallons(1, 2.5), gallons(0.25, 6.8))
	base := gallons(5, 15.9/5)
	checkFigures(t, []figure{
		{"V10", "T", guidebook + ", 2013 p. 826", 3.36, 0.0005, thinned.VOCGL / lbGalGL},
		{"V10 total", "T", guidebook + ", 2013 p. 826", 4.2, 0.0005, thinned.VOCTotalG / 1000 / poundKg},
		{"V11", "T", guidebook + " p. 881", 3.18, 0.0005, mixed(t, base).VOCGL / lbGalGL},
		{"V12", "T", guidebook + " p. 881", 3.33, 0.005, mixed(t, base, gallons(0.25, 6.4)).VOCGL / lbGalGL},
		{"V13", "T", guidebook + ", organic issue 2012 p. 314", 3.47, 0.005, mixed(t, base, gallons(0.5, 6.4)).VOCGL / lbGalGL},
		{"V15", "T", guidebook + " p. 884", 5.0, 1e-9, mixed(t, gallons(1, 5), gallonsOfWater(1)).VOCGL / lbGalGL},
		{"V16", "T", guidebook + ", 2013 p. 830 (prints 2.75, see X8)", 2.75, 0.03, mixed(t, gallons(3, 3.1), gallons(1, 1.8), gallonsOfWater(7)).VOCGL / lbGalGL},
		{"V20 at 350", "D", "30 TAC 115.423(1)", 60.3, 1, 100 * found(voc.ImpliedSolids(350, voc.SolventDensity))},
		{"V20 at 420", "D", "30 TAC 115.423(1)", 52.4, 1, 100 * found(voc.ImpliedSolids(420, voc.SolventDensity))},
	})
}

// V16: the guidebook holds 2.775 against a limit of 2.8 lb/gal.
func TestVOCWithinItsLimit(t *testing.T) {
	m := voc.Mixture{Parts: []voc.Part{gallons(3, 3.1), gallons(1, 1.8), gallonsOfWater(7)}, LimitGL: new(2.8 * lbGalGL)}
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.True(t, *r.WithinLimit, "V16 [T]")
}

// L6: 420 g/L is the limit of Type I aircraft polyurethane, and is within it; a
// little ordinary thinner is not. L9: an exempt thinner changes nothing.
func TestVOCOfThinnedTopcoat(t *testing.T) {
	paint := voc.Part{VolumeL: 4, VOCGL: new(420.0)}
	m := voc.Mixture{Parts: []voc.Part{paint}, LimitGL: new(420.0), ThinnerVOCGL: new(870.0)}
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.True(t, *r.WithinLimit, "L6, MIL-PRF-85285 [T]")
	assert.InDelta(t, 0, *r.MaxThinnerL, 1e-9)

	m.Parts = []voc.Part{paint, {VolumeL: 0.1, VOCGL: new(870.0)}}
	r, err = m.Calculate()
	require.NoError(t, err)
	assert.False(t, *r.WithinLimit, "L6, MIL-PRF-85285 [T]")

	m.Parts = []voc.Part{paint, {VolumeL: 0.4, VOCGL: new(0.0), ExemptVolumePercent: new(100.0)}}
	r, err = m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 420, r.VOCGL, 1e-9, "L9, TO 1-1-8 6.12.6.4 [T]")
	assert.True(t, *r.WithinLimit, "L9, TO 1-1-8 6.12.6.4 [T]")
}

// worksheet is the mix of a state's multi-part worksheet, by weight.
func worksheet() []voc.Part {
	part := func(share, poundsPerGallon, organicPercent float64) voc.Part {
		return voc.Part{VolumeL: share, DensityKgL: new(poundsPerGallon * lbGalGL / 1000), SolidsWeightPercent: new(100 - organicPercent)}
	}
	return []voc.Part{part(0.6, 10.5, 62), part(0.3, 7.5, 100), part(0.1, 6.75, 49)}
}

// V21: the density of the worksheet's mix, from the masses our parts carry.
func TestDensityOfAWorksheetMix(t *testing.T) {
	var mass float64 // lb in a gallon
	for _, p := range worksheet() {
		p.SolidsWeightPercent = new(0.0) // all of it counts as VOC, so the total is the mass
		mass += mixed(t, p).VOCTotalG
	}
	assert.InDelta(t, 9.225, mass/lbGalGL, 1e-9, "V21, Michigan MAERS fact sheet, January 2005 [inputs T, answer D]")
}
