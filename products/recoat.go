package products

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Recoat is when the next coat may go on a paint, for a range of temperature of
// the surface. Between the least and the most time nothing but cleanliness is
// asked; up to wipe_until_h a solvent wipe will do; after that the film is
// treated as missed says.
type Recoat struct {
	FromC      float64  `json:"from_c" limit:"[-20,80]" doc:"lowest temperature of the surface it holds for"`
	ToC        float64  `json:"to_c" limit:"[-20,80]" doc:"highest temperature of the surface it holds for"`
	MinH       *float64 `json:"min_h,omitempty" limit:"[0,10000]" doc:"least time to the next coat"`
	MaxH       float64  `json:"max_h" limit:"(0,100000]" doc:"most time to the next coat without further work"`
	WipeUntilH *float64 `json:"wipe_until_h,omitempty" limit:"(0,100000]" doc:"time up to which a solvent wipe is enough"`
	Missed     string   `json:"missed,omitempty" doc:"what the film needs after that: scuff or tack_coat"`
	Source     string   `json:"source,omitempty" doc:"where it comes from"`
}

// RecoatRemedies lists what may be done to a film that has stood too long.
func RecoatRemedies() []string { return []string{"scuff", "tack_coat"} }

// fault says what is wrong within one window, and where.
func (w Recoat) fault() (field, code, detail string) {
	switch {
	case w.ToC < w.FromC:
		return "to_c", "not_increasing", fmt.Sprintf("to_c is %g °C, below from_c at %g °C", w.ToC, w.FromC)
	case w.MinH != nil && *w.MinH > w.MaxH:
		return "max_h", "not_increasing", fmt.Sprintf("max_h is %g h, less than min_h at %g h", w.MaxH, *w.MinH)
	case w.WipeUntilH != nil && *w.WipeUntilH < w.MaxH:
		return "wipe_until_h", "not_increasing", fmt.Sprintf("wipe_until_h is %g h, less than max_h at %g h", *w.WipeUntilH, w.MaxH)
	case w.Missed != "" && w.Missed != "scuff" && w.Missed != "tack_coat":
		return "missed", "unknown_kind", fmt.Sprintf("missed is %q; it must be one of %s", clip(w.Missed), strings.Join(RecoatRemedies(), ", "))
	}
	return "", "", ""
}

// mostRecoats is more rows than any data sheet has.
const mostRecoats = 50

func (p *Paint) checkRecoat(report func(pointer, code, detail string)) {
	if n := len(p.Recoat); n > mostRecoats {
		report("/recoat", "too_many", fmt.Sprintf("recoat has %d entries; the most is %d", n, mostRecoats))
		return
	}
	for i, w := range p.Recoat {
		at := fmt.Sprintf("/recoat/%d", i)
		if field, code, detail := w.fault(); code != "" {
			report(at+"/"+field, code, detail)
		} else if i > 0 && w.FromC <= p.Recoat[i-1].FromC {
			report(at+"/from_c", "not_increasing", "the rows of recoat must rise in from_c; put the coldest first")
		}
	}
}

// recoats reads the windows of recoat.csv. A row is of a paint or of all paints
// of a family; rows of the paint itself come before those of its family.
func (l *loader) recoats() {
	windows := map[string][]Recoat{}
	used := map[string]row{}
	for _, r := range l.rows("recoat.csv") {
		key := r.required("of")
		for _, column := range []string{"from_c", "to_c", "max_h"} {
			r.required(column)
		}
		w := Recoat{Missed: r.text("missed"), Source: l.provenance(r).Text()}
		from, ok1 := r.number("from_c")
		to, ok2 := r.number("to_c")
		most, ok3 := r.number("max_h")
		if !ok1 || !ok2 || !ok3 {
			continue // noted, or empty and noted by required
		}
		w.FromC, w.ToC, w.MaxH = from, to, most
		if r.text("min_h") != "" {
			if least, ok := r.number("min_h"); ok {
				w.MinH = &least
			}
		}
		if r.text("wipe_until_h") != "" {
			if wipe, ok := r.number("wipe_until_h"); ok {
				w.WipeUntilH = &wipe
			}
		}
		if field, _, detail := w.fault(); detail != "" {
			r.fault(field, "%s", detail)
		}
		windows[key], used[key] = append(windows[key], w), r
	}
	for _, p := range l.c.products {
		paint, ok := p.(*Paint)
		if !ok {
			continue
		}
		if own, found := windows[paint.ID]; found {
			paint.Recoat = own
			delete(used, paint.ID)
		} else if of, found := windows[paint.Family]; found {
			paint.Recoat = of
		}
		delete(used, paint.Family)
	}
	for _, key := range slices.Sorted(maps.Keys(used)) {
		used[key].fault("of", "there is no paint and no family %q", clip(key))
	}
}
