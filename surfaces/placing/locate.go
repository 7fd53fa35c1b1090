package placing

import (
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
)

// locate finds a place whose fields are in range; what cannot be is reported.
func (p *Place) locate(report reporter) Fix {
	f := Fix{RotationDeg: p.RotationDeg, Anchor: p.Anchor}
	switch {
	case p.Offsets != nil:
		p.Offsets.locate(&f, p.TapeErrorMM, report)
	case p.Station != nil:
		p.Station.locate(&f, p.TapeErrorMM)
	case len(p.Tapes) == 2:
		p.twoTapes(&f, report)
	default:
		p.threeTapes(&f, report)
	}
	f.Measures = p.measures(f)
	other := f.Other()
	other.MirrorFigure = p.MirrorFigure
	f.OtherSide = &other
	return f
}

// locate finds the point at distances a and b from two edges at an angle φ.
//
//	x = (b + a·cos φ)/sin φ,  y = a
//
// Source: plane geometry, identity.
func (o *Offsets) locate(f *Fix, tapeMM float64, report reporter) {
	if refuseAngle(o.AngleDeg, "/offsets/angle_deg", "the edges meet", report) {
		return
	}
	sin, cos := o.sincos()
	f.XM, f.YM = (o.FromBM+o.FromAM*cos)/sin, o.FromAM
	f.note("x_m", f.XM, "(b + a·cos_φ)/sin_φ", map[string]float64{"a": o.FromAM, "b": o.FromBM, "cos_φ": cos, "sin_φ": sin}, "identity")
	f.note("y_m", f.YM, "a", map[string]float64{"a": o.FromAM}, "identity")
	f.setError([]planar.Point{{Y: 1}, {X: sin, Y: -cos}}, o.AngleDeg, tapeMM)
	f.warnWeak("the edges meet")
}

// sincos are those of the angle of the edges, exact where they are square.
func (o *Offsets) sincos() (sin, cos float64) {
	if o.AngleDeg == 90 {
		return 1, 0
	}
	return math.Sincos(o.AngleDeg * math.Pi / 180)
}

// locate puts a station onto its face, seen from outside: on the left side aft
// is to the right, on the right side to the left; the upper and the lower face
// are seen with the nose up.
//
//	left (FS, WL), right (−FS, WL), upper (BL, −FS), lower (−BL, −FS)
//
// Source: handbook on airframes; frame (aft, right, up), right-handed.
func (s *Station) locate(f *Fix, tapeMM float64) {
	f.Face = s.Face
	own := *s
	f.Station = &own
	switch s.Face {
	case "left":
		f.XM, f.YM = s.StationM, s.WaterLineM
	case "right":
		f.XM, f.YM = -s.StationM, s.WaterLineM
	case "upper":
		f.XM, f.YM = s.ButtLineM, -s.StationM
	default:
		f.XM, f.YM = -s.ButtLineM, -s.StationM
	}
	f.setError([]planar.Point{{X: 1}, {Y: 1}}, 90, tapeMM)
}

// refuseAngle reports two measures so nearly in one line that they fix nothing.
func refuseAngle(angleDeg float64, pointer, what string, report reporter) bool {
	if angleDeg >= leastDeg && angleDeg <= 180-leastDeg {
		return false
	}
	report(pointer, "inconsistent", fmt.Sprintf("%s at %.3g°, so nearly in one line that the point may be anywhere along it; measure from other references, best at about 90°", what, angleDeg))
	return true
}

func (f *Fix) warnWeak(what string) {
	if f.AngleDeg < weakDeg || f.AngleDeg > 180-weakDeg {
		f.Warnings = append(f.Warnings, fmt.Sprintf("%s at %.1f°: an error of a tape moves the place by %.1f times as much; take references that meet nearer to 90°", what, f.AngleDeg, f.ErrorRatio))
	}
}
