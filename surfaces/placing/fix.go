package placing

import (
	"math"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// Fix is where the anchor of a figure lies on its face, and how sure that is.
type Fix struct {
	XM          float64            `json:"x_m"` // on the face seen from outside
	YM          float64            `json:"y_m"`
	RotationDeg float64            `json:"rotation_deg"`
	Anchor      string             `json:"anchor"`
	Face        string             `json:"face,omitempty"` // with a station
	Station     *Station           `json:"station,omitempty"`
	AngleDeg    float64            `json:"angle_deg,omitempty"`   // at which the two measures meet
	ErrorM      float64            `json:"error_m"`               // of the place, for the tape error
	ErrorRatio  float64            `json:"error_ratio"`           // error of the place over that of a tape
	ResidualM   float64            `json:"residual_m,omitempty"`  // root mean square by which three tapes disagree
	ResidualsM  []float64          `json:"residuals_m,omitempty"` // each tape less the distance found
	Warnings    []string           `json:"warnings,omitempty"`    // in words
	OtherSide   *Fix               `json:"other_side,omitempty"`  // the same place on the other side
	Working     []quantity.Working `json:"working,omitempty"`     // how it was found
}

// The angle between two tapes outside which a fix is called weak, and that
// outside which it is refused (common practice; at 30° the error of the place is
// 2.8 times that of the tape).
const (
	weakDeg  = 30
	leastDeg = 1
)

// Other is the same place on the other side, seen from outside there: the anchor
// is mirrored and so is the slope, but the figure reads as before. What was the
// left end of a text is the right one.
//
//	(FS, BL, WL) → (FS, −BL, WL),  (x, y) → (−x, y),  rotation → −rotation
//
// Source: a construction article on insignia; mirror the anchor, never the
// lettering.
func (f Fix) Other() Fix {
	other := f
	other.OtherSide, other.Working = nil, nil
	other.XM, other.RotationDeg = -f.XM, -f.RotationDeg
	if f.XM == 0 {
		other.XM = 0
	}
	if f.RotationDeg == 0 {
		other.RotationDeg = 0
	}
	swap := map[string]string{"lower_left": "lower_right", "lower_right": "lower_left", "upper_left": "upper_right", "upper_right": "upper_left"}
	if to, found := swap[f.Anchor]; found {
		other.Anchor = to
	}
	if to, found := map[string]string{"left": "right", "right": "left"}[f.Face]; found {
		other.Face = to
	}
	if f.Station != nil {
		s := *f.Station
		s.Face = other.Face
		if s.ButtLineM != 0 {
			s.ButtLineM = -s.ButtLineM
		}
		other.Station = &s
	}
	return other
}

// Placement moves a figure whose box in its own coordinates is given, so that
// its anchor comes to the fix: turned about the anchor, then shifted.
func (f Fix) Placement(box planar.Box) planar.Placement {
	at := map[string]planar.Point{
		"centre":     {X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y + box.Max.Y) / 2},
		"lower_left": box.Min, "upper_right": box.Max,
		"lower_right": {X: box.Max.X, Y: box.Min.Y}, "upper_left": {X: box.Min.X, Y: box.Max.Y},
	}[f.Anchor]
	turn := planar.Placement{Scale: 1, Turn: f.RotationDeg * math.Pi / 180}
	gone := turn.Point(at)
	turn.Shift = planar.Point{X: f.XM - gone.X, Y: f.YM - gone.Y}
	return turn
}

// setError says how an error s of each of two measures that meet at an angle γ
// moves the place.
//
//	error = s·√2 / sin γ
//
// Source: propagation of independent errors, identity.
func (f *Fix) setError(angleDeg, tapeMM float64) {
	f.AngleDeg = angleDeg
	f.ErrorRatio = math.Sqrt2 / math.Sin(angleDeg*math.Pi/180)
	f.ErrorM = f.ErrorRatio * tapeMM / 1000
	f.note("error_m", f.ErrorM, "s·√2/sin γ", map[string]float64{"s": tapeMM / 1000, "γ°": angleDeg}, "propagation of independent errors: identity")
}

func (f *Fix) note(name string, value float64, formula string, terms map[string]float64, source string) {
	f.Working = append(f.Working, quantity.Working{Quantity: name, Value: value, Unit: "m", Formula: formula, Terms: terms, Source: source})
}
