package sketch

import (
	"math"

	"filmbuild/surfaces"
)

// barSection is the outline of a bar's section on paper, from its lower left
// corner at the origin, and what is said of it to its right and left.
type barSection struct {
	way           *path
	width, height float64   // mm on paper
	folds         []float64 // heights of the edges that the bar's side view shows
	right, left   []callout
}

// profiler draws sections of one profile.
type profiler struct {
	d      *drawing
	p      surfaces.Profile
	k      float64 // mm on paper for each mm
	h, b   float64 // on paper, and so on
	r, toe float64
}

func newProfiler(d *drawing, p surfaces.Profile) profiler {
	k := d.k / 1000
	return profiler{d, p, k, or(p.HeightMM, 0) * k, or(p.WidthMM, 0) * k, or(p.RadiusMM, 0) * k, or(p.ToeRadiusMM, 0) * k}
}

// section draws the section of the profile's kind.
func (q profiler) section() barSection {
	switch q.p.Kind {
	case "i":
		return q.beam()
	case "channel":
		return q.channel()
	case "angle":
		return q.angle()
	case "rect_tube":
		return q.rectangularTube()
	case "round_tube", "round":
		return q.round()
	}
	s := barSection{way: q.d.path().rectangle(bounds{point{0, -q.h}, point{q.b, 0}}, 0, 0), width: q.b, height: q.h}
	q.sides(&s)
	return s
}

// thick returns a thickness on paper, or what stands for one that is not given.
func (q profiler) thick(value *float64, absent float64, what string) float64 {
	if value != nil {
		return *value * q.k
	}
	q.d.note("Thickness of the " + what + " not given: drawn as a guess.")
	return absent
}

// about adds a callout with a size, if the size is given.
func (q profiler) about(s *barSection, value *float64, named func(string, float64) size, name string, to point, at float64) {
	if value == nil || *value == 0 {
		return
	}
	l := q.d.letters(named(name, *value/1000))
	if named(name, 0).sign == "" {
		l.text = name + " " + l.text
	}
	s.right = append(s.right, callout{to: to, at: at, text: l})
}

func (q profiler) name(face string, to point, at float64) callout {
	return callout{to: to, at: at, text: q.d.face(face)}
}

// beam is an I or H section.
func (q profiler) beam() barSection {
	h, b, r, t := q.h, q.b, q.r, or(q.p.WebMM, 0)*q.k
	f := q.thick(q.p.FlangeMM, min(t, h/2-r), "flange")
	a, c := (b-t)/2, (b+t)/2
	const turn = math.Pi / 2
	w := q.d.path().move(point{0, -h}).line(point{b, -h}).line(point{b, -h + f}).line(point{c + r, -h + f})
	w.fillet(point{c + r, -h + f + r}, r, -turn, -2*turn).line(point{c, -f - r}).fillet(point{c + r, -f - r}, r, 2*turn, turn)
	w.line(point{b, -f}).line(point{b, 0}).line(point{0, 0}).line(point{0, -f}).line(point{a - r, -f})
	w.fillet(point{a - r, -f - r}, r, turn, 0).line(point{a, -h + f + r}).fillet(point{a - r, -h + f + r}, r, 0, -turn)
	w.line(point{0, -h + f}).close()
	s := barSection{way: w, width: b, height: h, folds: []float64{-h + f, -f}}
	s.right = []callout{q.name("top", point{b * 0.85, -h}, -h-5), q.name("sides", point{c, -h * 0.42}, -h*0.42), q.name("bottom", point{b * 0.85, 0}, 5)}
	q.about(&s, q.p.FlangeMM, plain, "flange", point{b, -h + f/2}, -h+f/2)
	q.about(&s, q.p.RadiusMM, radius, "fillet radius", onOval(point{c + r, -h + f + r}, r, r, -1.5*turn), -h*0.72)
	q.about(&s, q.p.WebMM, plain, "web", point{c, -h * 0.25}, -h*0.25)
	return s
}

