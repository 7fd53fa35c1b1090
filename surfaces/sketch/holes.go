package sketch

import (
	"fmt"
	"math"

	"filmbuild/surfaces"
	"filmbuild/surfaces/planar"
)

// holeGroup is all holes of one size, under one letter.
type holeGroup struct {
	size  string
	count int
}

// mostGroups are listed beside a panel.
func (d *drawing) mostGroups() int { return min(9, d.marks*2/5) }

func holeExtent(h surfaces.Hole) (low, high [2]float64) {
	if len(h.Outline) > 0 {
		return extent(h.Outline)
	}
	w, t := or(h.WidthM, or(h.DiameterM, 0)), or(h.HeightM, or(h.DiameterM, 0))
	x, y := or(h.XM, 0), or(h.YM, 0)
	return [2]float64{x - w/2, y - t/2}, [2]float64{x + w/2, y + t/2}
}

func holeCentre(h surfaces.Hole) [2]float64 {
	low, high := holeExtent(h)
	return [2]float64{(low[0] + high[0]) / 2, (low[1] + high[1]) / 2}
}

// holes draws the holes with their letters.
func (d *drawing) holes(s panel, p plate) []holeGroup {
	var groups []holeGroup
	for _, o := range s.united {
		d.draw(outline, d.united(o, p))
	}
	if len(s.united) > 0 {
		d.note("Holes that overlap or touch are drawn as one.")
	}
	for i, h := range s.holes {
		if s.alone[i] {
			d.hole(h, p)
		} else if len(h.Outline) == 0 {
			c := holeCentre(h)
			d.centreMark(p.at(c[0], c[1]))
		}
		size := d.holeSize(h)
		at := 0
		for at < len(groups) && groups[at].size != size {
			at++
		}
		if at == len(groups) {
			groups = append(groups, holeGroup{size: size})
		}
		groups[at].count++
		if at < d.mostGroups() {
			d.holeLetter(h, p, letter(at))
		}
	}
	return groups
}

func letter(i int) string { return string(rune('A' + i)) }

func (d *drawing) hole(h surfaces.Hole, p plate) {
	low, high := holeExtent(h)
	centre := holeCentre(h)
	c := p.at(centre[0], centre[1])
	switch {
	case len(h.Outline) > 0:
		d.draw(outline, d.path().polygon(p.points(h.Outline)).close())
	case h.DiameterM != nil:
		d.draw(outline, d.path().oval(c, *h.DiameterM/2*p.kx, *h.DiameterM/2*p.ky))
		d.centreMark(c)
	default:
		r := or(h.CornerRadiusM, 0)
		d.draw(outline, d.path().rectangle(bounds{p.at(low[0], high[1]), p.at(high[0], low[1])}, r*p.kx, r*p.ky))
		d.centreMark(c)
	}
}

// united follows the line round holes that are one. An arc turns the other way
// on paper, where y runs down.
func (d *drawing) united(o planar.Outline, p plate) *path {
	w := d.path().move(p.at(o[0].At.X, o[0].At.Y))
	for i, c := range o {
		next := o[(i+1)%len(o)].At
		if c.Sweep == 0 {
			w.line(p.at(next.X, next.Y))
			continue
		}
		dx, dy := next.X-c.At.X, next.Y-c.At.Y
		away := 0.5 / math.Tan(c.Sweep/2) // from the middle of the chord, in chords
		x, y := c.At.X+dx/2-dy*away, c.At.Y+dy/2+dx*away
		r, from := math.Hypot(c.At.X-x, c.At.Y-y), math.Atan2(c.At.Y-y, c.At.X-x)
		w.arc(p.at(x, y), r*p.kx, r*p.ky, -from, -from-c.Sweep)
	}
	return w.close()
}

// holeSize writes the dimensions of a hole.
func (d *drawing) holeSize(h surfaces.Hole) string {
	switch {
	case h.DiameterM != nil:
		return d.text(diameter("hole diameter", *h.DiameterM))
	case len(h.Outline) > 0:
		low, high := extent(h.Outline)
		return d.text(plain("hole", high[0]-low[0]).bracketed()) + "×" + d.text(plain("by", high[1]-low[1]).bracketed())
	}
	text := d.text(plain("hole", *h.WidthM)) + "×" + d.text(plain("by", *h.HeightM))
	if r := or(h.CornerRadiusM, 0); r > 0 {
		text += " " + d.text(radius("corner radius", r))
	}
	return text
}

// holeLetter writes a hole's letter into it or beside it, if there is room.
func (d *drawing) holeLetter(h surfaces.Hole, p plate, text string) {
	l := lettering{text: text, class: dimensionText}
	low, high := holeExtent(h)
	a, b := p.at(low[0], high[1]), p.at(high[0], low[1])
	box := bounds{a, b}
	c := box.middle()
	places := []point{{b.x + 2.6, a.y}, {b.x + 2.6, b.y + capital}, {a.x - 2.6, a.y}, {a.x - 2.6, b.y + capital}}
	if box.width() > 9 && box.height() > 14 {
		places = append([]point{c.plus(4, -2.5)}, places...)
	} else if box.width() > 14 && box.height() > 6 {
		places = append([]point{c.plus(box.width()/4, capital/2)}, places...)
	}
	for _, q := range places {
		if d.free(l, q) {
			d.write(l, q)
			return
		}
	}
}

// holeList writes what the letters mean, and what else there is to say of the
// sheet, from a point down; farther to the right where there are letters already.
func (d *drawing) holeList(s *surfaces.Panel, groups []holeGroup, at point) {
	var list []lettering
	for i, g := range groups {
		if i == d.mostGroups() {
			list = append(list, lettering{text: fmt.Sprintf("and %d more sizes", len(groups)-i), class: noteText})
			break
		}
		text := letter(i) + " "
		if g.count > 1 {
			text += fmt.Sprintf("%d × ", g.count)
		}
		list = append(list, lettering{text: text + g.size, class: dimensionText})
	}
	if r := or(s.CornerRadiusM, 0); r > 0 {
		list = append(list, lettering{text: "corners " + d.text(radius("corner radius", r)), class: dimensionText})
	}
	if s.ThicknessMM != nil {
		thickness := d.text(plain("thickness", *s.ThicknessMM/1000))
		list = append(list, lettering{text: "thickness " + thickness, class: dimensionText}, d.face("edges"))
	}
	place := func(i int) point {
		return at.plus(textWidth(list[i].text)/2, float64(i)*lineSpace)
	}
	for i := 0; i < len(list); {
		if i++; !d.free(list[i-1], place(i-1)) {
			at.x, i = at.x+4, 0
		}
	}
	for i, l := range list {
		l.hang = atStart
		d.write(l, place(i))
	}
}
