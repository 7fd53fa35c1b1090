package estimate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/estimate"
)

// Several patches are weighted by size: amounts are added before they are
// divided (identity). 1 m² in 10 min and 3 m² in 50 min are 4 m²/h.
func TestPatchesAreWeightedByTheirSize(t *testing.T) {
	e := work(t, doc{"components": []doc{flat("a", 20, 4)},
		"steps":        []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent", "coats": 2}},
		"test_patches": []doc{{"for": []string{"s"}, "area_m2": 1, "minutes": 10, "litres": 0.2}, {"for": []string{"s"}, "area_m2": 3, "minutes": 50, "litres": 0.2}}})
	assert.InEpsilon(t, 20*2/4.0, e.Steps[0].Hours, 1e-12)
	assert.InEpsilon(t, 20*2*0.1, e.Steps[0].Litres, 1e-12)
	assert.Equal(t, "test patch", line(t, e.Steps[0].Working, "litres").Source)
}

// The film measured gives the share that lands: 2 m² of 30 µm hold 0.06 L of
// solids, 0.3 L at 50 % have 0.15 L: 40 % (identity).
func TestAMeasuredFilmGivesTheTransferEfficiency(t *testing.T) {
	paint := doc{"id": "paint", "kind": "paint", "volume_solids_percent": 50}
	e := work(t, doc{"components": []doc{flat("a", 8, 4)}, "products": []doc{paint},
		"steps":        []doc{{"id": "s", "operation": "coat", "on": []string{"a"}, "product": "paint", "dry_film_um": 25, "method": "hvlp"}},
		"test_patches": []doc{{"for": []string{"s"}, "area_m2": 2, "litres": 0.3, "film_um": 30}}})
	assert.InEpsilon(t, 8*25/(1000*0.5*0.4), e.Steps[0].Litres, 1e-12)
	found := assumed(e, "transfer efficiency")
	require.Len(t, found, 1)
	assert.InEpsilon(t, 40.0, found[0].Value, 1e-12)
	assert.Equal(t, "test patch", found[0].Source)
}

// What a patch took to blast is what every square metre takes, timed or not:
// 12 kg on 0.5 m² are 24 kg/m².
func TestMediaWeighedOnAPatch(t *testing.T) {
	blast := doc{"id": "s", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 5, "nozzles": 2}
	job := doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{blast}, "test_patches": []doc{{"for": []string{"s"}, "area_m2": 0.5, "media_kg": 12}}}
	s := work(t, job).Steps[0]
	assert.InEpsilon(t, 240.0, s.Kilograms, 1e-12)
	assert.InEpsilon(t, 10/(5.0*2), s.Hours-s.MaskingHours, 1e-12)

	job["test_patches"] = []doc{{"for": []string{"s"}, "area_m2": 0.5, "media_kg": 12, "minutes": 6}}
	s = work(t, job).Steps[0]
	assert.InEpsilon(t, 240.0, s.Kilograms, 1e-12)
	assert.InEpsilon(t, 10/5.0, s.Hours-s.MaskingHours, 1e-12, "5 m²/h of both nozzles together")
}

// The media that are still good after sieving tell what one pass breaks: of
// 10 kg thrown 9.2 are usable, 8 % are lost; twice, weighted by what was thrown
// (identity).
func TestSievedMediaGiveTheBreakdown(t *testing.T) {
	blast := doc{"id": "s", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 5, "recovered": true}
	patch := func(kg, usable float64) doc {
		return doc{"for": []string{"s"}, "area_m2": 0.5, "media_kg": kg, "usable_media_kg": usable}
	}
	s := work(t, doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{blast}, "test_patches": []doc{patch(10, 9.2), patch(30, 28.8)}}).Steps[0]
	assert.InEpsilon(t, 10/0.5*20*2.0/40, s.Kilograms, 1e-12, "400 kg thrown, 5 % of them lost")
}

