package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// waves is a corrugated sheet on paper.
type waves struct {
	pitch, depth  float64 // mm
	crest, valley float64
	form          string
	left, right   float64 // widths drawn on both sides of a break, mm; right is 0 for the whole width
	phase         float64 // of the right end, as a share of the pitch
}

// gap is the width of a break in the profile, mm.
const waveGap = 5.0

// drawCorrugated shows a sheet on its end, the profile, and below it from the
// front.
func drawCorrugated(d *drawing, s *surfaces.Corrugated) {
	d.small = true // pressed sheet is in mm throughout
	d.views = "Corrugated sheet, profile and from the front, form " + s.Form
	p, t := s.PitchMM/1000, s.DepthMM/1000
	fp, ft := d.stretch(2*p), d.stretch(t)
	w := waves{
		pitch: p * d.k * fp, depth: t * d.k * ft, form: s.Form,
		crest: or(s.CrestMM, 0) / 1000 * d.k * fp, valley: or(s.ValleyMM, 0) / 1000 * d.k * fp,
	}
	const whole = 4 // pitches that are drawn without a break
	falsified := fp != 1
	if n := s.WidthM / p; n <= whole {
		w.left = n * w.pitch
	} else {
		w.left, w.right, falsified = 2*w.pitch, 1.25*w.pitch, true
		w.phase = n - math.Floor(n)
	}
	d.profile(w)
	width := w.left
	if w.right > 0 {
		width += waveGap + w.right
	}
	d.profileSizes(s, w, fp != 1, ft != 1)
	d.sheet(s, w, width, falsified)
}

// height of the profile above its valleys at a place counted in pitches from
// the middle of a valley.
func (w waves) height(at float64) float64 {
	u := at - math.Floor(at)
	if u > 0.5 {
		u = 1 - u
	}
	switch w.form {
	case "arc":
		// Two arcs of chord p/2 and rise d/2 meet at half the height.
		chord, rise := w.pitch/2, w.depth/2
		r := (chord*chord/4 + rise*rise) / (2 * rise)
		if u <= 0.25 {
			x := u * w.pitch
			return x * x / (r + math.Sqrt(max(0, r*r-x*x)))
		}
		x := (0.5 - u) * w.pitch
		return w.depth - x*x/(r+math.Sqrt(max(0, r*r-x*x)))
	case "trapezoid":
		x, web := u*w.pitch-w.valley/2, (w.pitch-w.crest-w.valley)/2
		switch {
		case x <= 0:
			return 0
		case x >= web:
			return w.depth
		}
		return w.depth * x / web
	}
	return w.depth * (1 - math.Cos(2*math.Pi*u)) / 2
}

// stretchOf draws the profile from one place to another, in pitches, the first
// at x on paper.
func (w waves) stretchOf(way *path, from, to, x float64) {
	place := func(at, height float64) point { return point{x + (at-from)*w.pitch, -height} }
	way.move(place(from, w.height(from)))
	for _, q := range w.corners(from, to) {
		way.line(place(q.at, q.height))
	}
	way.line(place(to, w.height(to)))
}

// corner is a place where a line bends: in pitches, and its height on paper.
type corner struct{ at, height float64 }

// corners are those between two places; curves have many.
func (w waves) corners(from, to float64) []corner {
	var list []corner
	if w.form != "trapezoid" {
		const each = 32
		for i := math.Floor(from*each) + 1; i < to*each; i++ {
			list = append(list, corner{i / each, w.height(i / each)})
		}
		return list
	}
	c, v := w.crest/w.pitch/2, w.valley/w.pitch/2
	for n := math.Floor(from) - 1; n <= to+1; n++ {
		for _, q := range []corner{{n - v, 0}, {n + v, 0}, {n + 0.5 - c, w.depth}, {n + 0.5 + c, w.depth}} {
			if q.at > from && q.at < to {
				list = append(list, q)
			}
		}
	}
	return list
}

func (d *drawing) profile(w waves) {
	way := d.path()
	w.stretchOf(way, 0, w.left/w.pitch, 0)
	if w.right > 0 {
		end := w.phase + 2
		w.stretchOf(way, end-w.right/w.pitch, end, w.left+waveGap)
		d.note(brokenNote)
		for _, x := range []float64{w.left, w.left + waveGap} {
			d.line(thin, point{x, -w.depth - breakPast}, point{x, breakPast})
		}
	}
	d.drawMain(outline, way)
}

