package voc_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate/voc"
)

func share(t *rapid.T, name string) *float64 {
	if rapid.Bool().Draw(t, name+" given") {
		return new(rapid.Float64Range(0, 100).Draw(t, name))
	}
	return nil
}

// anyPart draws parts of both kinds, sound ones and others.
func anyPart(t *rapid.T) voc.Part {
	p := voc.Part{VolumeL: rapid.Float64Range(0.0001, 100000).Draw(t, "volume")}
	if rapid.Bool().Draw(t, "by volume") {
		p.VOCGL = new(rapid.Float64Range(0, 1500).Draw(t, "voc"))
		p.WaterVolumePercent, p.ExemptVolumePercent = share(t, "water"), share(t, "exempt")
		return p
	}
	p.DensityKgL = new(rapid.Float64Range(0.5, 5).Draw(t, "density"))
	p.SolidsWeightPercent = new(rapid.Float64Range(0, 100).Draw(t, "solids"))
	p.WaterWeightPercent, p.ExemptWeightPercent = share(t, "water"), share(t, "exempt")
	p.ExemptDensityKgL = new(rapid.Float64Range(0.5, 3).Draw(t, "exempt density"))
	return p
}

func anyMixture(t *rapid.T) *voc.Mixture {
	m := &voc.Mixture{Parts: rapid.SliceOfN(rapid.Custom(anyPart), 1, 4).Draw(t, "parts")}
	if rapid.Bool().Draw(t, "limit given") {
		m.LimitGL = new(rapid.Float64Range(1, 1500).Draw(t, "limit"))
		m.ThinnerVOCGL = new(rapid.Float64Range(0, 1500).Draw(t, "thinner"))
	}
	return m
}

// JSON has no NaN and no infinity, so what encodes is finite throughout.
func TestWhatPassesCheckIsFiniteAndOrdered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMixture(t)
		if len(faults(m)) > 0 {
			t.Skip("refused")
		}
		r, err := m.Calculate()
		require.NoError(t, err)
		_, err = json.Marshal(r)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, r.VOCGL, r.VOCMaterialGL, "less water is never less")
		assert.InDelta(t, r.VOCMaterialGL*r.VolumeL, r.VOCTotalG, 1e-9*r.VOCTotalG)
	})
}

// Adding the greatest thinner brings the mixture to its limit, and no further.
func TestMaxThinnerReachesTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &voc.Mixture{
			Parts:        []voc.Part{{VolumeL: rapid.Float64Range(1, 100).Draw(t, "volume"), VOCGL: new(rapid.Float64Range(0, 400).Draw(t, "voc"))}},
			LimitGL:      new(rapid.Float64Range(401, 700).Draw(t, "limit")),
			ThinnerVOCGL: new(rapid.Float64Range(750, 900).Draw(t, "thinner")),
		}
		r, err := m.Calculate()
		require.NoError(t, err)
		m.Parts = append(m.Parts, voc.Part{VolumeL: *r.MaxThinnerL, VOCGL: m.ThinnerVOCGL})
		thinned, err := m.Calculate()
		require.NoError(t, err)
		assert.InEpsilon(t, *m.LimitGL, thinned.VOCGL, 1e-9)
		assert.True(t, *thinned.WithinLimit)
	})
}

// Water changes nothing but the litres [coating V15].
func TestWaterDoesNotDilute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &voc.Mixture{Parts: []voc.Part{{VolumeL: rapid.Float64Range(1, 100).Draw(t, "volume"), VOCGL: new(rapid.Float64Range(1, 800).Draw(t, "voc"))}}}
		dry, err := m.Calculate()
		require.NoError(t, err)
		m.Parts = append(m.Parts, voc.Part{VolumeL: rapid.Float64Range(0.01, 50).Draw(t, "water"), VOCGL: new(0.0), WaterVolumePercent: new(100.0)})
		wet, err := m.Calculate()
		require.NoError(t, err)
		assert.InEpsilon(t, dry.VOCGL, wet.VOCGL, 1e-9)
		assert.Less(t, wet.VOCMaterialGL, dry.VOCMaterialGL)
	})
}

func BenchmarkCalculate(b *testing.B) {
	m := sound()
	for b.Loop() {
		if _, err := m.Calculate(); err != nil {
			b.Fatal(err)
		}
	}
}
