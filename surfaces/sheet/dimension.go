package sheet

import (
	"math"

	"filmbuild/surfaces/spacing"
)

// Distances of dimension lines, in mm for letters of 3.5 mm: the first from the
// outline, each further one from the last. ISO 129 by secondary accounts: at
// least 10, and 6 to 8.
const (
	firstDimension = 10.0
	nextDimension  = 7.5
	past           = 2.0 // of extension lines beyond dimension lines
	gap            = 1.0 // of extension lines to the outline
	above          = 1.2 // of letters to dimension lines
)

// level draws a level dimension at a height y between extension lines from
// heights y0 and y1 at x0 and x1.
func (p *paper) level(x0, x1, y0, y1, y float64, text string) {
	for _, e := range [][2]float64{{x0, y0}, {x1, y1}} {
		away := math.Copysign(1, y-e[1])
		p.line(e[0], e[1]+p.u(gap)*away, e[0], y+p.u(past)*away)
	}
	if x1-x0 >= p.width(text)+p.u(8) {
		p.line(x0, y, x1, y)
		p.arrow(x0, y, -1, 0)
		p.arrow(x1, y, 1, 0)
		p.text((x0+x1)/2, y-p.u(above), text, place{anchor: "middle", halo: true})
		return
	}
	p.arrow(x0, y, 1, 0) // too narrow: arrows from outside, the text beside them
	p.arrow(x1, y, -1, 0)
	p.line(x0-p.u(6), y, x1+p.u(7)+p.width(text), y)
	p.text(x1+p.u(7), y-p.u(above), text, place{})
}

// upright draws an upright dimension at x, left of the figure, between extension
// lines from x0.
func (p *paper) upright(y0, y1, x0, x float64, text string) {
	for _, y := range []float64{y0, y1} {
		p.line(x0-p.u(gap), y, x-p.u(past), y)
	}
	if y1-y0 >= p.width(text)+p.u(8) {
		p.line(x, y0, x, y1)
		p.arrow(x, y0, 0, -1)
		p.arrow(x, y1, 0, 1)
		p.text(x-p.u(above), (y0+y1)/2, text, place{anchor: "middle", turned: true})
		return
	}
	p.arrow(x, y0, 0, 1)
	p.arrow(x, y1, 0, -1)
	p.line(x, y0-p.u(6), x, y1+p.u(6))
	p.text(x-p.u(past), (y0+y1)/2+p.h/2, text, place{anchor: "end"})
}

// mark is one place on a running dimension: where it is along the axis, and what
// stands there.
type mark struct {
	at   float64
	text string
}

// running draws dimensions that all count from one origin along an axis: upright
// at x = v, its texts to the right, or level at y = v, its texts turned and below
// it. from is where the figure ends on that side.
func (p *paper) running(marks []mark, origin, from, v float64, level bool) {
	at := func(u, v float64) (x, y float64) {
		if level {
			return u, v
		}
		return v, u
	}
	line := func(u0, v0, u1, v1 float64) {
		x0, y0 := at(u0, v0)
		x1, y1 := at(u1, v1)
		p.line(x0, y0, x1, y1)
	}
	want := make([]float64, len(marks))
	low, high := origin, origin
	for i, m := range marks {
		want[i] = m.at
		low, high = min(low, m.at), max(high, m.at)
	}
	line(low, v, high, v)
	x, y := at(origin, v)
	p.put(`<circle cx="`, rough(x), `" cy="`, rough(y), `" r="`, rough(p.u(1.1)), `" fill="#ffffff"/>`, "\n")
	for i, to := range spacing.Spread(want, p.h*1.35) {
		m := marks[i]
		line(m.at, from+p.u(gap), m.at, v+p.u(past))
		line(m.at, v+p.u(past), to, v+p.u(past+2.5))
		if away := math.Copysign(1, m.at-origin); math.Abs(m.at-origin) > p.u(3) {
			dx, dy := at(away, 0)
			x, y := at(m.at, v)
			p.arrow(x, y, dx, dy)
		}
		x, y := at(to, v+p.u(past+3.2))
		if level {
			p.text(x+p.h/2, y, m.text, place{anchor: "end", turned: true})
		} else {
			p.text(x, y+p.h/2, m.text, place{})
		}
	}
}

// runningRoom is how far running dimensions reach beyond the figure.
func (p *paper) runningRoom(marks []mark) float64 {
	widest := 0.0
	for _, m := range marks {
		widest = max(widest, p.width(m.text))
	}
	return p.u(firstDimension+past+4) + widest
}
