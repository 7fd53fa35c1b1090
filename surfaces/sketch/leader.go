package sketch

import (
	"slices"
	"strings"

	"filmbuild/surfaces/spacing"
)

// callout is a text outside the outline with a line to what it is about.
type callout struct {
	to   point
	at   float64 // the height it would like to stand at
	text lettering
	dot  bool // ends on a face with a dot instead of on a line with an arrow
}

// face makes the lettering of a face's name and notes that the face is shown.
func (d *drawing) face(name string) lettering {
	if !slices.Contains(d.faces, name) {
		d.faces = append(d.faces, name)
	}
	return lettering{text: strings.ReplaceAll(name, "_", " "), class: faceText, face: name}
}

// leader draws a line from a text's end to what it is about.
func (d *drawing) leader(from, to point, dot bool) {
	d.line(thin, from, to)
	if !dot {
		d.arrow(to, from)
		return
	}
	const r = 0.6
	way := d.path().oval(to, r, r)
	if !d.trial {
		d.fills = append(d.fills, `<path class="sketch-dot" d="`...)
		d.fills = append(d.fills, way.text...)
		d.fills = append(d.fills, "\"/>\n"...)
	}
}

// column writes callouts one below the other: to the right of x, or to its
// left, each with its leader. It returns how far the column reaches.
func (d *drawing) column(list []callout, x float64, right bool) float64 {
	slices.SortStableFunc(list, func(a, b callout) int { return compare(a.at, b.at) })
	want := make([]float64, len(list))
	for i, c := range list {
		want[i] = c.at
	}
	side, reach := 1.0, x
	if !right {
		side = -1
	}
	for i, y := range spacing.Spread(want, lineSpace) {
		width := textWidth(list[i].text.text)
		d.leader(point{x, y}, list[i].to, list[i].dot)
		d.sideways(list[i].text, point{x, y + capital/2}, side)
		if end := x + side*(1+width); (end-reach)*side > 0 {
			reach = end
		}
	}
	return reach
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// within writes texts inside a box, one below the other, if they have room
// there; else above the box at height y, with a leader.
func (d *drawing) within(b bounds, y float64, texts ...lettering) {
	const margin = 1.5
	width, height := 0.0, lineSpace*float64(len(texts))
	for _, t := range texts {
		width = max(width, textWidth(t.text))
	}
	if width+2*margin <= b.width() && height <= b.height() {
		top := b.middle().y - height/2
		for i, t := range texts {
			d.write(t, point{b.middle().x, top + (float64(i)+0.5)*lineSpace + capital/2})
		}
		return
	}
	d.over(b.middle(), y, texts...)
}

// over writes texts above height y, beside each other in one line, with a
// leader down to a point; higher where there are letters already.
func (d *drawing) over(to point, y float64, texts ...lettering) {
	joined := lettering{class: texts[0].class}
	for i, t := range texts {
		if i > 0 {
			joined.text += ", "
		}
		joined.text += t.text
	}
	if len(texts) == 1 {
		joined = texts[0]
	}
	at := d.raised(joined, point{to.x, y - descent})
	d.write(joined, at)
	d.leader(at.plus(0, descent), to, true)
}
