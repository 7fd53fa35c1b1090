package surfaces

import (
	"math"
	"slices"
)

// revolution is a round shape by its profile: stretches that follow on each
// other, a closed ring where the last meets the first.
type revolution struct {
	profile []meridian
	closed  bool
}

// stretch is the part of one meridian from t to another.
type stretch struct{ from, to float64 }

func (s stretch) empty() bool { return !(s.to > s.from) }

// extent is how far a round shape reaches. Heights count from its axis.
func (v revolution) extent(counted string) Extent {
	e := Extent{From: math.Inf(1), To: math.Inf(-1), Station: counted, Height: "from the axis"}
	for _, m := range v.profile {
		for _, t := range []float64{0, 1} {
			e.From, e.To, e.High = min(e.From, m.x(t)), max(e.To, m.x(t)), max(e.High, m.r(t))
		}
	}
	e.Low = -e.High
	return e
}

// between measures what lies in a window.
func (v revolution) between(s Shape, w Window) Measurement {
	m := partOf(s, "part "+w.String())
	last := v.extent("").To
	taken := make([]stretch, len(v.profile))
	for i, p := range v.profile {
		taken[i] = p.within(w, last)
	}
	bound := v.measure(&m, taken, w)
	m.noteParts("by ∫ r·φ ds, φ = angle of the circle between the heights", w.terms(), bound)
	return m
}

// within returns the stretch of a meridian between the stations of a window. A
// plane ring belongs to the window that starts there, or ends at the last
// station.
func (m meridian) within(w Window, last float64) stretch {
	x0, x1 := m.x(0), m.x(1)
	if math.Abs(x1-x0) <= axis {
		if x0 >= w.From && (x0 < w.To || x0 >= last) && x0 <= w.To {
			return stretch{0, 1}
		}
		return stretch{}
	}
	a, b := clampTo(m.x, w.From), clampTo(m.x, w.To)
	return stretch{min(a, b), max(a, b)}
}

// clampTo is where a monotonic f reaches a value, or the end nearer to it.
func clampTo(f func(float64) float64, value float64) float64 {
	low, high := f(0), f(1)
	switch {
	case value <= min(low, high):
		if low < high {
			return 0
		}
		return 1
	case value >= max(low, high):
		if low < high {
			return 1
		}
		return 0
	}
	return inverse(f, value)
}

// measure adds the faces and lines of the stretches taken, between the heights
// of the window, and returns the bound of the areas' error.
func (v revolution) measure(m *Measurement, taken []stretch, w Window) float64 {
	bound := 0.0
	for i, p := range v.profile {
		if taken[i].empty() {
			continue
		}
		for _, s := range p.cutAt(taken[i], w.Low, w.High) {
			area, off := adaptive(func(t float64) float64 {
				_, r, dx, dr := p.at(t)
				return r * w.angle(r) * math.Hypot(dx, dr)
			}, s.from, s.to)
			m.add(p.face, area)
			bound += off
		}
		m.edge(p.face, Cut, p.heightLine(taken[i], w.Low)+p.heightLine(taken[i], w.High))
	}
	v.circles(m, taken, w)
	return bound
}

// angle of a circle of radius r that lies between the heights.
func (w Window) angle(r float64) float64 {
	if r == 0 {
		return 0
	}
	return 2 * (math.Asin(min(1, max(-1, w.High/r))) - math.Asin(min(1, max(-1, w.Low/r))))
}

// axis is the distance, in m, below which a point lies on the axis: a sine that
// should be 0 leaves some.
const axis = 1e-12

