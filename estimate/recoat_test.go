package estimate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate"
)

// primed is a job of primer and topcoat on 40 m² of bare metal.
func primed() (job, white doc) {
	prime := doc{"id": "prime", "operation": "coat", "on": []string{"a"}, "product": "epoxy-primer", "dry_film_um": 20, "method": "hvlp", "mask": false}
	white = doc{"id": "white", "operation": "coat", "on": []string{"a"}, "product": "polyurethane-gloss-white", "dry_film_um": 50, "coats": 2, "method": "hvlp", "temperature_c": 24}
	return doc{"components": []doc{flat("a", 40, 30)}, "steps": []doc{prime, white}}, white
}

func plan(t *testing.T, job doc) (*estimate.StepEstimate, estimate.RecoatPlan) {
	t.Helper()
	s := &work(t, job).Steps[1]
	require.Len(t, s.Recoat, 1)
	return s, s.Recoat[0]
}

// C11: epoxy primer at 75 °F takes topcoat from 5 to 8 h clean, to 24 h after a
// wipe or scuff, later after scuffing. 40 m² take 40·0.06 L of wipe solvent and
// 40 discs of 1 m²; at 20 and 4 m²/h they are 2 and 10 hours.
func TestTheWindowOfAPrimer(t *testing.T) {
	job, white := primed()
	bare, p := plan(t, job)
	assert.Equal(t, "unknown", p.State)
	assert.False(t, p.Added)
	assert.Equal(t, [3]float64{5, 8, 24}, [3]float64{*p.MinH, p.MaxH, *p.WipeUntilH})
	require.Len(t, p.IfMissed, 2)
	assert.Equal(t, "scuff", p.IfMissed[1].Work)
	for _, c := range []struct {
		gap, wipe, discs float64
		state            string
	}{{3, 0, 0, "early"}, {5, 0, 0, "in_time"}, {8, 0, 0, "in_time"}, {9, 2.4, 0, "wipe"}, {24, 2.4, 0, "wipe"}, {25, 2.4, 40, "missed"}} {
		white["gap_h"] = c.gap
		s, p := plan(t, job)
		assert.Equal(t, c.state, p.State, "%v h", c.gap)
		assert.Equal(t, c.wipe > 0, p.Added)
		assert.InDelta(t, bare.Litres+c.wipe, s.Litres, 1e-9)
		hours := bare.Hours
		if c.wipe > 0 {
			hours += 40.0 / 20
		}
		if c.discs > 0 {
			hours += 40.0 / 4
		}
		assert.InDelta(t, hours, s.Hours, 1e-9, "%v h", c.gap)
		found := 0.0
		for _, m := range s.Materials {
			if m.Product == "disc-320" {
				found = m.Quantity
			}
		}
		assert.InDelta(t, c.discs, found, 1e-9)
		assert.Equal(t, c.state == "early" || c.wipe > 0, len(s.Warnings) > 0)
	}
	delete(white, "gap_h")
	white["recoat"] = "missed"
	s, p := plan(t, job)
	assert.True(t, p.Added)
	assert.InDelta(t, bare.Hours+12, s.Hours, 1e-9)
	white["recoat"] = "perhaps"
	assert.Equal(t, map[string]string{"/steps/1/recoat": "unknown_kind"}, faultsOf(t, job))
}

// The wait follows from the starts of the steps where both have one.
func TestTheWaitFollowsFromTheStarts(t *testing.T) {
	job, white := primed()
	job["steps"].([]doc)[0]["starts"], white["starts"] = "2026-05-02T08:00", "2026-05-02T18:00"
	_, p := plan(t, job)
	require.NotNil(t, p.GapH)
	assert.InDelta(t, 10-40/27.9, *p.GapH, 1e-9, "the primer takes 40 m² at 27.9 m²/h")
	assert.Equal(t, "wipe", p.State)
}

