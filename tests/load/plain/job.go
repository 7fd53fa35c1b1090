// Package plain mirrors the jet trainer example as tightly as encoding/json
// reads it: flat structs, no checks, no units, no unions. It is the measure that
// the engine's cost is compared with, and nothing else.
package plain

import "encoding/json"

// Job is the document.
type Job struct {
	Name               string      `json:"name"`
	Note               string      `json:"note"`
	Currency           string      `json:"currency"`
	Components         []Component `json:"components"`
	Regions            []Region    `json:"regions"`
	Markings           []Marking   `json:"markings"`
	Steps              []Step      `json:"steps"`
	Items              []Item      `json:"items"`
	Labour             Labour      `json:"labour"`
	ContingencyPercent float64     `json:"contingency_percent"`
	AllowancePercent   float64     `json:"allowance_percent"`
}

// Component is a part with its shape.
type Component struct {
	ID                     string    `json:"id"`
	Name                   string    `json:"name"`
	Count                  int       `json:"count"`
	Shape                  Shape     `json:"shape"`
	Substrate              string    `json:"substrate"`
	SkinMM                 float64   `json:"skin_mm"`
	ExistingFilmUM         float64   `json:"existing_film_um"`
	ExistingFilmDensityKgL float64   `json:"existing_film_density_kg_l"`
	Openings               []Opening `json:"openings"`
	ExtraAreaPercent       float64   `json:"extra_area_percent"`
}

// Shape holds the fields of the body and of the wing.
type Shape struct {
	Kind                string    `json:"kind"`
	Nose                string    `json:"nose"`
	Tail                string    `json:"tail"`
	Stations            []Station `json:"stations"`
	Section             string    `json:"section"`
	RootChordM          float64   `json:"root_chord_m"`
	TipChordM           float64   `json:"tip_chord_m"`
	SpanM               float64   `json:"span_m"`
	SweepLEDeg          float64   `json:"sweep_le_deg"`
	RootThicknessRatio  float64   `json:"root_thickness_ratio"`
	TipThicknessRatio   float64   `json:"tip_thickness_ratio"`
	CamberRatio         float64   `json:"camber_ratio"`
	CamberPositionRatio float64   `json:"camber_position_ratio"`
	Tip                 string    `json:"tip"`
}

// Station is one section of the body.
type Station struct {
	XM       float64 `json:"x_m"`
	WidthM   float64 `json:"width_m"`
	HeightM  float64 `json:"height_m"`
	Exponent float64 `json:"exponent"`
	ZM       float64 `json:"z_m"`
}

// Opening is something not painted.
type Opening struct {
	Name   string  `json:"name"`
	Face   string  `json:"face"`
	AreaM2 float64 `json:"area_m2"`
	EdgeM  float64 `json:"edge_m"`
}

// Region is a part of the surface.
type Region struct {
	ID         string   `json:"id"`
	Name       string   `json:"name"`
	Of         []string `json:"of"`
	AreaM2     float64  `json:"area_m2"`
	ShareRatio float64  `json:"share_ratio"`
	EdgeM      float64  `json:"edge_m"`
}

// Marking holds the fields of roundel, stripe and rectangle.
type Marking struct {
	Place     Place           `json:"place"`
	ID        string          `json:"id"`
	Kind      string          `json:"kind"`
	SizeM     json.RawMessage `json:"size_m"` // text with its unit
	LengthM   float64         `json:"length_m"`
	WidthM    float64         `json:"width_m"`
	HeightM   float64         `json:"height_m"`
	EndWidthM float64         `json:"end_width_m"`
	Colour    string          `json:"colour"`
	Count     int             `json:"count"`
	On        string          `json:"on"`
	Rings     []Ring          `json:"rings"`
}

// Ring is one ring of a roundel.
type Ring struct {
	Ratio  float64 `json:"ratio"`
	Colour string  `json:"colour"`
}

// Step holds the fields of every operation in the document.
type Step struct {
	ID              string          `json:"id"`
	Name            string          `json:"name"`
	Operation       string          `json:"operation"`
	On              []string        `json:"on"`
	Product         string          `json:"product"`
	SetupH          float64         `json:"setup_h"`
	Crew            int             `json:"crew"`
	Media           string          `json:"media"`
	NozzleBoreMM    float64         `json:"nozzle_bore_mm"`
	PressureKPa     json.RawMessage `json:"pressure_kpa"`    // text with its unit
	StripRateM2H    json.RawMessage `json:"strip_rate_m2_h"` // a range
	Recovered       bool            `json:"recovered"`
	WorkingChargeKg float64         `json:"working_charge_kg"`
	Coats           int             `json:"coats"`
	DryFilmUM       float64         `json:"dry_film_um"`
	Method          string          `json:"method"`
	LossPercent     float64         `json:"loss_percent"`
	Markings        []string        `json:"markings"`
}

// Item is other money.
type Item struct {
	ID       string          `json:"id"`
	Name     string          `json:"name"`
	Amount   json.RawMessage `json:"amount"` // text or a range
	Category string          `json:"category"`
	Funding  string          `json:"funding"`
}

// Labour holds the rates, as text.
type Labour struct {
	VolunteerRate string `json:"volunteer_rate"`
	PaidRate      string `json:"paid_rate"`
}

// Place is where a marking was.
type Place struct {
	Tapes        []Tape   `json:"tapes"`
	Station      *Located `json:"station"`
	Side         string   `json:"side"`
	Anchor       string   `json:"anchor"`
	Mirrored     bool     `json:"mirrored"`
	MirrorFigure bool     `json:"mirror_figure"`
	TapeErrorMM  float64  `json:"tape_error_mm"`
}

// Tape is a distance from a known point.
type Tape struct {
	XM        float64 `json:"x_m"`
	YM        float64 `json:"y_m"`
	DistanceM float64 `json:"distance_m"`
	Name      string  `json:"name"`
}

// Located is a place by station and water line.
type Located struct {
	StationM   float64 `json:"station_m"`
	WaterLineM float64 `json:"water_line_m"`
	Face       string  `json:"face"`
	Datum      string  `json:"datum"`
}
