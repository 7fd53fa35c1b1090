package sheet

import (
	"cmp"
	"math"
	"slices"

	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/planar"
)

// round is a circle, or a part of one, that deserves a dimension.
type round struct {
	centre planar.Point
	radius float64
	sweep  float64 // of all its arcs together, in the pass that shows most of it
	pass   int
	at     course // one of the arcs: the one farthest up and to the right
}

// features are what the dimensions of a figure are set at, in m.
type features struct {
	box     planar.Box
	origin  planar.Point
	centred bool      // the origin is the middle from which the figure is drawn
	xs, ys  []float64 // of upright and level lines
	rounds  []round
}

// featuresOf finds the straight level and upright lines and the arcs of the
// passes, with the corners at the ends of such lines. Lines shorter than a
// fiftieth of the figure are left out.
func featuresOf(f marking.Figure, passes []Pass) features {
	v := features{box: boxOf(passes)}
	v.origin, v.centred = originOf(f, v.box)
	size := max(v.box.Width(), v.box.Height())
	v.xs, v.ys = []float64{v.box.Min.X, v.box.Max.X}, []float64{v.box.Min.Y, v.box.Max.Y}
	for k, p := range passes {
		for _, o := range p.Lines {
			n := len(o)
			for i, c := range o {
				e := course{c, o[(i+1)%n].At}
				cornered := straight(o[(i+n-1)%n]) && straight(o[(i+1)%n])
				dx, dy := math.Abs(e.to.X-c.At.X), math.Abs(e.to.Y-c.At.Y)
				switch {
				case c.Sweep != 0:
					v.addArc(e, k, size)
				case c.Bend != nil:
				case dy <= 1e-9*size && dx >= v.box.Width()/50:
					v.ys = append(v.ys, c.At.Y)
					if cornered {
						v.xs = append(v.xs, c.At.X, e.to.X)
					}
				case dx <= 1e-9*size && dy >= v.box.Height()/50:
					v.xs = append(v.xs, c.At.X)
					if cornered {
						v.ys = append(v.ys, c.At.Y, e.to.Y)
					}
				}
			}
		}
	}
	if d := aroundPoints(f); d > 0 {
		v.rounds = append(v.rounds, round{radius: d / 2, sweep: 2 * math.Pi, pass: len(passes)})
	}
	v.xs, v.ys = distinct(v.xs, size), distinct(v.ys, size)
	v.rounds = bySize(v.rounds, size)
	return v
}

func (v *features) addArc(e course, pass int, size float64) {
	centre, from := e.centre()
	radius := math.Hypot(from.X, from.Y)
	if radius < size/200 {
		return
	}
	v.rounds = append(v.rounds, round{centre, radius, math.Abs(e.Sweep), pass, e})
}

// bySize joins arcs of one circle and sorts them, the greatest first; of several
// that are alike it keeps one.
func bySize(list []round, size float64) []round {
	same := func(a, b float64) bool { return math.Abs(a-b) <= 1e-7*size }
	alike := func(a, b round) bool {
		return same(a.centre.X, b.centre.X) && same(a.centre.Y, b.centre.Y) && same(a.radius, b.radius)
	}
	var passes, out []round // the arcs of a circle in each pass, and then the circle
	for _, r := range list {
		k := slices.IndexFunc(passes, func(o round) bool { return o.pass == r.pass && alike(o, r) })
		if k < 0 {
			passes = append(passes, r)
			continue
		}
		passes[k].sweep += r.sweep
		if r.at.At.X+r.at.At.Y > passes[k].at.At.X+passes[k].at.At.Y {
			passes[k].at = r.at
		}
	}
	for _, r := range passes {
		if k := slices.IndexFunc(out, func(o round) bool { return alike(o, r) }); k < 0 {
			out = append(out, r)
		} else {
			out[k].sweep = max(out[k].sweep, r.sweep)
		}
	}
	slices.SortStableFunc(out, func(a, b round) int {
		return cmp.Or(cmp.Compare(b.radius, a.radius), cmp.Compare(b.at.At.X+b.at.At.Y, a.at.At.X+a.at.At.Y))
	})
	return slices.CompactFunc(out, func(a, b round) bool { return same(a.radius, b.radius) && a.whole() == b.whole() })
}

// whole says that three quarters of the circle or more are seen, so that its
// diameter is what one measures.
func (r round) whole() bool { return r.sweep >= 1.5*math.Pi }

func distinct(list []float64, size float64) []float64 {
	slices.Sort(list)
	return slices.CompactFunc(list, func(a, b float64) bool { return math.Abs(b-a) <= 1e-7*size })
}

// originOf is where running dimensions count from: the middle of figures that
// are drawn about one, or the lower left corner.
func originOf(f marking.Figure, box planar.Box) (origin planar.Point, centred bool) {
	switch f.(type) {
	case *marking.Star, *marking.StarAndBar, *marking.Star1919, *marking.DiscStar, *marking.Roundel, *marking.Disc, *marking.Ring, *marking.Cross:
		return planar.Point{}, true
	}
	return box.Min, false
}

// aroundPoints is the diameter of the circle through the points of a star, 0 of
// other figures.
func aroundPoints(f marking.Figure) float64 {
	switch s := f.(type) {
	case *marking.Star:
		return s.SizeM
	case *marking.StarAndBar:
		return s.SizeM
	case *marking.Star1919:
		return s.SizeM
	case *marking.DiscStar:
		return s.SizeM
	}
	return 0
}
