package surfaces

import (
	"errors"
	"fmt"
	"math"

	"filmbuild/surfaces/planar"
)

// Extent implements Divisible. Stations run from left to right.
func (s *Panel) Extent() Extent {
	low, high := bounds(s.figure())
	return Extent{From: low.X, To: high.X, Low: low.Y, High: high.Y,
		Station: "from the lower left corner to the right", Height: "from the lower left corner"}
}

// bounds are the corners of the box about a figure, arcs included.
func bounds(o planar.Outline) (low, high planar.Point) {
	seen, err := layout(planar.Layer{Colour: sheet, Outline: planar.Region{o}})
	if err != nil {
		return low, high
	}
	box := seen.Box()
	return box.Min, box.Max
}

// rest is the colour of the sheet where it is not in the part.
const rest = "rest"

// Between implements Divisible.
func (s *Panel) Between(w Window) Measurement {
	low, high := bounds(s.figure())
	part := planar.Rectangle(
		planar.Point{X: w.From, Y: max(w.Low, low.Y)},
		planar.Point{X: w.To, Y: min(w.High, high.Y)})
	return s.inside(planar.Region{part}, "part "+w.String(), w.terms())
}

// inside measures the part of the panel within a region: the sheet is laid
// down, the region over it, the ground over all beyond the sheet, and the holes
// last. What is left of the region borders on the rest of the sheet, where it
// is cut, and on the ground.
func (s *Panel) inside(part planar.Region, what string, terms map[string]float64) Measurement {
	m := partOf(s, what)
	outline := s.figure()
	low, high := bounds(outline)
	reach := 1 + high.X - low.X + high.Y - low.Y
	frame := planar.Rectangle(planar.Point{X: low.X - reach, Y: low.Y - reach}, planar.Point{X: high.X + reach, Y: high.Y + reach})
	seen, err := layout(
		planar.Layer{Colour: rest, Outline: planar.Region{outline}},
		planar.Layer{Colour: sheet, Outline: part},
		planar.Layer{Colour: planar.Base, Outline: planar.Region{frame, outline.Reversed()}},
		planar.Layer{Colour: planar.Base, Outline: s.cutouts()})
	if err != nil {
		return m // a panel that Check passed makes no error
	}
	area, border, cut := 0.0, 0.0, 0.0
	for _, a := range seen.Areas() {
		if a.Colour == sheet {
			area = a.Area
		}
	}
	for _, l := range seen.Lengths() {
		switch l.Between {
		case [2]string{sheet, planar.Base}:
			border = l.Length
		case [2]string{rest, sheet}:
			cut = l.Length
		}
	}
	behind := Open
	m.add("front", area)
	m.edge("front", Cut, cut)
	if s.Sides == 2 {
		behind = "back"
		m.add("back", area)
		m.edge("back", Cut, cut)
	}
	if s.ThicknessMM == nil {
		m.edge("front", behind, border)
	} else {
		t := *s.ThicknessMM / 1000
		m.add("edges", border*t)
		m.edge("front", "edges", border)
		m.edge("edges", behind, border)
		m.edge("edges", Cut, t*float64(ends(seen)))
	}
	m.noteParts("by the part of the sheet within the bounds, holes cut out", terms, 0)
	return m
}

// ends counts where the line of a cut meets the outline or a rim: there the
// narrow face round the sheet is cut across.
func ends(seen *planar.Arrangement) int {
	cut, edge := map[planar.Point]int{}, map[planar.Point]bool{}
	for _, p := range seen.Pieces() {
		sides := [2]string{p.Left, p.Right}
		switch sides {
		case [2]string{sheet, planar.Base}, [2]string{planar.Base, sheet}:
			edge[p.From], edge[p.To] = true, true
		case [2]string{sheet, rest}, [2]string{rest, sheet}:
			cut[p.From]++
			cut[p.To]++
		}
	}
	count := 0
	for at, n := range cut {
		if edge[at] && n%2 == 1 {
			count++
		}
	}
	return count
}

// Lines implements Striped.
func (s *Panel) Lines() []StripLine {
	lines := []StripLine{{Name: "outline", Measured: "inwards from the panel's outline"}}
	if len(s.Holes) > 0 {
		lines = append(lines, StripLine{Name: "holes", Measured: "outwards from the rims of the holes"})
	}
	return lines
}