// Discs worn on a patch: 2 on 0.5 m² are 4 for each square metre.
func TestDiscsWornOnAPatch(t *testing.T) {
	sand := doc{"id": "s", "operation": "sand", "mask": false, "on": []string{"a"}, "product": "disc-150", "crew": 2}
	patch := doc{"for": []string{"s"}, "area_m2": 0.5, "discs": 2, "minutes": 30, "crew": 1}
	e := work(t, doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{sand}, "test_patches": []doc{patch}})
	assert.InEpsilon(t, 40.0, e.Steps[0].Materials[0].Quantity, 1e-12)
	assert.InEpsilon(t, 10.0, e.Steps[0].Hours, 1e-12, "one person did 1 m²/h: ten person-hours, whoever works")
	assert.Empty(t, assumed(e, "who did the test patches"))
	delete(patch, "crew")
	e = work(t, doc{"components": []doc{flat("a", 10, 4)}, "steps": []doc{sand}, "test_patches": []doc{patch}})
	assert.InEpsilon(t, 20.0, e.Steps[0].Hours, 1e-12, "both did it")
	assert.Len(t, assumed(e, "who did the test patches"), 1)
}

// A patch tells how far it may be off by its size, and several by how they
// differ (rule of package trial).
func TestAPatchCarriesItsUncertainty(t *testing.T) {
	job := func(patches ...doc) *estimate.Estimate {
		return work(t, doc{"components": []doc{flat("a", 20, 4)}, "steps": []doc{{"id": "s", "operation": "wash", "on": []string{"a"}, "product": "detergent"}}, "test_patches": patches})
	}
	patch := func(area, minutes float64) doc {
		return doc{"for": []string{"s"}, "area_m2": area, "minutes": minutes}
	}
	one := assumed(job(patch(1, 10)), "area the crew does")
	require.Len(t, one, 1)
	assert.InEpsilon(t, 6/1.3, *one[0].Low, 1e-12)
	assert.InEpsilon(t, 6*1.3, *one[0].High, 1e-12)
	assert.Contains(t, one[0].Spread, "one test patch of 1 m²")
	large := assumed(job(patch(9, 90)), "area the crew does")
	assert.InEpsilon(t, 6*1.1, *large[0].High, 1e-12)
	differ := assumed(job(patch(1, 5), patch(1, 15)), "area the crew does")
	assert.InEpsilon(t, 6.0, differ[0].Value, 1e-12)
	assert.InEpsilon(t, 6*2.0, *differ[0].High, 1e-12, "half and half again as long: nothing is known to better than a factor of two")
	assert.Contains(t, differ[0].Spread, "by the spread between them")
}

// What test patches gave is an uncertain input of the graph, with that range.
func TestPatchesInTheGraph(t *testing.T) {
	g := traced(t, doc{"name": "A job of the tests", "currency": "USD", "components": []doc{flat("a", 20, 4)},
		"steps":        []doc{coat("s", "a", "epoxy-primer")},
		"test_patches": []doc{{"for": []string{"s"}, "area_m2": 4, "minutes": 10, "litres": 0.3, "film_um": 25}}})
	spreads := map[string]float64{}
	for _, u := range g.Uncertain {
		if strings.HasPrefix(u.Key, "patches/s/") {
			spreads[strings.TrimPrefix(u.Key, "patches/s/")] = u.Spread.High / u.Spread.Likely
		}
	}
	assert.InEpsilon(t, 1.15, spreads["rate_m2_h"], 1e-9)
	assert.InEpsilon(t, 1.15, spreads["transfer_efficiency_percent"], 1e-9)
}

