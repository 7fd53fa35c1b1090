package sketch

// Half the gap between two break lines, and how far they run past the outline, mm.
const (
	breakGap  = 1.2
	breakPast = 2.0
)

// brokenNote says what break lines mean.
const brokenNote = "Break lines: shortened."

// bar draws a rectangle from a to b that may be broken across its length, in
// the middle: at an upright line when it lies, at a level one when it stands.
func (d *drawing) bar(p pen, b bounds, broken, stands, main bool) {
	way := d.path()
	switch m := b.middle(); {
	case !broken:
		way.rectangle(b, 0, 0)
	case stands:
		way.move(point{b.low.x, m.y - breakGap}).line(b.low).line(point{b.high.x, b.low.y}).line(point{b.high.x, m.y - breakGap})
		way.move(point{b.low.x, m.y + breakGap}).line(point{b.low.x, b.high.y}).line(b.high).line(point{b.high.x, m.y + breakGap})
	default:
		way.move(point{m.x - breakGap, b.low.y}).line(b.low).line(point{b.low.x, b.high.y}).line(point{m.x - breakGap, b.high.y})
		way.move(point{m.x + breakGap, b.low.y}).line(point{b.high.x, b.low.y}).line(b.high).line(point{m.x + breakGap, b.high.y})
	}
	if main {
		d.drawMain(p, way)
	} else {
		d.draw(p, way)
	}
	if broken {
		d.breakLines(b, stands)
	}
}

// besideBreak is how far a text on a bar may reach, clear of a break in its
// middle.
func besideBreak(length float64, broken bool) float64 {
	if broken {
		return length * 0.4
	}
	return length
}

// breakLines draws the two zigzag lines of a break across the middle of a box.
func (d *drawing) breakLines(b bounds, stands bool) {
	d.note(brokenNote)
	m := b.middle()
	for _, off := range []float64{-breakGap, breakGap} {
		if stands {
			d.draw(thin, d.path().move(point{b.low.x - breakPast, m.y + off}).line(point{m.x - 1, m.y + off}).
				line(point{m.x - 0.4, m.y + off - 1}).line(point{m.x + 0.4, m.y + off + 1}).
				line(point{m.x + 1, m.y + off}).line(point{b.high.x + breakPast, m.y + off}))
			continue
		}
		d.draw(thin, d.path().move(point{m.x + off, b.low.y - breakPast}).line(point{m.x + off, m.y - 1}).
			line(point{m.x + off - 1, m.y - 0.4}).line(point{m.x + off + 1, m.y + 0.4}).
			line(point{m.x + off, m.y + 1}).line(point{m.x + off, b.high.y + breakPast}))
	}
}

// axis draws a centre line a little past the points given.
func (d *drawing) axis(a, b point) {
	const past = 4
	if a.x == b.x {
		d.line(centre, a.plus(0, -past), b.plus(0, past))
		return
	}
	d.line(centre, a.plus(-past, 0), b.plus(past, 0))
}

// centreMark draws a small cross.
func (d *drawing) centreMark(c point) {
	const arm = 1.5
	d.line(thin, c.plus(-arm, 0), c.plus(arm, 0))
	d.line(thin, c.plus(0, -arm), c.plus(0, arm))
}
