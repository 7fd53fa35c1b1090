package blast

import (
	"fmt"

	"filmbuild/surfaces/quantity"
)

// Feed is how media reach the nozzle.
type Feed string

const (
	Pressure Feed = "pressure" // from a pot under pressure; the empty Feed means the same
	Suction  Feed = "suction"  // drawn in by the jet of air
)

// Blasting is one area blasted with one kind of nozzle and media. Without an
// area or a strip rate it gives the air and the flow of media alone.
type Blasting struct {
	AreaM2                *float64 `json:"area_m2,omitempty" limit:"[0.0001,100000]" doc:"the surface that is blasted"`
	NozzleBoreMm          float64  `json:"nozzle_bore_mm" limit:"[0.5,50]" doc:"inner diameter at the throat; of a suction gun, that of its air jet"`
	Nozzles               int      `json:"nozzles" limit:"[1,50]" doc:"how many nozzles work at once; 1 unless given"`
	PressureKPa           float64  `json:"pressure_kpa" limit:"[10,1400]" doc:"gauge pressure at the nozzle"`
	Feed                  Feed     `json:"feed" doc:"pressure (default) or suction"`
	DischargeCoefficient  *float64 `json:"discharge_coefficient,omitempty" limit:"[0.3,1]" doc:"of the nozzle; 0.81 for pressure feed and 1 for suction unless given"`
	AmbientPressureKPa    float64  `json:"ambient_pressure_kpa" limit:"[50,110]" doc:"absolute pressure of the air around; 101.325 unless given"`
	Media                 string   `json:"media,omitempty" doc:"a medium of the catalogue, for its bulk density and breakdown"`
	BulkDensityKgM3       *float64 `json:"bulk_density_kg_m3,omitempty" limit:"[100,6000]" doc:"of the media, loose"`
	BreakdownPercent      *float64 `json:"breakdown_percent,omitempty" limit:"[0.1,100]" doc:"share of the thrown media lost in each pass"`
	MediaFlowKgH          *float64 `json:"media_flow_kg_h,omitempty" limit:"[0.1,10000]" doc:"media thrown by one nozzle; found from the bulk density for pressure feed unless given"`
	StripRateM2H          *float64 `json:"strip_rate_m2_h,omitempty" limit:"[0.001,500]" doc:"area cleaned by one nozzle in an hour; measure it on a test patch"`
	Recovered             bool     `json:"recovered" doc:"whether the media are gathered, cleaned and thrown again"`
	WorkingChargeKg       float64  `json:"working_charge_kg" limit:"[0,100000]" doc:"media that go round in the machine, bought once; 0 unless given"`
	RemovedFilmUm         float64  `json:"removed_film_um" limit:"[0,20000]" doc:"thickness of the coating that comes off; 0 unless given"`
	RemovedFilmDensityKgL *float64 `json:"removed_film_density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the coating that comes off; without it its kilograms are not given"`
	CollectedDebrisKg     *float64 `json:"collected_debris_kg,omitempty" limit:"[0,10000000]" doc:"waste that was swept up and weighed; gives recovery_percent"`
}

// NewBlasting returns a blasting with every default set; the bore and the
// pressure are left to the user.
func NewBlasting() *Blasting {
	return &Blasting{Nozzles: 1, Feed: Pressure, AmbientPressureKPa: SeaLevelKPa}
}

// Check reports every fault of the input: fields outside their limits, and
// fields that are needed for the figures that the others ask for. Media that
// are named must have been looked up before.
func (b *Blasting) Check(report func(pointer, code, detail string)) {
	quantity.Check(b, report)
	if b.Feed != "" && b.Feed != Pressure && b.Feed != Suction {
		report("/feed", "unknown_kind", fmt.Sprintf("feed %q is not one of pressure, suction", string(b.Feed)))
		return
	}
	if b.AreaM2 == nil || b.StripRateM2H == nil {
		b.checkCollected(report)
		return
	}
	switch {
	case b.MediaFlowKgH != nil:
	case b.Feed == Suction:
		report("/media_flow_kg_h", "required", "the flow of media of a suction feed follows no law known here; measure media_flow_kg_h over a few minutes and give it")
	case b.BulkDensityKgM3 == nil:
		report("/bulk_density_kg_m3", "required", "the flow of media follows from bulk_density_kg_m3; give it, the media, or a measured media_flow_kg_h")
	}
	if b.Recovered && b.BreakdownPercent == nil {
		report("/breakdown_percent", "required", "what recovered media use up follows from breakdown_percent; give it or the media")
	}
}

func (b *Blasting) checkCollected(report func(pointer, code, detail string)) {
	if b.CollectedDebrisKg == nil {
		return
	}
	const why = "recovery_percent compares collected_debris_kg with the waste, which follows from area_m2 and strip_rate_m2_h; give both"
	if b.AreaM2 == nil {
		report("/area_m2", "required", why)
	}
	if b.StripRateM2H == nil {
		report("/strip_rate_m2_h", "required", why)
	}
}
