package estimate

// Step is one operation on a selection of the surface, or on markings. Each
// operation has its own type with the fields that belong to it.
type Step interface {
	base() *StepBase
	// work notes the step's faults and, where it has none, fills in what it takes.
	work(r *run, s *StepEstimate, at string)
}

// StepBase is what all steps have.
type StepBase struct {
	ID        string   `json:"id" doc:"short name"`
	Name      string   `json:"name,omitempty" doc:"what people call it"`
	Note      string   `json:"note,omitempty" doc:"free text; not used in any figure"`
	Operation string   `json:"operation" doc:"blast, sand, strip, wash, protect, pretreat, mask, coat or mark"`
	On        []string `json:"on,omitempty" doc:"component, component/face and region ids"`
	RateM2H   *float64 `json:"rate_m2_h,omitempty" limit:"[0.001,2000]" doc:"area one crew does in an hour, one coat"`
	SetupH    float64  `json:"setup_h,omitempty" limit:"[0,2000]" doc:"time to set up and clear away, once"`
	Crew      int      `json:"crew,omitempty" limit:"[1,200]" doc:"people at work at once; hours are person-hours"`
	Labour    string   `json:"labour,omitempty" doc:"volunteer, paid or contract"`
	Starts    string   `json:"starts,omitempty" doc:"date and time at which the step starts, local, such as 2026-05-02T08:00; waits between steps are told by it"`
	Role      string   `json:"role,omitempty" doc:"what the crew does, for its rate: blast, prepare, mask, spray or helper; follows from the operation unless given"`
	Helpers   int      `json:"helpers,omitempty" limit:"[0,199]" doc:"how many of the crew help the others; counted in crew"`
	RateBasis string   `json:"rate_basis,omitempty" doc:"nozzle_on: what is done while at work; burdened: the rate holds set-up, clean-up and idle time already"`

	Conditions *Conditions `json:"conditions,omitempty" doc:"the weather in which it is done; held against the limits of what is put on"`
}

func (b *StepBase) base() *StepBase { return b }

// Blast strips with abrasive.
type Blast struct {
	StepBase
	Masked
	Media         string   `json:"media" doc:"product id of the abrasive"`
	NozzleBoreMM  float64  `json:"nozzle_bore_mm" limit:"(0,50]" doc:"bore of one nozzle"`
	Nozzles       int      `json:"nozzles,omitempty" limit:"[1,50]" doc:"nozzles at work at once"`
	PressureKPa   float64  `json:"pressure_kpa" limit:"(0,1400]" doc:"gauge pressure at the nozzle"`
	Feed          string   `json:"feed,omitempty" doc:"pressure or suction"`
	DischargeCoef *float64 `json:"discharge_coefficient,omitempty" limit:"(0,1]" doc:"replaces that of the feed"`
	AmbientKPa    float64  `json:"ambient_pressure_kpa,omitempty" limit:"[50,110]" doc:"pressure of the air around"`
	AltitudeM     *float64 `json:"altitude_m,omitempty" limit:"[-500,5500]" doc:"height above the sea, in place of ambient_pressure_kpa"`
	MediaFlowKgH  *float64 `json:"media_flow_kg_h,omitempty" limit:"(0,20000]" doc:"abrasive thrown by one nozzle"`
	StripRateM2H  *float64 `json:"strip_rate_m2_h,omitempty" limit:"(0,1000]" doc:"area one nozzle strips in an hour at work"`

	BreakdownPercent *float64 `json:"breakdown_percent,omitempty" limit:"(0,100]" doc:"share of the abrasive lost in one pass"`
	CarryOutPercent  *float64 `json:"carry_out_percent,omitempty" limit:"[0,99]" doc:"share lost in one pass besides: spilt, or drawn off with the dust"`
	Recovered        bool     `json:"recovered,omitempty" doc:"abrasive is collected, cleaned and thrown again"`
	WorkingChargeKg  float64  `json:"working_charge_kg,omitempty" limit:"[0,100000]" doc:"abrasive that fills the machine"`
	ChargeDiscarded  bool     `json:"charge_discarded,omitempty" doc:"the working charge is waste when the step is done"`
	BatchPasses      *int     `json:"batch_passes,omitempty" limit:"[1,1000]" doc:"times a batch is thrown before all of it is waste, in place of a working charge that is topped up"`
	BatchKg          *float64 `json:"batch_kg,omitempty" limit:"[0.1,100000]" doc:"size of such a batch, to buy whole batches"`
	CollectedKg      *float64 `json:"collected_debris_kg,omitempty" limit:"(0,1000000]" doc:"debris swept up, to find the recovery"`

	HoseLengthM           *float64 `json:"hose_length_m,omitempty" limit:"[0,200]" doc:"air hose to each nozzle, for the pressure it takes"`
	HoseBoreMM            *float64 `json:"hose_bore_mm,omitempty" limit:"[19,80]" doc:"its inner diameter; the least that suits the nozzle unless given"`
	OtherAirM3Min         float64  `json:"other_air_m3_min,omitempty" limit:"[0,500]" doc:"free air that helmets and tools take from the same compressor"`
	CompressorSupplyM3Min *float64 `json:"compressor_supply_m3_min,omitempty" limit:"(0,5000]" doc:"free air of the compressor at hand, to see what it feeds"`
	WindMS                *float64 `json:"wind_m_s,omitempty" limit:"[0,50]" doc:"wind at the work, for the dust of open blasting"`
	DustControlPercent    float64  `json:"dust_control_percent,omitempty" limit:"[0,100]" doc:"share of the dust that a device holds back"`

	DwellS      *float64 `json:"dwell_s,omitempty" limit:"(0,3600]" doc:"time on one spot at a stretch"`
	TotalDwellS *float64 `json:"total_dwell_s,omitempty" limit:"(0,3600]" doc:"time on one spot in all"`
	StandoffMM  *float64 `json:"standoff_mm,omitempty" limit:"(0,2000]" doc:"distance of the nozzle from the surface"`
	ApprovedBy  string   `json:"approved_by,omitempty" doc:"who in charge of the part approved work outside published limits; without it that work is refused"`
}

