package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// hull is a body's stations on paper: kx along it, ky across it.
type hull struct {
	stations []surfaces.Station
	start    float64 // x of the first station, m
	kx, ky   float64
}

func (h hull) x(s surfaces.Station) float64    { return (s.XM - h.start) * h.kx }
func (h hull) top(s surfaces.Station) float64  { return -(s.ZM + s.HeightM/2) * h.ky }
func (h hull) keel(s surfaces.Station) float64 { return -(s.ZM - s.HeightM/2) * h.ky }
func (h hull) half(s surfaces.Station) float64 { return s.WidthM / 2 * h.ky }

// bodyLayout is where the view from above stands.
type bodyLayout int

const (
	planBelow  bodyLayout = iota // in projection
	planBeside                   // for figures too long to stand in three rows
	planBare                     // the same without exponents
)

// sideNames is half the room for the names of left and right, mm.
const sideNames = 15.0

// drawBody shows a body from its left side, nose at the left, its sections from
// behind, and from above, with the sizes of its stations.
func drawBody(d *drawing, s *surfaces.Body, layout bodyLayout) {
	d.views = "Body from its left side, nose at the left, its sections from behind, and from above"
	low, high, wide, size := math.Inf(1), math.Inf(-1), 0.0, 0.0
	for _, q := range s.Stations {
		low, high = min(low, q.ZM-q.HeightM/2), max(high, q.ZM+q.HeightM/2)
		wide = max(wide, q.WidthM)
		size = max(size, math.Abs(q.XM), math.Abs(q.ZM), q.HeightM, q.WidthM)
	}
	last := s.Stations[len(s.Stations)-1]
	length := last.XM - s.Stations[0].XM
	d.upTo(max(size, length))
	fx, fy := d.stretch(length), d.stretch(max(high-low, wide))
	if fx != 1 || fy != 1 {
		d.note("Length and height differ in scale.")
	}
	h := hull{s.Stations, s.Stations[0].XM, d.k * fx, d.k * fy}
	t := d.stationTexts(h)
	top, bottom := -high*h.ky, -low*h.ky
	half, long := wide/2*h.ky, h.x(last)

	switch layout {
	case planBeside:
		d.marks = 8
	case planBare:
		d.marks = 6
	}
	d.silhouette(h, point{}, true, h.top, h.keel)
	d.rows([]string{"height"}, t.marks(t.heights, h, 0, h.top), top, true)
	under := d.rows([]string{"x"}, t.marks(t.places, h, 0, h.keel), bottom, false)
	behind := point{max(long, d.taken.high.x) + 6 + max(half, sideNames), 0}
	d.sections(h, behind, top, bottom)
	d.sectionSides(behind, top, bottom, half)

	axis := point{0, under + 2 + half}
	above := layout != planBelow
	if above {
		const titles = 20 // what stands left of a row, mm
		spare := max(0, markPitch*float64(min(len(s.Stations), d.marks))-long) / 2
		axis = point{behind.x + max(half, sideNames) + 4 + titles + spare, (top + bottom) / 2}
	}
	upper := func(q surfaces.Station) float64 { return -h.half(q) }
	d.silhouette(h, axis, false, upper, h.half)
	d.axis(axis, axis.plus(long, 0))
	if above {
		d.rows([]string{"width"}, t.marks(t.widths, h, axis.x, func(q surfaces.Station) float64 { return axis.y + upper(q) }), axis.y-half, true)
	}
	if layout == planBare {
		d.sparse = true
		d.note(leftOut)
		t.exponents = nil
	}
	names, further := t.further(!above)
	if len(names) > 0 {
		d.rows(names, t.marks(further, h, axis.x, func(q surfaces.Station) float64 { return axis.y + h.half(q) }), axis.y+half, false)
	}
	d.hullFaces(s, h, axis)
}

// stationTexts are the sizes of all stations as written.
type stationTexts struct{ heights, places, widths, lifts, exponents [][]string }

func (d *drawing) stationTexts(h hull) stationTexts {
	var t stationTexts
	for i, q := range h.stations {
		name := stationName(i)
		t.places = append(t.places, []string{d.text(plain(name+" at", q.XM))})
		t.heights = append(t.heights, []string{d.text(plain(name+" height", q.HeightM))})
		t.widths = append(t.widths, []string{d.text(plain(name+" width", q.WidthM))})
		lift, exponent := "", ""
		if q.ZM != 0 {
			lift = d.text(plain(name+" centre above the datum", q.ZM))
		}
		if n := or(q.Exponent, 2); n != 2 {
			exponent = decimal(n, 2)
		}
		t.lifts, t.exponents = append(t.lifts, []string{lift}), append(t.exponents, []string{exponent})
	}
	return t
}

// marks puts texts to their stations, from a line of one view.
func (t stationTexts) marks(texts [][]string, h hull, left float64, from func(surfaces.Station) float64) []mark {
	list := make([]mark, len(texts))
	for i, q := range h.stations {
		list[i] = mark{left + h.x(q), from(q), texts[i]}
	}
	return list
}

