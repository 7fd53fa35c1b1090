package estimate

import (
	"slices"
	"strconv"
)

// testPatches checks the trial areas and sorts them by the steps they stand
// for.
func (r *run) testPatches() {
	r.patches, r.stepOf = map[string][]*TestPatch{}, map[string]Step{}
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
		if p.Minutes == nil && p.MediaKg == nil && p.Litres == nil && p.Discs == nil && !r.faults.HasBelow(at) {
			r.faults.Add(at, "required", "the test patch measures nothing; give minutes, media_kg, litres or discs")
		}
		r.patchSense(p, at)
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
				r.patches[id], r.stepOf[id] = append(r.patches[id], p), step
			}
		}
		if known > 0 {
			r.unused(p, of, at)
		}
	}
}

// patchSense notes measurements of a test patch that do not go together.
func (r *run) patchSense(p *TestPatch, at string) {
	switch {
	case p.UsableMediaKg != nil && p.MediaKg == nil:
		r.faults.Add(at+"/media_kg", "required", "media_kg is missing; what is still usable tells the breakdown only beside what was thrown")
	case p.UsableMediaKg != nil && *p.UsableMediaKg >= *p.MediaKg:
		r.faults.Addf(at+"/usable_media_kg", "inconsistent", "%.4g kg are usable of %.4g kg thrown; some always breaks: sieve the dust out and weigh again", *p.UsableMediaKg, *p.MediaKg)
	}
	if p.Crew != nil && p.Minutes == nil {
		r.faults.Add(at+"/minutes", "required", "minutes is missing; crew says who worked for how long")
	}
	if p.Nozzles != nil && p.Minutes == nil {
		r.faults.Add(at+"/minutes", "required", "minutes is missing; nozzles says how many worked for how long")
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
		{"usable_media_kg", p.UsableMediaKg != nil, of.media, "only blasting throws media"},
		{"nozzles", p.Nozzles != nil, of.media, "only blasting has nozzles"},
		{"crew", p.Crew != nil, of.minutes && !of.media, "the rate of blasting is that of a nozzle: give nozzles"},
		{"discs", p.Discs != nil, of.discs, "only sanding wears discs"},
	} {
		if m.given && !m.wants {
			r.faults.Addf(at+"/"+m.field, "not_applicable", "no step of this test patch can use %s: %s", m.field, m.why)
		}
	}
}

// measurable is what a test patch may measure for a step.
type measurable struct{ minutes, media, litres, film, discs bool }

func (m measurable) or(n measurable) measurable {
	return measurable{m.minutes || n.minutes, m.media || n.media, m.litres || n.litres, m.film || n.film, m.discs || n.discs}
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
		return measurable{minutes: true, discs: true}
	}
	return measurable{minutes: true, litres: true}
}