// profileSizes writes pitch, depth and the flats of a trapezoid.
func (d *drawing) profileSizes(s *surfaces.Corrugated, w waves, falsePitch, falseDepth bool) {
	y := -w.depth - firstDimension
	crests := w.left / w.pitch
	if s.CrestMM != nil && *s.CrestMM > 0 && w.left >= w.pitch/2+w.crest/2 {
		d.level(point{(w.pitch - w.crest) / 2, -w.depth}, point{(w.pitch + w.crest) / 2, -w.depth}, y, plain("crest", *s.CrestMM/1000).unless(falsePitch))
		y -= nextDimension
	}
	pitch := plain("pitch", s.PitchMM/1000).unless(falsePitch)
	if crests >= 1.5 {
		from := point{(w.pitch - w.crest) / 2, -w.depth}
		d.level(from, from.plus(w.pitch, 0), y, pitch)
	} else {
		d.note("Pitch " + d.text(pitch) + ".")
	}
	if crests >= 0.5 {
		d.upright(point{w.pitch / 2, -w.depth}, point{0, 0}, -firstDimension, plain("depth", s.DepthMM/1000).unless(falseDepth))
	} else {
		d.note("Depth " + d.text(plain("depth", s.DepthMM/1000)) + ".")
	}
	if s.ValleyMM != nil && *s.ValleyMM > 0 && crests >= 1+w.valley/w.pitch/2 {
		d.level(point{w.pitch - w.valley/2, 0}, point{w.pitch + w.valley/2, 0}, firstDimension, plain("valley", *s.ValleyMM/1000).unless(falsePitch))
	}
}

// sheet draws the sheet from the front below its profile.
func (d *drawing) sheet(s *surfaces.Corrugated, w waves, width float64, falseWidth bool) {
	const room = 26.0 // mm, for a length that does not fit
	long, broken := s.LengthM*d.k, false
	f := d.stretch(s.LengthM)
	if long *= f; long > room {
		long, broken = room, true
	}
	top := viewGap
	if s.ValleyMM != nil {
		top += nextDimension
	}
	b := bounds{point{0, top}, point{width, top + long}}
	d.sheetOutline(b, w, broken)
	d.upright(b.low, point{0, b.high.y}, -firstDimension, plain("length", s.LengthM).unless(broken || f != 1))
	d.level(point{0, b.high.y}, b.high, b.high.y+firstDimension, plain("width", s.WidthM).unless(falseWidth))
	texts := []lettering{d.face("front")}
	if s.Sides == 2 {
		texts = append(texts, d.face("back"))
	}
	part := bounds{b.low, point{w.left, b.middle().y}}
	if !broken {
		part.high.y = b.high.y
	}
	d.beneathWithin(part, b.high.x, texts...)
}

// sheetOutline draws a rectangle that may be broken both ways.
func (d *drawing) sheetOutline(b bounds, w waves, broken bool) {
	if w.right == 0 {
		d.bar(outline, b, broken, true, false)
		return
	}
	way := d.path()
	for _, y := range []float64{b.low.y, b.high.y} {
		way.move(point{b.low.x, y}).line(point{w.left, y}).move(point{w.left + waveGap, y}).line(point{b.high.x, y})
	}
	open := 0.0
	if broken {
		open = breakGap
		d.breakLines(b, true)
	}
	for _, x := range []float64{b.low.x, b.high.x} {
		m := b.middle().y
		way.move(point{x, b.low.y}).line(point{x, m - open}).move(point{x, m + open}).line(point{x, b.high.y})
	}
	d.draw(outline, way)
	for _, x := range []float64{w.left, w.left + waveGap} {
		d.line(thin, point{x, b.low.y - breakPast}, point{x, b.high.y + breakPast})
	}
}

// beneathWithin writes texts side by side into a box, or to the right of x.
func (d *drawing) beneathWithin(b bounds, x float64, texts ...lettering) {
	total := 0.0
	for _, t := range texts {
		total += textWidth(t.text) + 3
	}
	at := point{b.middle().x - total/2, b.middle().y + capital/2}
	if total > b.width() || b.height() < lineSpace {
		d.leader(point{x + 6, b.middle().y}, b.middle(), true)
		at.x = x + 6
	}
	for _, t := range texts {
		width := textWidth(t.text)
		d.right(t, at.plus(1.5, 0))
		at.x += width + 3
	}
}
