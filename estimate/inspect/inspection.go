package inspect

import "filmbuild/surfaces/quantity"

// Inspection is a coated surface whose dry film is to be measured.
type Inspection struct {
	AreaM2    float64  `json:"area_m2" limit:"(0,100000]" doc:"the coated surface"`
	DryFilmUm *float64 `json:"dry_film_um,omitempty" limit:"[0.1,20000]" doc:"the dry film that was specified, all coats; gives the least readings that pass"`
	FilmRule  string   `json:"film_rule,omitempty" doc:"mean (default), min_80_20 or min_90_10: what the readings must be"`
	ProfileUm float64  `json:"profile_um,omitempty" limit:"[0,500]" doc:"blast profile under the paint; readings are corrected for it"`

	ProfileGrade     string `json:"profile_grade,omitempty" doc:"fine, medium or coarse by ISO 8503-1, or unknown: gives what is taken off a gauge zeroed on smooth steel"`
	RestrictionLevel int    `json:"restriction_level" limit:"[1,5]" doc:"how far spots may lie from the specified film, 1 strictest; 3 unless given"`
}

// NewInspection returns an inspection at the usual level; the rest is the user's.
func NewInspection() *Inspection { return &Inspection{RestrictionLevel: usualLevel} }

// Check reports every fault of the input.
func (i *Inspection) Check(report func(pointer, code, detail string)) {
	quantity.Check(i, report)
	if _, err := acceptanceOf(i.FilmRule); err != nil {
		report("/film_rule", "unknown_kind", err.Error())
	}
	if _, err := ProfileCorrection(i.ProfileGrade); i.ProfileGrade != "" && err != nil {
		report("/profile_grade", "unknown_kind", err.Error())
	}
}

// Result is how many readings are taken, and what they must be.
type Result struct {
	Areas           int      `json:"areas"`                        // of about 10 m² each
	Spots           int      `json:"spots"`                        // 5 to an area
	Readings        int      `json:"readings"`                     // 3 to a spot
	LeastAreaMeanUm *float64 `json:"least_area_mean_um,omitempty"` // mean of an area's 5 spots
	LeastSpotUm     *float64 `json:"least_spot_um,omitempty"`      // mean of a spot's 3 readings
	AreasByFeet     *int     `json:"areas_by_feet,omitempty"`      // where counting in square feet asks for more
	LeastReadingUm  *float64 `json:"least_reading_um,omitempty"`   // no reading below it, by the minimum rules
	MostBelow       *int     `json:"most_below,omitempty"`         // readings that may lie below the specified film, by the minimum rules
	MostSpotUm      *float64 `json:"most_spot_um,omitempty"`       // mean of a spot's 3 readings, at the level of restriction
	CorrectionUm    *float64 `json:"correction_um,omitempty"`      // taken off every reading of a gauge zeroed on smooth steel
	MostReadingUm   *float64 `json:"most_reading_um,omitempty"`    // usual bound; the paint maker's own comes first

	Working  []quantity.Working `json:"working"`
	Warnings []string           `json:"warnings,omitempty"`
}

const (
	sourceAreas    = "SSPC-PA 2: areas of 10 m² (figures in m² from memory)"
	sourceReadings = "SSPC-PA 2: 5 spots to an area, 3 readings to a spot"
)

// Calculate counts the readings. It expects input that Check finds sound and
// returns a *quantity.RangeError otherwise.
func (i Inspection) Calculate() (Result, error) {
	areas, err := Areas(i.AreaM2)
	if err != nil {
		return Result{}, err
	}
	byFeet, err := AreasByFeet(i.AreaM2)
	if err != nil {
		return Result{}, err
	}
	r := Result{Areas: areas, Spots: areas * SpotsPerArea, Readings: areas * SpotsPerArea * ReadingsPerSpot}
	r.Working = []quantity.Working{
		{Quantity: "areas", Value: float64(areas), Formula: "if(A ≤ 30, ⌈A/10⌉, if(A ≤ 100, 3, 3 + ⌈(A − 100)/100⌉))",
			Terms: map[string]float64{"A": i.AreaM2}, Source: sourceAreas},
		{Quantity: "readings", Value: float64(r.Readings), Formula: "areas·5·3",
			Terms: map[string]float64{"areas": float64(areas)}, Source: sourceReadings},
	}
	if byFeet > areas {
		r.AreasByFeet = &byFeet
		r.Warnings = append(r.Warnings, "counted in square feet the standard asks for more areas here; see areas_by_feet")
	}
	if i.DryFilmUm != nil {
		if err := quantity.Within("dry film", *i.DryFilmUm, "µm", quantity.Limits{Low: 0.1, High: 20000}); err != nil {
			return Result{}, err
		}
		least, most, err := spotBounds(i.RestrictionLevel)
		if err != nil {
			return Result{}, err
		}
		r.LeastAreaMeanUm, r.LeastSpotUm = new(*i.DryFilmUm), new(least**i.DryFilmUm)
		if most > 0 {
			r.MostSpotUm = new(most * *i.DryFilmUm)
		}
		if err := i.accept(&r); err != nil {
			return Result{}, err
		}
	}
	if i.ProfileGrade != "" {
		correction, err := ProfileCorrection(i.ProfileGrade)
		if err != nil {
			return Result{}, err
		}
		r.CorrectionUm = &correction
		if i.DryFilmUm != nil && *i.DryFilmUm < leastISOFilm {
			r.Warnings = append(r.Warnings, "ISO 19840, from which the correction is taken, is not meant for a nominal film below 40 µm")
		}
	}
	if i.ProfileUm > 0 {
		r.Warnings = append(r.Warnings, "on a blast profile a gauge zeroed on smooth metal reads above the peaks and into the valleys: zero it on the blasted metal, or deduct the reading of the bare profile (ASTM D7091 and SSPC-PA 2 practice)")
	}
	return r, nil
}
