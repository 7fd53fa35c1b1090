package sheet

import (
	"fmt"
	"math"

	"filmbuild/surfaces/placing"
	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/spacing"
)

// references draws the anchors, the known points with their tapes, the edges,
// and the places of the anchors along the sides of the sheet.
func (d *board) references() {
	d.open(lines(&d.paper, "places"))
	far, foot := d.left, d.top+metre*d.world.Height()
	more := d.dashes()
	for _, p := range d.all {
		x, y := d.point(p.at)
		if len(p.Fix.Measures) == 0 { // by stations: their lines lead to the anchor
			d.stroke(x, y, x, foot, more)
			d.stroke(far, y, x, y, more)
		}
	}
	named := map[string]bool{}
	for _, p := range d.all {
		for _, m := range p.Fix.Measures {
			d.tape(p, m)
			key := fmt.Sprintf("%s %.4f %.4f", m.From, m.FromXM, m.FromYM)
			if !named[key] {
				named[key] = true
				d.known(p, m)
			}
		}
	}
	for _, p := range d.all {
		d.anchor(p)
	}
	d.ordinates(d.columns(), foot, true)
	d.ordinates(d.rows(), far, false)
	d.shut()
}

// ordinates writes where the anchors are: at the left of the face, or below it
// and turned, each with a line to it.
func (d *board) ordinates(marks []mark, side float64, below bool) {
	away := -1.0
	at := func(u, v float64) (x, y float64) { return side + v, u }
	if below {
		away = 1
		at = func(u, v float64) (x, y float64) { return u, side + v }
	}
	want := make([]float64, len(marks))
	for i, m := range marks {
		want[i] = m.at
	}
	for i, to := range spacing.Spread(want, d.h*1.35) {
		x0, y0 := at(marks[i].at, away*d.u(5))
		x1, y1 := at(marks[i].at, away*d.u(9))
		x2, y2 := at(to, away*d.u(11.5))
		d.line(x0, y0, x1, y1)
		d.line(x1, y1, x2, y2)
		x, y := at(to, away*d.u(12.2))
		if below {
			x += d.h / 2
		} else {
			y += d.h / 2
		}
		d.text(x, y, marks[i].text, place{anchor: "end", turned: below})
	}
}

// tape draws the way from a known point to the anchor and writes its length
// along it.
func (d *board) tape(p placed, m placing.Measure) {
	x0, y0 := d.point(planar.Point{X: m.FromXM, Y: m.FromYM})
	x1, y1 := d.point(p.at)
	long := math.Hypot(x1-x0, y1-y0)
	if long < d.u(4) {
		return
	}
	d.line(x0, y0, x1, y1)
	ux, uy := (x1-x0)/long, (y1-y0)/long
	d.arrow(x1, y1, ux, uy)
	text := d.look.tenth(m.DistanceM)
	x, y := d.free(x0, y0, x1, y1, d.width(text))
	angle := math.Atan2(uy, ux) * 180 / math.Pi
	if angle > 90 || angle <= -90 {
		angle += 180
	}
	d.put(`<g transform="translate(`, rough(x), " ", rough(y), `) rotate(`, rough(angle), `)">`)
	d.text(0, -d.u(above), text, place{anchor: "middle", halo: true})
	d.shut()
}

// free is a place along a line where a text of a width stands clear of figures,
// names and other texts, or the usual place if there is none.
func (d *board) free(x0, y0, x1, y1, width float64) (x, y float64) {
	share := func(s float64) (x, y float64) { return x0 + s*(x1-x0), y0 + s*(y1-y0) }
	x, y = share(0.4)
	for _, s := range []float64{0.4, 0.3, 0.5, 0.22, 0.6, 0.15, 0.7} {
		if tx, ty := share(s); !d.taken(tx, ty, width/2, d.h) {
			x, y = tx, ty
			break
		}
	}
	d.busy = append(d.busy, bounds{x - width/2, y - 1.5*d.h, x + width/2, y + d.h/2})
	return x, y
}

// bounds is a box on the sheet that has something in it.
type bounds struct{ left, top, right, bottom float64 }

func (d *board) taken(x, y, across, up float64) bool {
	for _, b := range d.busy {
		if x+across > b.left && x-across < b.right && y+up > b.top && y-1.5*up < b.bottom {
			return true
		}
	}
	return false
}

// known draws a known point, a circle with a cross, and its name.
func (d *board) known(p placed, m placing.Measure) {
	x, y := d.point(planar.Point{X: m.FromXM, Y: m.FromYM})
	if m.Edge {
		d.edge(x, y, p, m)
		return
	}
	r := d.u(1.8)
	d.put(`<circle cx="`, rough(x), `" cy="`, rough(y), `" r="`, rough(r), `" fill="#ffffff"/>`, "\n")
	d.line(x-1.6*r, y, x+1.6*r, y)
	d.line(x, y-1.6*r, x, y+1.6*r)
	d.text(x+d.u(3.4), y-d.u(2), m.From, place{halo: true})
}

// edge draws a piece of an edge on both sides of the foot of the distance from it.
func (d *board) edge(x, y float64, p placed, m placing.Measure) {
	ax, ay := d.point(p.at)
	long := math.Hypot(ax-x, ay-y)
	ux, uy := 0.0, 1.0
	if long > 0 {
		ux, uy = (ay-y)/long, -(ax-x)/long
	}
	if ux < 0 || (ux == 0 && uy > 0) {
		ux, uy = -ux, -uy
	}
	reach := d.u(9)
	d.stroke(x-reach*ux, y-reach*uy, x+reach*ux, y+reach*uy, ` stroke-width="`+rough(d.u(0.7))+`"`)
	d.text(x+d.u(3.4), y-d.u(2), m.From, place{halo: true})
}

// anchor draws the point of a figure that its place is of.
func (d *board) anchor(p placed) {
	x, y := d.point(p.at)
	r := d.u(2.6)
	for _, pen := range []string{` stroke="#ffffff" stroke-opacity="0.85" stroke-width="` + rough(d.u(1.1)) + `"`, ` stroke-width="` + rough(d.u(0.5)) + `"`} {
		d.stroke(x-r, y, x+r, y, pen)
		d.stroke(x, y-r, x, y+r, pen)
	}
}
