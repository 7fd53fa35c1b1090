package estimate

import (
	"fmt"

	"filmbuild/estimate/inspect"
)

// FilmCheck is the plan for measuring the dry film at the end of a coat step.
type FilmCheck struct {
	Areas           int      `json:"areas"`                        // of about 10 m² each
	Spots           int      `json:"spots"`                        // 5 to an area
	Readings        int      `json:"readings"`                     // 3 to a spot
	AreasByFeet     *int     `json:"areas_by_feet,omitempty"`      // where counting in square feet asks for more
	DryFilmUM       float64  `json:"dry_film_um"`                  // asked for, of all coats of the step
	SystemFilmUM    *float64 `json:"system_dry_film_um,omitempty"` // with the coats of earlier steps: what a gauge reads; left out where it differs from place to place
	LeastAreaMeanUM float64  `json:"least_area_mean_um"`
	LeastSpotUM     float64  `json:"least_spot_um"`
	LeastReadingUM  *float64 `json:"least_reading_um,omitempty"` // by the minimum rules
	MostBelow       *int     `json:"most_below,omitempty"`       // readings that may lie below the film asked for
	MostReadingUM   *float64 `json:"most_reading_um,omitempty"`
	Notes           []string `json:"notes"`
	Source          string   `json:"source"`
}

// filmCheck plans the readings of a coat step by SSPC-PA 2. Bounds are of what the
// gauge reads: of the whole system where that is known.
func (r *run) filmCheck(p *Coat, s *StepEstimate, sel selection, filmUM float64, at string) {
	read, notes := filmUM, []string{}
	below, even := r.systemUnder(sel)
	if even {
		read += below
	}
	i := inspect.Inspection{AreaM2: sel.areaM2, DryFilmUm: &read, FilmRule: p.FilmRule, ProfileUm: p.ProfileUM}
	result, err := i.Calculate()
	if err != nil {
		r.faults.Add(at+"/dry_film_um", "out_of_range", err.Error())
		return
	}
	c := &FilmCheck{Areas: result.Areas, Spots: result.Spots, Readings: result.Readings, AreasByFeet: result.AreasByFeet, DryFilmUM: filmUM, LeastAreaMeanUM: *result.LeastAreaMeanUm, LeastSpotUM: *result.LeastSpotUm,
		LeastReadingUM: result.LeastReadingUm, MostBelow: result.MostBelow, MostReadingUM: result.MostReadingUm, Notes: append(notes, result.Warnings...), Source: "SSPC-PA 2 (reference coating A2, A6); figures in m² from memory"}
	switch {
	case !even:
		c.Notes = append(c.Notes, "the film below differs from place to place: measure it before this coat and take it off the readings")
	case below > 0:
		c.SystemFilmUM = &read
		c.Notes = append(c.Notes, fmt.Sprintf("a gauge reads all coats down to the metal: %.4g µm here, %.4g µm of them below this step", read, below))
	}
	if !gaugeReads(r, sel) {
		c.Notes = append(c.Notes, "magnetic and eddy-current gauges read over metal only: over composite, fabric or wood use ultrasound, or count the wet film and the litres")
	}
	for _, w := range result.Working {
		w.Quantity = "film_check_" + w.Quantity
		w.Links = nil
		s.Working = append(s.Working, w)
	}
	s.FilmCheck = c
}

// gaugeReads reports whether the substrates of a selection are metal.
func gaugeReads(r *run, sel selection) bool {
	for _, p := range sel.patches {
		switch r.surfaces[p.surface].component.Substrate {
		case "composite", "fibreglass", "fabric", "wood", "clear_plastic":
			return false
		}
	}
	return true
}
