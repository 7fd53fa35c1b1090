package sheet

import (
	"math"
	"strconv"

	"filmbuild/surfaces/planar"
)

// view is where the origin of the part lies on the sheet, in mm.
type view struct{ x, y float64 }

// point is where a point of the part, in m, lies on the sheet, in mm.
func (v view) point(p planar.Point) (x, y float64) { return v.x + metre*p.X, v.y - metre*p.Y }

// path writes an outline as one closed path: M, L, A, C and Z. An arc is cut so
// that none turns more than a quarter and a bit, beyond which the rounding of
// its ends would move its middle.
func (v view) path(text []byte, o planar.Outline) []byte {
	for i, c := range o {
		if i == 0 {
			text = v.to(text, 'M', c.At)
		}
		e := course{c, o[(i+1)%len(o)].At}
		switch {
		case c.Bend != nil:
			text = v.to(text, 'C', c.Bend.First)
			text = v.to(text, ' ', c.Bend.Second)
			text = v.to(text, ' ', e.to)
		case c.Sweep != 0:
			text = v.arc(text, e)
		case i < len(o)-1:
			text = v.to(text, 'L', e.to)
		}
	}
	return append(text, 'Z')
}

func (v view) arc(text []byte, e course) []byte {
	_, from := e.centre()
	radius := metre * math.Hypot(from.X, from.Y)
	const most = 1.6 // rad
	n := int(math.Ceil(math.Abs(e.Sweep) / most))
	flag := byte('0') // left on the part is counter-clockwise on the sheet too
	if e.Sweep < 0 {
		flag = '1'
	}
	for k := 1; k <= n; k++ {
		to := e.to
		if k < n {
			to, _ = e.at(float64(k) / float64(n))
		}
		text = number(append(text, 'A'), radius)
		text = number(append(text, ' '), radius)
		text = append(text, " 0 0 "...)
		text = append(text, flag)
		text = v.to(text, ' ', to)
	}
	return text
}

func (v view) to(text []byte, command byte, p planar.Point) []byte {
	x, y := v.point(p)
	text = number(append(text, command), x)
	return number(append(text, ' '), y)
}

// number writes mm to a millionth: areas are read back from these figures.
func number(text []byte, x float64) []byte {
	return strconv.AppendFloat(text, math.Round(x*1e6)/1e6+0, 'f', -1, 64)
}

// rough writes mm to a hundredth, for what only guides the eye.
func rough(x float64) string { return strconv.FormatFloat(math.Round(x*100)/100+0, 'f', -1, 64) }
