package voc_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/voc"
	"filmbuild/surfaces/quantity"
)

// sound is an invented mixture that Check accepts: one part by volume, one by
// weight with water and an exempt compound.
func sound() *voc.Mixture {
	return &voc.Mixture{
		Parts: []voc.Part{
			{VolumeL: 4, VOCGL: new(340.0)},
			{VolumeL: 1, DensityKgL: new(1.2), SolidsWeightPercent: new(50.0), WaterWeightPercent: new(20.0),
				ExemptWeightPercent: new(10.0), ExemptDensityKgL: new(1.34)},
		},
		LimitGL:      new(420.0),
		ThinnerVOCGL: new(870.0),
	}
}

func faults(m *voc.Mixture) map[string]string {
	found := map[string]string{}
	m.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func TestCheckAccepts(t *testing.T) {
	assert.Empty(t, faults(sound()))
}

func TestCheckRefuses(t *testing.T) {
	cases := map[string]struct {
		spoil   func(m *voc.Mixture)
		pointer string
		code    string
	}{
		"no parts":                {func(m *voc.Mixture) { m.Parts = nil }, "/parts", "required"},
		"too many parts":          {func(m *voc.Mixture) { m.Parts = make([]voc.Part, 51) }, "/parts", "too_many"},
		"no volume":               {func(m *voc.Mixture) { m.Parts[0].VolumeL = 0 }, "/parts/0/volume_l", "out_of_range"},
		"negative VOC":            {func(m *voc.Mixture) { m.Parts[0].VOCGL = new(-1.0) }, "/parts/0/voc_g_l", "out_of_range"},
		"VOC NaN":                 {func(m *voc.Mixture) { m.Parts[0].VOCGL = new(math.NaN()) }, "/parts/0/voc_g_l", "out_of_range"},
		"denser than any solvent": {func(m *voc.Mixture) { m.Parts[0].VOCGL = new(1501.0) }, "/parts/0/voc_g_l", "out_of_range"},
		"nothing said":            {func(m *voc.Mixture) { m.Parts[0].VOCGL = nil }, "/parts/0", "required"},
		"both ways":               {func(m *voc.Mixture) { m.Parts[0].DensityKgL = new(1.0) }, "/parts/0", "inconsistent"},
		"water without VOC":       {func(m *voc.Mixture) { m.Parts[0] = voc.Part{VolumeL: 1, WaterVolumePercent: new(50.0)} }, "/parts/0/voc_g_l", "required"},
		"more than the part": {func(m *voc.Mixture) {
			m.Parts[0].WaterVolumePercent, m.Parts[0].ExemptVolumePercent = new(60.0), new(60.0)
		}, "/parts/0", "inconsistent"},
		"no density":             {func(m *voc.Mixture) { m.Parts[1].DensityKgL = nil }, "/parts/1/density_kg_l", "required"},
		"no solids":              {func(m *voc.Mixture) { m.Parts[1].SolidsWeightPercent = nil }, "/parts/1/solids_weight_percent", "required"},
		"solids over 100":        {func(m *voc.Mixture) { m.Parts[1].SolidsWeightPercent = new(101.0) }, "/parts/1/solids_weight_percent", "out_of_range"},
		"weights over 100":       {func(m *voc.Mixture) { m.Parts[1].SolidsWeightPercent = new(80.0) }, "/parts/1", "inconsistent"},
		"exempt density missing": {func(m *voc.Mixture) { m.Parts[1].ExemptDensityKgL = nil }, "/parts/1/exempt_density_kg_l", "required"},
		"water fills more": {func(m *voc.Mixture) {
			m.Parts[1].DensityKgL, m.Parts[1].SolidsWeightPercent, m.Parts[1].WaterWeightPercent = new(2.0), new(5.0), new(70.0)
		}, "/parts/1", "inconsistent"},
		"thinner without limit": {func(m *voc.Mixture) { m.LimitGL = nil }, "/limit_g_l", "required"},
		"all water": {func(m *voc.Mixture) {
			m.Parts = []voc.Part{{VolumeL: 1, VOCGL: new(0.0), WaterVolumePercent: new(99.5)}}
		}, "/parts", "inconsistent"},
		"thinner VOC out of limits": {func(m *voc.Mixture) { m.ThinnerVOCGL = new(9000.0) }, "/thinner_voc_g_l", "out_of_range"},
	}
	for name, tc := range cases {
		t.Run(name, func(t *testing.T) {
			m := sound()
			tc.spoil(m)
			found := faults(m)
			if name != "too many parts" {
				assert.Len(t, found, 1)
			}
			assert.Equal(t, tc.code, found[tc.pointer])
			_, err := m.Calculate()
			assert.Error(t, err)
		})
	}
}

func TestTypedError(t *testing.T) {
	_, err := voc.LessWater(100, 1, 1, 0)
	var outside *quantity.RangeError
	require.ErrorAs(t, err, &outside)
	assert.Equal(t, "volume less water and exempt compounds", outside.Quantity)
}

// Water at a rounded density of 1.00 kg/L fills its part and no more.
func TestWaterByWeight(t *testing.T) {
	m := &voc.Mixture{Parts: []voc.Part{
		{VolumeL: 1, VOCGL: new(600.0)},
		{VolumeL: 1, DensityKgL: new(1.0), SolidsWeightPercent: new(0.0), WaterWeightPercent: new(100.0)},
	}}
	assert.Empty(t, faults(m))
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 600, r.VOCGL, 1e-9)
	assert.InDelta(t, 300, r.VOCMaterialGL, 1e-9)
}