// circles adds the lines across the axis: where stretches end, and where they
// meet the next face.
func (v revolution) circles(m *Measurement, taken []stretch, w Window) {
	n := len(v.profile)
	for i, p := range v.profile {
		if taken[i].empty() {
			continue
		}
		length := func(t float64) float64 {
			r := p.r(t)
			if r < axis {
				return 0
			}
			return r * w.angle(r)
		}
		// The line at the far end is that of this stretch, and the one at the
		// near end too unless the stretch before reaches it.
		for _, end := range []struct {
			t      float64
			inside bool
			next   int
			reach  float64 // where the next stretch begins
		}{{taken[i].to, taken[i].to < 1, i + 1, 0}, {taken[i].from, taken[i].from > 0, i - 1, 1}} {
			if v.closed {
				end.next = (end.next + n) % n
			}
			switch {
			case end.inside:
				m.edge(p.face, Cut, length(end.t))
			case end.next < 0 || end.next >= n:
				m.edge(p.face, Open, length(end.t))
			case taken[end.next].empty() || math.Abs(end.reach-taken[end.next].near(end.reach)) > 0:
				m.edge(p.face, Cut, length(end.t))
			case v.profile[end.next].face != p.face && end.reach == 0:
				m.edge(p.face, v.profile[end.next].face, length(end.t))
			}
		}
	}
}

// near is the end of the stretch on the side of t.
func (s stretch) near(t float64) float64 {
	if t == 0 {
		return s.from
	}
	return s.to
}

// cutAt divides a stretch where its distance from the axis passes a height.
func (m meridian) cutAt(s stretch, heights ...float64) []stretch {
	at := []float64{s.from, s.to}
	for _, z := range heights {
		r := math.Abs(z)
		if low, high := min(m.r(0), m.r(1)), max(m.r(0), m.r(1)); r > low && r < high {
			if t := inverse(m.r, r); t > s.from && t < s.to {
				at = append(at, t)
			}
		}
	}
	slices.Sort(at)
	var parts []stretch
	for i := 1; i < len(at); i++ {
		parts = append(parts, stretch{at[i-1], at[i]})
	}
	return parts
}

// heightLine is the length of the lines at one height on both sides of a
// stretch.
//
//	2·∫ √(x'² + (r·r'/y)²) dt,  y² = r² − z²
//
// Source: identity.
func (m meridian) heightLine(s stretch, z float64) float64 {
	if math.IsInf(z, 0) {
		return 0
	}
	sum := 0.0
	for _, part := range m.cutAt(s, z) {
		if m.r((part.from+part.to)/2) <= math.Abs(z) {
			continue
		}
		length, _ := adaptive(func(t float64) float64 {
			_, r, dx, dr := m.at(t)
			y := math.Sqrt(max(0, (r-z)*(r+z)))
			if y == 0 {
				return 0
			}
			return math.Hypot(dx, r*dr/y)
		}, part.from, part.to)
		sum += length
	}
	return 2 * sum
}

// strip measures what lies within a width of a point between two stretches,
// measured along the profile, on both sides of it.
func (v revolution) strip(s Shape, along string, junction int, width float64) Measurement {
	m := partOf(s, "strip "+metres(width)+" wide along "+along)
	taken := make([]stretch, len(v.profile))
	for i, left := junction, width; i < len(v.profile) && left > 0; i++ {
		reach := v.profile[i].reach(left, false)
		taken[i] = stretch{0, reach}
		left -= v.profile[i].length(0, 1)
	}
	for i, left := junction-1, width; i >= 0 && left > 0; i-- {
		reach := v.profile[i].reach(left, true)
		taken[i] = stretch{reach, 1}
		left -= v.profile[i].length(0, 1)
	}
	all := Window{math.Inf(-1), math.Inf(1), math.Inf(-1), math.Inf(1)}
	bound := v.measure(&m, taken, all)
	m.noteParts("by 2π·∫ r ds over the width", map[string]float64{"width": width}, bound)
	return m
}

func (m meridian) length(from, to float64) float64 {
	length, _ := adaptive(m.element, from, to)
	return length
}

// reach is the t at a distance along the meridian from its start, or from its
// end; the other end if that is nearer.
func (m meridian) reach(distance float64, backwards bool) float64 {
	if m.length(0, 1) <= distance*(1+1e-12) {
		if backwards {
			return 0
		}
		return 1
	}
	if backwards {
		return inverse(func(t float64) float64 { return m.length(t, 1) }, distance)
	}
	return inverse(func(t float64) float64 { return m.length(0, t) }, distance)
}
