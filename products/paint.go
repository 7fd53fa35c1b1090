package products

import (
	"fmt"
	"strings"
)

// Paint is a coating: primer, topcoat or clear. Its litres are of the mixed,
// unthinned paint.
type Paint struct {
	Common
	VolumeSolidsPercent float64  `json:"volume_solids_percent" limit:"(0,100]" doc:"dry volume over volume of the mixed paint, unthinned"`
	DryFilmDensityKgL   *float64 `json:"dry_film_density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the dry film"`
	DensityKgL          *float64 `json:"density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the mixed wet paint"`
	VOCGL               *float64 `json:"voc_g_l,omitempty" limit:"[0,1500]" doc:"volatile organic compounds of the mixed paint, less water and exempt"`
	WaterVolumePercent  *float64 `json:"water_volume_percent,omitempty" limit:"[0,98]" doc:"share of the mixed, unthinned paint that is water; voc_g_l is less water"`
	ExemptVolumePercent *float64 `json:"exempt_volume_percent,omitempty" limit:"[0,98]" doc:"share of the mixed, unthinned paint that is VOC-exempt solvent; voc_g_l is less exempt solvent"`
	Mix                 *Mix     `json:"mix,omitempty" doc:"parts by volume; left out for paint in one pack"`
	Thinner             string   `json:"thinner,omitempty" doc:"product id of the thinner"`
	ThinnerPercent      *float64 `json:"thinner_percent,omitempty" limit:"[0,200]" doc:"usual thinner, of the unthinned paint"`
	PotLifeH            *float64 `json:"pot_life_h,omitempty" limit:"[0.05,200]" doc:"time the mixed paint can be used"`
	PotLifeAtC          *float64 `json:"pot_life_at_c,omitempty" limit:"[-10,60]" doc:"temperature of that pot life"`
	PotLife2H           *float64 `json:"pot_life_2_h,omitempty" limit:"[0.05,200]" doc:"a second pot life of the data sheet"`
	PotLife2AtC         *float64 `json:"pot_life_2_at_c,omitempty" limit:"[-10,60]" doc:"temperature of the second pot life"`
	InductionH          *float64 `json:"induction_h,omitempty" limit:"[0,24]" doc:"time the mixed paint stands before use, at the temperature of the pot life or 21 °C"`
	Recoat              []Recoat `json:"recoat,omitempty" doc:"when the next coat may go on, by temperature"`
	DryFilmUM           *float64 `json:"dry_film_um,omitempty" limit:"(0,5000]" doc:"usual dry film of one coat"`
	Colour              string   `json:"colour,omitempty" doc:"plain colour word that markings use"`
	Family              string   `json:"family,omitempty" doc:"paints alike but for colour, such as polyurethane-gloss"`
	Role                string   `json:"role,omitempty" doc:"primer, etch_primer, topcoat or clear"`
	Weather             *Weather `json:"weather,omitempty" doc:"what its data sheet asks of the weather"`
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
	p.Weather.check(report)
	if (p.PotLifeH == nil) != (p.PotLifeAtC == nil) {
		report("/pot_life_at_c", "inconsistent", "pot_life_h and pot_life_at_c belong together; give both or neither")
	}
	if (p.PotLife2H == nil) != (p.PotLife2AtC == nil) {
		report("/pot_life_2_at_c", "inconsistent", "pot_life_2_h and pot_life_2_at_c belong together; give both or neither")
	}
	if p.PotLife2H != nil && p.PotLifeH == nil {
		report("/pot_life_h", "required", "pot_life_h is missing; pot_life_2_h is a second one")
	}
	if sum := orZero(p.WaterVolumePercent) + orZero(p.ExemptVolumePercent); sum+p.VolumeSolidsPercent > 100 {
		report("/water_volume_percent", "inconsistent", fmt.Sprintf("solids, water and exempt solvent are %.4g %% of the paint; together they must be at most 100 %%", sum+p.VolumeSolidsPercent))
	}
	p.checkRecoat(report)
	p.checkParts(report)
}

// MaterialVOCGL is the VOC of a litre of the paint as it is, water and exempt
// solvent in it, in g/L: what goes into the air. It is nil where no VOC is known.
//
//	material = voc less water and exempt · (1 − water − exempt)
//
// Source: the definition of VOC less water and exempt, 40 CFR 59.104(a)(1),
// turned round (reference coating V1).
func (p *Paint) MaterialVOCGL() *float64 {
	if p.VOCGL == nil {
		return nil
	}
	material := *p.VOCGL * (1 - (orZero(p.WaterVolumePercent)+orZero(p.ExemptVolumePercent))/100)
	return &material
}

func orZero(value *float64) float64 {
	if value == nil {
		return 0
	}
	return *value
}
