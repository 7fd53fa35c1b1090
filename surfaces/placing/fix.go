package placing

import (
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Fix is where the anchor of a figure lies on its face, and how sure that is.
type Fix struct {
	XM           float64            `json:"x_m"` // on the face seen from outside
	YM           float64            `json:"y_m"`
	RotationDeg  float64            `json:"rotation_deg"`
	Anchor       string             `json:"anchor"`
	MirrorFigure bool               `json:"mirror_figure,omitempty"` // the figure is mirrored before it is turned
	Face         string             `json:"face,omitempty"`          // with a station
	Station      *Station           `json:"station,omitempty"`
	AngleDeg     float64            `json:"angle_deg,omitempty"`   // at which the two measures meet
	ErrorM       float64            `json:"error_m"`               // of the place, one standard deviation, for the tape error
	ErrorRatio   float64            `json:"error_ratio"`           // error of the place over that of a tape
	Ellipse      Ellipse            `json:"ellipse"`               // of that error, by direction
	WorstShiftM  float64            `json:"worst_shift_m"`         // with every measure off by the tape error, in the worst way
	ResidualM    float64            `json:"residual_m,omitempty"`  // root mean square by which three tapes disagree
	ResidualsM   []float64          `json:"residuals_m,omitempty"` // each tape less the distance found
	Measures     []Measure          `json:"measures,omitempty"`    // to tape when the figure goes back
	Warnings     []string           `json:"warnings,omitempty"`    // in words
	OtherSide    *Fix               `json:"other_side,omitempty"`  // the same place on the other side
	Working      []quantity.Working `json:"working,omitempty"`     // how it was found
}

// The angle between two tapes outside which a fix is called weak, and that
// outside which it is refused (common practice; at 30° the error of the place is
// 2.8 times that of the tape).
const (
	weakDeg  = 30
	leastDeg = 1
)

// Other is the same place on the other side, seen from outside there: the anchor
// is mirrored and so is the slope, but the figure reads as before unless it is to
// be mirrored. What was the left end of a text is the right one.
//
//	(FS, BL, WL) → (FS, −BL, WL),  (x, y) → (−x, y),  rotation → −rotation
//
// Source: a construction article on insignia; mirror the anchor, never the
// lettering.
func (f Fix) Other() Fix {
	other := f
	other.OtherSide, other.Working = nil, nil
	other.XM, other.RotationDeg = opposite(f.XM), opposite(f.RotationDeg)
	other.Measures = mirrored(f.Measures)
	other.Ellipse.DirectionDeg = opposite(f.Ellipse.DirectionDeg)
	swap := map[string]string{"lower_left": "lower_right", "lower_right": "lower_left", "upper_left": "upper_right", "upper_right": "upper_left"}
	if to, found := swap[f.Anchor]; found {
		other.Anchor = to
	}
	other.Face = OtherFace(f.Face)
	if f.Station != nil {
		s := *f.Station
		s.Face = other.Face
		s.ButtLineM = opposite(s.ButtLineM)
		other.Station = &s
	}
	return other
}

// OtherFace is the face on which a figure stands on the other side.
func OtherFace(face string) string {
	switch face {
	case "left":
		return "right"
	case "right":
		return "left"
	}
	return face
}

// Placement moves a figure whose box in its own coordinates is given, so that
// its anchor comes to the fix: mirrored if it is to be, turned about the anchor,
// then shifted.
func (f Fix) Placement(box planar.Box) planar.Placement {
	if f.MirrorFigure {
		box.Min.X, box.Max.X = opposite(box.Max.X), opposite(box.Min.X)
	}
	at := map[string]planar.Point{
		"centre":     {X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y + box.Max.Y) / 2},
		"lower_left": box.Min, "upper_right": box.Max,
		"lower_right": {X: box.Max.X, Y: box.Min.Y}, "upper_left": {X: box.Min.X, Y: box.Max.Y},
	}[f.Anchor]
	turn := planar.Placement{Scale: 1, Turn: f.RotationDeg * math.Pi / 180}
	gone := turn.Point(at)
	turn.Shift, turn.Mirror = planar.Point{X: f.XM - gone.X, Y: f.YM - gone.Y}, f.MirrorFigure
	return turn
}

// Corners are those of a figure's box at the fix, from its lower left
// counter-clockwise as the figure is read.
func (f Fix) Corners(box planar.Box) [][2]float64 {
	to := f.Placement(box)
	var list [][2]float64
	for _, c := range []planar.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}} {
		at := to.Point(c)
		list = append(list, [2]float64{at.X, at.Y})
	}
	return list
}

// opposite is −x, and never a negative zero.
func opposite(x float64) float64 { return 0 - x }

func (f *Fix) note(name string, value float64, formula string, terms map[string]float64, source string) {
	f.Working = append(f.Working, quantity.Working{Quantity: name, Value: value, Unit: "m", Formula: formula, Terms: terms, Source: source})
}