// Strip implements Striped: all of the sheet within a distance of a line.
func (s *Panel) Strip(along string, width float64, _ Window) (Measurement, error) {
	what := fmt.Sprintf("strip %s wide along the %s", metres(width), along)
	low, high := bounds(s.figure())
	reach := min(width, high.X-low.X+high.Y-low.Y)                        // across the whole panel
	if along == "outline" && 2*width >= min(high.X-low.X, high.Y-low.Y) { // no point is farther from the outline
		return s.inside(planar.Region{planar.Rectangle(low, high)}, what, map[string]float64{"width": width}), nil
	}
	lines := []planar.Outline{s.figure()}
	if along == "holes" {
		lines = s.cutouts()
	}
	var band planar.Region
	for _, o := range lines {
		band = append(band, bandAlong(o, reach, along == "outline")...)
	}
	if tangled(band) {
		return Measurement{}, errTangled
	}
	return s.inside(band, what, map[string]float64{"width": width}), nil
}

// bandAlong covers all points within a width of a counter-clockwise line, on
// the inner or the outer side of it: a rectangle along each straight side, part
// of a ring along each arc, and a disc about each corner that juts out to that
// side, beyond which no side is nearer.
func bandAlong(o planar.Outline, width float64, inner bool) planar.Region {
	var band planar.Region
	for i, c := range o {
		next := o[(i+1)%len(o)].At
		chord := planar.Point{X: next.X - c.At.X, Y: next.Y - c.At.Y}
		length := math.Hypot(chord.X, chord.Y)
		if length == 0 {
			continue
		}
		if jutsOut(o, i, inner) {
			band = append(band, planar.Circle(c.At, width))
		}
		if c.Sweep == 0 {
			across := planar.Point{X: -chord.Y / length * width, Y: chord.X / length * width}
			band = append(band, straight([][2]float64{
				{c.At.X + across.X, c.At.Y + across.Y}, {c.At.X - across.X, c.At.Y - across.Y},
				{next.X - across.X, next.Y - across.Y}, {next.X + across.X, next.Y + across.Y}}))
			continue
		}
		band = append(band, ringAlong(c.At, next, c.Sweep, width))
	}
	return band
}

// jutsOut says whether a corner points to the inner or the outer side; a smooth
// one does neither.
func jutsOut(o planar.Outline, i int, inner bool) bool {
	before := i
	for range o {
		if before = (before + len(o) - 1) % len(o); o[before].At != o[i].At {
			break
		}
	}
	in := direction(o[before].At, o[i].At) + o[before].Sweep/2
	out := direction(o[i].At, o[(i+1)%len(o)].At) - o[i].Sweep/2
	turn := math.Remainder(out-in, 2*math.Pi) // above 0 to the left, where the inside is
	if inner {
		return turn < -1e-12
	}
	return turn > 1e-12
}

// direction is that of the way from one point to another.
func direction(p, q planar.Point) float64 { return math.Atan2(q.Y-p.Y, q.X-p.X) }

// mostMeetings bounds the work on a strip: how many pairs of its pieces may
// overlap. A smooth outline of the most corners meets no more than 20 times as
// many in a strip as wide as its corners are apart.
const mostMeetings = 15_000

// errTangled is returned for a strip whose pieces overlap too often.
var errTangled = errors.New("the strip is so wide that it overlaps itself at too many corners; give a narrower one, or an outline of fewer corners")

// tangled says whether a band is too much work.
func tangled(band planar.Region) bool {
	boxes := make([]planar.Box, len(band))
	for i, o := range band {
		boxes[i] = boxAbout(o)
	}
	meetings := 0
	for i := range boxes {
		for j := range i {
			if overlap(boxes[i], boxes[j]) {
				meetings++
			}
		}
	}
	return meetings > mostMeetings
}

// ringAlong covers the points within a width of an arc on the rays through it
// from its centre.
func ringAlong(from, to planar.Point, sweep, width float64) planar.Outline {
	chord := planar.Point{X: to.X - from.X, Y: to.Y - from.Y}
	length := math.Hypot(chord.X, chord.Y)
	radius := length / (2 * math.Sin(math.Abs(sweep)/2))
	lift := 1 / (2 * math.Tan(sweep/2))
	centre := planar.Point{X: (from.X+to.X)/2 - chord.Y*lift, Y: (from.Y+to.Y)/2 + chord.X*lift}
	at := func(p planar.Point, r float64) planar.Point {
		return planar.Point{X: centre.X + (p.X-centre.X)*r/radius, Y: centre.Y + (p.Y-centre.Y)*r/radius}
	}
	ring := planar.Outline{{At: at(from, radius+width), Sweep: sweep}, {At: at(to, radius+width)}}
	if inner := radius - width; inner > touch {
		ring = append(ring, planar.Corner{At: at(to, inner), Sweep: -sweep}, planar.Corner{At: at(from, inner)})
	} else {
		ring = append(ring, planar.Corner{At: centre})
	}
	if sweep < 0 {
		return ring.Reversed()
	}
	return ring
}
