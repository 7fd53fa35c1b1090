package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// drawSphere shows a ball as a circle.
func drawSphere(d *drawing, s *surfaces.Sphere) {
	d.views = "Ball"
	d.upTo(greatestRound(s.Round))
	R := radiusOf(s.Round) * d.k
	d.drawMain(outline, d.path().oval(point{}, R, R))
	d.axis(point{-R, 0}, point{R, 0})
	d.axis(point{0, -R}, point{0, R})
	d.round(s.Round, point{}, -R, R, -R-firstDimension, "", false)
	d.beneathRight(point{R * 0.4, -R * 0.4}, R, d.face("outside"))
}

// beneathRight names a round face by a leader from its upper right.
func (d *drawing) beneathRight(to point, r float64, l lettering) {
	from := point{r*0.75 + 8, -r*0.75 - 2}
	d.leader(from, to, true)
	d.sideways(l, from.plus(0, capital/2), 1)
}

// drawCap shows a dished cover from the side, its rim below.
func drawCap(d *drawing, s *surfaces.Cap) {
	r, h := radiusOf(s.Round), s.HeightM
	rim := math.Sqrt(max(0, h*(2*r-h)))
	d.views = "Part of a sphere from the side, its rim below"
	d.upTo(max(greatestRound(s.Round), h, 2*rim))
	half := rim
	if h > r {
		half = r
	}
	up := d.stretch(h)
	R, H, A := r*d.k, h*d.k*up, rim*d.k
	c, open := point{0, -H + R*up}, math.Acos(max(-1, min(1, 1-h/r)))
	way := d.path().move(point{-A, 0})
	if rim > 0 {
		way.arc(c, R, R*up, -math.Pi/2-open, -math.Pi/2+open)
		d.drawMain(outline, way)
		d.line(edge, point{-A, 0}, point{A, 0})
	} else {
		d.drawMain(outline, d.path().oval(c, R, R*up))
	}
	side := half * d.k
	d.axis(point{0, -H}, point{0, 0})
	d.upright(point{0, -H}, point{-A, 0}, -side-firstDimension, plain("height", h).unless(up != 1))
	if rim > 0 {
		d.level(point{-A, 0}, point{A, 0}, firstDimension, diameter("rim diameter", 2*rim).bracketed())
	}
	tip := onOval(c, R, R*up, -math.Pi/2+0.75*min(open, 2))
	l := d.letters(sphereSize(s.Round).unless(up != 1))
	from := tip.plus(9, -7)
	d.leader(from, tip, false)
	d.sideways(l, from.plus(0, capital/2), 1)
	to := onOval(point{c.x, c.y}, R, R*up, -math.Pi/2+0.25*min(open, 2))
	name := d.face("outside")
	wide := textWidth(name.text) / 2
	at := d.raised(name, point{to.x + 7 + wide, -H - 7 + capital/2})
	d.leader(at.plus(-wide-1, -capital/2), to, false)
	d.write(name, at)
}

// sphereSize is the size of the sphere that a part belongs to, as given.
func sphereSize(r surfaces.Round) size {
	if r.DiameterM != nil {
		return diameter("diameter of the sphere", *r.DiameterM)
	}
	return radius("radius of the sphere", or(r.RadiusM, 0))
}

// drawEllipsoid shows a whole one from the side and on its end, and a half one
// from the front and from above.
func drawEllipsoid(d *drawing, s *surfaces.Ellipsoid) {
	d.upTo(max(s.AM, s.BM, s.CM))
	fa, fb, fc := d.stretch(s.AM), d.stretch(s.BM), d.stretch(s.CM)
	a, b, c := s.AM*fa*d.k, s.BM*fb*d.k, s.CM*fc*d.k
	sizeA := plain("semi-axis a", s.AM).unless(fa != 1)
	sizeB := plain("semi-axis b", s.BM).unless(fb != 1)
	sizeC := plain("semi-axis c", s.CM).unless(fc != 1)
	if s.Part == "half" {
		d.views = "Half ellipsoid from the front, its rim below, and from above"
		d.drawMain(outline, d.path().move(point{-b, 0}).arc(point{}, b, a, -math.Pi, 0).close())
		d.axis(point{0, -a}, point{0, 0})
		d.upright(point{0, -a}, point{-b, 0}, -b-firstDimension, sizeA)
		under := point{0, viewGap + c}
		d.draw(outline, d.path().oval(under, b, c))
		d.centreMark(under)
		d.upright(under.plus(0, -c), under.plus(-b, 0), -b-firstDimension, sizeC)
		d.level(under.plus(0, c), under.plus(b, 0), under.y+c+firstDimension, sizeB)
		d.ovalName(point{0, 0}, b, a)
		return
	}
	d.views = "Ellipsoid from the side and on its end"
	d.drawMain(outline, d.path().oval(point{}, a, c))
	d.axis(point{-a, 0}, point{a, 0})
	d.axis(point{0, -c}, point{0, c})
	d.upright(point{0, -c}, point{-a, 0}, -a-firstDimension, sizeC)
	d.level(point{0, c}, point{a, 0}, c+firstDimension, sizeA)
	end := point{a + viewGap + b, 0}
	d.draw(outline, d.path().oval(end, b, c))
	d.centreMark(end)
	d.level(end.plus(0, c), end.plus(b, 0), c+firstDimension, sizeB)
	d.ovalName(point{0, 0}, a, c)
}

// ovalName names the face of an oval by a leader from above.
func (d *drawing) ovalName(c point, rx, ry float64) {
	l := d.face("outside")
	to := c.plus(-rx*0.4, -ry*0.5)
	at := d.raised(l, point{c.x - rx*0.6 - 2, c.y - ry - 3 - descent})
	d.leader(at.plus(0, descent+0.3), to, true)
	d.write(l, at)
}
