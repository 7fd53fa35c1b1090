package estimate

import (
	"slices"
	"strconv"

	"filmbuild/products"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/quantity"
)

// work paints markings, each colour with its own paint.
func (p *Mark) work(r *run, s *StepEstimate, at string) {
	plan, ok := r.filmPlan(&p.StepBase, &p.FilmPlan, at)
	figures := r.figures(p, at)
	for i, name := range p.On {
		r.choose([]string{name}, at+"/on/"+strconv.Itoa(i))
	}
	if !ok || r.faults.HasBelow(at) {
		return
	}
	colours, edge, stencil := r.colours(figures)
	for _, c := range colours {
		paint, found := r.paintOf(p, c.Colour, at)
		if !found {
			continue
		}
		s.AreaM2 += c.AreaM2
		s.Working = append(s.Working, quantity.Working{Quantity: "area_m2", Of: c.Colour, Value: c.AreaM2, Unit: "m²",
			Formula: "sum of the " + c.Colour + " areas of the markings", Terms: figures.terms(c.Colour), Links: figures.links(c.Colour), Source: figures.source()})
		r.hang(figures, c.Colour, c.AreaM2, r.paint(&p.StepBase, &p.FilmPlan, plan, s, paint, c.AreaM2, c.Colour, at))
	}
	if r.faults.HasBelow(at) {
		return
	}
	r.maskMarkings(p, s, figures, edge, stencil, at)
	r.applicationHours(&p.StepBase, s, plan, s.AreaM2, p.Coats)
	r.paintWaste(s)
}

// figure is a marking measured, with how many of it are painted.
type figure struct {
	id    string
	count float64
	one   marking.Measurement
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
		found = append(found, figure{id: id, count: float64(r.job.Markings[k].Count), one: one})
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

// colours adds up area by colour, in the order in which the colours first
// appear, the edges masked once, and the stencil film.
func (r *run) colours(fs figures) (sums []marking.ColourArea, edgeM, stencilM2 float64) {
	index := map[string]int{}
	for _, f := range fs {
		edgeM += f.one.EdgeOnceM * f.count
		stencilM2 += f.one.StencilFilmM2 * f.count
		for _, c := range f.one.Painted {
			k, known := index[c.Colour]
			if !known {
				k = len(sums)
				index[c.Colour] = k
				sums = append(sums, marking.ColourArea{Colour: c.Colour})
			}
			sums[k].AreaM2 += c.AreaM2 * f.count
		}
	}
	return sums, edgeM, stencilM2
}

func (fs figures) terms(colour string) map[string]float64 {
	terms := map[string]float64{}
	for _, f := range fs {
		for _, c := range f.one.Painted {
			if c.Colour == colour {
				terms[f.id] = c.AreaM2 * f.count
			}
		}
	}
	return terms
}

func (fs figures) links(colour string) []quantity.Link {
	var links []quantity.Link
	for _, f := range fs {
		if slices.ContainsFunc(f.one.Painted, func(c marking.ColourArea) bool { return c.Colour == colour }) {
			links = append(links, quantity.From(f.id, quantity.Node{Kind: "marking", ID: f.id, Quantity: "area_m2", Of: colour}))
		}
	}
	return links
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
	for _, some := range r.catalogue.Products() {
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
	for _, some := range r.catalogue.Products() {
		if paint, ok := some.(*products.Paint); ok && paint.Family != "" && !seen[paint.Family] {
			seen[paint.Family] = true
			names = append(names, paint.Family)
		}
	}
	return names
}

// maskMarkings tapes every boundary once, light colours first and darker ones
// cut back; or, where the step names a film, cuts a stencil instead.
func (r *run) maskMarkings(p *Mark, s *StepEstimate, fs figures, edgeM, stencilM2 float64, at string) {
	if p.Mask != nil && !*p.Mask {
		return
	}
	if p.Masked.Film != "" {
		film, ok := product[*products.Film](r.checker, p.Masked.Film, at, "film", "film or paper")
		if !ok {
			return
		}
		length := stencilM2 / (film.WidthMM / 1000)
		r.use(s, film, length)
		s.Working = append(s.Working, quantity.Working{Quantity: "stencil_film_m", Value: length, Unit: "m", Formula: "film/width",
			Terms: map[string]float64{"film": stencilM2, "width": film.WidthMM / 1000}, Uses: film.ID, Source: "identity: the box of each figure with a margin all round"})
		return
	}
	tape := p.Tape
	if tape == "" {
		tape = fineLine
		r.assumed.add(p.ID, "tape at the edges of markings where the step names none: "+fineLine, 1, "", "common practice: narrow tape goes round curves")
	}
	r.tape(tape, &p.StepBase, s, edgeM, at)
	s.Working = append(s.Working, quantity.Working{Quantity: "masking_tape_m", Value: edgeM, Unit: "m", Formula: "sum of the edges, each masked once, times how many are painted",
		Terms: fs.edges(), Uses: tape, Source: "identity"})
}

func (fs figures) edges() map[string]float64 {
	terms := make(map[string]float64, len(fs))
	for _, f := range fs {
		terms[f.id] = f.one.EdgeOnceM * f.count
	}
	return terms
}
