package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// drawTorus shows a ring cut through its axis: the tube's two circles and the
// lines of the ring behind them.
func drawTorus(d *drawing, s *surfaces.Torus) {
	d.views = "Ring, cut through its axis"
	d.upTo(2 * (s.RingRadiusM + s.TubeRadiusM))
	thick := d.stretch(2 * s.TubeRadiusM)
	R, r := s.RingRadiusM*d.k, s.TubeRadiusM*d.k*thick
	d.drawMain(outline, d.path().oval(point{-R, 0}, r, r).oval(point{R, 0}, r, r))
	d.line(edge, point{-R, -r}, point{R, -r})
	d.line(edge, point{-R, r}, point{R, r})
	d.axis(point{0, -r - 4}, point{0, r + 4})
	for _, x := range []float64{-R, R} {
		d.centreMark(point{x, 0})
	}
	y := r + firstDimension
	d.level(point{0, r}, point{R, r}, y, radius("ring radius", s.RingRadiusM).unless(thick != 1))
	d.level(point{-R - r, 0}, point{R + r, 0}, y+nextDimension+1, diameter("outer diameter", 2*(s.RingRadiusM+s.TubeRadiusM)).bracketed().unless(thick != 1))
	d.upright(point{R, -r}, point{R + r, 0}, R+r+firstDimension, radius("tube radius", s.TubeRadiusM).unless(thick != 1))
	d.tubeFace("outer", -R, r, -1)
	d.tubeFace("inner", -R, r, 1)
}

// tubeFace names the half of the tube on one side, from above.
func (d *drawing) tubeFace(name string, x, r, side float64) {
	l := d.face(name)
	to := onOval(point{x, 0}, r, r, -math.Pi/2+side*math.Pi/4)
	from := point{x + side*(r*0.7+6), -r - 7}
	d.leader(from, to, false)
	d.sideways(l, from, side)
}
