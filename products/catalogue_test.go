package products

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func loaded(t testing.TB) *Catalogue {
	t.Helper()
	c, err := Load()
	require.NoError(t, err)
	return c
}

// What documents and the other packages name by id is there, of the right kind.
func TestCatalogueHolds(t *testing.T) {
	c := loaded(t)
	want := map[string][]string{
		"paint":   {"epoxy-primer", "epoxy-primer-chromated", "etch-primer", "polyurethane-clear", "alkyd-primer"},
		"liquid":  {"conversion-coat", "stripper", "detergent", "wipe-solvent", "temporary-protective"},
		"media":   {"glass-bead-coarse", "glass-bead-medium", "glass-bead-fine", "plastic-type-ii", "plastic-type-v", "aluminium-oxide", "garnet", "walnut-shell", "bicarbonate", "wheat-starch"},
		"tape":    {"masking-tape-18", "masking-tape-24", "masking-tape-36", "masking-tape-48", "fine-line-tape-3", "fine-line-tape-6", "fine-line-tape-12", "blast-tape-48", "aluminium-tape-50"},
		"film":    {"masking-film", "masking-paper", "stencil-film", "blast-sheet"},
		"disc":    {"disc-80", "disc-150", "disc-320"},
		"thinner": {"thinner-epoxy", "thinner-polyurethane", "thinner-alkyd", "thinner-etch"},
	}
	for _, colour := range []string{"white", "orange", "green", "red", "blue", "black", "yellow", "grey", "light-grey", "silver"} {
		want["paint"] = append(want["paint"], "polyurethane-gloss-"+colour)
	}
	for _, colour := range []string{"white", "red", "black", "green", "grey", "yellow", "blue"} {
		want["paint"] = append(want["paint"], "alkyd-gloss-"+colour)
	}
	for kind, ids := range want {
		for _, id := range ids {
			p, ok := c.Product(id)
			if assert.True(t, ok, id) {
				assert.Equal(t, kind, p.Base().Kind, id)
			}
		}
	}
	for _, id := range []string{"brush", "roller", "conventional", "hvlp", "airless", "air_assisted_airless", "electrostatic"} {
		_, ok := c.Method(id)
		assert.True(t, ok, id)
	}
	for _, id := range []string{"wash", "protect", "pretreat", "mask", "sand", "strip"} {
		_, ok := c.Operation(id)
		assert.True(t, ok, id)
	}
	_, ok := c.Product("nothing-like-it")
	assert.False(t, ok)
}

// A colour of a family is one paint, whose id ends in the colour.
func TestColoursAreUnique(t *testing.T) {
	seen := map[string]string{}
	for _, p := range loaded(t).Products() {
		paint, ok := p.(*Paint)
		if !ok || paint.Role != "topcoat" {
			continue
		}
		key := paint.Family + " " + paint.Colour
		assert.Empty(t, seen[key], "%s and %s are both %s", seen[key], paint.ID, key)
		assert.Equal(t, paint.Family+"-"+paint.Colour, paint.ID)
		seen[key] = paint.ID
	}
	assert.Len(t, seen, 17)
}

// The invented paints hold together: what is not solid is solvent, as the
// figure of 30 TAC 115.423(1) has it (V2, V3; 7.36 lb/gal is 882 g/L), here of
// 780 to 900 g/L for the solvents in use; and solids and solvent make up the
// density. Aircraft paints keep within the limits of 40 CFR 63.745 (L1 mark T,
// L4 mark M).
func TestPaintsHoldTogether(t *testing.T) {
	for _, p := range loaded(t).Products() {
		paint, ok := p.(*Paint)
		if !ok {
			continue
		}
		require.NotNil(t, paint.DryFilmDensityKgL, paint.ID)
		require.NotNil(t, paint.DensityKgL, paint.ID)
		require.NotNil(t, paint.VOCGL, paint.ID)
		require.NotNil(t, paint.DryFilmUM, paint.ID)
		solids := paint.VolumeSolidsPercent / 100
		water := 0.0
		if paint.WaterVolumePercent != nil {
			water = *paint.WaterVolumePercent / 100
		}
		solvent := *paint.MaterialVOCGL() / (1 - solids - water)
		assert.True(t, solvent >= 780 && solvent <= 900, "%s: solvent of %.0f g/L", paint.ID, solvent)
		assert.InDelta(t, solids**paint.DryFilmDensityKgL+water+*paint.MaterialVOCGL()/1000, *paint.DensityKgL, 0.0051, paint.ID)
		switch {
		case strings.HasPrefix(paint.Family, "epoxy"):
			assert.LessOrEqual(t, *paint.VOCGL, 350.0, paint.ID)
		case strings.HasPrefix(paint.Family, "polyurethane"):
			assert.LessOrEqual(t, *paint.VOCGL, 420.0, paint.ID)
		}
	}
}

