package chain

import "strconv"

const (
	// rustLimitH is how long blasted steel may wait for primer, in h. Source:
	// SSPC-type blast specification of 1982, "preferably within 24 h" (reference
	// planning C18, blasting S-27, read).
	rustLimitH = 24.0
	// treatedLimitH is how long treated light metal may wait for paint, in h.
	// Source: USAF TO 1-1-8 para 5.6.2e (reference planning C14, read).
	treatedLimitH = 48.0
)

// waits finds bare metal that is left too long before its first coat: from the
// start of the step that bared (or treated) it to the start of this one for what
// was bared first, from its end for what was bared last. By the calendar where
// both steps say when they start, otherwise by the hours of work, nights and
// drying left out.
func (s *state) waits(a *Act) {
	if s.exposed != nil && s.piece.rusts() {
		s.wait("rust_wait", s.exposed, a, rustLimitH)
	}
	if s.treated != nil && s.piece.light() {
		s.wait("treated_wait", s.treated, a, treatedLimitH)
	}
}

func (s *state) wait(code string, from, to *Act, limit float64) {
	first, last, clock := to.Begin-from.Begin, to.Begin-from.End, "of work (nights and drying come on top)"
	if from.Starts != nil && to.Starts != nil {
		first, clock = *to.Starts-*from.Starts, "by the dates of the steps"
	}
	advice := "Do it in sections, so that what is opened in one shift is coated in the next, or protect it and wash it off just before"
	if last > limit {
		advice = "Even what was done last waits that long: bring the steps closer together, or protect it and wash it off just before"
	}
	if first <= limit {
		return
	}
	s.find(code, to, "before", from.Step, "hours", strconv.FormatFloat(first, 'f', 0, 64), "clock", clock,
		"limit", strconv.FormatFloat(limit, 'f', -1, 64), "advice", advice)
}
