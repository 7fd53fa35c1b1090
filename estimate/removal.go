package estimate

import (
	"filmbuild/surfaces/quantity"
)

// oldFilmDensity is taken where a component gives the thickness of its old
// paint and not the density.
//
// Source: assumption; published examples of removed paint use 1.4 and 1.5 kg/L.
const oldFilmDensity = 1.5

// remove takes the old paint off a selection, as far as an earlier step has
// left any, and returns its mass and mean thickness.
//
//	mass = area · share · film · density
func (r *run) remove(b *StepBase, s *StepEstimate, sel selection) (kilograms, filmUM float64) {
	var volume float64
	known := false
	for _, p := range sel.patches {
		surface := &r.surfaces[p.surface]
		f := &surface.faces[p.face]
		comp := surface.component
		r.bared(p)
		share := min(p.share, f.paint)
		f.paint -= share
		known = known || comp.ExistingFilmUM > 0
		if comp.ExistingFilmUM == 0 || share == 0 {
			continue
		}
		density := oldFilmDensity
		if comp.ExistingFilmDensityKgL != nil {
			density = *comp.ExistingFilmDensityKgL
		} else {
			r.assumed.add(b.ID, "density of the old paint, where existing_film_density_kg_l is not given", density, "kg/L", "assumption; published examples of removed paint use 1.4 and 1.5")
		}
		litres := f.areaM2 * share * comp.ExistingFilmUM / 1000 // m² · µm = mL
		volume += litres
		kilograms += litres * density
		r.weights.remove(p.surface, litres*density)
	}
	s.RemovedKg = kilograms
	switch {
	case kilograms == 0 && known:
		s.Warnings = append(s.Warnings, "earlier steps have taken all the old paint off here: none is left for this one")
		return 0, 0
	case kilograms == 0:
		s.Warnings = append(s.Warnings, "no old paint is known here: give existing_film_um, so that the waste holds the paint that comes off")
		return 0, 0
	}
	filmUM = volume / sel.areaM2 * 1000
	s.Working = append(s.Working, quantity.Working{Quantity: "removed_film_kg", Value: kilograms, Unit: "kg",
		Formula: "area·film·density/1000", Source: "identity",
		Terms: map[string]float64{"area": sel.areaM2, "film": filmUM, "density": kilograms / volume},
		Links: append(r.filmLinks(sel, "film", filmUM), quantity.From("area", quantity.StepWorking(b.ID, "area_m2", "")))})
	return kilograms, filmUM
}

// filmLinks links a term to the old paint that a component was given, where a
// selection lies on one component only.
func (r *run) filmLinks(sel selection, term string, filmUM float64) []quantity.Link {
	comp := r.surfaces[sel.patches[0].surface].component
	for _, p := range sel.patches {
		if r.surfaces[p.surface].component != comp {
			return nil
		}
	}
	if comp.ExistingFilmUM == 0 {
		return nil
	}
	return []quantity.Link{quantity.Scaled(term, quantity.Node{Kind: "component", ID: comp.ID, Quantity: "existing_film_um"}, filmUM/comp.ExistingFilmUM)}
}

// waste notes the mass of what has to be disposed of.
func (s *StepEstimate) waste(kilograms float64, formula string, terms map[string]float64, links ...quantity.Link) {
	s.WasteKg = kilograms
	s.Working = append(s.Working, quantity.Working{Quantity: "waste_kg", Value: kilograms, Unit: "kg",
		Formula: formula, Terms: terms, Links: links, Source: "identity"})
}

// removed links the term "removed" to the paint that the step takes off, where
// it takes any.
func (s *StepEstimate) removed() []quantity.Link {
	if s.RemovedKg == 0 {
		return nil
	}
	return []quantity.Link{quantity.From("removed", quantity.StepWorking(s.ID, "removed_film_kg", ""))}
}
