package estimate

import (
	"filmbuild/products"
	"filmbuild/surfaces/quantity"
)

// coverOverlapM is how far film or paper reaches beyond the edge of an opening.
//
// Source: USAF TO 1-1-8 para 2.3, covers overlap about 1/2 in (read).
const coverOverlapM = 0.0127

// tapeFor returns the product id of the tape where the step names none.
func tapeFor(operation string) string {
	if operation == "blast" {
		return "blast-tape-48"
	}
	return "masking-tape-24"
}

const (
	defaultCover = "masking-film"
	fineLine     = "fine-line-tape-6"
)

// mask tapes the edges of a selection and covers the openings in it, unless the
// step says not to. always is false for operations that are masked only when
// the step asks for it.
func (r *run) mask(m *Masked, b *StepBase, s *StepEstimate, sel selection, always bool, at string) {
	wanted := always
	if m.Mask != nil {
		wanted = *m.Mask
	}
	if wanted {
		r.tapeEdges(m.Tape, m.Film, b, s, sel, at)
	}
}

func (r *run) tapeEdges(tapeID, coverID string, b *StepBase, s *StepEstimate, sel selection, at string) {
	for _, id := range sel.bare {
		s.Warnings = append(s.Warnings, "region "+id+" has no edge_m: no tape is counted for it")
	}
	for _, id := range sel.spread {
		s.Warnings = append(s.Warnings, "region "+id+" is part of faces with openings or joints whose place in it is not known: they are taken off it in proportion, and no tape is counted for those within it; give them from_m and to_m, or region")
	}
	if edge := sel.edgeM(); edge > 0 {
		id := r.tape(tapeID, b, s, edge, at)
		s.Working = append(s.Working, quantity.Working{Quantity: "masking_tape_m", Value: edge, Unit: "m",
			Formula: "openings + borders + regions", Source: "identity; one pass, nothing added for waste",
			Terms: map[string]float64{"openings": sel.openingsM, "borders": sel.bordersM, "regions": sel.regionsM}, Uses: id})
	}
	if sel.openingsM2 > 0 {
		r.cover(coverID, s, sel.openingsM2, sel.openingsM, at)
	}
}

// tape notes a length of tape and returns the id of the product it takes.
func (r *run) tape(id string, b *StepBase, s *StepEstimate, length float64, at string) string {
	if id == "" {
		id = tapeFor(b.Operation)
		r.assumed.add(b.ID, "tape where the step names none: "+id, 1, "", "common practice")
	}
	if tape, ok := product[*products.Tape](r.checker, id, at, "tape", "tape"); ok {
		s.MaskingTapeM += length
		r.use(s, tape, length)
		if b.Operation != "mask" {
			r.tapedM += length
		}
		r.assumed.add("", "waste of masking tape, beyond allowance_percent", 0, "%", "no published figure was found; 10 to 15 % is usual: give allowance_percent (common practice)")
	}
	return id
}

// untimed says how long the tape takes that steps of other work lay: only mask
// steps have hours for it.
func (r *run) untimed() {
	if r.tapedM == 0 {
		return
	}
	rate := r.operation("mask").Rate
	r.assumed.add("", "person-hours to lay the tape of steps that do other work: in no figure; make mask steps of it, with mask false elsewhere, to count them", r.tapedM/rate.Likely, "h", noted(rate))
}

// cover notes film or paper over openings.
//
//	area = openings + edge · overlap
func (r *run) cover(id string, s *StepEstimate, areaM2, edgeM float64, at string) {
	if id == "" {
		id = defaultCover
	}
	film, ok := product[*products.Film](r.checker, id, at, "film", "film or paper")
	if !ok {
		return
	}
	area := areaM2 + edgeM*coverOverlapM
	length := area / (film.WidthMM / 1000)
	r.use(s, film, length)
	s.Working = append(s.Working, quantity.Working{Quantity: "cover_m", Value: length, Unit: "m",
		Formula: "(openings + edge·overlap)/width", Source: "USAF TO 1-1-8 para 2.3: covers overlap about 1/2 in",
		Terms: map[string]float64{"openings": areaM2, "edge": edgeM, "overlap": coverOverlapM, "width": film.WidthMM / 1000}, Uses: film.ID})
}

// work masks as a step of its own; its hours go by the length of tape.
func (m *Mask) work(r *run, s *StepEstimate, at string) {
	sel, ok := r.surface(&m.StepBase, s, at)
	if !ok {
		return
	}
	r.tapeEdges(m.Tape, m.Film, &m.StepBase, s, sel, at)
	if s.MaskingTapeM == 0 && !r.faults.HasBelow(at) {
		s.Warnings = append(s.Warnings, "what is chosen has no edges, so there is nothing to tape")
	}
	rate, source, from := 0.0, "the job", quantity.Setting(m.ID, "rate_m_h")
	switch {
	case m.RateMH != nil:
		rate = *m.RateMH
	default:
		book := r.operation("mask")
		rate, source, from = book.Rate.Likely, book.Rate.Text(), valueOf("operation", "mask", "rate")
		r.assumed.add(m.ID, "tape one person lays in an hour", rate, "m/h", source)
	}
	links := []quantity.Link{quantity.From("rate", from)}
	if s.MaskingTapeM > 0 {
		links = append(links, quantity.From("tape", quantity.StepWorking(m.ID, "masking_tape_m", "")))
	}
	s.crewHours(&m.StepBase, s.MaskingTapeM/rate/float64(m.Crew), "tape/(rate·crew)", map[string]float64{"tape": s.MaskingTapeM, "rate": rate}, source, links...)
}
