package estimate

import (
	"strconv"

	"filmbuild/products"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
)

// work paints markings, each colour with its own paint, in the order in which
// the colours first appear.
func (p *Mark) work(r *run, s *StepEstimate, at string) {
	plan, ok := r.filmPlan(&p.StepBase, &p.FilmPlan, at)
	figures := r.figures(p, at).over(p.BaseColour)
	for i, name := range p.On {
		r.choose([]string{name}, at+"/on/"+strconv.Itoa(i))
	}
	if !ok || r.faults.HasBelow(at) {
		return
	}
	if len(figures) > 0 && len(figures.colours()) == 0 && p.BaseColour != "" {
		r.faults.Addf(at+"/base_colour", "inconsistent", "base_colour is %q and the markings have no other colour, so nothing is left to paint; leave it out, or leave the step out", clip(p.BaseColour))
		return
	}
	pots := r.pots(p, figures, at)
	for i := range pots {
		pot := &pots[i]
		s.AreaM2 += pot.areaM2
		terms, links := figures.areas(pot.colours)
		s.Working = append(s.Working, quantity.Working{Quantity: "area_m2", Of: pot.name(), Value: pot.areaM2, Unit: "m²",
			Formula: "sum of the " + pot.name() + " areas of the markings", Terms: terms, Links: links, Source: figures.source()})
		r.hang(figures, pot, r.paint(&p.StepBase, &p.FilmPlan, r.onFigures(p, plan, s, pot), s, pot.paint, pot.areaM2, pot.name(), at))
	}
	if r.faults.HasBelow(at) {
		return
	}
	r.leaveBase(p, figures)
	r.maskMarkings(p, s, figures, at)
	r.applicationHours(&p.StepBase, s, plan, s.AreaM2, p.Coats)
	s.tellColours(p, pots)
	r.paintWaste(s)
}

// figure is a marking measured, with how many of it are painted.
type figure struct {
	id    string
	count float64
	one   marking.Measurement
	under string // colour that is put down under all of it

	curved bool // some of its edges are
}

type figures []figure

// figures measures the markings that a step names.
func (r *run) figures(p *Mark, at string) figures {
	if len(p.Markings) == 0 {
		r.faults.Add(at+"/markings", "required", "markings is empty; name the markings that the step paints")
	}
	var found figures
	seen := map[string]bool{}
	for i, id := range p.Markings {
		below := at + "/markings/" + strconv.Itoa(i)
		k := r.markingIndex(id)
		switch {
		case k < 0:
			r.faults.Addf(below, "unknown_reference", "there is no marking %q", clip(id))
			continue
		case seen[id]:
			r.faults.Addf(below, "duplicate_id", "marking %q is named twice; count says how many are painted", id)
			continue
		case r.job.Markings[k].Figure == nil || r.faults.HasBelow("/markings/"+strconv.Itoa(k)):
			continue // its own faults say why
		}
		seen[id] = true
		one, err := marking.Measure(r.job.Markings[k].Figure)
		if err != nil {
			r.undrawable(k, err)
			continue
		}
		if r.drawn == nil {
			r.drawn = map[string]marking.Measurement{}
		}
		r.drawn[id] = one
		found = append(found, figure{id: id, count: float64(r.job.Markings[k].Count), one: one, under: marking.UnderColourOf(r.job.Markings[k].Figure), curved: marking.Curved(r.job.Markings[k].Figure)})
	}
	return found
}

func (r *run) markingIndex(id string) int {
	for i := range r.job.Markings {
		if r.job.Markings[i].ID == id {
			return i
		}
	}
	return -1
}

func (fs figures) source() string {
	for _, f := range fs {
		for _, w := range f.one.Working {
			return w.Source
		}
	}
	return "identity"
}

// paintOf finds the paint for a colour: the step's own choice, or the paint of
// the step's family that has the colour.
func (r *run) paintOf(p *Mark, colour, at string) (*products.Paint, bool) {
	if id, chosen := p.Paints[colour]; chosen {
		return product[*products.Paint](r.checker, id, at+"/paints", colour, "paint")
	}
	var colours []string
	for some := range r.catalogue.All() {
		paint, ok := some.(*products.Paint)
		if !ok || paint.Family != p.Family {
			continue
		}
		if paint.Colour == colour {
			return paint, true
		}
		colours = append(colours, paint.Colour)
	}
	if len(colours) == 0 {
		r.oneOf(p.Family, at, "family", r.families())
		return nil, false
	}
	r.faults.Addf(at+"/paints", "unknown_reference", "family %s has no paint of colour %q (it has %v); name one: \"paints\": {%q: \"product-id\"}", p.Family, clip(colour), colours, clip(colour))
	return nil, false
}

func (r *run) families() []string {
	var names []string
	seen := map[string]bool{}
	for some := range r.catalogue.All() {
		if paint, ok := some.(*products.Paint); ok && paint.Family != "" && !seen[paint.Family] {
			seen[paint.Family] = true
			names = append(names, paint.Family)
		}
	}
	return names
}
