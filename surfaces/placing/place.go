// Package placing finds where a marking was from what a tape measure said, so
// that it can go back there after painting, and on the other side of the
// aircraft or vehicle as well.
//
// Standing assumptions. A face is looked at from outside, x to the right and y
// up, in m. Stations count aft from a datum, butt lines to the pilot's right
// and water lines up: (aft, right, up) is a right-handed frame. Angles are in
// degrees, counter-clockwise positive. Each tape, and each distance from an
// edge, is off by tape_error_mm, independently of the others (one standard
// deviation). Before stripping check a place by one more measure: nothing here
// can tell a wrong point from a right one.
package placing

// Place says where a marking was, in one of three ways: distances from two
// edges, station with butt and water line, or two or three taped distances.
type Place struct {
	Offsets      *Offsets `json:"offsets,omitempty" doc:"distances from two reference edges"`
	Station      *Station `json:"station,omitempty" doc:"station, butt line and water line"`
	Tapes        []Tape   `json:"tapes,omitempty" doc:"two or three distances taped from known points of the face"`
	Side         string   `json:"side,omitempty" doc:"with two tapes, or with points in one line: left or right of the way from the first point to the second, seen from outside; left unless given"`
	RotationDeg  float64  `json:"rotation_deg,omitempty" limit:"[-360,360]" doc:"by which the figure is turned counter-clockwise; 0 unless given"`
	Anchor       string   `json:"anchor,omitempty" doc:"the point of the figure that was measured: centre of its box (taken unless given), lower_left, lower_right, upper_left, upper_right, or origin"`
	TapeErrorMM  float64  `json:"tape_error_mm,omitempty" limit:"[0,1000]" doc:"how far off a tape may be; 3 unless given (common practice)"`
	Mirrored     bool     `json:"mirrored,omitempty" doc:"the figure stands on the other side as well, its anchor mirrored; false unless given"`
	MirrorFigure bool     `json:"mirror_figure,omitempty" doc:"the figure itself is mirrored on the other side too, as a stripe that tapers aft is; false unless given, and never for letters"`
	Note         string   `json:"note,omitempty" doc:"free text, such as which rivet a tape was held to; not used in any figure"`
}

// NewPlace returns a place with its defaults set.
func NewPlace() *Place {
	p := &Place{}
	p.Defaults()
	return p
}

// Defaults sets what a document need not say.
func (p *Place) Defaults() {
	p.Side, p.Anchor, p.TapeErrorMM = "left", "centre", 3
}

// Offsets are distances square to two edges that meet in the origin. Edge A runs
// along x, edge B at an angle to it.
type Offsets struct {
	FromAM   float64 `json:"from_a_m" limit:"[-1000,1000]" doc:"square to edge A, positive to its left, which is up"`
	FromBM   float64 `json:"from_b_m" limit:"[-1000,1000]" doc:"square to edge B, positive to its right"`
	AngleDeg float64 `json:"angle_deg,omitempty" limit:"(0,180)" doc:"from edge A to edge B; 90 unless given"`
	EdgeA    string  `json:"edge_a,omitempty" doc:"what edge A is, such as the lower edge of the door; printed on sheets"`
	EdgeB    string  `json:"edge_b,omitempty" doc:"what edge B is; printed on sheets"`
}

// Defaults makes the edges square.
func (o *Offsets) Defaults() { o.AngleDeg = 90 }

// Station is a place by the coordinates of the maker.
type Station struct {
	StationM   float64 `json:"station_m" limit:"[-1000,1000]" doc:"aft of the datum, parallel to the centre line"`
	ButtLineM  float64 `json:"butt_line_m,omitempty" limit:"[-1000,1000]" doc:"from the vertical plane through the centre line, positive to the pilot's right"`
	WaterLineM float64 `json:"water_line_m,omitempty" limit:"[-1000,1000]" doc:"above the level plane of the datum; negative below it"`
	Face       string  `json:"face" doc:"on which the figure lies: left, right, upper or lower"`
	Datum      string  `json:"datum" doc:"from where stations and water lines count: makers differ"`
}

// Tape is a distance from a known point.
type Tape struct {
	XM        float64 `json:"x_m" limit:"[-1000,1000]" doc:"of the known point"`
	YM        float64 `json:"y_m" limit:"[-1000,1000]" doc:"of the known point"`
	DistanceM float64 `json:"distance_m" limit:"(0,1000]" doc:"taped from it along the face"`
	Name      string  `json:"name,omitempty" doc:"what the known point is, such as the corner of the hatch; printed on sheets"`
}
