package planar

import (
	"cmp"
	"math"
	"slices"
)

// Area is the part of the plane that shows one colour.
type Area struct {
	Colour string
	Area   float64
	Centre Point // its centroid
}

// Areas returns the area of each colour that shows, with its centroid, in the
// order in which the colours were first put down; the ground has none.
func (a *Arrangement) Areas() []Area {
	sums := make([]float64, len(a.colours))
	moments := make([]Point, len(a.colours)) // first moments
	seen := make([]bool, len(a.colours))
	for i := range a.parts {
		a.parts[i].addAreas(sums, moments, seen)
	}
	out := make([]Area, 0, len(sums))
	for i := 1; i < len(sums); i++ {
		if seen[i] {
			one := Area{Colour: a.colours[i], Area: max(0, sums[i])}
			if one.Area > 0 {
				one.Centre = moments[i].times(1 / sums[i])
			}
			out = append(out, one)
		}
	}
	return out
}

// addAreas adds those of every copy to the sums of the arrangement.
func (p *part) addAreas(sums []float64, moments []Point, seen []bool) {
	areas, firsts := make([]float64, len(p.colours)), make([]Point, len(p.colours))
	for _, b := range p.borders {
		area, first := b.area(), b.moment()
		areas[b.left] += area
		areas[b.right] -= area
		firsts[b.left] = firsts[b.left].plus(first)
		firsts[b.right] = firsts[b.right].minus(first)
		seen[p.colours[b.left]], seen[p.colours[b.right]] = true, true
	}
	var shift Point // of all copies together
	for _, at := range p.at {
		shift = shift.plus(at)
	}
	n, size := float64(len(p.at)), p.frame.size
	for k, colour := range p.colours {
		area := areas[k] * size * size
		sums[colour] += n * area
		first := firsts[k].times(size * size * size).plus(p.frame.origin.times(area))
		moments[colour] = moments[colour].plus(first.times(n)).plus(shift.times(area))
	}
}

// Length is the length of all borders between two colours. Colour names the
// one put down first; the ground comes last.
type Length struct {
	Between [2]string
	Length  float64
}

// Lengths returns the length of border for each pair of colours that touch, in
// the order in which the colours were put down.
func (a *Arrangement) Lengths() []Length {
	n := len(a.colours)
	sums := make([]float64, n*n)
	for _, p := range a.parts {
		for _, b := range p.borders {
			first, second := p.colours[b.left], p.colours[b.right]
			first, second = min(first, second), max(first, second)
			if first == 0 {
				first, second = second, first
			}
			sums[first*n+second] += b.length() * p.frame.size * float64(len(p.at))
		}
	}
	out := make([]Length, 0, n*(n-1)/2)
	for first := 1; first < n; first++ {
		for k := 1; k <= n; k++ {
			second := k % n // the ground after all others
			if sum := sums[first*n+second]; sum > 0 {
				out = append(out, Length{[2]string{a.colours[first], a.colours[second]}, sum})
			}
		}
	}
	return out
}

// Box returns the smallest upright box about everything painted; the zero box
// if nothing shows.
func (a *Arrangement) Box() Box {
	box, empty := nowhere(), true
	for _, p := range a.parts {
		own := nowhere()
		for _, b := range p.borders {
			own = own.with(boxOf(b.from, b.to))
		}
		for _, at := range p.at {
			if len(p.borders) > 0 {
				empty = false
				box = box.with(Box{p.frame.back(own.Min).plus(at), p.frame.back(own.Max).plus(at)})
			}
		}
	}
	if empty {
		return Box{}
	}
	return box
}

// Piece is a piece of border: a line, an arc that sweeps Sweep radians or a
// Bézier curve, as in a Corner.
type Piece struct {
	From, To    Point
	Sweep       float64
	Bend        *Bend
	Left, Right string
}

// Pieces returns all pieces of border, in the order of their ends along x and
// then y. Each colour's pieces together close.
func (a *Arrangement) Pieces() []Piece {
	var out []Piece
	for i := range a.parts {
		p := &a.parts[i]
		for _, at := range p.at {
			for _, b := range p.borders {
				out = append(out, Piece{p.placed(b.from, at), p.placed(b.to, at), 0, nil, a.colours[p.colours[b.left]], a.colours[p.colours[b.right]]})
				last := &out[len(out)-1]
				switch {
				case b.course != nil:
					last.Bend = &Bend{p.placed(b.course[1], at), p.placed(b.course[2], at)}
				case b.radius > 0:
					last.Sweep = b.turn * b.sweep()
				}
			}
		}
	}
	slices.SortStableFunc(out, func(p, q Piece) int {
		return cmp.Or(cmp.Compare(p.From.X, q.From.X), cmp.Compare(p.From.Y, q.From.Y), cmp.Compare(p.To.X, q.To.X), cmp.Compare(p.To.Y, q.To.Y))
	})
	return out
}

// placed is where a point of the part's frame lies in the copy shifted by at.
func (p *part) placed(q, at Point) Point { return p.frame.back(q).plus(at) }

// nowhere is the box that any other box extends.
func nowhere() Box {
	return Box{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
}
