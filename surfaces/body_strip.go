package surfaces

import (
	"fmt"
	"math"
)

// Lines implements Striped.
func (s *Body) Lines() []StripLine {
	const girth, skin = "round the section, on both sides of the line", "along the straight lines from section to section"
	return []StripLine{{"top", girth, true}, {"bottom", girth, true}, {"nose", skin, false}, {"tail", skin, false}}
}

// Strip implements Striped.
func (s *Body) Strip(along string, width float64, w Window) (Measurement, error) {
	m := partOf(s, fmt.Sprintf("strip %s wide along %s", metres(width), along))
	var bound float64
	var err error
	if along == "nose" || along == "tail" {
		bound, err = s.endStrip(&m, along, width)
	} else {
		bound, err = s.ridgeStrip(&m, along, width, w)
	}
	m.noteParts("by ∫∫ |∂r/∂θ × ∂r/∂t| dθ dt within the width", map[string]float64{"width": width}, bound)
	return m, err
}

// girthPieces divides the way round half a section, so that Gauss's rule is good
// beside the turn of a thin one.
const girthPieces = 16

// girthSkin is one side of a bay from the crown or the keel round to the line
// opposite: u from reach to −reach in the first quarter, and back in the other.
type girthSkin struct {
	first, second panelBay
	nodes         [girthPieces][]girthNode // of each piece
	reached       map[float64]float64      // share of the bay to k, for one width
}

// girthNode is a pair of matching points of both sections with their elements
// of outline.
type girthNode struct{ p0, p1, d0, d1 inPlane }

func newGirthSkin(s0, s1 Station, along string) *girthSkin {
	q := quarters(s0, s1)
	g := &girthSkin{first: q[1], second: q[0], reached: map[float64]float64{}}
	if along == "bottom" {
		g.first, g.second = q[0], q[1]
	}
	for i := range g.nodes {
		g.nodes[i] = g.between(float64(i)/girthPieces, float64(i+1)/girthPieces)
	}
	return g
}

// at returns the points at k, which runs from 0 at the line to 1 opposite it,
// and their derivatives by k.
func (g *girthSkin) at(k float64) girthNode {
	const scale = 4 * skinReach
	if k <= 0.5 {
		p0, p1, d0, d1 := g.first.at(skinReach - scale*k)
		return girthNode{p0, p1, d0.scaled(-scale), d1.scaled(-scale)}
	}
	p0, p1, d0, d1 := g.second.at(scale*k - 3*skinReach)
	return girthNode{p0, p1, d0.scaled(scale), d1.scaled(scale)}
}

// between returns the nodes of Gauss's rule from a to b.
func (g *girthSkin) between(a, b float64) []girthNode {
	list := make([]girthNode, 0, len(gauss()))
	for _, n := range gauss() {
		q := g.at(a + (b-a)*n.at)
		q.d0, q.d1 = q.d0.scaled(n.weight*(b-a)), q.d1.scaled(n.weight*(b-a))
		list = append(list, q)
	}
	return list
}

// upTo adds up f over the nodes from the line to k.
func (g *girthSkin) upTo(k float64, f func(n girthNode) float64) float64 {
	whole := min(int(k*girthPieces), girthPieces)
	sum := 0.0
	for _, piece := range g.nodes[:whole] {
		for _, n := range piece {
			sum += f(n)
		}
	}
	if start := float64(whole) / girthPieces; k > start {
		for _, n := range g.between(start, k) {
			sum += f(n)
		}
	}
	return sum
}

// girth is the length round the section from the line to k.
func (g *girthSkin) girth(k, t float64) float64 {
	return g.upTo(k, func(n girthNode) float64 { return between(n.d0, n.d1, t).length() })
}

// reach is the k up to which a strip goes at a share of the bay. The area and
// the line of a strip ask for the same ones.
func (g *girthSkin) reach(width, t float64) float64 {
	k, known := g.reached[t]
	if !known {
		k = g.find(width, t)
		g.reached[t] = k
	}
	return k
}

