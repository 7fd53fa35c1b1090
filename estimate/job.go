// Package estimate works out what a job takes: areas, paint, media, tape,
// hours, waste, cautions, an order in whole packs and a budget, with the
// working behind every figure.
//
// Run is a pure function of a job and a catalogue: no clock, no network, no
// files, and the same bytes for the same input. Numbers are SI; money is
// decimal (package money).
package estimate

import (
	"filmbuild/estimate/wire"
	"filmbuild/products"
	"filmbuild/surfaces"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/placing"
)

// Job is the whole document: what is treated, how, with what, at which prices.
type Job struct {
	Name         string             `json:"name" doc:"what the job is called"`
	Note         string             `json:"note,omitempty" doc:"free text; not used in any figure"`
	Currency     string             `json:"currency" doc:"ISO 4217 code of every amount in the document"`
	Components   []Component        `json:"components,omitempty" doc:"the parts"`
	Regions      []Region           `json:"regions,omitempty" doc:"named parts of the surface"`
	Markings     []Marking          `json:"markings,omitempty" doc:"figures painted over the base"`
	Steps        []Step             `json:"steps,omitempty" doc:"operations in their order"`
	Products     []products.Product `json:"products,omitempty" doc:"products of the job's own; they override the catalogue by id"`
	TestPatches  []TestPatch        `json:"test_patches,omitempty" doc:"measured trial areas that replace book rates"`
	Items        []Item             `json:"items,omitempty" doc:"any other money"`
	Correlations []Correlation      `json:"correlations,omitempty" doc:"items whose amounts vary together in part; used by ranges"`
	Labour       Labour             `json:"labour,omitempty" doc:"hourly rates"`
	OldPaint     *OldPaint          `json:"old_paint,omitempty" doc:"what is known of the paint now on the parts; unknown is treated as present"`
	Suppliers    []Supplier         `json:"suppliers,omitempty" doc:"who sells, with freight, minimum order and lead time"`
	Stock        []Stock            `json:"stock,omitempty" doc:"what is on hand or given; it comes off the order first"`
	SameBatch    []string           `json:"same_batch,omitempty" doc:"ids of products to buy in one size and one delivery, so that a colour comes from one batch"`
	Workdays     Workdays           `json:"workdays,omitempty" doc:"free days, for lead times and sessions"`

	PricesIncludeTax bool        `json:"prices_include_tax,omitempty" doc:"the job's own prices hold tax already; a pack or an item may say otherwise"`
	TaxRounding      string      `json:"tax_rounding,omitempty" doc:"how often tax is rounded: once on the total, on each supplier's invoice, or on each line"`
	Escalation       *Escalation `json:"escalation,omitempty" doc:"carries prices from their date to that of the purchase"`
	Funding          *Funding    `json:"funding,omitempty" doc:"asks for the estimate in the headings of a funder's form"`
	Masking          MaskingPlan `json:"masking,omitempty" doc:"how edges are masked where a step does not say"`

	ContingencyPercent float64 `json:"contingency_percent,omitempty" limit:"[0,100]" doc:"added to the cash cost for unknowns within the scope"`
	TaxPercent         float64 `json:"tax_percent,omitempty" limit:"[0,100]" doc:"added to materials, freight, contract work and cash items whose price does not hold it"`
	ReservePercent     float64 `json:"management_reserve_percent,omitempty" limit:"[0,100]" doc:"of the cash cost, kept by the owner for what lies outside the estimate; a line of its own beside contingency"`
	AllowancePercent   float64 `json:"allowance_percent,omitempty" limit:"[0,100]" doc:"added to every need in the order"`

	VOCLimitGL *float64 `json:"voc_limit_g_l,omitempty" limit:"[1,1500]" doc:"limit for the VOC of every paint as applied, less water and exempt solvent"`

	// Ranges are the numbers that were given as {"low", "likely", "high"}, by
	// JSON pointer; the fields above hold their likely values.
	Ranges map[string]wire.Range `json:"-"`
}

// Component is a part with a shape, a count, a substrate and the paint on it.
type Component struct {
	ID        string         `json:"id" doc:"short name that steps and regions use"`
	Name      string         `json:"name,omitempty" doc:"what people call it"`
	Note      string         `json:"note,omitempty" doc:"free text; not used in any figure"`
	Count     int            `json:"count,omitempty" limit:"[1,100000]" doc:"how many alike"`
	Shape     surfaces.Shape `json:"shape" doc:"its form and sizes"`
	Substrate string         `json:"substrate,omitempty" doc:"what lies under the paint"`
	SkinMM    *float64       `json:"skin_mm,omitempty" limit:"(0,500]" doc:"thickness of the skin"`

	ExistingFilmUM         float64   `json:"existing_film_um,omitempty" limit:"[0,20000]" doc:"thickness of the paint now on it"`
	ExistingFilmDensityKgL *float64  `json:"existing_film_density_kg_l,omitempty" limit:"[0.5,5]" doc:"density of that dry paint"`
	OldPaint               *OldPaint `json:"old_paint,omitempty" doc:"what is known of that paint; the job's where left out"`
	Openings               []Opening `json:"openings,omitempty" doc:"what is not painted: area off, edge to mask on; of one part"`
	ExtraAreaPercent       float64   `json:"extra_area_percent,omitempty" limit:"[0,100]" doc:"for laps, rivets and gaps that are not given one by one"`

	Joins  []Join  `json:"joins,omitempty" doc:"where it is set on other components: the footprint comes off both, once"`
	Gaps   []Gap   `json:"gaps,omitempty" doc:"gaps before control surfaces, whose faces are painted; of one part"`
	Laps   []Lap   `json:"laps,omitempty" doc:"edges of sheets that lap over others; of one part"`
	Rivets *Rivets `json:"rivets,omitempty" doc:"domed rivet heads; of one part"`
}