// Nothing is called published that is not: paint values and every price say
// invented, a mark of assumption or memory has the source that says so, and the
// other way round. Every listed source is used.
func TestProvenanceIsHonest(t *testing.T) {
	c := loaded(t)
	used := map[string]bool{}
	for _, p := range c.Products() {
		b := p.Base()
		for _, s := range c.Sources() {
			if strings.HasPrefix(b.Source, s.Title) {
				used[s.Key] = true
			}
		}
		if paint, ok := p.(*Paint); ok {
			for _, w := range paint.Recoat {
				for _, s := range c.Sources() {
					used[s.Key] = used[s.Key] || strings.HasPrefix(w.Source, s.Title)
				}
			}
		}
		if b.Kind == "paint" || b.Kind == "thinner" {
			assert.Equal(t, "invented, typical; replace by the data sheet (mark invented)", b.Source, b.ID)
		}
		for _, pack := range b.Packs {
			assert.Equal(t, "invented price; replace by a quotation (mark invented)", pack.Source, b.ID)
			assert.NotNil(t, pack.Price, b.ID)
		}
	}
	used["invented-price"] = true
	for _, p := range provenances(c) {
		used[p.Source] = true
		assert.Equal(t, p.Source == "assumption", p.Mark == "assumption", p.Text())
		assert.Equal(t, p.Source == "memory", p.Mark == "M", p.Text())
		assert.NotEqual(t, "invented", p.Source, p.Text())
		assert.Equal(t, p.Source == "common-practice", p.Mark == "practice", p.Text())
		if p.Mark != "assumption" && p.Mark != "practice" {
			assert.NotEmpty(t, p.Ref, p.Text())
		}
	}
	for _, s := range c.Sources() {
		assert.True(t, used[s.Key], "source %s is listed and not used", s.Key)
	}
}

// provenances are those of every sourced number of the catalogue.
func provenances(c *Catalogue) []Provenance {
	var all []Provenance
	for _, p := range c.Products() {
		for _, v := range c.Values(p.Base().ID) {
			all = append(all, v.Provenance)
		}
		for _, l := range c.Limits(p.Base().ID) {
			all = append(all, l.Provenance)
		}
	}
	for _, l := range c.LimitsOfAll() {
		all = append(all, l.Provenance)
	}
	for _, m := range c.Methods() {
		all = append(all, m.TransferEfficiencyPercent.Provenance, m.RateM2H.Provenance, m.PassWetFilmUM.Provenance, m.CleaningL.Provenance)
		for _, e := range m.PartEfficiencies {
			all = append(all, e.TransferEfficiencyPercent.Provenance)
		}
	}
	for _, o := range c.Operations() {
		all = append(all, o.Rate.Provenance)
	}
	return all
}

// No published rate for stripping paint from aircraft skin with glass bead was
// found, so none may look like one.
func TestBeadStripRateIsAnAssumption(t *testing.T) {
	c := loaded(t)
	for _, id := range []string{"glass-bead-coarse", "glass-bead-medium", "glass-bead-fine"} {
		i := slices.IndexFunc(c.Values(id), func(v Value) bool { return v.Quantity == "strip_rate_m2_h" })
		require.GreaterOrEqual(t, i, 0, id)
		assert.Equal(t, "assumption", c.Values(id)[i].Mark, id)
		assert.Contains(t, c.Values(id)[i].Note, "no published rate", id)
	}
}

func TestMediaFieldsAreItsValues(t *testing.T) {
	c := loaded(t)
	p, _ := c.Product("glass-bead-fine")
	m := p.(*Media)
	for _, v := range c.Values(m.ID) {
		switch v.Quantity {
		case "bulk_density_kg_m3":
			assert.Equal(t, v.Likely, m.BulkDensityKgM3)
		case "size_um":
			assert.Equal(t, []float64{v.Low, v.High}, []float64{*m.SizeLowUM, *m.SizeHighUM})
		case "mohs":
			assert.Equal(t, v.Likely, *m.Mohs)
		case "strip_rate_m2_h":
			assert.Equal(t, []float64{v.Low, v.Likely, v.High}, []float64{*m.StripRateLowM2H, *m.StripRateM2H, *m.StripRateHighM2H})
		}
	}
	assert.Equal(t, []SubstrateBreakdown{{"aluminium", 2.1}, {"steel", 3.5}}, m.Breakdowns)
}

func TestWith(t *testing.T) {
	c := loaded(t)
	before := c.Products()
	assert.Same(t, c, c.With(nil))

	over := &Media{Common: Common{ID: "glass-bead-fine", Kind: "media", Name: "bead of the job"}}
	added := &Item{Common: Common{ID: "bucket", Kind: "item"}}
	with := c.With([]Product{over, added, nil, &Item{}})

	got, _ := with.Product("glass-bead-fine")
	assert.Same(t, over, got)
	assert.Empty(t, with.Values("glass-bead-fine"), "the catalogue's sources do not speak for a product of the job")
	assert.Empty(t, with.Limits("glass-bead-fine"))
	assert.NotEmpty(t, with.Values("garnet"))
	all := with.Products()
	assert.Len(t, all, len(before)+1)
	assert.Same(t, added, all[len(before)])
	assert.Equal(t, c.Version(), with.Version())

	assert.Equal(t, before, c.Products(), "the receiver stays as it is")
	got, _ = c.Product("glass-bead-fine")
	assert.NotSame(t, over, got)
	_, ok := c.Product("bucket")
	assert.False(t, ok)

	twice := with.With([]Product{&Item{Common: Common{ID: "bucket", Kind: "item", Name: "another"}}})
	got, _ = twice.Product("bucket")
	assert.Equal(t, "another", got.Base().Name)
	got, _ = twice.Product("glass-bead-fine")
	assert.Same(t, over, got)
	assert.Len(t, twice.Products(), len(all))
}

// The time of removal is data of each tape (reference markings 5.2: sources
// disagree, so it is never a constant), and says where it comes from.
func TestEveryTapeHasATimeOfRemoval(t *testing.T) {
	for _, p := range loaded(t).Products() {
		if tape, ok := p.(*Tape); ok {
			require.NotNil(t, tape.RemovalH, tape.ID)
			require.NotNil(t, tape.RemovalAtC, tape.ID)
			assert.Contains(t, tape.RemovalSource, "from memory", tape.ID)
		}
	}
	assert.Equal(t, map[string]string{"/removal_h": "required"}, faultsOf(&Tape{Common: Common{Kind: "tape"}, WidthMM: 20, RemovalAtC: ptr(60)}))
}