// Sand abrades by hand or machine with discs or sheets.
type Sand struct {
	StepBase
	Masked
	Product    string   `json:"product,omitempty" doc:"product id of the disc or sheet; a scraper has none"`
	Tool       string   `json:"tool,omitempty" doc:"machine (default), hand or scraper"`
	ApprovedBy string   `json:"approved_by,omitempty" doc:"who in charge of the part approved work outside published limits"`
	Scuff      bool     `json:"scuff,omitempty" doc:"only roughen the film for the next coat; nothing comes off"`
	DiscAreaM2 *float64 `json:"disc_area_m2,omitempty" limit:"[0.0001,1000]" doc:"area one disc prepares; replaces the product's"`
}

// Liquid is what steps have that spread a liquid.
type Liquid struct {
	Product     string   `json:"product" doc:"product id of the liquid"`
	Coats       int      `json:"coats,omitempty" limit:"[1,50]" doc:"times it is spread"`
	CoverageLM2 *float64 `json:"coverage_l_m2,omitempty" limit:"(0,50]" doc:"liquid for one square metre once; replaces the product's"`
}

// Strip removes paint with a chemical stripper, or with water under pressure.
type Strip struct {
	StepBase
	Masked
	Liquid
	Means      string   `json:"means,omitempty" doc:"chemical (default) or water"`
	WetFilmMM  *float64 `json:"wet_film_mm,omitempty" limit:"(0,10]" doc:"thickness in which the stripper is laid on, in place of coverage_l_m2"`
	DwellMin   *float64 `json:"dwell_min,omitempty" limit:"(0,10000]" doc:"time each coat of stripper is left to work"`
	AirC       *float64 `json:"air_c,omitempty" limit:"[-40,60]" doc:"temperature of the air and the part while it works"`
	WaterLH    *float64 `json:"water_l_h,omitempty" limit:"(0,60000]" doc:"water of one lance in an hour, for means water"`
	WaterKPa   *float64 `json:"water_pressure_kpa,omitempty" limit:"(0,400000]" doc:"its pressure, for means water"`
	ApprovedBy string   `json:"approved_by,omitempty" doc:"who in charge of the part approved work outside published limits"`
}

// Wash cleans with water and a cleaner, or wipes with a solvent.
type Wash struct {
	StepBase
	Masked
	Liquid
}

// Protect spreads a temporary protective.
type Protect struct {
	StepBase
	Masked
	Liquid
}

// Pretreat spreads a conversion treatment.
type Pretreat struct {
	StepBase
	Masked
	Liquid
}

// Mask tapes edges and covers openings as a step of its own, for the steps that
// follow it.
type Mask struct {
	StepBase
	MaskMaterials
	RateMH *float64 `json:"rate_m_h,omitempty" limit:"[0.01,1000]" doc:"tape one person lays in an hour"`
}

