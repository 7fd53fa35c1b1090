package estimate

import (
	"fmt"

	"filmbuild/estimate/climate"
	"filmbuild/products"
)

// RecoatPlan is when a coat may go on the coat below it, and what to do when
// that time is missed.
type RecoatPlan struct {
	After      string   `json:"after"`   // the step whose coat lies below
	Product    string   `json:"product"` // the paint of that coat
	SurfaceC   float64  `json:"surface_c"`
	MinH       *float64 `json:"min_h,omitempty"`
	MaxH       float64  `json:"max_h"`
	WipeUntilH *float64 `json:"wipe_until_h,omitempty"` // with a solvent wipe
	GapH       *float64 `json:"gap_h,omitempty"`        // as given, or by the starts of the steps
	State      string   `json:"state"`                  // unknown, early, in_time, wipe or missed
	IfMissed   []Remedy `json:"if_missed"`
	Added      bool     `json:"added"` // the work of if_missed that the state asks for is in the figures of the step
	Source     string   `json:"source"`
}

// Remedy is one piece of work on a coat that has stood too long.
type Remedy struct {
	Work     string  `json:"work"` // wipe, scuff or tack_coat
	Product  string  `json:"product"`
	Quantity float64 `json:"quantity"`
	Unit     string  `json:"unit"`
	Hours    float64 `json:"hours"` // person-hours
	Text     string  `json:"text"`
}

// usualWorkC is taken for the surface where nothing says how warm it is: 70 °F.
//
// Source: UFGS 09971 3.7.1.3 gives pot lives for it (reference planning C01).
const usualWorkC = 21.0

// recoat holds the wait before a coat against the window of the coat below, and
// proposes what to do when it is missed. Where the job says that it was, or
// gives a wait that is too long, the work is added to the step.
func (r *run) recoat(p *Coat, s *StepEstimate, plan applied, sel selection, paint *products.Paint) {
	below := r.under(sel)
	if len(below) == 0 && (p.GapH != nil || p.Recoat == "missed") {
		s.warnf("no coat of this job lies below: gap_h and recoat say nothing here")
	}
	for _, l := range below {
		if !l.scuffed && l.paint != nil {
			r.recoatOn(p, s, plan, l, paint, sel.areaM2)
		}
	}
}

func (r *run) recoatOn(p *Coat, s *StepEstimate, plan applied, l topCoat, paint *products.Paint, areaM2 float64) {
	surface := usualWorkC
	if t := workC(&p.StepBase, &p.FilmPlan); t != nil {
		surface = *t
	}
	window, source, found := windowOf(l.paint, surface)
	if !found {
		if p.GapH != nil || p.Recoat == "missed" {
			s.warnf("no time to recoat %s is known at %.3g °C: nothing is added for it; give recoat to the product", l.paint.ID, surface)
		}
		return
	}
	w := RecoatPlan{After: l.step, Product: l.paint.ID, SurfaceC: surface, MinH: window.MinH, MaxH: window.MaxH, WipeUntilH: window.WipeUntilH, Source: source}
	w.GapH = p.GapH
	if begins := startH(p.Starts); w.GapH == nil && begins != nil && l.endsH != nil {
		gap := *begins - *l.endsH
		w.GapH = &gap
	}
	w.State = w.judge(p.Recoat)
	w.IfMissed = r.remedies(p, plan, window, paint, areaM2)
	switch w.State {
	case "early":
		s.warnf("%.4g h after %s is too early for this coat: %s wants at least %.4g h at %.3g °C", *w.GapH, l.step, l.paint.ID, *w.MinH, surface)
	case "wipe":
		w.Added = true
		r.remedy(p, s, plan, l.step, w.IfMissed[:1], paint, areaM2)
	case "missed":
		w.Added = true
		r.remedy(p, s, plan, l.step, w.IfMissed, paint, areaM2)
	}
	if w.Added {
		s.warnf("the time to recoat %s was missed (%.4g h at %.3g °C): %s is added; see recoat", l.paint.ID, w.MaxH, surface, works(w))
	}
	s.Recoat = append(s.Recoat, w)
}

func works(w RecoatPlan) string {
	if w.State == "wipe" {
		return "a solvent wipe"
	}
	if w.IfMissed[len(w.IfMissed)-1].Work == "tack_coat" {
		return "a wipe and a tack coat"
	}
	return "a wipe and scuffing"
}

// judge says where a wait lies in its window.
func (w *RecoatPlan) judge(said string) string {
	switch {
	case said == "missed":
		return "missed"
	case w.GapH == nil:
		return "unknown"
	case w.MinH != nil && *w.GapH < *w.MinH:
		return "early"
	case *w.GapH <= w.MaxH:
		return "in_time"
	case w.WipeUntilH != nil && *w.GapH <= *w.WipeUntilH:
		return "wipe"
	}
	return "missed"
}

// windowOf finds the times to recoat a paint at a surface temperature; the text
// says where they come from.
func windowOf(paint *products.Paint, surface float64) (products.Recoat, string, bool) {
	table := make([]climate.RecoatTime, len(paint.Recoat))
	for i, row := range paint.Recoat {
		table[i] = climate.RecoatTime{FromC: row.FromC, ToC: row.ToC, LeastH: row.MinH, MostH: row.MaxH}
	}
	row, scaled, found := climate.RecoatByRule(table, surface)
	if !found {
		return products.Recoat{}, "", false
	}
	w := paint.Recoat[0]
	for _, own := range paint.Recoat {
		if own.FromC == row.FromC {
			w = own
		}
	}
	source := w.Source
	if source == "" {
		source = "the job's product " + paint.ID
	}
	if w.WipeUntilH != nil {
		wipe := *w.WipeUntilH * row.MostH / w.MaxH
		w.WipeUntilH = &wipe
	}
	w.MinH, w.MaxH = row.LeastH, row.MostH
	if scaled {
		source = fmt.Sprintf("%s; scaled from %.3g to %.3g °C by the rule of 10 °C (assumption)", source, w.FromC, w.ToC)
	}
	return w, source, true
}

// workC is the temperature at the work, where the step gives one.
func workC(b *StepBase, f *FilmPlan) *float64 {
	if f.TemperatureC != nil {
		return f.TemperatureC
	}
	if b.Conditions != nil {
		return b.Conditions.SurfaceC
	}
	return nil
}
