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
}

// NewMasking returns a masking with every default set; the edge is the user's.
func NewMasking() *Masking {
	return &Masking{TapeWidthMm: 24, Passes: 1} // 24 mm is a trade width, from memory (reference markings MK-7)
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

	Working []quantity.Working `json:"working"`
}
