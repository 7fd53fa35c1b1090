package target

import (
	"filmbuild/estimate"
	"filmbuild/estimate/money"
)

// Answer is the size that just fits.
type Answer struct {
	Find       string             `json:"find"`
	Ratio      float64            `json:"size_ratio"`        // of area or film to the plan's
	AreaM2     float64            `json:"area_m2,omitempty"` // of the components that change, for area
	PlanAreaM2 float64            `json:"plan_area_m2,omitempty"`
	Areas      []AreaChange       `json:"areas,omitempty"`
	Films      []FilmChange       `json:"films,omitempty"`
	Held       []Held             `json:"held"`       // each target and what the answer takes of it
	LimitedBy  string             `json:"limited_by"` // budget, or the product whose stock is used up first
	Tolerance  float64            `json:"tolerance_ratio"`
	Words      []string           `json:"words"` // the answer and what it rests on
	Estimate   *estimate.Estimate `json:"estimate"`
}

// AreaChange is the area of one component, planned and found.
type AreaChange struct {
	Component  string  `json:"component"`
	PlanAreaM2 float64 `json:"plan_area_m2"`
	AreaM2     float64 `json:"area_m2"`
}

// FilmChange is the film of one step, planned and found.
type FilmChange struct {
	Step      string  `json:"step"`
	PlanUM    float64 `json:"plan_dry_film_um"`
	DryFilmUM float64 `json:"dry_film_um"`
}

// Held is one target.
type Held struct {
	Target string        `json:"target"` // budget, or a product
	Unit   string        `json:"unit"`
	Most   float64       `json:"most"`
	Takes  float64       `json:"takes"`
	Budget *money.Amount `json:"budget,omitempty"` // the same two as money
	Needed *money.Amount `json:"needed,omitempty"`
}
