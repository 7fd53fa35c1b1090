package sheet

import (
	"math"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// laying unrolls outlines that were given as seen from the side.
//
//	s = ρ·asin(y/ρ) across the axis, about the middle of the box
//
// Source: parallel projection of a cylinder, identity. The zero value leaves
// everything as it is.
type laying struct {
	radius  float64 // 0 for figures that are measured on the skin
	upright bool
	middle  planar.Point
}

// layingOf finds out whether the measures of a figure are those of its skin.
func layingOf(box planar.Box, m marking.Measurement) laying {
	if m.Skin == nil {
		return laying{}
	}
	wider, higher := m.WidthM-box.Width(), m.HeightM-box.Height()
	if math.Abs(wider) <= 1e-12*m.WidthM && math.Abs(higher) <= 1e-12*m.HeightM {
		return laying{}
	}
	return laying{m.Skin.RadiusM, wider > higher, planar.Point{X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y + box.Max.Y) / 2}}
}

// pieces is into how many Bézier curves an edge is cut: at 64, what an asin
// bends of a figure within 0.99 of its radius is off by less than 1e-9 of it.
const pieces = 64

// outline is one outline unrolled. An edge along the axis stays a line; others
// become Bézier curves with the right tangents.
func (l laying) outline(o planar.Outline) planar.Outline {
	if l.radius == 0 {
		return o
	}
	var out planar.Outline
	for i, c := range o {
		e := course{c, o[(i+1)%len(o)].At}
		if from, to := l.across(c.At), l.across(e.to); straight(c) && math.Abs(from-to) <= 1e-12*l.radius {
			out = append(out, planar.Corner{At: l.point(c.At)})
			continue
		}
		for k := range pieces {
			const step = 1.0 / pieces
			u, v := float64(k)*step, float64(k+1)*step
			from, fromPace := l.at(e, u)
			to, toPace := l.at(e, v)
			out = append(out, planar.Corner{At: from, Bend: &planar.Bend{
				First:  planar.Point{X: from.X + fromPace.X*step/3, Y: from.Y + fromPace.Y*step/3},
				Second: planar.Point{X: to.X - toPace.X*step/3, Y: to.Y - toPace.Y*step/3},
			}})
		}
	}
	return out
}

// across is how far a point lies from the middle, square to the axis.
func (l laying) across(p planar.Point) float64 {
	if l.upright {
		return p.X - l.middle.X
	}
	return p.Y - l.middle.Y
}

func (l laying) point(p planar.Point) planar.Point {
	s := l.radius * math.Asin(max(-1, min(1, l.across(p)/l.radius)))
	if l.upright {
		return planar.Point{X: s, Y: p.Y - l.middle.Y}
	}
	return planar.Point{X: p.X - l.middle.X, Y: s}
}

// at is where a course is at u, unrolled, and its derivative there.
func (l laying) at(e course, u float64) (at, pace planar.Point) {
	p, d := e.at(u)
	y := l.across(p) / l.radius
	rate := 1 / math.Sqrt(max(1e-12, 1-y*y))
	if l.upright {
		d.X *= rate
	} else {
		d.Y *= rate
	}
	return l.point(p), d
}

// course is an edge: a corner and where it leads.
type course struct {
	planar.Corner
	to planar.Point
}

// at is the point at u, from 0 to 1, and the derivative there.
func (e course) at(u float64) (p, pace planar.Point) {
	a, d := e.At, e.to
	switch v := 1 - u; {
	case e.Bend != nil:
		b, c := e.Bend.First, e.Bend.Second
		mix := func(a, b, c, d float64) (at, pace float64) {
			return v*v*v*a + 3*v*v*u*b + 3*v*u*u*c + u*u*u*d, 3 * (v*v*(b-a) + 2*v*u*(c-b) + u*u*(d-c))
		}
		p.X, pace.X = mix(a.X, b.X, c.X, d.X)
		p.Y, pace.Y = mix(a.Y, b.Y, c.Y, d.Y)
		return p, pace
	case e.Sweep != 0:
		centre, from := e.centre()
		sin, cos := math.Sincos(u * e.Sweep)
		x, y := from.X*cos-from.Y*sin, from.X*sin+from.Y*cos
		return planar.Point{X: centre.X + x, Y: centre.Y + y}, planar.Point{X: -y * e.Sweep, Y: x * e.Sweep}
	}
	return planar.Point{X: a.X + u*(d.X-a.X), Y: a.Y + u*(d.Y-a.Y)}, planar.Point{X: d.X - a.X, Y: d.Y - a.Y}
}

// centre is that of an arc, and the way from it to the arc's beginning.
//
//	middle of the chord + left normal of the chord / (2·tan(sweep/2))
func (e course) centre() (centre, from planar.Point) {
	dx, dy, k := e.to.X-e.At.X, e.to.Y-e.At.Y, 0.5/math.Tan(e.Sweep/2)
	centre = planar.Point{X: e.At.X + dx/2 - dy*k, Y: e.At.Y + dy/2 + dx*k}
	return centre, planar.Point{X: e.At.X - centre.X, Y: e.At.Y - centre.Y}
}
