package estimate

import (
	"filmbuild/estimate/blast"
	"filmbuild/surfaces/quantity"
)

// removalHours notes the hours of taking paint off by other means than blasting,
// and the rate that they rest on. A step whose rate is burdened and that has none
// of its own takes the book's burdened one, which is for all coats together.
func (r *run) removalHours(b *StepBase, s *StepEstimate, operation, burdened string, filmUM float64, sel selection, times int) {
	t, book, crew := r.tested(b.ID), r.operation(operation), float64(b.Crew)
	s.Removal.RateM2H, s.Removal.RateBasis, s.Removal.RateSource = book.Rate.Likely*crew, string(blast.NozzleOn), book.Rate.Text()
	switch {
	case t.hours > 0:
		s.Removal.RateM2H, s.Removal.RateSource = t.timedM2/t.hours, "test patch"
	case b.RateM2H != nil:
		s.Removal.RateM2H, s.Removal.RateBasis, s.Removal.RateSource = *b.RateM2H, b.basis(), "the job"
	case b.basis() == string(blast.Burdened):
		pace := r.burdenedRate(b, s, burdened, filmUM)
		s.Removal.RateM2H, s.Removal.RateBasis, s.Removal.RateSource = pace.rateM2H*crew, pace.basis, pace.source
		link := pace.link
		link.Term, link.Times = "rate", crew
		s.crewHours(b, sel.areaM2/(pace.rateM2H*crew), "A/rate", map[string]float64{"A": sel.areaM2, "rate": pace.rateM2H * crew}, pace.source,
			link, quantity.From("A", quantity.StepWorking(b.ID, "area_m2", "")))
		return
	}
	r.areaHours(b, s, operation, sel.areaM2, times)
}
