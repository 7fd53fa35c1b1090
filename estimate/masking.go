package estimate

import (
	"filmbuild/surfaces/quantity"
)

// mask tapes the edges of a selection and covers what lies beside them, unless
// the step says not to. always is false for operations that are masked only
// when the step asks for it.
func (r *run) mask(m *Masked, b *StepBase, s *StepEstimate, sel selection, always bool, at string) {
	if r.job.masks(r.job.Steps[r.masks.now]) && (always || m.Mask != nil) {
		if laying, ok := r.laying(m, b, at); ok {
			r.tapeEdges(laying, s, sel)
		}
	}
	if coat, painted := r.job.Steps[r.masks.now].(*Coat); painted {
		r.masks.coated(sel, coat.Product)
	}
}

func (r *run) tapeEdges(y laying, s *StepEstimate, sel selection) {
	for _, id := range sel.bare {
		s.Warnings = append(s.Warnings, "region "+id+" has no edge_m: no tape is counted for it")
	}
	for _, id := range sel.spread {
		s.Warnings = append(s.Warnings, "region "+id+" is part of faces with openings or joints whose place in it is not known: they are taken off it in proportion, and no tape is counted for those within it; give them from_m and to_m, or region")
	}
	r.layTape(y, s, r.edgesOf(sel))
}

// withMasking adds the hours of masking to a formula of hours.
func (s *StepEstimate) withMasking(formula string, terms map[string]float64, links []quantity.Link) (string, []quantity.Link) {
	if s.MaskingHours == 0 {
		return formula, links
	}
	terms["masking"] = s.MaskingHours
	return formula + " + masking", append(links, quantity.From("masking", quantity.StepWorking(s.ID, "masking_hours", "")))
}

// work masks as a step of its own, for the step that follows; its hours go by
// the length of tape.
func (m *Mask) work(r *run, s *StepEstimate, at string) {
	sel, ok := r.surface(&m.StepBase, s, at)
	if !ok {
		return
	}
	laying, ok := r.layingAhead(m, at)
	if !ok {
		return
	}
	r.tapeEdges(laying, s, sel)
	if len(s.Masking) == 0 {
		s.Warnings = append(s.Warnings, "what is chosen has no edges, so there is nothing to tape")
	}
	setup := m.SetupH * float64(m.Crew)
	s.Hours = setup + s.MaskingHours
	terms := map[string]float64{"setup": m.SetupH, "crew": float64(m.Crew)}
	formula, links := s.withMasking("setup·crew", terms, []quantity.Link{quantity.From("setup", quantity.Setting(m.ID, "setup_h")), quantity.From("crew", quantity.Setting(m.ID, "crew"))})
	s.Working = append(s.Working, quantity.Working{Quantity: "hours", Value: s.Hours, Unit: "h", Formula: formula, Terms: terms, Source: "identity", Links: links})
}