// 1 L of 1.25 kg with 60 % solids has 500 g of solvent, by either description
// (identity).
func TestWeightAndVolumeAgree(t *testing.T) {
	weight := &voc.Mixture{Parts: []voc.Part{{VolumeL: 2, DensityKgL: new(1.25), SolidsWeightPercent: new(60.0)}}}
	volume := &voc.Mixture{Parts: []voc.Part{{VolumeL: 2, VOCGL: new(500.0)}}}
	a, err := weight.Calculate()
	require.NoError(t, err)
	b, err := volume.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, b.VOCGL, a.VOCGL, 1e-9)
	assert.InDelta(t, 1000, a.VOCTotalG, 1e-9)
}

func TestMaxThinner(t *testing.T) {
	m := sound()
	m.Parts = m.Parts[:1]
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 4*80.0/450, *r.MaxThinnerL, 1e-9)
	m.LimitGL = new(300.0)
	r, err = m.Calculate()
	require.NoError(t, err)
	assert.False(t, *r.WithinLimit)
	assert.Zero(t, *r.MaxThinnerL, "it is over already")
	m.LimitGL, m.ThinnerVOCGL = new(420.0), new(0.0)
	r, err = m.Calculate()
	require.NoError(t, err)
	assert.Nil(t, r.MaxThinnerL)
	assert.Contains(t, strings.Join(r.Warnings, "\n"), "no amount of it")
}

func TestThinnerAloneIsSaid(t *testing.T) {
	r, err := (&voc.Mixture{Parts: []voc.Part{{VolumeL: 1, VOCGL: new(900.0)}}}).Calculate()
	require.NoError(t, err)
	assert.Nil(t, r.ImpliedVolumeSolidsPercent)
	assert.Len(t, r.Warnings, 1)
}

// Of a thinner that is 40 % exempt only 60 % counts: room for 80 g at 440 g/L above
// the limit is 0.1818 L of what counts, 0.303 L of the thinner; and with that much
// in it the mixture is at its limit (identity). Exempt thinner has no bound.
func TestExemptThinnerCountsForItsRestOnly(t *testing.T) {
	m := voc.Mixture{Parts: []voc.Part{{VolumeL: 1, VOCGL: new(340.0)}}, LimitGL: new(420.0), ThinnerVOCGL: new(860.0), ThinnerExemptVolumePercent: new(40.0)}
	r, err := m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 80.0/440/0.6, *r.MaxThinnerL, 1e-12)
	m.Parts = append(m.Parts, voc.Part{VolumeL: *r.MaxThinnerL, VOCGL: new(860.0), ExemptVolumePercent: new(40.0)})
	r, err = m.Calculate()
	require.NoError(t, err)
	assert.InDelta(t, 420, r.VOCGL, 1e-9)
	m.ThinnerExemptVolumePercent = new(100.0)
	r, err = m.Calculate()
	require.NoError(t, err)
	assert.Nil(t, r.MaxThinnerL)
	m.ThinnerVOCGL = nil
	found := map[string]string{}
	m.Check(func(pointer, code, _ string) { found[pointer] = code })
	assert.Equal(t, map[string]string{"/thinner_voc_g_l": "required"}, found)
}
