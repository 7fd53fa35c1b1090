package surfaces

import (
	"fmt"
	"math"
)

// endStrip measures what lies within a width of the nose or the tail, along the
// straight lines from section to section.
func (s *Body) endStrip(m *Measurement, end string, width float64) (bound float64, err error) {
	stations := s.Stations
	if end == "tail" {
		stations = reversed(stations)
	}
	if stations[0].XM == stations[1].XM {
		return 0, fmt.Errorf("the body has a step at its %s; give a part by from_m and to_m", end)
	}
	half, line, across := 0.0, 0.0, 0.0
	for _, side := range []float64{-1, 1} {
		lines := endLines{stations, side, width}
		for i := 1; i < len(stations); i++ {
			if !lines.reaches(i) {
				break
			}
			if stations[i].XM == stations[i-1].XM {
				return bound, fmt.Errorf("the strip reaches the step at %s; give a narrower one, or a part by from_m and to_m", metres(stations[i].XM))
			}
			area, off := adaptive(func(u float64) float64 { return lines.area(i, u) }, -skinReach, skinReach)
			length, _ := adaptive(func(u float64) float64 { return lines.line(i, u) }, -skinReach, skinReach)
			half, bound, line = half+area, bound+2*off, line+length
			across += lines.ridge(i)
		}
	}
	m.add("left", half)
	m.add("right", half)
	m.bothSides(Cut, line)
	m.edge("left", "right", across)
	form := s.Nose
	if end == "tail" {
		form = s.Tail
	}
	outline := 0.0
	for _, q := range quarters(stations[0], stations[0]) {
		outline += q.sectionLine(0, math.Inf(-1), math.Inf(1))
	}
	s.stripEnd(m, form, end, true, stations[0], outline)
	far := stations[len(stations)-1]
	s.farEnd(m, endLines{stations, 1, width}, end, far)
	return bound, nil
}

// farEnd adds the line at the other end of the body where the strip reaches it.
func (s *Body) farEnd(m *Measurement, lines endLines, end string, far Station) {
	n := len(lines.stations) - 1
	length := 0.0
	for _, side := range []float64{-1, 1} {
		lines.side = side
		reached, _ := adaptive(func(u float64) float64 {
			before, _ := lines.before(n+1, u)
			if before > lines.width {
				return 0
			}
			_, d := arcAt(far, u, side)
			return d.length()
		}, -skinReach, skinReach)
		length += reached
	}
	form, name := s.Tail, "tail"
	if end == "tail" {
		form, name = s.Nose, "nose"
	}
	s.stripEnd(m, form, name, true, far, length)
}

// reversed lists the stations from tail to nose, so that x_m rises again.
func reversed(stations []Station) []Station {
	back := make([]Station, len(stations))
	for i, s := range stations {
		s.XM = -s.XM
		back[len(back)-1-i] = s
	}
	return back
}

// endLines are the lines from section to section in one quarter.
type endLines struct {
	stations []Station
	side     float64
	width    float64
}

func (e endLines) bay(i int) panelBay {
	return panelBay{e.stations[i-1], e.stations[i], e.side, e.stations[i].XM - e.stations[i-1].XM}
}

// length of the line at u through bay i, with its derivative by u.
func (e endLines) length(i int, u float64) (length, slope float64) {
	b := e.bay(i)
	p0, p1, d0, d1 := b.at(u)
	dy, dz := p1.x-p0.x, p1.z-p0.z
	length = math.Sqrt(b.gap*b.gap + dy*dy + dz*dz)
	return length, (dy*(d1.x-d0.x) + dz*(d1.z-d0.z)) / length
}

// before is the length from the end to bay i, with its derivative.
func (e endLines) before(i int, u float64) (length, slope float64) {
	for k := 1; k < i; k++ {
		l, s := e.length(k, u)
		length, slope = length+l, slope+s
	}
	return length, slope
}

// reaches says whether the strip goes into bay i anywhere, as seen at points
// round the section.
func (e endLines) reaches(i int) bool {
	for k := range 65 {
		if before, _ := e.before(i, skinReach*(float64(k)/32-1)); before < e.width {
			return true
		}
	}
	return false
}

// share of bay i that the strip takes at u.
func (e endLines) share(i int, u float64) float64 {
	before, _ := e.before(i, u)
	length, _ := e.length(i, u)
	return min(1, max(0, (e.width-before)/length))
}

func (e endLines) area(i int, u float64) float64 {
	b, t := e.bay(i), e.share(i, u)
	p0, p1, d0, d1 := b.at(u)
	return ruledStrip(p0, d0, between(p0, p1, t), between(d0, d1, t), b.gap*t)
}

// line is the length per u of the strip's far line in bay i.
func (e endLines) line(i int, u float64) float64 {
	t := e.share(i, u)
	if t <= 0 || t >= 1 && i == len(e.stations)-1 {
		return 0
	}
	b := e.bay(i)
	p0, p1, d0, d1 := b.at(u)
	before, slope := e.before(i, u)
	length, own := e.length(i, u)
	if before+length < e.width {
		return 0 // it goes on into the next bay
	}
	turn := (-slope - t*own) / length // dt/du
	d := between(d0, d1, t)
	v := vector{b.gap * turn, d.x + turn*(p1.x-p0.x), d.z + turn*(p1.z-p0.z)}
	return math.Sqrt(v.dot(v))
}

// ridge is the length of crown or keel within the strip in bay i.
func (e endLines) ridge(i int) float64 {
	b := e.bay(i)
	full := b.ridgeLine(0, 1, math.Inf(-1), math.Inf(1))
	before := 0.0
	for k := 1; k < i; k++ {
		before += e.bay(k).ridgeLine(0, 1, math.Inf(-1), math.Inf(1))
	}
	return min(full, max(0, e.width-before))
}
