package masking

import "filmbuild/surfaces/quantity"

// Masking is one edge, or many alike, taped with one kind of tape.
type Masking struct {
	EdgeM        float64  `json:"edge_m" limit:"(0,100000]" doc:"length of the edge that is taped"`
	TapeWidthMm  float64  `json:"tape_width_mm" limit:"[1,300]" doc:"width of the tape; 24 unless given"`
	Passes       int      `json:"passes" limit:"[1,20]" doc:"how often the edge is taped, one tape beside the other or one colour after the other; 1 unless given"`
	WastePercent float64  `json:"waste_percent" limit:"[0,100]" doc:"allowance on the length of tape; 0 unless given, 10 to 15 is common"`
	RollM        *float64 `json:"roll_m,omitempty" limit:"[0.5,5000]" doc:"length of tape on a roll; gives the rolls"`
	FilmWidthM   *float64 `json:"film_width_m,omitempty" limit:"[0,20]" doc:"width of film or paper along the edge"`
	FilmAreaM2   *float64 `json:"film_area_m2,omitempty" limit:"[0,100000]" doc:"flat area that is covered besides, such as a canopy"`
	FilmEdgeM    *float64 `json:"film_edge_m,omitempty" limit:"[0,100000]" doc:"length of the edge of that area, over which film reaches by overlap_m"`
	OverlapM     float64  `json:"overlap_m" limit:"[0,1]" doc:"how far film reaches beyond the edge of what it covers; 0.0127 (1/2 in) unless given"`
	FilmRollM    *float64 `json:"film_roll_width_m,omitempty" limit:"[0.05,20]" doc:"width of the film or paper on its roll; gives the length of film"`

	FineTapeWidthMm *float64 `json:"fine_tape_width_mm,omitempty" limit:"[0.5,50]" doc:"width of a narrow tape laid first at the paint edge, the other behind it; none unless given"`
	FineRollM       *float64 `json:"fine_roll_m,omitempty" limit:"[0.5,5000]" doc:"length of narrow tape on a roll; gives its rolls"`
	RadiusM         *float64 `json:"radius_m,omitempty" limit:"[0.005,1000]" doc:"radius of the tightest curve; gives how much each tape has to stretch there"`
	RateMH          *float64 `json:"rate_m_h,omitempty" limit:"[0.01,1000]" doc:"tape one person lays in an hour; gives the hours"`
}

// NewMasking returns a masking with every default set; the edge is the user's.
func NewMasking() *Masking {
	return &Masking{TapeWidthMm: 24, Passes: 1, OverlapM: 0.0127} // 24 mm is a trade width, from memory (reference markings MK-7); 1/2 in USAF TO 1-1-8 para 2.3, read (MK-4)
}

// Check reports every fault of the input.
func (m *Masking) Check(report func(pointer, code, detail string)) { quantity.Check(m, report) }

// Result is what a masking takes.
type Result struct {
	TapeM      float64  `json:"tape_m"`
	TapeAreaM2 float64  `json:"tape_area_m2"` // of the tape that is laid, without the allowance
	Rolls      *int     `json:"rolls,omitempty"`
	LeftOverM  *float64 `json:"left_over_m,omitempty"` // on the last roll
	FilmM2     *float64 `json:"film_m2,omitempty"`
	FilmM      *float64 `json:"film_m,omitempty"` // length off the roll

	FineTapeM          *float64 `json:"fine_tape_m,omitempty"`
	FineRolls          *int     `json:"fine_rolls,omitempty"`
	StretchPercent     *float64 `json:"stretch_percent,omitempty"`      // of the outer edge of the wide tape, laid flat on the tightest curve
	FineStretchPercent *float64 `json:"fine_stretch_percent,omitempty"` // of the narrow one
	Hours              *float64 `json:"hours,omitempty"`                // person-hours to lay all tape, without what is thrown away

	Working []quantity.Working `json:"working"`
}