func (g *girthSkin) find(width, t float64) float64 {
	left := width
	for i, piece := range g.nodes {
		girth := 0.0
		for _, n := range piece {
			girth += between(n.d0, n.d1, t).length()
		}
		if girth <= left {
			left -= girth
			continue
		}
		const step = 1.0 / girthPieces
		start := float64(i) * step
		return start + step*inverse(func(k float64) float64 {
			girth := 0.0
			for _, n := range g.between(start, start+k*step) {
				girth += between(n.d0, n.d1, t).length()
			}
			return girth
		}, left)
	}
	return 1
}

// areaTo is the area per share of the bay from the line to k.
func (g *girthSkin) areaTo(k, t float64) float64 {
	return g.upTo(k, func(n girthNode) float64 {
		d := between(n.d0, n.d1, t)
		v := vector{d.x, 0, d.z}.cross(vector{n.p1.x - n.p0.x, g.first.gap, n.p1.z - n.p0.z})
		return math.Sqrt(v.dot(v))
	})
}

// lineElement is the length per share of the bay of the strip's far line. Its
// direction comes from central differences, good to 1e-9 here.
func (g *girthSkin) lineElement(width, t float64) float64 {
	const h = 1e-5
	k := g.reach(width, t)
	n := g.at(k)
	d := between(n.d0, n.d1, t)
	if k == 1 || d.length() == 0 {
		return 0
	}
	turn := -(g.girth(k, t+h) - g.girth(k, t-h)) / (2 * h) / d.length() // dk/dt at the same girth
	v := vector{n.p1.x - n.p0.x + turn*d.x, g.first.gap, n.p1.z - n.p0.z + turn*d.z}
	return math.Sqrt(v.dot(v))
}

// mostStripBays bounds the work on a strip round the sections.
const mostStripBays = 100

// ridgeStrip measures a strip along the crown or the keel, on both sides of it.
func (s *Body) ridgeStrip(m *Measurement, along string, width float64, w Window) (bound float64, err error) {
	half, bays := 0.0, 0
	first, last := s.Stations[0], s.Stations[len(s.Stations)-1]
	for i := 1; i < len(s.Stations); i++ {
		s0, s1 := s.Stations[i-1], s.Stations[i]
		from, to := 0.0, 0.0
		if s1.XM > s0.XM {
			from, to = w.share(w.From, s0, s1), w.share(w.To, s0, s1)
		} else if s0.XM > w.From && s0.XM < w.To {
			return bound, fmt.Errorf("the body has a step at %s; give the strip from one step to the next by from_m and to_m", metres(s0.XM))
		}
		if to <= from {
			continue
		}
		if bays++; bays > mostStripBays {
			return bound, fmt.Errorf("the strip runs through more than %d stations; give it in parts by from_m and to_m", mostStripBays)
		}
		g := newGirthSkin(s0, s1, along)
		area, off := settled(func(t float64) float64 { return g.areaTo(g.reach(width, t), t) }, from, to, 1e-10, 60)
		half, bound = half+area, bound+2*off
		line, _ := roughly(func(t float64) float64 { return g.lineElement(width, t) }, from, to)
		m.bothSides(Cut, line)
		m.edge("left", "right", g.first.ridgeLine(from, to, math.Inf(-1), math.Inf(1)))
		whole, _ := adaptive(func(t float64) float64 {
			if g.girth(1, t) <= width {
				return 1
			}
			return 0
		}, from, to)
		m.edge("left", "right", whole*g.second.ridgeLine(0, 1, math.Inf(-1), math.Inf(1)))
		if s0.XM <= w.From && w.From < s1.XM {
			s.stripEnd(m, s.Nose, "nose", w.From <= first.XM, first, min(width, g.girth(1, from)))
		}
		if s0.XM < w.To && w.To <= s1.XM {
			s.stripEnd(m, s.Tail, "tail", w.To >= last.XM, last, min(width, g.girth(1, to)))
		}
	}
	m.add("left", half)
	m.add("right", half)
	return bound, nil
}

// stripEnd adds the line at an end of a strip.
func (s *Body) stripEnd(m *Measurement, form, name string, atEnd bool, end Station, length float64) {
	switch {
	case !atEnd:
		m.bothSides(Cut, length)
	case end.area() == 0:
		m.edge("left", "right", length)
	case form == "flat":
		m.bothSides(name, length)
	default:
		m.bothSides(Open, length)
	}
}
