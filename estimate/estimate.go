package estimate

import (
	"filmbuild/estimate/money"
	"filmbuild/surfaces/quantity"
)

// Estimate is the whole answer. Every rendered form (table, CSV, page) reads
// this value and computes nothing.
type Estimate struct {
	Job              string         `json:"job"`
	Currency         string         `json:"currency"`
	CatalogueVersion string         `json:"catalogue_version"` // hash of the catalogue's content
	EngineVersion    string         `json:"engine_version"`
	Areas            []Area         `json:"areas"`
	Steps            []StepEstimate `json:"steps"`
	Order            []OrderLine    `json:"order"`
	OrderBySupplier  []Purchase     `json:"order_by_supplier"` // the order as it is sent out, one to each supplier and date
	Items            []ItemEstimate `json:"items"`
	Budget           Budget         `json:"budget"`
	Class            Class          `json:"class"`              // how mature the estimate is
	Range            *Range         `json:"range,omitempty"`    // where trials were asked for
	Placings         []Placing      `json:"placings,omitempty"` // of markings that say where they were
	Weights          []Weight       `json:"weights"`            // dry film put on and old film taken off, by component
	Funding          *FundingView   `json:"funding,omitempty"`  // where the job asks for it
	Totals           Totals         `json:"totals"`
	Assumptions      []Assumption   `json:"assumptions"`
	Improve          []Improvement  `json:"improve"`  // what would make it better, the largest effect on the cost first
	Cautions         []Caution      `json:"cautions"` // those of all steps, each once
	Warnings         []string       `json:"warnings"` // what should be looked at before the figures are used
}

// Area is one component measured: all of its parts, openings taken off.
type Area struct {
	Component       string             `json:"component"`
	Name            string             `json:"name,omitempty"`
	Kind            string             `json:"kind"`
	Count           int                `json:"count"`
	AreaM2          float64            `json:"area_m2"`            // of all parts together
	EachM2          float64            `json:"area_each_m2"`       // of one part
	OpeningsM2      float64            `json:"openings_m2"`        // taken off, of all parts together
	JoinsM2         float64            `json:"joins_m2,omitempty"` // footprints taken off, of all parts together
	AddedM2         float64            `json:"added_m2,omitempty"` // gaps, laps and rivets, of all parts together
	EdgeM           float64            `json:"edge_m"`             // every boundary once, openings included, of all parts together
	Faces           []FaceArea         `json:"faces"`
	Method          string             `json:"method"`             // how the area was found
	AccuracyPercent float64            `json:"accuracy_percent"`   // plus or minus
	Working         []quantity.Working `json:"working"`            // of one part
	Warnings        []string           `json:"warnings,omitempty"` // what to look at before the area is used
}

// FaceArea is one face of a component, of all parts together.
type FaceArea struct {
	Face   string  `json:"face"`
	AreaM2 float64 `json:"area_m2"` // openings taken off
	EdgeM  float64 `json:"edge_m"`  // its whole boundary, openings included
}

// StepEstimate is what one step takes.
type StepEstimate struct {
	ID           string             `json:"id"`
	Name         string             `json:"name,omitempty"`
	Operation    string             `json:"operation"`
	AreaM2       float64            `json:"area_m2"`
	Litres       float64            `json:"litres"`         // what leaves the tins for the surface; solvent for cleaning guns is under mixing and materials
	Kilograms    float64            `json:"kilograms"`      // abrasive bought
	MaskingTapeM float64            `json:"masking_tape_m"` // all tapes, with their waste
	MaskingHours float64            `json:"masking_hours"`  // person-hours to lay them, within hours
	Masking      []MaskedEdge       `json:"masking,omitempty"`
	Hours        float64            `json:"hours"`             // person-hours
	Removal      *Removal           `json:"removal,omitempty"` // of steps that take old paint off
	HoursByRole  []RoleHours        `json:"hours_by_role"`
	Sessions     int                `json:"sessions,omitempty"` // where the job gives the length of one
	WasteKg      float64            `json:"waste_kg"`
	DryFilmKg    float64            `json:"dry_film_kg"`     // put on
	RemovedKg    float64            `json:"removed_film_kg"` // taken off
	VOCKg        float64            `json:"voc_kg"`          // solvent that goes into the air
	Cost         money.Amount       `json:"cost"`            // material consumed at pack price, plus hours
	MaterialCost money.Amount       `json:"material_cost"`
	LabourCost   money.Amount       `json:"labour_cost"`
	Labour       string             `json:"labour"` // volunteer, paid or contract
	Materials    []Material         `json:"materials"`
	Mixing       []Mixing           `json:"mixing,omitempty"`
	Recoat       []RecoatPlan       `json:"recoat,omitempty"`     // of coat steps: the coats below and their windows
	FilmCheck    *FilmCheck         `json:"film_check,omitempty"` // of coat steps: the readings of the dry film
	Colours      []PaintedColour    `json:"colours,omitempty"`    // of markings
	Working      []quantity.Working `json:"working"`
	Instructions []string           `json:"instructions,omitempty"` // what to do before or in it, beside its figures
	Wear         []string           `json:"wear"`                   // what to put on; the cautions say why
	Cautions     []Caution          `json:"cautions"`
	Checks       []Check            `json:"checks"` // tests to make at the end of the step
	Warnings     []string           `json:"warnings"`
}

