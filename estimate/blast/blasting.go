package blast

// Feed is how media reach the nozzle.
type Feed string

const (
	Pressure Feed = "pressure" // from a pot under pressure; the empty Feed means the same
	Suction  Feed = "suction"  // drawn in by the jet of air
)

// RateBasis says which time a rate is over.
type RateBasis string

const (
	NozzleOn RateBasis = "nozzle_on" // while the nozzle or the tool is at work; the empty RateBasis means the same
	Burdened RateBasis = "burdened"  // over the shift: moving, checking, filling, resting and cleaning up included
)

// Blasting is one area blasted with one kind of nozzle and media. Without an
// area or a strip rate it gives the air and the flow of media alone.
type Blasting struct {
	AreaM2               *float64 `json:"area_m2,omitempty" limit:"[0.0001,100000]" doc:"the surface that is blasted"`
	NozzleBoreMm         float64  `json:"nozzle_bore_mm" limit:"[0.5,50]" doc:"inner diameter at the throat; of a suction gun, that of its air jet"`
	Nozzles              int      `json:"nozzles" limit:"[1,50]" doc:"how many nozzles work at once; 1 unless given"`
	PressureKPa          float64  `json:"pressure_kpa" limit:"[10,1400]" doc:"gauge pressure at the nozzle"`
	Feed                 Feed     `json:"feed" doc:"pressure (default) or suction"`
	DischargeCoefficient *float64 `json:"discharge_coefficient,omitempty" limit:"[0.3,1]" doc:"of the nozzle; 0.81 for pressure feed and 1 for suction unless given"`
	AmbientPressureKPa   float64  `json:"ambient_pressure_kpa" limit:"[50,110]" doc:"absolute pressure of the air around; 101.325 unless given"`
	AltitudeM            *float64 `json:"altitude_m,omitempty" limit:"[-500,5500]" doc:"height above the sea, for the ambient pressure of the standard atmosphere"`

	Media            string   `json:"media,omitempty" doc:"a medium of the catalogue, for its bulk density, breakdown and strip rate"`
	Substrate        string   `json:"substrate,omitempty" doc:"what lies under the coating: breakdown and dust depend on it"`
	BulkDensityKgM3  *float64 `json:"bulk_density_kg_m3,omitempty" limit:"[100,6000]" doc:"of the media, loose"`
	BreakdownPercent *float64 `json:"breakdown_percent,omitempty" limit:"[0.1,100]" doc:"share of the thrown media that each pass breaks, or loses in all"`
	CarryOutPercent  *float64 `json:"carry_out_percent,omitempty" limit:"[0,99]" doc:"share of the thrown media that each pass loses besides what breaks: spilt, or drawn off with the dust; 0 unless given, and 5 beside a breakdown that was measured on the substrate"`
	MediaFlowKgH     *float64 `json:"media_flow_kg_h,omitempty" limit:"[0.1,10000]" doc:"media thrown by one nozzle; found from the bulk density for pressure feed unless given"`

	StripRateM2H        *float64  `json:"strip_rate_m2_h,omitempty" limit:"[0.001,500]" doc:"area cleaned by one nozzle in an hour; measure it on a test patch"`
	RateBasis           RateBasis `json:"rate_basis" doc:"what strip_rate_m2_h is over: nozzle_on (default), the nozzle at work, or burdened, the shift"`
	AvailabilityPercent float64   `json:"availability_percent" limit:"[1,100]" doc:"share of the shift in which the nozzle is at work; 100 unless given"`

	Recovered       bool     `json:"recovered" doc:"whether the media are gathered, cleaned and thrown again"`
	WorkingChargeKg float64  `json:"working_charge_kg" limit:"[0,100000]" doc:"media that go round in the machine and are topped up, bought once; 0 unless given"`
	ChargeDiscarded bool     `json:"charge_discarded" doc:"whether the working charge is waste when the work is done"`
	BatchPasses     *int     `json:"batch_passes,omitempty" limit:"[1,1000]" doc:"times a batch is thrown before all of it is waste, instead of topping up"`
	BatchKg         *float64 `json:"batch_kg,omitempty" limit:"[0.1,100000]" doc:"size of such a batch, to buy whole batches"`

	RemovedFilmUm         float64  `json:"removed_film_um" limit:"[0,20000]" doc:"thickness of the coating that comes off; 0 unless given"`
	RemovedFilmDensityKgL *float64 `json:"removed_film_density_kg_l,omitempty" limit:"[0.5,10]" doc:"density of the coating that comes off; without it its kilograms are not given"`
	FilmLeadPercent       *float64 `json:"film_lead_percent,omitempty" limit:"[0,100]" doc:"lead in the dry coating by mass, from a laboratory; 0.1 is 1000 mg/kg"`
	FilmChromiumPercent   *float64 `json:"film_chromium_percent,omitempty" limit:"[0,100]" doc:"chromium in the dry coating by mass"`
	FilmCadmiumPercent    *float64 `json:"film_cadmium_percent,omitempty" limit:"[0,100]" doc:"cadmium in the dry coating by mass"`
	CollectedDebrisKg     *float64 `json:"collected_debris_kg,omitempty" limit:"[0,10000000]" doc:"waste that was swept up and weighed; gives recovery_percent"`
	DrumL                 float64  `json:"drum_l" limit:"[1,20000]" doc:"content of one waste drum; 208.2 (55 US gallons) unless given"`
	DrumFillPercent       float64  `json:"drum_fill_percent" limit:"[1,100]" doc:"how full it is filled; 90 unless given"`
	DrumMostKg            float64  `json:"drum_most_kg" limit:"[1,20000]" doc:"what may be in one drum; 400 unless given"`

	DustAs             DustClass `json:"dust_as,omitempty" doc:"sand, grit or shot: what published dust factors know"`
	WindMS             *float64  `json:"wind_m_s,omitempty" limit:"[0,50]" doc:"wind at the work, for the dust of open blasting"`
	DustControlPercent float64   `json:"dust_control_percent" limit:"[0,100]" doc:"share of the dust that a device holds back; 0 unless given"`

	HoseLengthM           *float64 `json:"hose_length_m,omitempty" limit:"[0,200]" doc:"air hose to each nozzle, for the pressure it takes"`
	HoseBoreMm            *float64 `json:"hose_bore_mm,omitempty" limit:"[19,80]" doc:"its inner diameter; the least that suits the nozzle unless given"`
	OtherAirM3Min         float64  `json:"other_air_m3_min" limit:"[0,500]" doc:"free air that helmets and tools take from the same compressor; 0 unless given"`
	CompressorSupplyM3Min *float64 `json:"compressor_supply_m3_min,omitempty" limit:"(0,5000]" doc:"free air of the compressor at hand, to see what it feeds"`

	// book is what the strip rate rests on where it came from the catalogue.
	book *BookRate
}