// channel has its back at the left.
func (q profiler) channel() barSection {
	h, b, r, t := q.h, q.b, q.r, or(q.p.WebMM, 0)*q.k
	f := q.thick(q.p.FlangeMM, min(t, h/2-r), "flange")
	const turn = math.Pi / 2
	w := q.d.path().move(point{0, 0}).line(point{0, -h}).line(point{b, -h}).line(point{b, -h + f}).line(point{t + r, -h + f})
	w.fillet(point{t + r, -h + f + r}, r, -turn, -2*turn).line(point{t, -f - r}).fillet(point{t + r, -f - r}, r, 2*turn, turn)
	w.line(point{b, -f}).line(point{b, 0}).close()
	s := barSection{way: w, width: b, height: h, folds: nil}
	s.left = []callout{q.name("back", point{0, -h / 2}, -h/2)}
	s.right = []callout{q.name("top", point{b * 0.85, -h}, -h-5), q.name("inside", point{t, -h * 0.42}, -h*0.42), q.name("bottom", point{b * 0.85, 0}, 5)}
	q.about(&s, q.p.FlangeMM, plain, "flange", point{b, -h + f/2}, -h+f/2)
	q.about(&s, q.p.RadiusMM, radius, "fillet radius", onOval(point{t + r, -h + f + r}, r, r, -1.5*turn), -h*0.72)
	q.about(&s, q.p.WebMM, plain, "web", point{t, -h * 0.25}, -h*0.25)
	return s
}

// angle has its first leg upright at the left, its second one level.
func (q profiler) angle() barSection {
	h, b, r, toe := q.h, q.b, q.r, q.toe
	t := q.thick(q.p.WallMM, max(toe, min(h, b)/10), "wall")
	t = min(t, h-r, b-r)
	const turn = math.Pi / 2
	w := q.d.path().move(point{0, 0}).line(point{0, -h}).line(point{t - toe, -h})
	w.fillet(point{t - toe, -h + toe}, toe, -turn, 0).line(point{t, -t - r})
	w.fillet(point{t + r, -t - r}, r, 2*turn, turn).line(point{b - toe, -t})
	w.fillet(point{b - toe, -t + toe}, toe, -turn, 0).line(point{b, 0}).close()
	s := barSection{way: w, width: b, height: h, folds: []float64{-t}}
	s.left = []callout{q.name("back_1", point{0, -h / 2}, -h/2)}
	s.right = []callout{q.name("inside", point{t, -h * 0.6}, -h*0.6), q.name("back_2", point{b * 0.85, 0}, 5)}
	q.about(&s, q.p.WallMM, plain, "wall", point{b, -t * 0.4}, -t*0.4-1)
	q.about(&s, q.p.RadiusMM, radius, "fillet radius", onOval(point{t + r, -t - r}, r, r, 1.5*turn), -h*0.45)
	q.about(&s, q.p.ToeRadiusMM, radius, "toe radius", onOval(point{t - toe, -h + toe}, toe, toe, -turn/2), -h*0.9)
	return s
}

func (q profiler) rectangularTube() barSection {
	h, b, r := q.h, q.b, q.r
	w := q.d.path().rectangle(bounds{point{0, -h}, point{b, 0}}, r, r)
	s := barSection{way: w, width: b, height: h}
	if q.p.WallMM != nil {
		t := min(*q.p.WallMM*q.k, h/2, b/2)
		inner := min(max(r-t, 0), h/2-t, b/2-t)
		q.d.draw(edge, q.d.path().rectangle(bounds{point{t, -h + t}, point{b - t, -t}}, inner, inner))
		s.folds = nil
	}
	q.sides(&s)
	q.about(&s, q.p.WallMM, plain, "wall", point{b, -h * 0.3}, -h*0.3)
	q.about(&s, q.p.RadiusMM, radius, "corner radius", onOval(point{b - r, -h + r}, r, r, -math.Pi/4), -h*0.85)
	return s
}

// sides names the four sides of a rectangle.
func (q profiler) sides(s *barSection) {
	s.right = append(s.right, q.name("top", point{q.b * 0.85, -q.h}, -q.h-5),
		q.name("right", point{q.b, -q.h * 0.5}, -q.h*0.5), q.name("bottom", point{q.b * 0.85, 0}, 5))
	s.left = append(s.left, q.name("left", point{0, -q.h * 0.5}, -q.h*0.5))
}

func (q profiler) round() barSection {
	r := or(q.p.DiameterMM, 0) * q.k / 2
	s := barSection{way: q.d.path().oval(point{r, -r}, r, r), width: 2 * r, height: 2 * r}
	if q.p.WallMM != nil {
		inner := max(0, r-*q.p.WallMM*q.k)
		q.d.draw(edge, q.d.path().oval(point{r, -r}, inner, inner))
	}
	q.d.centreMark(point{r, -r})
	s.right = append(s.right, q.name("outside", onOval(point{r, -r}, r, r, -0.8), -2*r))
	q.about(&s, q.p.WallMM, plain, "wall", onOval(point{r, -r}, r, r, 0.3), -r+r*0.3)
	return s
}

// fillet goes on along a quarter circle, or to the corner where there is none.
func (w *path) fillet(c point, r, from, to float64) *path {
	if r == 0 {
		return w
	}
	return w.arc(c, r, r, from, to)
}
