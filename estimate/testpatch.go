package estimate

import (
	"slices"
	"strconv"
)

// testPatches checks the trial areas and sorts them by the steps they stand
// for.
func (r *run) testPatches() {
	r.patches = map[string][]*TestPatch{}
	steps := map[string]Step{}
	for _, s := range r.job.Steps {
		if s != nil {
			steps[s.base().ID] = s
		}
	}
	for i := range r.job.TestPatches {
		p, at := &r.job.TestPatches[i], "/test_patches/"+strconv.Itoa(i)
		if r.faults.Has(at) {
			continue // no object at all
		}
		if len(p.For) == 0 {
			r.faults.Add(at+"/for", "required", "for is empty; name the steps that the test patch stands for")
		}
		if p.Minutes == nil && p.MediaKg == nil && p.Litres == nil && !r.faults.HasBelow(at) {
			r.faults.Add(at, "required", "the test patch measures nothing; give minutes, media_kg or litres")
		}
		if p.FilmUM != nil && p.Litres == nil {
			r.faults.Add(at+"/litres", "required", "litres is missing; a measured film gives the transfer efficiency only with the paint used on it")
		}
		var of measurable
		known := 0
		for k, id := range p.For {
			step, found := steps[id]
			switch {
			case !found:
				r.faults.Addf(at+"/for/"+strconv.Itoa(k), "unknown_reference", "there is no step %q", clip(id))
			case slices.Contains(p.For[:k], id):
				r.faults.Addf(at+"/for/"+strconv.Itoa(k), "duplicate_id", "step %q is named twice; a patch counts once", id)
			default:
				of, known = of.or(measurableIn(step)), known+1
				r.patches[id] = append(r.patches[id], p)
			}
		}
		if known > 0 {
			r.unused(p, of, at)
		}
	}
}

// unused notes what a test patch measures and none of its steps can use, so
// that a trial is never thrown away in silence.
func (r *run) unused(p *TestPatch, of measurable, at string) {
	for _, m := range []struct {
		field        string
		given, wants bool
		why          string
	}{
		{"minutes", p.Minutes != nil, of.minutes, "masking goes by the length of tape: give rate_m_h to the step"},
		{"media_kg", p.MediaKg != nil, of.media, "only blasting throws media"},
		{"litres", p.Litres != nil, of.litres || (of.film && p.FilmUM != nil), "paint tells its transfer efficiency only with film_um beside it, and only paint, stripper, cleaner, treatment and protective are litres"},
		{"film_um", p.FilmUM != nil, of.film, "only coat and mark steps build a film"},
	} {
		if m.given && !m.wants {
			r.faults.Addf(at+"/"+m.field, "not_applicable", "no step of this test patch can use %s: %s", m.field, m.why)
		}
	}
}

// measurable is what a test patch may measure for a step.
type measurable struct{ minutes, media, litres, film bool }

func (m measurable) or(n measurable) measurable {
	return measurable{m.minutes || n.minutes, m.media || n.media, m.litres || n.litres, m.film || n.film}
}

func measurableIn(step Step) measurable {
	switch step.(type) {
	case *Mask:
		return measurable{}
	case *Blast:
		return measurable{minutes: true, media: true}
	case *Coat, *Mark:
		return measurable{minutes: true, film: true}
	case *Sand:
		return measurable{minutes: true}
	}
	return measurable{minutes: true, litres: true}
}

// tested adds up what the test patches of a step measured. Several patches are
// weighted by their size: amounts are added before they are divided.
type tested struct {
	timedM2, hours    float64 // area and time of the patches that were timed
	thrownM2, mediaKg float64 // of those whose media was weighed
	wettedM2, litres  float64 // of those whose liquid was measured
	filmM2UM, filmL   float64 // area times film, and paint, of those whose film was measured
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
