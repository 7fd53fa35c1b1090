package estimate

import (
	"strconv"

	"filmbuild/surfaces/quantity"
)

// testPatches checks the trial areas and sorts them by the steps they stand
// for.
func (r *run) testPatches() {
	r.patches = map[string][]*TestPatch{}
	steps := map[string]bool{}
	for _, s := range r.job.Steps {
		if s != nil {
			steps[s.base().ID] = true
		}
	}
	for i := range r.job.TestPatches {
		p, at := &r.job.TestPatches[i], "/test_patches/"+strconv.Itoa(i)
		quantity.Check(*p, r.faults.At(at))
		if len(p.For) == 0 {
			r.faults.Add(at+"/for", "required", "for is empty; name the steps that the test patch stands for")
		}
		if p.Minutes == nil && p.MediaKg == nil && p.Litres == nil {
			r.faults.Add(at, "required", "the test patch measures nothing; give minutes, media_kg or litres")
		}
		if p.FilmUM != nil && p.Litres == nil {
			r.faults.Add(at+"/litres", "required", "litres is missing; a measured film gives the transfer efficiency only with the paint used on it")
		}
		for k, id := range p.For {
			if !steps[id] {
				r.faults.Addf(at+"/for/"+strconv.Itoa(k), "unknown_reference", "there is no step %q", clip(id))
				continue
			}
			r.patches[id] = append(r.patches[id], p)
		}
	}
}

// tested adds up what the test patches of a step measured. Several patches are
// weighted by their size: amounts are added before they are divided.
type tested struct {
	timedM2, hours    float64 // area and time of the patches that were timed
	thrownM2, mediaKg float64 // of those whose media was weighed
	wettedM2, litres  float64 // of those whose liquid was measured
	filmM2UM, filmL   float64 // area times film, and paint, of those whose film was measured
	thrownHours       float64 // time of the patches whose media was weighed
}

func (r *run) tested(step string) tested {
	var t tested
	for _, p := range r.patches[step] {
		if p.Minutes != nil {
			t.timedM2 += p.AreaM2
			t.hours += *p.Minutes / 60
		}
		if p.MediaKg != nil {
			t.thrownM2 += p.AreaM2
			t.mediaKg += *p.MediaKg
			if p.Minutes != nil {
				t.thrownHours += *p.Minutes / 60
			}
		}
		if p.Litres != nil {
			t.wettedM2 += p.AreaM2
			t.litres += *p.Litres
			if p.FilmUM != nil {
				t.filmM2UM += p.AreaM2 * *p.FilmUM
				t.filmL += *p.Litres
			}
		}
	}
	return t
}

// efficiencyPercent is the share of the solids used that the measured film
// holds.
//
//	efficiency = area · film / (1000 · litres · volume solids)
//
// Source: identity, the film that lands over the film that the paint could give.
func (t tested) efficiencyPercent(volumeSolidsPercent float64) float64 {
	return 100 * t.filmM2UM / (1000 * t.filmL * volumeSolidsPercent / 100)
}
