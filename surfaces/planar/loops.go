package planar

import (
	"cmp"
	"math"
	"slices"
)

// Loop is one closed line round a part of one colour, or round a hole in it.
type Loop struct {
	Colour  string
	Outline Outline // with the colour on its left: a hole runs clockwise
	Area    float64 // within the line, negative for a hole
}

// Loops returns the closed lines round each colour, as a cutter follows them,
// colour by colour. Parts of a colour that touch in a point count as one part,
// so that what lies between them is a hole.
func (a *Arrangement) Loops() []Loop {
	var out []Loop
	for i := range a.parts {
		p := &a.parts[i]
		own := p.loops()
		for _, at := range p.at {
			for _, l := range own {
				placed := func(q Point) Point { return p.placed(q, at) }
				moved := make(Outline, len(l.outline))
				for k, c := range l.outline {
					moved[k] = Corner{placed(c.At), c.Sweep, c.Bend.moved(placed)}
				}
				out = append(out, Loop{a.colours[p.colours[l.colour]], moved, l.outline.SignedArea() * p.frame.size * p.frame.size})
			}
		}
	}
	order := map[string]int{}
	for i, c := range a.colours {
		order[c] = i
	}
	slices.SortStableFunc(out, func(l, m Loop) int { return cmp.Compare(order[l.Colour], order[m.Colour]) })
	return out
}

// Holes is how many separate parts one colour has and how many closed holes
// are in them.
type Holes struct {
	Colour       string
	Parts, Holes int
}

// Holes counts the closed lines round each colour, in the order of Areas. In a
// stencil for the colour each hole is an island that falls out unless bridges
// hold it.
//
//	holes = closed lines − parts
func (a *Arrangement) Holes() []Holes {
	counts := make([]Holes, len(a.colours))
	for i := range a.parts {
		p := &a.parts[i]
		if !p.cut {
			for _, l := range p.lines {
				counts[p.colours[l.inside]].Parts += len(p.at)
				counts[p.colours[l.outside]].Holes += len(p.at)
			}
			continue
		}
		for _, l := range p.loops() {
			c := &counts[p.colours[l.colour]]
			if l.outline.SignedArea() < 0 {
				c.Holes += len(p.at)
			} else {
				c.Parts += len(p.at)
			}
		}
	}
	var out []Holes
	for i := 1; i < len(counts); i++ {
		if counts[i].Parts > 0 {
			counts[i].Colour = a.colours[i]
			out = append(out, counts[i])
		}
	}
	return out
}

// loop is a closed line in the frame of a part.
type loop struct {
	colour  int
	outline Outline
}

// way is a border run in the sense that has its colour on the left.
type way struct {
	border
	colour int
	used   bool
}

// loops follows the borders of each colour, ways in the order of the borders.
func (p *part) loops() []loop {
	ways := make([]way, 0, 2*len(p.borders))
	for _, b := range p.borders {
		if p.colours[b.left] != 0 {
			ways = append(ways, way{border: b, colour: b.left})
		}
		if p.colours[b.right] != 0 {
			ways = append(ways, way{border: b.reversed(), colour: b.right})
		}
	}
	starts := startsOf(ways)
	corners := make(Outline, 0, len(ways))
	var out []loop
	for first := range ways {
		if ways[first].used {
			continue
		}
		begun := len(corners)
		for i := first; i >= 0; {
			w := &ways[i]
			w.used = true
			corners = append(corners, w.corner())
			leaving := starts.at(ways, w.to, w.colour)
			if w.to == ways[first].from && nextWay(w, ways, leaving, first) == first {
				break
			}
			i = nextWay(w, ways, leaving, -1)
		}
		out = append(out, loop{ways[first].colour, corners[begun:len(corners):len(corners)]})
	}
	return out
}

// starts are the numbers of ways, by where they begin, then by colour, then by
// number.
type starts []int

func startsOf(ways []way) starts {
	order := make(starts, len(ways))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return byStart(&ways[i], ways[j].from, ways[j].colour) })
	return order
}

// at are the ways of a colour that begin at a point.
func (s starts) at(ways []way, p Point, colour int) []int {
	first, _ := slices.BinarySearchFunc(s, 0, func(i, _ int) int { return byStart(&ways[i], p, colour) })
	last := first
	for last < len(s) && byStart(&ways[s[last]], p, colour) == 0 {
		last++
	}
	return s[first:last]
}

func byStart(w *way, p Point, colour int) int {
	return cmp.Or(cmp.Compare(w.from.X, p.X), cmp.Compare(w.from.Y, p.Y), cmp.Compare(w.colour, colour))
}

// nextWay is the way that goes on from the end of w: of those not yet used, and
// the given one, the first met on turning counter-clockwise from the way back,
// so that the colour stays in one piece where it touches itself. It is -1 if
// there is none.
func nextWay(w *way, ways []way, leaving []int, also int) int {
	if len(leaving) == 1 && (!ways[leaving[0]].used || leaving[0] == also) {
		return leaving[0]
	}
	end := w.reversed().heading()
	back := math.Atan2(end.Y, end.X)
	best, least := -1, math.Inf(1)
	for _, i := range leaving {
		if ways[i].used && i != also {
			continue
		}
		h := ways[i].heading()
		turn := math.Mod(math.Atan2(h.Y, h.X)-back+4*math.Pi, 2*math.Pi)
		if turn < least {
			best, least = i, turn
		}
	}
	return best
}

// heading is the direction in which a border leaves its beginning: that of the
// way to a point a hundredth along, which tells edges of one tangent apart.
func (b border) heading() Point {
	const near = 0.01
	switch {
	case b.course != nil:
		return b.course.at(near).minus(b.from)
	case b.radius > 0:
		chord := b.to.minus(b.from)
		sin, cos := math.Sincos(-b.turn * b.sweep() / 2 * (1 - near))
		return Point{chord.X*cos - chord.Y*sin, chord.X*sin + chord.Y*cos}
	}
	return b.to.minus(b.from)
}

func (b border) reversed() border {
	b.from, b.to, b.turn = b.to, b.from, -b.turn
	b.left, b.right = b.right, b.left
	if b.course != nil {
		b.course = &cubic{b.course[3], b.course[2], b.course[1], b.course[0]}
	}
	return b
}

func (b border) corner() Corner {
	c := Corner{At: b.from}
	switch {
	case b.course != nil:
		c.Bend = &Bend{b.course[1], b.course[2]}
	case b.radius > 0:
		c.Sweep = b.turn * b.sweep()
	}
	return c
}