// Opening is something not painted in one component: a canopy, an intake.
type Opening struct {
	Name   string  `json:"name,omitempty" doc:"what it is"`
	Face   string  `json:"face,omitempty" doc:"the face it lies in; may be left out where the shape has one face"`
	AreaM2 float64 `json:"area_m2" limit:"(0,10000]" doc:"its area"`
	EdgeM  float64 `json:"edge_m,omitempty" limit:"[0,10000]" doc:"length of its edge"`
	Spot
}

// Region is a named part of the surface: components and faces whole, by share,
// by an area that was measured, or a bay, a band or a strip of their shape.
type Region struct {
	ID         string   `json:"id" doc:"short name that steps use"`
	Name       string   `json:"name,omitempty" doc:"what people call it"`
	Note       string   `json:"note,omitempty" doc:"free text; not used in any figure"`
	Of         []string `json:"of" doc:"components and faces it lies on"`
	AreaM2     *float64 `json:"area_m2,omitempty" limit:"(0,100000]" doc:"its measured area, on all parts together"`
	ShareRatio *float64 `json:"share_ratio,omitempty" limit:"(0,1]" doc:"its share of the area of what it lies on"`
	EdgeM      *float64 `json:"edge_m,omitempty" limit:"[0,100000]" doc:"length of its edge, on all parts together; found from the shape where the region is a bay, a band or a strip"`

	FromM  *float64   `json:"from_m,omitempty" limit:"[-500,500]" doc:"station at which it begins: the bay of a body, a wing from the root, a tube from its first end"`
	ToM    *float64   `json:"to_m,omitempty" limit:"[-500,500]" doc:"station at which it ends"`
	FromZM *float64   `json:"from_z_m,omitempty" limit:"[-500,500]" doc:"height at which it begins: a band along a body, a round shape (from its axis), a box or a panel (from the bottom)"`
	ToZM   *float64   `json:"to_z_m,omitempty" limit:"[-500,500]" doc:"height at which it ends"`
	Strip  *EdgeStrip `json:"strip,omitempty" doc:"a strip of a given width along a line of the shape"`
}

// Marking is a figure painted over the base.
type Marking struct {
	ID     string         `json:"id" doc:"short name that mark steps use"`
	Note   string         `json:"note,omitempty" doc:"free text; not used in any figure"`
	Count  int            `json:"count,omitempty" limit:"[1,100000]" doc:"how many are painted in all"`
	On     string         `json:"on,omitempty" doc:"component, component/face or region it is painted on"`
	Place  *placing.Place `json:"place,omitempty" doc:"where it was and goes back to: distances from edges, station lines or tapes"`
	Figure marking.Figure `json:"-" wire:"inline"`
}

// TestPatch is a measured trial area. What it measures replaces the book value
// in the steps it is for.
type TestPatch struct {
	For     []string `json:"for" doc:"ids of the steps it stands for"`
	Note    string   `json:"note,omitempty" doc:"free text; not used in any figure"`
	AreaM2  float64  `json:"area_m2" limit:"[0.0001,1000]" doc:"area of the patch"`
	Minutes *float64 `json:"minutes,omitempty" limit:"[0.01,10000]" doc:"time it took"`
	MediaKg *float64 `json:"media_kg,omitempty" limit:"[0.001,10000]" doc:"abrasive thrown at it"`
	Litres  *float64 `json:"litres,omitempty" limit:"[0.00001,1000]" doc:"paint (unthinned) or liquid used on it"`
	FilmUM  *float64 `json:"film_um,omitempty" limit:"[0.1,5000]" doc:"dry film measured on it"`

	UsableMediaKg *float64 `json:"usable_media_kg,omitempty" limit:"[0,10000]" doc:"of the abrasive thrown, what is still good after it was collected and sieved"`
	Discs         *float64 `json:"discs,omitempty" limit:"[0.01,10000]" doc:"discs worn out on it"`
	Crew          *int     `json:"crew,omitempty" limit:"[1,200]" doc:"people who did it; those of the step where left out"`
	Nozzles       *int     `json:"nozzles,omitempty" limit:"[1,50]" doc:"nozzles that did it; those of the step where left out"`
}

// Defaults makes a component stand for one part.
func (c *Component) Defaults() { c.Count = 1 }

// Defaults makes a marking stand for one figure.
func (m *Marking) Defaults() { m.Count = 1 }
