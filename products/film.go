package products

// Film covers what is not to be painted, or is cut into stencils: plastic film
// and paper from a roll.
type Film struct {
	Common
	WidthMM float64 `json:"width_mm" limit:"(0,20000]" doc:"width of the roll, unfolded"`
	Use     string  `json:"use,omitempty" doc:"masking_film, masking_paper, stencil_film or blast_sheet"`
}

// FilmUses lists what a film may be for.
func FilmUses() []string {
	return []string{"masking_film", "masking_paper", "stencil_film", "blast_sheet"}
}

// Check reports every fault in the film.
func (f *Film) Check(report func(pointer, code, detail string)) {
	check(f, report)
	oneOf("/use", f.Use, FilmUses(), report)
}
