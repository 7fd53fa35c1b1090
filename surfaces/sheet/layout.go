package sheet

import (
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// drawing is one figure on its sheet.
type drawing struct {
	paper
	view
	features
	look   Look
	right  []mark // running dimensions of level lines, and of upright ones below
	below  []mark
	circle []round // whole circles and parts
	parts  []round
	width0 float64 // of the sheet, mm
	edge   [4]float64
	bottom float64 // where the title block begins
}

// left, top, far and foot are the sides of the figure on the sheet, in mm.
func (d *drawing) left() float64 { return d.edge[0] }
func (d *drawing) top() float64  { return d.edge[1] }
func (d *drawing) far() float64  { return d.edge[2] }
func (d *drawing) foot() float64 { return d.edge[3] }

// mostRounds is how many diameters, and how many radii, are written at most.
const mostRounds = 6

// layout finds the size of the letters and the place of the figure.
func layout(f marking.Figure, passes []Pass, look Look) *drawing {
	d := &drawing{features: featuresOf(f, passes), look: look}
	w, h := metre*d.box.Width(), metre*d.box.Height()
	d.h = textHeight(w, h)
	for _, r := range d.rounds {
		switch {
		case r.whole() && len(d.circle) < mostRounds:
			d.circle = append(d.circle, r)
		case !r.whole() && len(d.parts) < mostRounds:
			d.parts = append(d.parts, r)
		}
	}
	d.right = d.marks(d.ys, d.origin.Y, h)
	d.below = d.marks(d.xs, d.origin.X, w)

	left, top := d.u(firstDimension+8)+d.h, d.u(firstDimension+7)+d.h
	if text := d.width(look.length(d.box.Height())); h < text+d.u(8) {
		left += text // it stands beside its line
	}
	far, foot := d.u(10), d.u(10)
	if len(d.right) > 0 {
		far = d.runningRoom(d.right) + d.u(4)
	}
	if len(d.below) > 0 {
		foot = d.runningRoom(d.below) + d.u(4)
	}
	foot += d.u(nextDimension) * float64(len(d.circle))
	d.width0 = max(left+w+far, 42*d.h, 150)
	left += max(0, d.width0-(left+w+far)) / 2
	d.edge = [4]float64{left, top, left + w, top + h}
	d.view = view{left - metre*d.box.Min.X, top + metre*d.box.Max.Y}
	d.bottom = top + h + foot
	return d
}

// marks are running dimensions at the levels, none where they are too many for
// the side or say no more than the overall size. More than half as long again as
// the side they may not be.
func (d *drawing) marks(levels []float64, origin, side float64) []mark {
	const pitch, crowd = 1.35, 1.5
	if len(levels) <= 2 || len(levels) > mostMarks || float64(len(levels))*pitch*d.h > crowd*side+4*d.h {
		return nil
	}
	var out []mark
	for _, x := range levels {
		out = append(out, mark{x, d.look.tenth(x - origin)})
	}
	return out
}

// ground is a pale patch behind the figure, for what the base shows.
func (d *drawing) ground() {
	e := d.u(3.5)
	d.put(`<rect id="sheet-base" x="`, rough(d.left()-e), `" y="`, rough(d.top()-e), `" width="`, rough(d.far()-d.left()+2*e), `" height="`, rough(d.foot()-d.top()+2*e), `" fill="`, faint, "\"/>\n")
}

// dimensions draws overall sizes above and at the left, running dimensions at
// the right and below, diameters before these, and radii.
func (d *drawing) dimensions() {
	d.open(lines(&d.paper, "dimensions"))
	d.axes()
	d.level(d.left(), d.far(), d.top(), d.top(), d.top()-d.u(firstDimension), d.look.length(d.box.Width()))
	d.upright(d.top(), d.foot(), d.left(), d.left()-d.u(firstDimension), d.look.length(d.box.Height()))
	if len(d.right) > 0 {
		d.running(d.sheetMarks(d.right, false), d.y-metre*d.origin.Y, d.far(), d.far()+d.u(firstDimension), false)
	}
	if len(d.below) > 0 {
		v := d.foot() + d.u(firstDimension+nextDimension*float64(len(d.circle)))
		d.running(d.sheetMarks(d.below, true), d.x+metre*d.origin.X, d.foot(), v, true)
	}
	v := d.foot() + d.u(firstDimension)
	for i := len(d.circle) - 1; i >= 0; i-- { // the smallest nearest
		r := d.circle[i]
		x, y := d.point(r.centre)
		d.level(x-metre*r.radius, x+metre*r.radius, y, y, v, "Ø "+d.look.length(2*r.radius))
		v += d.u(nextDimension)
	}
	for i, r := range d.parts {
		share := float64(i+1) / float64(len(d.parts)+1)
		if r.at.Sweep < 0 {
			share = 1 - share
		}
		d.radius(r, share, i)
	}
	d.shut()
}

// axes are the middle lines of a figure that is drawn about a middle, and the
// circle through the points of a star.
func (d *drawing) axes() {
	if !d.centred {
		return
	}
	x, y := d.point(planar.Point{})
	more := d.dashes()
	d.stroke(d.left()-d.u(2.5), y, d.far()+d.u(2.5), y, more)
	d.stroke(x, d.top()-d.u(2.5), x, d.foot()+d.u(2.5), more)
	for _, r := range d.circle {
		if r.at.to == (planar.Point{}) && r.at.At == (planar.Point{}) {
			d.put(`<circle cx="`, rough(x), `" cy="`, rough(y), `" r="`, rough(metre*r.radius), `"`, more, "/>\n")
		}
	}
}

// radius draws a leader from within an arc to it, with R before the value. Each
// further one is shorter, so that those of lines side by side do not meet.
func (d *drawing) radius(r round, share float64, k int) {
	at, _ := r.at.at(share)
	ux, uy := (at.X-r.centre.X)/r.radius, (at.Y-r.centre.Y)/r.radius
	x, y := d.point(at)
	long := max(min(0.8*metre*r.radius, d.u(24-4*float64(k))), d.u(6))
	d.arrow(x, y, ux, -uy)
	d.line(x, y, x-long*ux, y+long*uy)
	anchor, gone := "end", -d.u(1)
	if ux < 0 {
		anchor, gone = "start", d.u(1)
	}
	d.text(x-long*ux+gone, y+long*uy+d.h/2, "R "+d.look.length(r.radius), place{anchor: anchor, halo: true})
}

// sheetMarks are marks where they lie on the sheet, in mm, increasing.
func (d *drawing) sheetMarks(marks []mark, level bool) []mark {
	out := make([]mark, len(marks))
	for i, m := range marks {
		if level {
			out[i] = mark{d.x + metre*m.at, m.text}
		} else {
			out[len(marks)-1-i] = mark{d.y - metre*m.at, m.text}
		}
	}
	return out
}