// C07: polyurethane takes the next coat within 48 h at 21 °C and 2 h at 45 °C.
// C17, K7: Navy epoxy is washed and tack coated after 7 days: 38 µm wet of paint
// thinned 25 %, on 40 m² at 50 % efficiency 40·38/(1000·1.25·0.5) L.
func TestWindowsGoByTemperature(t *testing.T) {
	job, white := primed()
	job["steps"].([]doc)[0]["product"] = "polyurethane-gloss-red"
	for c, most := range map[float64]float64{18: 48, 24: 48, 30: 36, 35: 24, 41: 12, 45: 2} {
		white["temperature_c"] = c
		_, p := plan(t, job)
		assert.Equal(t, most, p.MaxH, "C07 at %v °C", c)
	}
	white["temperature_c"] = 6
	_, p := plan(t, job)
	assert.InDelta(t, 16, *p.MinH, 1e-9, "10 °C below the table the least time doubles")
	assert.Contains(t, p.Source, "scaled")

	job["steps"].([]doc)[0]["product"] = "epoxy-primer-high-build"
	white["temperature_c"], white["gap_h"], white["transfer_efficiency_percent"] = 23, 8*24, 50
	s, p := plan(t, job)
	require.Equal(t, "missed", p.State)
	require.Equal(t, "tack_coat", p.IfMissed[1].Work)
	assert.InDelta(t, 40*38/(1000*1.25*0.5), p.IfMissed[1].Quantity, 1e-9)
	film := 40 * (2*50*0.001*1.65 + 0.038/1.25*0.52*1.65)
	assert.InDelta(t, film, s.DryFilmKg, 1e-9, "the tack coat is film too")
	e := work(t, job)
	assert.InDelta(t, e.Totals.DryFilmKg, e.Weights[0].AddedKg, 1e-9, "and hangs on the part")
}

// Scuffing as a step of its own, or stripping, ends the window of a coat.
func TestWorkBetweenCoatsEndsTheWindow(t *testing.T) {
	job, white := primed()
	white["gap_h"] = 100
	between := doc{"id": "scuff", "operation": "sand", "on": []string{"a"}, "product": "disc-320", "scuff": true}
	job["steps"] = []doc{job["steps"].([]doc)[0], between, white}
	assert.Empty(t, work(t, job).Steps[2].Recoat)
	between["scuff"] = false
	s := work(t, job).Steps[2]
	assert.Empty(t, s.Recoat)
	assert.Contains(t, s.Warnings, "no coat of this job lies below: gap_h and recoat say nothing here")
	job["steps"] = []doc{{"id": "prime", "operation": "coat", "on": []string{"a"}, "product": "alkyd-primer", "method": "brush"}, white}
	assert.Contains(t, work(t, job).Steps[1].Warnings, "no time to recoat alkyd-primer is known at 24 °C: nothing is added for it; give recoat to the product")
}

// SSPC-PA 2 on 40 m²: 3 areas, 15 spots, 45 readings, of the 20 µm of primer and
// of the 120 µm of the system once the topcoat is on; 80/20 lets 8 of 45 lie
// below and none below 96 µm (A1, A2, A6).
func TestTheFilmIsChecked(t *testing.T) {
	job, white := primed()
	white["film_rule"] = "min_80_20"
	e := work(t, job)
	prime, top := e.Steps[0].FilmCheck, e.Steps[1].FilmCheck
	assert.Equal(t, [3]int{3, 15, 45}, [3]int{prime.Areas, prime.Spots, prime.Readings})
	assert.Nil(t, prime.SystemFilmUM)
	assert.Equal(t, 20.0, prime.LeastAreaMeanUM)
	assert.Equal(t, 100.0, top.DryFilmUM)
	assert.Equal(t, 120.0, *top.SystemFilmUM)
	assert.InDelta(t, 96, top.LeastSpotUM, 1e-9)
	assert.InDelta(t, 96, *top.LeastReadingUM, 1e-9)
	assert.Equal(t, 8, *top.MostBelow, "fewer than 9, 20 % of 45")
	white["on"] = []string{"r"}
	job["regions"] = []doc{{"id": "r", "of": []string{"a"}, "share_ratio": 0.5, "edge_m": 3}}
	job["steps"] = append(job["steps"].([]doc), doc{"id": "clear", "operation": "coat", "on": []string{"a"}, "product": "polyurethane-clear", "method": "hvlp"})
	clear := work(t, job).Steps[2].FilmCheck
	assert.Nil(t, clear.SystemFilmUM, "half has topcoat below and half has not")
	assert.Contains(t, clear.Notes[0], "differs")
}