// further are the rows below the view from above: of what differs from the
// usual, and of the widths.
func (t stationTexts) further(widths bool) (names []string, texts [][]string) {
	texts = make([][]string, len(t.places))
	add := func(name string, row [][]string) {
		some := false
		for _, r := range row {
			some = some || r[0] != ""
		}
		if !some {
			return
		}
		names = append(names, name)
		for i, r := range row {
			texts[i] = append(texts[i], r[0])
		}
	}
	if widths {
		add("width", t.widths)
	}
	add("z", t.lifts)
	add("n", t.exponents)
	return names, texts
}

// silhouette draws one view with a line at each station.
func (d *drawing) silhouette(h hull, at point, main bool, upper, lower func(surfaces.Station) float64) {
	var points []point
	last := len(h.stations) - 1
	for i, q := range h.stations {
		points = append(points, at.plus(h.x(q), upper(q)))
		if i > 0 && i < last {
			d.line(thin, at.plus(h.x(q), upper(q)), at.plus(h.x(q), lower(q)))
		}
	}
	for i := last; i >= 0; i-- {
		points = append(points, at.plus(h.x(h.stations[i]), lower(h.stations[i])))
	}
	if way := d.path().polygon(points).close(); main {
		d.drawMain(outline, way)
	} else {
		d.draw(outline, way)
	}
}

// sections draws the outlines of all sections from behind, one in the other;
// of many, some.
func (d *drawing) sections(h hull, axis point, top, bottom float64) {
	const most = 12
	step := max(1, (len(h.stations)+most-1)/most)
	for i := 0; i < len(h.stations); i += step {
		if q := h.stations[i]; q.WidthM > 0 || q.HeightM > 0 {
			if d.trial { // the box is enough
				d.taken.join(bounds{axis.plus(-h.half(q), h.top(q)), axis.plus(h.half(q), h.keel(q))})
				continue
			}
			d.draw(edge, d.path().polygon(superellipse(q, axis, h)).close())
		}
	}
	d.axis(point{axis.x, top}, point{axis.x, bottom})
}

// sectionSides names the sides of the sections, which are seen from behind.
func (d *drawing) sectionSides(axis point, top, bottom, half float64) {
	for _, s := range []struct {
		name string
		side float64
	}{{"left", -1}, {"right", 1}} {
		from := point{axis.x + s.side*3, top - 6}
		d.leader(from, point{axis.x + s.side*half/2, (top + bottom) / 2}, true)
		d.sideways(d.face(s.name), from.plus(-s.side*2, -descent), s.side)
	}
}

// superellipse returns points once round a section.
//
//	|y/(w/2)|ⁿ + |z/(h/2)|ⁿ = 1
//
// Source: identity.
func superellipse(s surfaces.Station, axis point, h hull) []point {
	const quarter = 12
	p := 2 / or(s.Exponent, 2)
	points := make([]point, 0, 4*quarter)
	for i := range 4 * quarter {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / quarter)
		y := math.Copysign(math.Pow(math.Abs(cos), p), cos) * h.half(s)
		z := math.Copysign(math.Pow(math.Abs(sin), p), sin) * s.HeightM / 2 * h.ky
		points = append(points, axis.plus(y, z-s.ZM*h.ky))
	}
	return points
}

// hullFaces names the faces, in the longest bays.
func (d *drawing) hullFaces(s *surfaces.Body, h hull, axis point) {
	best, length := 1, 0.0
	for i := 1; i < len(s.Stations); i++ {
		if gap := s.Stations[i].XM - s.Stations[i-1].XM; gap > length {
			best, length = i, gap
		}
	}
	a, b := s.Stations[best-1], s.Stations[best]
	x := (h.x(a) + h.x(b)) / 2
	z := (h.top(a) + h.keel(a) + h.top(b) + h.keel(b)) / 4
	half := (h.half(a) + h.half(b)) / 4
	left, right := d.face("left"), d.face("right")
	d.inBay(left, point{x, z}, h.x(b)-h.x(a), min(h.keel(a)-h.top(a), h.keel(b)-h.top(b)))
	d.inBay(left, axis.plus(x, half), h.x(b)-h.x(a), min(h.half(a), h.half(b)))
	d.inBay(right, axis.plus(x, -half), h.x(b)-h.x(a), min(h.half(a), h.half(b)))
	first, last := s.Stations[0], s.Stations[len(s.Stations)-1]
	if s.Nose == "flat" && first.WidthM > 0 && first.HeightM > 0 {
		at := (h.top(first) + h.keel(first)) / 2
		d.endName("nose", point{0, at}, point{-8, at}, false)
	}
	if s.Tail == "flat" && last.WidthM > 0 && last.HeightM > 0 {
		l := d.face("tail")
		from := axis.plus(h.x(last)+8, 0)
		d.leader(from, axis.plus(h.x(last), 0), false)
		d.sideways(l, from.plus(0, capital/2), 1)
	}
}

// inBay writes a face's name into a bay if it has room.
func (d *drawing) inBay(l lettering, at point, long, deep float64) {
	if at = at.plus(0, capital/2); textWidth(l.text)+2 <= long && deep >= lineSpace && d.free(l, at) {
		d.write(l, at)
	}
}
