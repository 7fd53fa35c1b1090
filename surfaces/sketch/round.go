package sketch

import "filmbuild/surfaces"

// radiusOf is half the diameter where the diameter is given.
func radiusOf(r surfaces.Round) float64 {
	if r.DiameterM != nil {
		return *r.DiameterM / 2
	}
	return or(r.RadiusM, 0)
}

// greatestRound is the larger of the numbers that are written for a round part.
func greatestRound(r surfaces.Round) float64 {
	if r.DiameterM != nil {
		return *r.DiameterM
	}
	return or(r.RadiusM, 0)
}

// or returns an optional number or what stands for it when it is absent.
func or(value *float64, absent float64) float64 {
	if value == nil {
		return absent
	}
	return *value
}

// round draws the dimension of a round part along the upright line at x, as it
// was given: the diameter over all, or the radius from the axis up; end is where
// the outline crosses the axis on the side of the dimension.
func (d *drawing) round(r surfaces.Round, axis point, end, drawn, x float64, name string, falsified bool) {
	top := axis.plus(0, -drawn)
	if r.DiameterM != nil {
		d.upright(top, axis.plus(0, drawn), x, diameter(joinWords(name, "diameter"), *r.DiameterM).unless(falsified))
		return
	}
	d.upright(top, point{end, axis.y}, x, radius(joinWords(name, "radius"), or(r.RadiusM, 0)).unless(falsified))
}

func joinWords(a, b string) string {
	if a == "" {
		return b
	}
	return a + " " + b
}
