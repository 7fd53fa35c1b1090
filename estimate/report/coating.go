package report

import (
	"fmt"
	"strings"

	"filmbuild/estimate"
)

// weights prints what paint adds to the parts and what comes off them.
func (t *table) weights() {
	if len(t.e.Weights) == 0 {
		return
	}
	t.section("WEIGHT OF PAINT ON THE PARTS (before they are hung, turned or balanced)")
	unit := t.unit("kg")
	g := grid{columns: []column{{"part", false}, {"count", true}, {"on " + unit, true}, {"off " + unit, true}, {"net " + unit, true}, {"net each " + unit, true}}}
	for _, w := range t.e.Weights {
		name := w.Component
		if name == "" {
			name = "markings that are nowhere"
		}
		g.row(name, fmt.Sprint(w.Count), t.number(w.AddedKg, "kg", 2), t.number(w.RemovedKg, "kg", 2), t.number(w.NetKg, "kg", 2), t.number(w.NetEachKg, "kg", 2))
	}
	g.write(&t.out)
}

// films prints the readings of the dry film, and when a coat goes on the last.
func (t *table) films() {
	var lines []string
	for i := range t.e.Steps {
		s := &t.e.Steps[i]
		if c := s.FilmCheck; c != nil {
			lines = append(lines, s.ID+": "+t.filmCheck(c))
		}
		for _, w := range s.Recoat {
			lines = append(lines, s.ID+": "+t.recoat(w))
		}
	}
	if len(lines) == 0 {
		return
	}
	t.section("MEASURE AND TIME THE COATS")
	for _, line := range lines {
		paragraph(&t.out, "- ", line)
	}
}

func (t *table) filmCheck(c *estimate.FilmCheck) string {
	film := t.measured(c.DryFilmUM, "µm") + " dry"
	if c.SystemFilmUM != nil {
		film += ", " + t.measured(*c.SystemFilmUM, "µm") + " with the coats below"
	}
	text := fmt.Sprintf("%s; %d readings on %d spots in %d areas, spots at least %s", film, c.Readings, c.Spots, c.Areas, t.measured(c.LeastSpotUM, "µm"))
	if c.LeastReadingUM != nil && c.MostBelow != nil {
		text += fmt.Sprintf(", no reading below %s and at most %d below the film asked for", t.measured(*c.LeastReadingUM, "µm"), *c.MostBelow)
	}
	return text
}

func (t *table) recoat(w estimate.RecoatPlan) string {
	from := "as soon as the data sheet says"
	if w.MinH != nil {
		from = t.measured(*w.MinH, "h")
	}
	text := fmt.Sprintf("over %s from %s to %s at %s", w.After, from, t.measured(w.MaxH, "h"), t.measured(w.SurfaceC, "°C"))
	if w.WipeUntilH != nil {
		text += ", to " + t.measured(*w.WipeUntilH, "h") + " after a solvent wipe"
	}
	works := make([]string, 0, len(w.IfMissed))
	for _, r := range w.IfMissed {
		works = append(works, fmt.Sprintf("%s (%s of %s, %s)", strings.ReplaceAll(r.Work, "_", " "), t.measured(r.Quantity, r.Unit), r.Product, t.measured(r.Hours, "h")))
	}
	if len(works) == 0 {
		return text
	}
	if w.Added {
		return text + "; that is missed, and the figures hold the work for it: " + strings.Join(works, ", ")
	}
	return text + "; if that is missed: " + strings.Join(works, ", ")
}
