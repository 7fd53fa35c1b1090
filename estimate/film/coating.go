package film

import "filmbuild/surfaces/quantity"

// Coating is one paint put on one area, in one coat or several alike.
type Coating struct {
	AreaM2                    float64  `json:"area_m2" limit:"(0,100000]" doc:"the surface that is coated"`
	Coats                     int      `json:"coats" limit:"[1,50]" doc:"how many coats alike; 1 unless given"`
	DryFilmUm                 float64  `json:"dry_film_um" limit:"[0.1,5000]" doc:"nominal dry film of each coat"`
	VolumeSolidsPercent       float64  `json:"volume_solids_percent" limit:"[1,100]" doc:"share of the unthinned, mixed paint that stays when it has dried"`
	TransferEfficiencyPercent float64  `json:"transfer_efficiency_percent" limit:"[1,100]" doc:"share of the sprayed solids that lands on the surface; 100 unless given"`
	LossPercent               float64  `json:"loss_percent" limit:"[0,95]" doc:"share of the mixed paint that is never sprayed: tins, hoses, pot life; 0 unless given"`
	ThinnerPercent            float64  `json:"thinner_percent" limit:"[0,300]" doc:"volume of thinner in percent of the unthinned paint; 0 unless given"`
	ProfileUm                 float64  `json:"profile_um" limit:"[0,500]" doc:"peak-to-valley height of the blast profile, filled once; 0 unless given"`
	ProfileFillRatio          float64  `json:"profile_fill_ratio" limit:"[0,1]" doc:"share of the profile's depth that the paint fills; 0.5 unless given, published practice is 0.4 to 1"`
	FilmRule                  Rule     `json:"film_rule" doc:"mean (default), min_80_20 or min_90_10: what the readings must be"`
	FilmCovRatio              float64  `json:"film_cov_ratio" limit:"[0,1]" doc:"coefficient of variation of the film readings, used by the minimum rules; 0.2 unless given"`
	DryFilmDensityKgL         *float64 `json:"dry_film_density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the dry film; without it no kilograms are given"`

	Batches       int      `json:"batches,omitempty" limit:"[0,5000000]" doc:"batches mixed in all; each leaves batch_loss_l behind"`
	BatchLossL    float64  `json:"batch_loss_l,omitempty" limit:"[0,1000]" doc:"mixed, thinned paint left in gun, hose and cup at the end of each batch; 0 unless given"`
	PassWetFilmUm *float64 `json:"pass_wet_film_um,omitempty" limit:"[1,5000]" doc:"wet film that one pass leaves; gives the passes of a coat"`
}

// NewCoating returns a coating with every default set; the area, the film and
// the volume solids are left to the user.
func NewCoating() *Coating {
	return &Coating{
		Coats:                     1,
		TransferEfficiencyPercent: 100,
		ProfileFillRatio:          0.5, // middle of 0.40 to 0.56 of a trade note on application losses (reference coating P4 to P7)
		FilmRule:                  Mean,
		FilmCovRatio:              0.2, // common practice
	}
}

// Check reports every fault of the input: fields outside their limits first,
// then fields that do not go together.
func (c *Coating) Check(report func(pointer, code, detail string)) {
	sound := true
	quantity.Check(c, func(pointer, code, detail string) {
		sound = sound && pointer != "/film_cov_ratio"
		report(pointer, code, detail)
	})
	if c.BatchLossL > 0 && c.Batches == 0 {
		report("/batches", "required", "batches is missing; batch_loss_l is left behind by each of them")
	}
	if _, err := c.FilmRule.quantile(); err != nil {
		report("/film_rule", "unknown_kind", err.Error())
		return
	}
	if !sound {
		return
	}
	if _, err := MeanFactor(c.FilmRule, c.FilmCovRatio); err != nil {
		report("/film_cov_ratio", "inconsistent",
			"with readings that scatter so much film_rule "+string(c.FilmRule)+" would need a mean film above 3 times the nominal one; give a smaller film_cov_ratio or the rule mean")
	}
}

// Result is what a coating takes. A nil kilogram figure means that the density
// of the dry film was not given.
type Result struct {
	TheoreticalSpreadingRateM2L float64  `json:"theoretical_spreading_rate_m2_l"`      // one coat, nothing lost
	PracticalSpreadingRateM2L   float64  `json:"practical_spreading_rate_m2_l"`        // one coat at nominal film, after losses; neither the rule's factor nor the profile is in it
	AchievedSpreadingRateM2L    float64  `json:"achieved_spreading_rate_m2_l"`         // area times coats over the paint of this job, everything in it
	FilmFactorRatio             float64  `json:"film_factor_ratio"`                    // mean over nominal film
	MeanDryFilmUm               float64  `json:"mean_dry_film_um"`                     // of each coat
	TotalDryFilmUm              float64  `json:"total_dry_film_um"`                    // mean, of all coats, above the profile
	LeastReadingFactorRatio     *float64 `json:"least_reading_factor_ratio,omitempty"` // mean over nominal film that keeps all but 1 % of the readings above the least the rule allows
	WetFilmUm                   float64  `json:"wet_film_um"`                          // of each coat, for the nominal film
	WetFilmAimUm                float64  `json:"wet_film_aim_um"`                      // of each coat, for the mean film: what the comb gauge should read
	Passes                      *int     `json:"passes,omitempty"`                     // of each coat, each of the wet film of one pass at most
	VolumeSolidsThinnedPercent  float64  `json:"volume_solids_thinned_percent"`
	PaintL                      float64  `json:"paint_l"`                        // unthinned
	FirstCoatPaintL             float64  `json:"first_coat_paint_l"`             // without what batches leave in the gun
	FurtherCoatPaintL           *float64 `json:"further_coat_paint_l,omitempty"` // each
	ThinnerL                    float64  `json:"thinner_l"`
	TotalL                      float64  `json:"total_l"`       // paint and thinner
	LeftInGunL                  float64  `json:"left_in_gun_l"` // of that, left at the ends of batches
	DryFilmKg                   *float64 `json:"dry_film_kg,omitempty"`
	DryFilmKgM2                 *float64 `json:"dry_film_kg_m2,omitempty"`
	OversprayKg                 *float64 `json:"overspray_kg,omitempty"`   // solids that were sprayed and missed
	LostSolidsKg                *float64 `json:"lost_solids_kg,omitempty"` // overspray and what was never sprayed

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}
