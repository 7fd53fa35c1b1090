package sketch

import "filmbuild/surfaces"

// drawCylinder shows a tube from the side and on its end.
func drawCylinder(d *drawing, s *surfaces.Cylinder) {
	r := radiusOf(s.Round)
	d.views = "Round tube from the side and on its end"
	d.upTo(max(s.LengthM, greatestRound(s.Round)))
	shown, cut := shortened(s.LengthM, 2*r)
	f := d.stretch(shown)
	L, R := shown*f*d.k, r*d.k
	side := bounds{point{0, -R}, point{L, R}}
	d.bar(outline, side, cut, false, true)
	d.axis(point{0, 0}, point{L, 0})
	d.round(s.Round, point{0, 0}, 0, R, -firstDimension, "", false)
	d.level(point{0, R}, side.high, R+firstDimension, plain("length", s.LengthM).unless(cut || f != 1))
	d.within(bounds{side.low, point{besideBreak(L, cut), 0}}, -R-4, d.face("side"))

	c := point{L + viewGap + R, 0}
	d.circle(outline, c, R)
	d.centreMark(c)
	var ends []lettering
	if s.Ends >= 1 {
		ends = append(ends, d.face("end_1"))
	}
	if s.Ends == 2 {
		ends = append(ends, d.face("end_2"))
	}
	if s.Ends == 0 {
		ends = append(ends, lettering{text: "open ends", class: noteText})
	}
	d.inCircle(c, R, ends...)
}

// inCircle writes one or two texts above and below the middle of a circle, or
// above it outside.
func (d *drawing) inCircle(c point, r float64, texts ...lettering) {
	width := 0.0
	for _, t := range texts {
		width = max(width, textWidth(t.text))
	}
	if width/2 > r*0.75 || r < 9 {
		d.over(c, c.y-r-4, texts...)
		return
	}
	d.write(texts[0], c.plus(0, -r/3+capital/2-1))
	if len(texts) > 1 {
		d.write(texts[1], c.plus(0, r/3+capital/2+1))
	}
}

// drawFrustum shows a cone or its lower part from the side.
func drawFrustum(d *drawing, s *surfaces.Frustum) {
	r1, r2 := s.Radius1M, or(s.Radius2M, 0)
	d.views = "Cone from the side"
	d.upTo(max(s.LengthM, r1, r2))
	across, along := d.stretch(2*max(r1, r2)), d.stretch(s.LengthM)
	L, R1, R2 := s.LengthM*along*d.k, r1*across*d.k, r2*across*d.k
	R := max(R1, R2)
	d.drawMain(outline, d.path().polygon([]point{{0, -R1}, {L, -R2}, {L, R2}, {0, R1}}).close())
	d.axis(point{0, 0}, point{L, 0})
	left, right := -firstDimension, L+firstDimension
	d.upright(point{0, -R1}, point{0, 0}, left, radius("radius 1", r1).unless(across != 1))
	if r2 > 0 {
		d.upright(point{L, -R2}, point{L, 0}, right, radius("radius 2", r2).unless(across != 1))
	}
	d.level(point{0, R1}, point{L, R2}, R+firstDimension, plain("length", s.LengthM).unless(along != 1))
	d.within(bounds{point{L * 0.2, -(R1 + R2) / 2}, point{L * 0.8, 0}}, -R-5, d.face("side"))
	if s.Ends >= 1 {
		d.endName("end_1", point{0, R1 * 0.4}, point{left - 4, R1*0.4 + 6}, false)
	}
	if s.Ends == 2 && r2 > 0 {
		d.endName("end_2", point{L, R2 * 0.4}, point{right + 4, R2*0.4 + 6}, true)
	}
}

// endName names an end seen on its edge, by a leader from the left or right.
func (d *drawing) endName(name string, to, from point, right bool) {
	l, side := d.face(name), 1.0
	if !right {
		side = -1
	}
	d.leader(from, to, false)
	d.sideways(l, from.plus(0, capital/2), side)
}
