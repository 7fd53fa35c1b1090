package estimate

import (
	"fmt"
	"math"
	"slices"

	"filmbuild/products"
)

// timeOn works out after how many coats the tape has to come off:
//
//	coats for one laying = ⌊time of removal / time on for one coat⌋, at least 1
//
// Source: identity; the time of removal is data of the tape.
func (r *run) timeOn(y *laying, m *Masked) {
	step := r.job.Steps[y.step]
	s := &r.estimate.Steps[r.masks.now]
	painted, film := step.(interface{ film() *FilmPlan })
	if film {
		y.coats = painted.film().Coats
	}
	if coat, ok := step.(*Coat); ok {
		y.product = coat.Product
	}
	if m.TapeAtC != nil {
		for _, t := range y.tapes() {
			if t.RemovalAtC != nil && *m.TapeAtC > *t.RemovalAtC {
				s.Warnings = append(s.Warnings, fmt.Sprintf("%s holds up to %.4g °C only (%s), and tape_at_c is %.4g: take another tape, or pull it before", t.ID, *t.RemovalAtC, t.RemovalSource, *m.TapeAtC))
			}
		}
	}
	if !film {
		return
	}
	on, given := first(m.TapeOnH, r.job.Masking.TapeOnH)
	if !given {
		var source string
		on, source = r.coatDries(step)
		r.assumed.add(y.id, "time that tape stays on for each coat, until the next or until it is pulled", on, "h", source+"; sources disagree when tape is to be pulled (MK-12 to MK-14): give tape_on_h by the data sheet")
	}
	for _, t := range y.tapes() {
		if t.RemovalH == nil {
			continue
		}
		fits := int(math.Floor(*t.RemovalH/on + 1e-9))
		y.perLaying = min(y.perLaying, max(1, fits))
		switch {
		case fits < 1:
			s.Warnings = append(s.Warnings, fmt.Sprintf("%s should be off within %.4g h%s, and one coat keeps it on for %.4g h: take a tape that stays longer, or pull it sooner (%s)", t.ID, *t.RemovalH, upTo(t), on, t.RemovalSource))
		case y.coats > fits:
			s.Warnings = append(s.Warnings, fmt.Sprintf("%s should be off within %.4g h%s, which is %s of %.4g h: for %d coats the edges are taped %d times (%s)", t.ID, *t.RemovalH, upTo(t), plural(fits, "coat"), on, y.coats, over(y.coats, fits), t.RemovalSource))
		}
	}
}

// roomC is the temperature at which drying is looked up, as sources of pot life
// and recoating have it (70 °F).
const roomC = 21

// coatDries is the least time to the next coat of what a step paints.
func (r *run) coatDries(step Step) (hours float64, source string) {
	var id string
	switch p := step.(type) {
	case *Coat:
		id = p.Product
	case *Mark:
		for some := range r.catalogue.All() {
			if paint, ok := some.(*products.Paint); ok && paint.Family == p.Family {
				id = paint.ID
				break
			}
		}
	}
	if some, ok := r.catalogue.Product(id); ok {
		if paint, ok := some.(*products.Paint); ok {
			for _, w := range paint.Recoat {
				if w.MinH != nil && w.FromC <= roomC && roomC <= w.ToC {
					return *w.MinH, fmt.Sprintf("least time to the next coat of %s at %d °C: %s", paint.ID, roomC, w.Source)
				}
			}
		}
	}
	return coatOnH, "USAF TO 1-1-8 para 6.12.7, second topcoat after 4 h (FN-7, mark H)"
}

func upTo(t *products.Tape) string {
	if t.RemovalAtC == nil {
		return ""
	}
	return fmt.Sprintf(" at up to %.4g °C", *t.RemovalAtC)
}

func (y *laying) tapes() []*products.Tape {
	return slices.DeleteFunc([]*products.Tape{y.tape, y.fine}, func(t *products.Tape) bool { return t == nil })
}

// over is how many layings so many coats take, rounded up.
func over(coats, perLaying int) int {
	if coats <= 0 {
		return 0
	}
	return 1 + (coats-1)/perLaying
}

// passes decides how often a step tapes an edge, and says why where it is not
// simply once.
func (r *run) passes(y *laying, e *edge) {
	e.Passes = max(1, over(y.coats, y.perLaying))
	if e.known && !y.forced && e.Kind != "marking" {
		if y.product != "" && r.masks.paintOn(e.other) == y.product {
			e.Passes, e.Note = 0, "the same paint on both sides: no line to tape"
			return
		}
		if k := r.laterTaper(y.step, e.mine, e.other); k >= 0 && !y.twoSided {
			e.Passes, e.ServedBy, e.Note = 0, r.job.Steps[k].base().ID, "this step may run over the border, which the later one tapes"
			r.assumed.add(y.id, "borders between two colours are taped once, by the later step; the earlier one runs over them", 1, "", "common practice: edge_rule two_sided tapes them in both, mask true in this step")
			return
		}
	}
	t := r.masks.laid[e.key]
	if t == nil || t.class != y.class || (!t.explicit && !y.keep) {
		r.masks.laid[e.key] = &laidTape{step: y.id, class: y.class, explicit: y.explicit, passes: e.Passes, coats: y.coats, perLaying: y.perLaying}
		return
	}
	t.coats += y.coats
	e.Passes = max(0, over(t.coats, t.perLaying)-t.passes)
	t.passes += e.Passes
	if e.Passes == 0 {
		e.ServedBy, e.Note = t.step, "the tape of that step is still on"
	} else {
		e.Note = "the tape of step " + t.step + " has to come off in between"
	}
	r.assumed.add(y.id, "edges that a mask step (or, with keep_tape, the step before) has taped are not taped again, as long as the same kind of work goes on and the tape may stay on", 1, "", "choice of the method; a mask step serves the steps that follow it up to the next work of another kind (removal, wet work, painting)")
}
