package placing

import (
	"math"

	"filmbuild/surfaces/planar"
)

// Ellipse is where the place may be for one standard deviation of every
// measure: its half axes, and the direction of the longer one from x towards y.
type Ellipse struct {
	MajorM       float64 `json:"major_m"`
	MinorM       float64 `json:"minor_m"`
	DirectionDeg float64 `json:"direction_deg"`
}

// normal is JᵀJ, J holding for each measure the direction in which it grows
// fastest.
type normal struct{ xx, xy, yy float64 }

func normalOf(ways []planar.Point) normal {
	var n normal
	for _, u := range ways {
		n.xx, n.xy, n.yy = n.xx+u.X*u.X, n.xy+u.X*u.Y, n.yy+u.Y*u.Y
	}
	return n
}

func (n normal) determinant() float64 { return n.xx*n.yy - n.xy*n.xy }

// solve is (JᵀJ)⁻¹·v.
func (n normal) solve(v planar.Point) planar.Point {
	d := n.determinant()
	return planar.Point{X: (n.yy*v.X - n.xy*v.Y) / d, Y: (n.xx*v.Y - n.xy*v.X) / d}
}

// ratio is the error of the place over that of a measure.
//
//	√trace((JᵀJ)⁻¹), for two measures at an angle γ: √2/sin γ
//
// Source: least squares; propagation of independent errors.
func (n normal) ratio() float64 { return math.Sqrt((n.xx + n.yy) / n.determinant()) }

// ellipse is that of (JᵀJ)⁻¹: its half axes are the roots of the eigenvalues.
func (n normal) ellipse(measure float64) Ellipse {
	middle, off := (n.xx+n.yy)/2, math.Hypot((n.xx-n.yy)/2, n.xy)
	least := n.determinant() / (middle + off) // middle − off without its rounding
	turn := 0.0                               // of what the measures tell best
	if off > 1e-12*middle {
		turn = math.Atan2(2*n.xy, n.xx-n.yy) / 2
	}
	direction := turn*180/math.Pi + 90
	if direction > 90 {
		direction -= 180
	}
	return Ellipse{measure / math.Sqrt(least), measure / math.Sqrt(middle+off), direction}
}

// worst is the farthest that the place moves when every measure is off by one,
// each this way or that.
//
//	greatest |(JᵀJ)⁻¹·Jᵀ·ε|, ε = ±1; for two measures at an angle γ: 1/min(sin γ/2, cos γ/2)
//
// Source: least squares, identity.
func (n normal) worst(ways []planar.Point) float64 {
	most := 0.0
	for signs := range 1 << len(ways) {
		var v planar.Point
		for i, u := range ways {
			sign := 1.0
			if signs>>i&1 == 1 {
				sign = -1
			}
			v.X, v.Y = v.X+sign*u.X, v.Y+sign*u.Y
		}
		gone := n.solve(v)
		most = max(most, math.Hypot(gone.X, gone.Y))
	}
	return most
}

// setError says how an error of every measure moves the place. ways are the
// directions in which the measures grow; angleDeg is that at which they meet.
func (f *Fix) setError(ways []planar.Point, angleDeg, tapeMM float64) {
	n, s := normalOf(ways), tapeMM/1000
	f.AngleDeg, f.ErrorRatio, f.Ellipse = angleDeg, n.ratio(), n.ellipse(s)
	f.ErrorM, f.WorstShiftM = f.ErrorRatio*s, s*n.worst(ways)
	if len(ways) == 2 {
		half := angleDeg * math.Pi / 360
		f.note("error_m", f.ErrorM, "s·√2/sin_γ", map[string]float64{"s": s, "sin_γ": math.Sin(2 * half)}, "propagation of independent errors: identity")
		f.note("worst_shift_m", f.WorstShiftM, "s/min(sin_half_γ, cos_half_γ)", map[string]float64{"s": s, "sin_half_γ": math.Sin(half), "cos_half_γ": math.Cos(half)}, "identity")
		return
	}
	f.note("error_m", f.ErrorM, "√(major^2 + minor^2)", map[string]float64{"major": f.Ellipse.MajorM, "minor": f.Ellipse.MinorM}, "least squares")
	f.note("worst_shift_m", f.WorstShiftM, "by trying all tapes too long and too short by s", map[string]float64{"s": s}, "least squares")
}
