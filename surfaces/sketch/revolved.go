package sketch

import "filmbuild/surfaces"

// drawRevolved shows a turned part from the side with the places and radii of
// its profile.
func drawRevolved(d *drawing, s *surfaces.Revolved) {
	d.views = "Turned part from the side"
	low, high, most := s.Profile[0][0], s.Profile[0][0], 0.0
	for _, p := range s.Profile {
		low, high, most = min(low, p[0]), max(high, p[0]), max(most, p[1])
	}
	d.upTo(max(high-low, most))
	fx, fr := d.stretch(high-low), d.stretch(2*most)
	falsified := fx != 1 || fr != 1
	if falsified {
		d.note("Length and radius differ in scale.")
	}
	var upper, lower []point
	var places, radii []mark
	top := most * d.k * fr
	for i, p := range s.Profile {
		x, r := (p[0]-low)*d.k*fx, p[1]*d.k*fr
		upper, lower = append(upper, point{x, -r}), append(lower, point{x, r})
		places = append(places, mark{x, r, []string{d.text(plain(pointName(i)+" at", p[0]))}})
		radii = append(radii, mark{x, -r, []string{d.text(radius(pointName(i)+" radius", p[1]))}})
		if i > 0 && i < len(s.Profile)-1 {
			d.line(thin, point{x, -r}, point{x, r})
		}
	}
	way := d.path().polygon(upper)
	for i := len(lower) - 1; i >= 0; i-- {
		way.line(lower[i])
	}
	d.drawMain(outline, way.close())
	L := (high - low) * d.k * fx
	d.axis(point{0, 0}, point{L, 0})
	d.rows([]string{"r"}, radii, -top, true)
	d.rows([]string{"x"}, places, top, false)
	name := d.face("outside")
	to, from := point{(upper[0].x + upper[1].x) / 2, (lower[0].y + lower[1].y) / 4}, point{-8, 0}
	d.sideName(name, to, from)
}

// sideName names a face by a leader from the left of the outline.
func (d *drawing) sideName(l lettering, to, from point) {
	d.leader(from, to, true)
	d.sideways(l, from.plus(0, capital/2), -1)
}
