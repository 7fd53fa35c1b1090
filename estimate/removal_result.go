package estimate

import "filmbuild/estimate/blast"

// Removal is how a step takes old paint off, in the same figures whatever the
// means, so that ways can be laid side by side. What a way does not have is
// left out.
type Removal struct {
	Means      string  `json:"means"`              // blast, machine, hand, scraper, chemical or water
	Product    string  `json:"product,omitempty"`  // medium, disc or stripper
	RateM2H    float64 `json:"rate_m2_h"`          // of all at work, one time over, over rate_basis
	RateBasis  string  `json:"rate_basis"`         // nozzle_on: nozzle or tool at work; burdened: set-up, clean-up and waste in it
	RateSource string  `json:"rate_source"`        // where the rate comes from
	OverallM2H float64 `json:"overall_rate_m2_h"`  // the area over the hours of the step, crew and all: what a burdened rate is compared with
	ElapsedH   float64 `json:"elapsed_h" unit:"h"` // hours of the crew, and the time a stripper is left to work

	AirM3Min          *float64 `json:"air_m3_min,omitempty"`        // free air of all nozzles
	CompressorM3Min   *float64 `json:"compressor_m3_min,omitempty"` // with the reserve
	CompressorPowerKW *float64 `json:"compressor_power_kw,omitempty"`
	HoseBoreMM        *float64 `json:"hose_bore_least_mm,omitempty"` // of the air hose to one nozzle
	MediaThrownKg     *float64 `json:"media_thrown_kg,omitempty"`
	WaterL            *float64 `json:"water_l,omitempty"`          // to be caught, with the paint in it
	DwellH            *float64 `json:"dwell_h,omitempty" unit:"h"` // all coats of a stripper together

	WasteDrums         *int     `json:"waste_drums,omitempty"`           // whole drums
	DrumKg             *float64 `json:"drum_kg,omitempty"`               // what one of them holds
	FilmInWastePercent *float64 `json:"film_in_waste_percent,omitempty"` // old paint, by mass
	ConcentrationRatio *float64 `json:"concentration_ratio,omitempty"`   // of the paint in the waste, over that of media thrown once
	DustKg             *float64 `json:"dust_kg,omitempty"`               // into the air, where a factor is published
	DustReason         string   `json:"dust_reason,omitempty"`           // why no dust is given
}

// Bulk densities of waste that is no blast media, in kg/L. Source: assumption;
// weigh a bucket of it.
const (
	dustBulk  = 0.7 // sanding dust and scrapings
	sludgeKgL = 1.1 // stripper with paint in it, and water
)

// noDustFactor says why a way of removal has no dust figure.
const noDustFactor = "no dust factor is published for this way of taking paint off (AP-42 13.2.6 is for blasting with sand, grit and shot); ask for it to be measured"

// drum puts the waste of a step into drums.
func (s *StepEstimate) drum(densityKgL float64) {
	r := s.Removal
	if s.WasteKg == 0 {
		return
	}
	if s.RemovedKg > 0 {
		r.FilmInWastePercent = new(100 * s.RemovedKg / s.WasteKg)
	}
	each, err := blast.Drum{Litres: blast.DrumLitres, Fill: blast.DrumFill, MostKg: blast.DrumMostKg}.Kilograms(densityKgL)
	if err != nil {
		return
	}
	if count, err := blast.Drums(s.WasteKg, each); err == nil {
		r.DrumKg, r.WasteDrums = &each, &count
	}
}

// compare fills in what can be told only when the hours of a step are known.
func (r *run) compare() {
	for i, step := range r.job.Steps {
		s, b := &r.estimate.Steps[i], step.base()
		if s.Removal == nil || s.Hours == 0 {
			continue
		}
		s.Removal.OverallM2H = s.AreaM2 / s.Hours
		s.Removal.ElapsedH = s.Hours / float64(b.Crew)
		if s.Removal.DwellH != nil {
			s.Removal.ElapsedH += *s.Removal.DwellH
		}
	}
}
