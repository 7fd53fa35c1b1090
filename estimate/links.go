package estimate

import "filmbuild/surfaces/quantity"

// symbols say where the terms of a calculation come from, by their symbols.
type symbols []quantity.Link

// link gives a working the links of those of its terms that are known here.
func (y symbols) link(w *quantity.Working) {
	if w.Links == nil {
		w.Links = make([]quantity.Link, 0, len(w.Terms))
	}
	for _, l := range y {
		if _, has := w.Terms[l.Term]; has {
			w.Links = append(w.Links, l)
		}
	}
}

// valueOf names a value of the catalogue: kind is product, method or operation.
func valueOf(kind, id, name string) quantity.Node {
	return quantity.Node{Kind: kind, ID: id, Quantity: name}
}

// patched names what the test patches of a step gave.
func patched(step, name string) quantity.Node {
	return quantity.Node{Kind: "patches", ID: step, Quantity: name}
}

// sum adds a working that is the sum of others of the step: those that choose
// finds. Nothing is added where the step has a working of that name already, or
// nothing to sum.
func (s *StepEstimate) sum(name, unit, of string, choose func(*quantity.Working) bool) {
	total := quantity.Working{Quantity: name, Unit: unit, Formula: "sum of " + of, Terms: map[string]float64{}, Source: "identity"}
	for i := range s.Working {
		w := &s.Working[i]
		if w.Quantity == name && w.Of == "" {
			return
		}
		if !choose(w) {
			continue
		}
		term := w.Quantity + " " + w.Of
		total.Value += w.Value
		total.Terms[term] = w.Value
		total.Links = append(total.Links, quantity.From(term, quantity.StepWorking(s.ID, w.Quantity, w.Of)))
	}
	if len(total.Terms) > 0 {
		s.Working = append(s.Working, total)
	}
}

// sums adds the workings of what the fields of a step are the sums of.
func (s *StepEstimate) sums() {
	s.sum("litres", "L", "what leaves the tins for the surface", func(w *quantity.Working) bool { return w.Uses != "" && w.Unit == "L" && w.Quantity != "cleaning_l" })
	s.sum("hours", "h", "the works of the step", func(w *quantity.Working) bool { return w.Quantity == "part_hours" })
	s.sum("dry_film_kg", "kg", "the films", func(w *quantity.Working) bool { return w.Quantity == "dry_film_kg" })
	s.sum("voc_kg", "kg", "what the paints and thinners give off", func(w *quantity.Working) bool { return w.Quantity == "voc_kg" })
	s.sum("area_m2", "m²", "the colours", func(w *quantity.Working) bool { return w.Quantity == "area_m2" })
	s.sum("waste_kg", "kg", "the solids that are not on the part, and the solvent of cleaning", func(w *quantity.Working) bool {
		return w.Quantity == "lost_solids_kg" || w.Quantity == "cleaning_waste_kg"
	})
}
