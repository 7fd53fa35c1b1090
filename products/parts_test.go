package products

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func paintFaults(p *Paint) map[string]string {
	found := map[string]string{}
	p.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

// mixed is an invented paint of two parts.
func mixed() *Paint {
	return &Paint{Common: Common{ID: "p", Kind: "paint"}, VolumeSolidsPercent: 40, Mix: &Mix{Base: 4, Hardener: 1}}
}

func TestPacksOfPartsGoTogether(t *testing.T) {
	apart := func(parts ...string) *Paint {
		p := mixed()
		for _, part := range parts {
			p.Packs = append(p.Packs, Pack{PackL: new(1.0), Part: part})
		}
		return p
	}
	assert.Empty(t, paintFaults(apart("base", "hardener")))
	assert.Empty(t, paintFaults(apart("", "")), "kits")
	assert.Equal(t, map[string]string{"/packs/1/part": "inconsistent", "/packs": "required"}, paintFaults(apart("base", "")), "a kit beside a base")
	assert.Equal(t, map[string]string{"/packs": "required"}, paintFaults(apart("base")), "no hardener to buy")
	assert.Equal(t, map[string]string{"/packs/2/part": "inconsistent"}, paintFaults(apart("base", "hardener", "activator")), "the mix has none")
	single := apart("base")
	single.Mix = nil
	assert.Equal(t, map[string]string{"/mix": "required"}, paintFaults(single))
}

func TestRecoatWindowsAreChecked(t *testing.T) {
	with := func(rows ...Recoat) *Paint {
		p := mixed()
		p.Recoat = rows
		return p
	}
	assert.Empty(t, paintFaults(with(Recoat{FromC: 10, ToC: 20, MinH: new(4.0), MaxH: 8, WipeUntilH: new(24.0), Missed: "scuff"}, Recoat{FromC: 21, ToC: 30, MaxH: 4})))
	for name, c := range map[string]struct {
		row           Recoat
		pointer, code string
	}{
		"from after to":      {Recoat{FromC: 20, ToC: 10, MaxH: 8}, "/recoat/0/to_c", "not_increasing"},
		"least above most":   {Recoat{FromC: 10, ToC: 20, MinH: new(9.0), MaxH: 8}, "/recoat/0/max_h", "not_increasing"},
		"wipe before most":   {Recoat{FromC: 10, ToC: 20, MaxH: 8, WipeUntilH: new(4.0)}, "/recoat/0/wipe_until_h", "not_increasing"},
		"an unknown remedy":  {Recoat{FromC: 10, ToC: 20, MaxH: 8, Missed: "pray"}, "/recoat/0/missed", "unknown_kind"},
		"no most time":       {Recoat{FromC: 10, ToC: 20}, "/recoat/0/max_h", "out_of_range"},
		"a hot row too cold": {Recoat{FromC: -40, ToC: 20, MaxH: 4}, "/recoat/0/from_c", "out_of_range"},
	} {
		assert.Equal(t, map[string]string{c.pointer: c.code}, paintFaults(with(c.row)), name)
	}
	assert.Equal(t, map[string]string{"/recoat/1/from_c": "not_increasing"}, paintFaults(with(Recoat{FromC: 20, ToC: 30, MaxH: 8}, Recoat{FromC: 10, ToC: 15, MaxH: 9})))
}

// VOC less water of a paint that is 40 % water holds 0.6 of it in a litre; an
// exempt thinner and water hold none (definition, 40 CFR 59.104).
func TestMaterialVOC(t *testing.T) {
	p := mixed()
	assert.Nil(t, p.MaterialVOCGL())
	p.VOCGL, p.WaterVolumePercent, p.ExemptVolumePercent = new(340.0), new(30.0), new(10.0)
	assert.InDelta(t, 340*0.6, *p.MaterialVOCGL(), 1e-9)
	c := loaded(t)
	for id, want := range map[string]float64{"thinner-exempt": 0, "water-deionised": 0, "gun-wash": 850} {
		thinner, _ := c.Product(id)
		assert.InDelta(t, want, *thinner.(*Thinner).MaterialVOCGL(), 1e-9, id)
	}
	p.VolumeSolidsPercent = 61
	assert.Contains(t, paintFaults(p), "/water_volume_percent", "101 % of a paint")
}

// The catalogue's windows: reference planning C07 and C11, coating K7.
func TestRecoatOfTheCatalogue(t *testing.T) {
	c := loaded(t)
	for id, want := range map[string]struct {
		rows int
		most float64
	}{"polyurethane-gloss-red": {6, 48}, "epoxy-primer": {1, 8}, "epoxy-primer-high-build": {1, 168}} {
		p, _ := c.Product(id)
		require.Len(t, p.(*Paint).Recoat, want.rows, id)
		assert.Equal(t, want.most, p.(*Paint).Recoat[0].MaxH, id)
	}
	p, _ := c.Product("alkyd-primer")
	assert.Empty(t, p.(*Paint).Recoat, "no source was found")
}

// Small parts take a fraction of what large ones do with the same gun (T9).
func TestEfficiencyByPartSize(t *testing.T) {
	c := loaded(t)
	sizes := c.PartSizes()
	require.Len(t, sizes, 4)
	for _, id := range []string{"conventional", "hvlp", "airless", "air_assisted_airless", "electrostatic"} {
		m, _ := c.Method(id)
		require.Len(t, m.PartEfficiencies, len(sizes), id)
		large, medium, edges, small := m.EfficiencyOn("large"), m.EfficiencyOn("medium"), m.EfficiencyOn("edges"), m.EfficiencyOn("small")
		assert.Greater(t, large.Likely, medium.Likely, id)
		assert.Greater(t, medium.Likely, edges.Likely, id)
		assert.Greater(t, edges.Likely, small.Likely, id)
		assert.GreaterOrEqual(t, large.High, 65.0, "T9: all can exceed 65 % on large surfaces, %s", id)
		assert.Equal(t, m.TransferEfficiencyPercent, m.EfficiencyOn(""), id)
	}
	brush, _ := c.Method("brush")
	assert.Equal(t, brush.TransferEfficiencyPercent, brush.EfficiencyOn("small"), "a brush loses no more on small parts")
}