// FilmPlan is what steps have that build a paint film.
type FilmPlan struct {
	Coats     int      `json:"coats,omitempty" limit:"[1,50]" doc:"coats"`
	DryFilmUM *float64 `json:"dry_film_um,omitempty" limit:"(0,5000]" doc:"dry film of one coat; the product's usual film where left out"`
	Method    string   `json:"method,omitempty" doc:"how it is applied: brush, roller, conventional, hvlp, airless, air_assisted_airless, electrostatic"`

	TransferEfficiencyPercent *float64 `json:"transfer_efficiency_percent,omitempty" limit:"(0,100]" doc:"share of sprayed solids that lands; the method's where left out"`
	LossPercent               float64  `json:"loss_percent,omitempty" limit:"[0,100)" doc:"mixed but never sprayed"`
	ThinnerPercent            *float64 `json:"thinner_percent,omitempty" limit:"[0,200]" doc:"of the unthinned paint; the product's where left out"`
	ProfileUM                 float64  `json:"profile_um,omitempty" limit:"[0,1000]" doc:"depth of the blast profile under the first coat"`
	ProfileFillRatio          float64  `json:"profile_fill_ratio,omitempty" limit:"[0,1]" doc:"share of that depth that paint fills"`
	FilmRule                  string   `json:"film_rule,omitempty" doc:"mean, min_80_20 or min_90_10"`
	FilmCovRatio              float64  `json:"film_cov_ratio,omitempty" limit:"[0,0.7]" doc:"standard deviation of the film over its mean"`

	PartSize      string   `json:"part_size,omitempty" doc:"large, medium, small or edges: moves the transfer efficiency of the method"`
	PassWetFilmUM *float64 `json:"pass_wet_film_um,omitempty" limit:"[1,5000]" doc:"wet film that one pass leaves; the method's where left out"`
	TemperatureC  *float64 `json:"temperature_c,omitempty" limit:"[-10,60]" doc:"of the paint and the surface at the work; pot life, standing time and recoat window go by it"`
	VOCLimitGL    *float64 `json:"voc_limit_g_l,omitempty" limit:"[1,1500]" doc:"limit for the VOC of the paint as applied, less water and exempt solvent; the job's where left out"`
	Gun
}

// Gun is what stays behind when a batch is used up, and what cleans it.
type Gun struct {
	GunLossL   float64  `json:"gun_loss_l,omitempty" limit:"[0,100]" doc:"mixed paint left in gun and cup at the end of each batch"`
	HoseM      float64  `json:"hose_m,omitempty" limit:"[0,500]" doc:"length of the paint hose, whose contents are left at the end of each batch"`
	HoseBoreMM *float64 `json:"hose_bore_mm,omitempty" limit:"(0,50]" doc:"inner diameter of the paint hose"`
	CupL       *float64 `json:"cup_l,omitempty" limit:"[0.05,1000]" doc:"what cup or pot of the gun holds"`
	Cleaning   string   `json:"cleaning,omitempty" doc:"product id of the solvent that cleans the gun, a thinner; gun-wash where left out"`
	CleaningL  *float64 `json:"cleaning_l,omitempty" limit:"[0,100]" doc:"of that solvent after each batch; the method's where left out"`
}

func (f *FilmPlan) film() *FilmPlan { return f }

// Coat builds a paint film over a selection.
type Coat struct {
	StepBase
	Masked
	FilmPlan
	Product string   `json:"product" doc:"product id of the paint"`
	GapH    *float64 `json:"gap_h,omitempty" limit:"[0,100000]" doc:"time between the end of the coat below and this one; follows from starts where both steps have it"`
	Recoat  string   `json:"recoat,omitempty" doc:"in_time or missed: whether the coat below could still be coated as it was; missed adds the work that brings it back"`
}

// Mark paints markings.
type Mark struct {
	StepBase
	Masked
	FilmPlan
	Markings []string          `json:"markings" doc:"ids of markings"`
	Family   string            `json:"family,omitempty" doc:"paint family that colours are looked up in"`
	Paints   map[string]string `json:"paints,omitempty" doc:"colour to product id, where the family's is not wanted"`

	BaseColour string `json:"base_colour,omitempty" doc:"colour that the figures lie on: parts of that colour, and an under colour of it, are left as they are; all is painted where it is left out"`
}

// Operations are the kinds of step.
func Operations() []string {
	return []string{"blast", "sand", "strip", "wash", "protect", "pretreat", "mask", "coat", "mark"}
}

// newStep makes an empty step of an operation with its defaults.
func newStep(operation string) (any, bool) {
	base := StepBase{Crew: 1, Labour: "volunteer"}
	film := FilmPlan{Coats: 1, ProfileFillRatio: 0.5, FilmRule: "mean", FilmCovRatio: 0.2}
	once := Liquid{Coats: 1}
	switch operation {
	case "blast":
		return &Blast{StepBase: base, Nozzles: 1, Feed: "pressure", AmbientKPa: 101.325}, true
	case "sand":
		return &Sand{StepBase: base, Tool: "machine"}, true
	case "strip":
		return &Strip{StepBase: base, Liquid: once, Means: "chemical"}, true
	case "wash":
		return &Wash{StepBase: base, Liquid: once}, true
	case "protect":
		return &Protect{StepBase: base, Liquid: once}, true
	case "pretreat":
		return &Pretreat{StepBase: base, Liquid: once}, true
	case "mask":
		return &Mask{StepBase: base}, true
	case "coat":
		return &Coat{StepBase: base, FilmPlan: film, Recoat: "in_time"}, true
	case "mark":
		return &Mark{StepBase: base, FilmPlan: film, Family: "polyurethane-gloss"}, true
	}
	return nil, false
}