// BookRate is a strip rate of the catalogue, carried to the work: a band.
type BookRate struct {
	LowM2H, LikelyM2H, HighM2H float64
	Source                     string
}

// NewBlasting returns a blasting with every default set; the bore and the
// pressure are left to the user.
func NewBlasting() *Blasting {
	return &Blasting{Nozzles: 1, Feed: Pressure, AmbientPressureKPa: SeaLevelKPa, RateBasis: NozzleOn, AvailabilityPercent: 100,
		DrumL: DrumLitres, DrumFillPercent: 100 * DrumFill, DrumMostKg: DrumMostKg}
}

// TakeBookRate sets the strip rate from the catalogue, as a rate with the nozzle
// at work.
func (b *Blasting) TakeBookRate(rate BookRate) {
	b.book, b.StripRateM2H, b.RateBasis = &rate, new(rate.LikelyM2H), NozzleOn
}

// loss is the share of the thrown media that each pass loses in all, as a
// fraction of at most 1; false where it is not known.
func (b Blasting) loss() (float64, bool) {
	if b.BreakdownPercent == nil {
		return 0, false
	}
	return (*b.BreakdownPercent + b.carriedOut()) / 100, true
}

func (b Blasting) carriedOut() float64 {
	if b.CarryOutPercent == nil {
		return 0
	}
	return *b.CarryOutPercent
}

// nozzleOnRate is the strip rate with the nozzle at work, in m²/h.
func (b Blasting) nozzleOnRate() float64 {
	if b.RateBasis == Burdened {
		return *b.StripRateM2H / b.available()
	}
	return *b.StripRateM2H
}

func (b Blasting) available() float64 { return b.AvailabilityPercent / 100 }

// ambient is the absolute pressure of the air around, in kPa.
func (b Blasting) ambient() (float64, error) {
	if b.AltitudeM != nil {
		return AmbientAt(*b.AltitudeM)
	}
	return b.AmbientPressureKPa, nil
}
