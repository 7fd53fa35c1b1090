package sketch

import "math"

// Distances of dimension lines, in mm: the first from the outline, each further
// one from the last. ISO 129 by secondary accounts: at least 10, and 6 to 8.
const (
	firstDimension = 10.0
	nextDimension  = 7.0
)

// size is a dimension to be written: what it is called, the sign before it
// (Ø or R), its true value in m.
type size struct {
	name, sign string
	value      float64
	follows    bool // from other dimensions: in brackets
	falsified  bool // not drawn to scale: underlined
}

// diameter, radius and so on make the usual sizes.
func diameter(name string, value float64) size { return size{name: name, sign: "Ø", value: value} }
func radius(name string, value float64) size   { return size{name: name, sign: "R", value: value} }
func plain(name string, value float64) size    { return size{name: name, value: value} }

func (s size) bracketed() size { s.follows = true; return s }

// unless marks a size as not to scale where the drawing was stretched or cut.
func (s size) unless(falsified bool) size { s.falsified = falsified; return s }

// text returns a size as written on the drawing, and adds it to what is said in
// words.
func (d *drawing) text(s size) string {
	d.say(s)
	text := s.sign + d.length(s.value)
	if s.follows {
		return "(" + text + ")"
	}
	return text
}

func (d *drawing) say(s size) {
	if s.falsified {
		d.note("Underlined: not to scale.")
	}
	if !d.trial {
		d.spoken = append(d.spoken, s.name+" "+d.inWords(s.value))
	}
}

func (d *drawing) letters(s size) lettering {
	return lettering{text: d.text(s), class: dimensionText, underlined: s.falsified}
}

// level draws a horizontal dimension between two points, its line at height y.
func (d *drawing) level(a, b point, y float64, s size) {
	if a.x > b.x {
		a, b = b, a
	}
	d.dimension(a.x, b.x, a.y, b.y, y, false, d.letters(s))
}

// upright draws a vertical dimension between two points, its line at x.
func (d *drawing) upright(a, b point, x float64, s size) {
	if a.y > b.y {
		a, b = b, a
	}
	l := d.letters(s)
	l.upright = true
	d.dimension(a.y, b.y, a.x, b.x, x, true, l)
}

// dimension draws extension lines, dimension line, arrows and text. Along the
// dimension it runs from u0 to u1; across it, from the points measured at v0
// and v1 to the line at v, or farther out where there are letters already.
func (d *drawing) dimension(u0, u1, v0, v1, v float64, turned bool, l lettering) {
	at := func(u, v float64) point {
		if turned {
			return point{v, u}
		}
		return point{u, v}
	}
	const above = 1.2 // from line to letters, mm
	away := math.Copysign(1, v-v0)
	free := func(u float64) bool { return d.free(l, at(u, v-above)) && d.clear(l, at(u, v-above)) }
	place := func() (middle, low, high float64, ok bool) {
		middle, low, high, ok = textPlace(u0, u1, textWidth(l.text), turned, free)
		return middle, low, high, ok && d.wayFree(ruled(at(low, v), at(high, v)))
	}
	middle, low, high, ok := place()
	for tries := 0; !ok && tries < 4; tries++ {
		v += away * nextDimension
		middle, low, high, ok = place()
	}
	const gap, past = 1, 2 // of extension lines, mm
	for _, e := range [2][2]float64{{u0, v0}, {u1, v1}} {
		if away := math.Copysign(1, v-e[1]); math.Abs(v-e[1]) > gap+past {
			d.rule(at(e[0], e[1]+gap*away), at(e[0], v+past*away))
		}
	}
	inwards := 1.0
	if u1-u0 < arrowRoom {
		inwards = -1
	}
	d.arrow(at(u0, v), at(u0+inwards, v))
	d.arrow(at(u1, v), at(u1-inwards, v))
	d.rule(at(low, v), at(high, v))
	d.write(l, at(middle, v-above))
}

// rule draws a dimension or extension line, over which no dimension's text is
// to stand.
func (d *drawing) rule(a, b point) {
	d.line(thin, a, b)
	d.rules = append(d.rules, ruled(a, b))
}

// ruled is what a dimension line takes with its arrows.
func ruled(a, b point) bounds {
	box := nowhere()
	box.add(a)
	box.add(b)
	const half = 0.5 // of an arrow, mm
	return bounds{box.low.plus(-half, -half), box.high.plus(half, half)}
}

// wayFree says whether a line would run through no text.
func (d *drawing) wayFree(line bounds) bool {
	for _, t := range d.texts {
		if line.meets(t) {
			return false
		}
	}
	return true
}

// clear says whether letters at q would stand on no such line.
func (d *drawing) clear(l lettering, q point) bool {
	b := l.box(q)
	for _, r := range d.rules {
		if b.meets(r) {
			return false
		}
	}
	return true
}

// Least room for two arrows between extension lines, and how far a dimension
// line runs beyond them with arrows outside, mm.
const (
	arrowRoom   = 8.0
	arrowBeyond = 6.0
)

// textPlace finds the middle of a dimension's text and the ends of its line:
// between the extension lines if the text has room there; else beyond them, at
// the right or the top if that is free, or at the other end.
func textPlace(u0, u1, width float64, turned bool, free func(u float64) bool) (middle, low, high float64, ok bool) {
	low, high = u0, u1
	if u1-u0 < arrowRoom {
		low, high = u0-arrowBeyond, u1+arrowBeyond
	}
	if middle = (u0 + u1) / 2; width+1 <= u1-u0 {
		return middle, low, high, free(middle)
	}
	after, before := high+1+width/2, low-1-width/2
	if first, second := free(after), free(before); turned && second || !turned && !first && second {
		return before, before - width/2, high, true
	} else if first {
		return after, low, after + width/2, true
	}
	return after, low, after + width/2, false
}

// arrow draws a filled arrowhead with its tip at one point, coming from the
// direction of another: three times as long as wide.
func (d *drawing) arrow(tip, from point) {
	const length, half = 3, 0.5
	far := math.Hypot(from.x-tip.x, from.y-tip.y)
	if far == 0 {
		return
	}
	ux, uy := (from.x-tip.x)/far, (from.y-tip.y)/far
	base := tip.plus(length*ux, length*uy)
	way := d.path().move(tip).line(base.plus(-half*uy, half*ux)).line(base.plus(half*uy, -half*ux)).close()
	d.taken.join(way.box)
	if !d.trial {
		d.fills = append(d.fills, `<path class="sketch-arrow" d="`...)
		d.fills = append(d.fills, way.text...)
		d.fills = append(d.fills, "\"/>\n"...)
	}
}
