package products

import "strings"

// Paint is a coating: primer, topcoat or clear. Its litres are of the mixed,
// unthinned paint.
type Paint struct {
	Common
	VolumeSolidsPercent float64  `json:"volume_solids_percent" limit:"(0,100]" doc:"dry volume over volume of the mixed paint, unthinned"`
	DryFilmDensityKgL   *float64 `json:"dry_film_density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the dry film"`
	DensityKgL          *float64 `json:"density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the mixed wet paint"`
	VOCGL               *float64 `json:"voc_g_l,omitempty" limit:"[0,1500]" doc:"volatile organic compounds of the mixed paint, less water and exempt"`
	Mix                 *Mix     `json:"mix,omitempty" doc:"parts by volume; left out for paint in one pack"`
	Thinner             string   `json:"thinner,omitempty" doc:"product id of the thinner"`
	ThinnerPercent      *float64 `json:"thinner_percent,omitempty" limit:"[0,200]" doc:"usual thinner, of the unthinned paint"`
	PotLifeH            *float64 `json:"pot_life_h,omitempty" limit:"(0,1000]" doc:"time the mixed paint can be used"`
	PotLifeAtC          *float64 `json:"pot_life_at_c,omitempty" limit:"[-20,60]" doc:"temperature of that pot life"`
	DryFilmUM           *float64 `json:"dry_film_um,omitempty" limit:"(0,5000]" doc:"usual dry film of one coat"`
	Colour              string   `json:"colour,omitempty" doc:"plain colour word that markings use"`
	Family              string   `json:"family,omitempty" doc:"paints alike but for colour, such as polyurethane-gloss"`
	Role                string   `json:"role,omitempty" doc:"primer, etch_primer, topcoat or clear"`
}

// Mix is how a paint in several packs is mixed, in parts by volume.
type Mix struct {
	Base      float64  `json:"base" limit:"(0,100]" doc:"parts of base"`
	Hardener  float64  `json:"hardener" limit:"(0,100]" doc:"parts of hardener"`
	Activator *float64 `json:"activator,omitempty" limit:"(0,100]" doc:"parts of a third pack"`
}

// Roles lists what a paint may be for.
func Roles() []string { return []string{"primer", "etch_primer", "topcoat", "clear"} }

// Gloss says whether the paint dries to a gloss, under which every step in what
// lies below shows.
func (p *Paint) Gloss() bool {
	return p.Role == "clear" || (strings.Contains(p.Family, "gloss") && !strings.Contains(p.Family, "semi"))
}

// Check reports every fault in the paint.
func (p *Paint) Check(report func(pointer, code, detail string)) {
	check(p, report)
	oneOf("/role", p.Role, Roles(), report)
	if (p.PotLifeH == nil) != (p.PotLifeAtC == nil) {
		report("/pot_life_at_c", "inconsistent", "pot_life_h and pot_life_at_c belong together; give both or neither")
	}
}