// Check is a test to make at the end of a step, before the next one begins.
type Check struct {
	Code   string   `json:"code"`
	On     []string `json:"on"` // components, faces and regions
	Text   string   `json:"text"`
	Source string   `json:"source"`
}

// Material is a product that a step consumes.
type Material struct {
	Product  string       `json:"product"`
	Name     string       `json:"name"`
	Quantity float64      `json:"quantity"`
	Unit     string       `json:"unit"` // L, kg, m or pcs
	Cost     money.Amount `json:"cost"` // of the quantity, at the price of the packs in the order
}

// Mixing tells how to mix a paint of several parts, how much at a time, and how
// to put it on.
type Mixing struct {
	Product    string    `json:"product"`
	Parts      []MixPart `json:"parts"`   // what goes together, in all
	PaintL     float64   `json:"paint_l"` // unthinned, in all
	ThinnerL   float64   `json:"thinner_l"`
	PotLifeH   float64   `json:"pot_life_h,omitempty"` // of the data sheet, or at the temperature of the work where that is given
	PotLifeAtC float64   `json:"pot_life_at_c,omitempty"`
	InductionH float64   `json:"induction_h,omitempty"`  // to stand after mixing, before it is used
	UseWithinH float64   `json:"use_within_h,omitempty"` // of mixing: the pot life, and at most 4 h
	BatchL     float64   `json:"batch_l,omitempty"`      // most to mix at a time: what is used within the pot life
	Batches    int       `json:"batches,omitempty"`
	EvenBatchL float64   `json:"even_batch_l,omitempty"` // a coat in batches of one size, thinner in it; the parts of it are under parts

	BatchThinnerL float64 `json:"batch_thinner_l,omitempty"` // of an even batch
	CupFillings   int     `json:"cup_fillings,omitempty"`    // of an even batch, or of one coat of a paint in one pack
	LeftInGunL    float64 `json:"left_in_gun_l,omitempty"`   // mixed paint left at the ends of all batches

	CleaningProduct string  `json:"cleaning_product,omitempty"`
	CleaningL       float64 `json:"cleaning_l,omitempty"` // solvent after all batches; not within litres

	WetFilmUM float64 `json:"wet_film_um"` // what the comb gauge should read, thinned as planned
	Passes    int     `json:"passes"`      // of one coat

	VOCGL             *float64 `json:"voc_g_l,omitempty"` // as applied, less water and exempt solvent
	VOCLimitGL        *float64 `json:"voc_limit_g_l,omitempty"`
	MaxThinnerPercent *float64 `json:"max_thinner_percent,omitempty"` // of the unthinned paint, before the limit is reached
}

// MixPart is one part of a mix.
type MixPart struct {
	Part   string  `json:"part"` // base, hardener, activator
	Ratio  float64 `json:"ratio"`
	Litres float64 `json:"litres"`            // in all
	BatchL float64 `json:"batch_l,omitempty"` // of an even batch
}

// Weight is what paint adds to a component and what comes off it, all its parts
// together: those who hang, lift and balance it need to know.
type Weight struct {
	Component string  `json:"component"` // empty: films of markings that say nothing of where they are
	Count     int     `json:"count"`
	AddedKg   float64 `json:"added_kg"`
	RemovedKg float64 `json:"removed_kg"`
	NetKg     float64 `json:"net_kg"`
	NetEachKg float64 `json:"net_each_kg"` // of one part
}

// Totals are the sums over all components and steps.
type Totals struct {
	AreaM2       float64 `json:"area_m2"` // of the components
	Litres       float64 `json:"litres"`
	Kilograms    float64 `json:"kilograms"`
	MaskingTapeM float64 `json:"masking_tape_m"`
	Hours        float64 `json:"hours"`
	WasteKg      float64 `json:"waste_kg"`
	DryFilmKg    float64 `json:"dry_film_kg"`
	RemovedKg    float64 `json:"removed_film_kg"`
	VOCKg        float64 `json:"voc_kg"`
	Sessions     int     `json:"sessions,omitempty"`

	HoursByRole []RoleHours `json:"hours_by_role"`

	// What the steps use up; what will be paid is in the budget.
	StepsMaterialCost money.Amount `json:"steps_material_cost"`
	StepsLabourCost   money.Amount `json:"steps_labour_cost"`
	StepsCost         money.Amount `json:"steps_cost"`
}

// Assumption is a value that the job did not give, or a choice of the method.
type Assumption struct {
	Text   string   `json:"text"`
	Value  float64  `json:"value"`
	Unit   string   `json:"unit,omitempty"`
	Source string   `json:"source"`
	Steps  []string `json:"steps,omitempty"` // the steps that rest on it

	Low    *float64 `json:"low,omitempty"`    // of what test patches gave: the ends that the ranges use
	High   *float64 `json:"high,omitempty"`   // as far as it may be off the other way
	Spread string   `json:"spread,omitempty"` // the rule that set them
}

// Caution is a danger with the usual care against it.
type Caution struct {
	Code   string `json:"code"`
	Text   string `json:"text"`
	Source string `json:"source"`
}
