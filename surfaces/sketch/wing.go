package sketch

import (
	"math"
	"strings"

	"filmbuild/surfaces"
)

// planform is a wing from above on paper: root at the left, leading edge up.
type planform struct {
	span, root, tip, aft float64 // mm
	sweep                float64 // radians
	rootLow, rootHigh    float64 // how far the section drawn at the root reaches left and right
	tipLow, tipHigh      float64
}

// drawWing shows a wing from above, its sections turned into the plan at root
// and tip.
func drawWing(d *drawing, s *surfaces.Wing) {
	tip := or(s.TipChordM, 0)
	d.views = "Wing from above, leading edge up, with its sections turned into the plan at root and tip"
	d.upTo(max(s.RootChordM, tip, s.SpanM))
	across, along := d.stretch(s.SpanM), d.stretch(max(s.RootChordM, tip))
	if across != 1 { // a steep sweep would make the leading edge very long
		const most = 20 // mm
		across = min(across, max(1, most*math.Cos(s.SweepLEDeg*math.Pi/180)/(s.SpanM*d.k)))
	}
	w := planform{
		span: s.SpanM * d.k * across, root: s.RootChordM * d.k * along, tip: tip * d.k * along,
		sweep: s.SweepLEDeg * math.Pi / 180,
	}
	w.aft = w.span * math.Tan(w.sweep)
	d.drawMain(outline, d.path().polygon([]point{{0, 0}, {w.span, w.aft}, {w.span, w.aft + w.tip}, {0, w.root}}).close())
	rootSection, tipSection := sectionsOf(s)
	w.rootLow, w.rootHigh = d.turnedSection(rootSection, point{0, 0}, w.root)
	w.tipLow, w.tipHigh = d.turnedSection(tipSection, point{w.span, w.aft}, w.tip)
	d.sectionNote(s, rootSection, tipSection)

	d.upright(point{w.rootLow, 0}, point{w.rootLow, w.root}, w.rootLow-firstDimension, plain("root chord", s.RootChordM).unless(along != 1))
	right := w.span + w.tipHigh
	if tip > 0 {
		d.upright(point{right, w.aft}, point{right, w.aft + w.tip}, right+firstDimension, plain("tip chord", tip).unless(along != 1))
	}
	low := max(w.root, w.aft+w.tip)
	d.wingFaces(s, w, low)
	if s.TrailingEdge == "open" {
		low += nextDimension
	}
	d.level(point{0, w.root}, point{w.span, w.aft + w.tip}, low+firstDimension, plain("span", s.SpanM).unless(across != 1))
	d.sweepAngle(w, s.SweepLEDeg)
}

// turnedSection draws a section of a chord that starts at a leading edge, its
// upper side to the left, and returns how far it reaches to both sides.
func (d *drawing) turnedSection(s section, leading point, chord float64) (low, high float64) {
	if chord == 0 || s.family == "flat" {
		return 0, 0
	}
	points := s.around()
	for i, p := range points {
		across := -p.y * chord
		low, high = min(low, across), max(high, across)
		points[i] = leading.plus(across, p.x*chord)
	}
	d.draw(edge, d.path().polygon(points).close())
	return low, high
}

// wingFaces names the faces.
func (d *drawing) wingFaces(s *surfaces.Wing, w planform, low float64) {
	left, right := w.rootHigh, w.span+w.tipLow
	top, bottom := max(0, w.aft), min(w.root, w.aft+w.tip)
	b := bounds{point{left, top}, point{right, bottom}}
	if b.width() < 20 || b.height() < 2*lineSpace { // a swept one has no such box: take the middle
		c := point{w.span / 2, (w.root + w.aft + w.aft + w.tip) / 4}
		deep := (w.root+w.tip)/2 - math.Abs(math.Tan(w.sweep))*20 - math.Abs(w.tip-w.root)/max(w.span, 1)*20
		b = bounds{c.plus(-(right-left)/2, -deep/2), c.plus((right-left)/2, deep/2)}
	}
	if b.height() >= 2*lineSpace && b.width() >= 22 {
		d.within(b, 0, d.face("upper"), d.face("lower"))
	} else {
		share := 0.3 // of the span, clear of the text of the sweep
		if w.sweep < 0 {
			share = 0.8
		}
		to := point{w.span * share, share*(w.aft+w.tip/2) + (1-share)*w.root/2}
		d.over(to, min(0, w.aft)-4-lineSpace, d.face("upper"), d.face("lower"))
	}
	if s.TrailingEdge == "open" {
		l := d.face("trailing_edge")
		at := point{w.span / 2, low + 4 + capital}
		d.write(l, at)
		d.leader(at.plus(0, -capital-0.5), point{w.span / 2, (w.root + w.aft + w.tip) / 2}, false)
	}
	if s.Tip == "capped" && w.tip > 0 && s.Section != "flat" {
		d.endName("tip", point{w.span, w.aft + w.tip*0.15}, point{w.span + w.tipHigh + firstDimension + 4, w.aft - 5}, true)
	}
}

// sectionNote says what the sections are.
func (d *drawing) sectionNote(s *surfaces.Wing, root, tip section) {
	if s.Section == "flat" {
		d.note("Section: flat.")
		return
	}
	percent := func(ratio float64) string { return decimal(ratio*100, 2) + " %" }
	name := strings.ReplaceAll(s.Section, "_", " ")
	text := "Section: " + name + ", " + percent(root.thickness) + " thick"
	if tip.thickness != root.thickness {
		text = "Section: " + name + ", root " + percent(root.thickness) + ", tip " + percent(tip.thickness) + " thick"
	}
	if root.camber > 0 {
		text += ", camber " + percent(root.camber) + " at " + percent(root.position)
	}
	d.note(text + ".")
}

// sweepAngle draws the angle between the leading edge and the line square to
// the root.
func (d *drawing) sweepAngle(w planform, degrees float64) {
	l := lettering{text: "sweep " + decimal(degrees, 2) + "°", class: dimensionText}
	d.spoken = append(d.spoken, "sweep of the leading edge "+decimal(degrees, 2)+" degrees")
	const above = 1.5
	leading := math.Hypot(w.span, w.aft)
	most := 60.0
	if w.span < 12 { // stretched: there is little room
		most = 32
	}
	r := min(max(0.6*leading, 18), most)
	if degrees == 0 {
		d.note("Leading edge not swept.")
		return
	}
	d.line(thin, point{0, 0}, point{max(r, min(w.span, r+10)) + 3, 0})
	if r > leading {
		end := onOval(point{}, r+3, r+3, w.sweep)
		d.line(thin, point{w.span, w.aft}, end)
	}
	d.draw(thin, d.path().move(point{r, 0}).arc(point{}, r, r, 0, w.sweep))
	if long := r * math.Abs(w.sweep); long >= 7 {
		turn := math.Copysign(1, w.sweep) * 3 / r
		d.arrow(point{r, 0}, onOval(point{}, r, r, turn))
		d.arrow(onOval(point{}, r, r, w.sweep), onOval(point{}, r, r, w.sweep-turn))
	}
	if degrees > 0 {
		l.hang = atStart
		d.write(l, d.raised(l, point{r + 2 + textWidth(l.text)/2, -above}))
		return
	}
	end := onOval(point{}, r, r, w.sweep)
	l.hang = atEnd
	d.write(l, d.raised(l, end.plus(-3-textWidth(l.text)/2, -2)))
}
