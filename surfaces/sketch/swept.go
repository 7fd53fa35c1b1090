package sketch

import "filmbuild/surfaces"

// drawSwept shows the side unrolled: a band as wide as the outline is long.
func drawSwept(d *drawing, s *surfaces.Swept) {
	d.views = "The side unrolled: perimeter by length"
	d.note("Unrolled flat; the form of the outline is not known.")
	d.upTo(max(s.PerimeterM, s.LengthM))
	long, cutLong := shortened(s.LengthM, s.PerimeterM)
	round, cutRound := shortened(s.PerimeterM, s.LengthM)
	L, P := long*d.k, round*d.k
	b := bounds{point{0, -P}, point{L, 0}}
	d.bar(outline, b, cutLong || cutRound, cutRound, true)
	d.upright(b.low, point{}, -firstDimension, plain("perimeter", s.PerimeterM).unless(cutRound))
	d.level(point{}, point{L, 0}, firstDimension, plain("length", s.LengthM).unless(cutLong))
	d.within(bounds{b.low, point{besideBreak(L, cutLong), b.middle().y}}, -P-4, d.face("side"))
}