// A test patch that repeats what the book says changes nothing but what is said
// of the uncertainty, whatever its size.
func TestAPatchThatRepeatsTheBook(t *testing.T) {
	steps := []doc{
		{"id": "bare", "operation": "blast", "on": []string{"a"}, "media": "glass-bead-fine", "nozzle_bore_mm": 6.35, "pressure_kpa": 240, "nozzles": 2},
		{"id": "wash", "operation": "wash", "on": []string{"a"}, "product": "detergent", "coats": 2},
		{"id": "sand", "operation": "sand", "scuff": true, "on": []string{"a"}, "product": "disc-320"},
		{"id": "strip", "operation": "strip", "on": []string{"a"}, "product": "stripper", "crew": 3},
		{"id": "prime", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "method": "hvlp"},
		{"id": "white", "operation": "coat", "on": []string{"a"}, "product": "alkyd-gloss-white", "method": "brush", "crew": 2},
	}
	job := doc{"components": []doc{flat("a", 40, 9)}, "steps": steps}
	book := work(t, job)
	rapid.Check(t, func(rt *rapid.T) {
		area := rapid.Float64Range(0.01, 20).Draw(rt, "area")
		var patches []doc
		for i := range book.Steps {
			s := &book.Steps[i]
			hours := line(t, s.Working, "hours")
			rate := hours.Terms["rate"]
			if n, several := hours.Terms["nozzles"]; several {
				rate *= n
			}
			p := doc{"for": []string{s.ID}, "area_m2": area, "minutes": area / rate * 60}
			for _, w := range s.Working {
				switch {
				case w.Quantity == "litres" && w.Terms["coverage"] > 0:
					p["litres"] = area * w.Terms["coverage"]
				case w.Quantity == "discs":
					p["discs"] = area / w.Terms["a"]
				case w.Quantity == "media_thrown_kg":
					p["media_kg"] = w.Value / s.AreaM2 * area
				case w.Quantity == "paint_l":
					p["film_um"] = 25
					p["litres"] = area * 25 / (1000 * w.Terms["VS"] * w.Terms["TE"])
				}
			}
			patches = append(patches, p)
		}
		with := doc{"components": job["components"], "steps": steps, "test_patches": patches}
		e := work(t, with)
		for i := range book.Steps {
			want, got := book.Steps[i], e.Steps[i]
			same := func(name string, a, b float64) {
				assert.InDelta(rt, a, b, 1e-9*(1+a), "%s of %s", name, want.ID)
			}
			same("hours", want.Hours, got.Hours)
			same("litres", want.Litres, got.Litres)
			same("media", want.Kilograms, got.Kilograms)
			same("waste", want.WasteKg, got.WasteKg)
			same("dry film", want.DryFilmKg, got.DryFilmKg)
			assert.Equal(rt, want.Cost.String(), got.Cost.String(), want.ID)
		}
		assert.Equal(rt, book.Budget.Total.String(), e.Budget.Total.String())
		require.NotEmpty(rt, e.Assumptions)
		for _, a := range e.Assumptions {
			if a.Source == "test patch" {
				require.NotNil(rt, a.Low, a.Text)
				assert.Less(rt, *a.Low, a.Value)
				assert.GreaterOrEqual(rt, *a.High, a.Value)
			}
		}
	})
}

// Patches that cannot be: each is told with what to do.
func TestPatchesThatCannotBe(t *testing.T) {
	for name, c := range map[string]struct {
		patch doc
		at    string
	}{
		"no area":                   {doc{"area_m2": 0, "minutes": 5}, "/area_m2"},
		"nothing measured":          {doc{"area_m2": 1}, "/test_patches/0"},
		"sieved, not weighed":       {doc{"area_m2": 1, "usable_media_kg": 2, "minutes": 1}, "/media_kg"},
		"nothing broke":             {doc{"area_m2": 1, "media_kg": 2, "usable_media_kg": 2}, "/usable_media_kg"},
		"a crew in blasting":        {doc{"area_m2": 1, "minutes": 5, "crew": 1}, "/crew"},
		"nozzles but no time":       {doc{"area_m2": 1, "media_kg": 2, "nozzles": 1}, "/minutes"},
		"discs in blasting":         {doc{"area_m2": 1, "discs": 2}, "/discs"},
		"a film without its paint":  {doc{"area_m2": 1, "film_um": 20, "minutes": 5}, "/litres"},
		"time below any stop watch": {doc{"area_m2": 1, "minutes": 0}, "/minutes"},
	} {
		c.patch["for"] = []string{"s"}
		_, err := try(t, doc{"components": []doc{flat("a", 10, 4)}, "test_patches": []doc{c.patch},
			"steps": []doc{{"id": "s", "operation": "blast", "on": []string{"a"}, "media": "garnet", "nozzle_bore_mm": 8, "pressure_kpa": 500, "strip_rate_m2_h": 5}}})
		assert.ErrorContains(t, err, c.at, name)
	}
}
