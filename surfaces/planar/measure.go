package planar

import (
	"cmp"
	"math"
	"slices"
)

// border is a line or an arc of at most a quarter turn with one colour on its
// left and another on its right, by their numbers in the arrangement.
type border struct {
	from, to    Point
	radius      float64
	turn        float64
	left, right int
}

// sweep is the angle of the arc, without sign.
func (b border) sweep() float64 {
	return 2 * math.Asin(min(1, b.to.minus(b.from).length()/(2*b.radius)))
}

func (b border) length() float64 {
	if b.radius == 0 {
		return b.to.minus(b.from).length()
	}
	return b.radius * b.sweep()
}

// area is the border's part of the area to its left.
//
//	½ ∫ (x·dy − y·dx) = ½ · from × to  ±  ½ · r² · (sweep − sin sweep)
func (b border) area() float64 {
	chord := b.from.cross(b.to) / 2
	if b.radius == 0 {
		return chord
	}
	return chord + b.turn*b.radius*b.radius/2*lessSine(b.sweep())
}

// lessSine is x − sin x without the loss of digits near 0.
func lessSine(x float64) float64 {
	if x > 0.3 {
		return x - math.Sin(x)
	}
	s := x * x
	return x * s / 6 * (1 - s/20*(1-s/42*(1-s/72*(1-s/110))))
}

// Area is the part of the plane that shows one colour.
type Area struct {
	Colour string
	Area   float64
}

// Areas returns the area of each colour that shows, in the order in which the
// colours were first put down; the ground has none.
func (a *Arrangement) Areas() []Area {
	sums := make([]float64, len(a.colours))
	seen := make([]bool, len(a.colours))
	for _, b := range a.borders {
		part := b.area()
		sums[b.left] += part
		sums[b.right] -= part
		seen[b.left], seen[b.right] = true, true
	}
	var out []Area
	for i := 1; i < len(sums); i++ {
		if seen[i] {
			out = append(out, Area{a.colours[i], max(0, sums[i]) * a.frame.size * a.frame.size})
		}
	}
	return out
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
	for _, b := range a.borders {
		first, second := min(b.left, b.right), max(b.left, b.right)
		if first == 0 {
			first, second = second, first
		}
		sums[first*n+second] += b.length()
	}
	var out []Length
	for first := 1; first < n; first++ {
		for k := 1; k <= n; k++ {
			second := k % n // the ground after all others
			if sum := sums[first*n+second]; sum > 0 {
				out = append(out, Length{[2]string{a.colours[first], a.colours[second]}, sum * a.frame.size})
			}
		}
	}
	return out
}

// Box returns the smallest upright box about everything painted; the zero box
// if nothing shows.
func (a *Arrangement) Box() Box {
	box := Box{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
	for _, b := range a.borders {
		box = box.with(boxOf(b.from, b.to))
	}
	if len(a.borders) == 0 {
		return Box{}
	}
	return Box{a.frame.back(box.Min), a.frame.back(box.Max)}
}

// Piece is a piece of border: a line or an arc that sweeps Sweep radians, as
// in a Corner.
type Piece struct {
	From, To    Point
	Sweep       float64
	Left, Right string
}

// Pieces returns all pieces of border, in the order of their ends along x and
// then y. Each colour's pieces together close.
func (a *Arrangement) Pieces() []Piece {
	out := make([]Piece, len(a.borders))
	for i, b := range a.borders {
		out[i] = Piece{a.frame.back(b.from), a.frame.back(b.to), 0, a.colours[b.left], a.colours[b.right]}
		if b.radius > 0 {
			out[i].Sweep = b.turn * b.sweep()
		}
	}
	slices.SortStableFunc(out, func(p, q Piece) int {
		return cmp.Or(cmp.Compare(p.From.X, q.From.X), cmp.Compare(p.From.Y, q.From.Y), cmp.Compare(p.To.X, q.To.X), cmp.Compare(p.To.Y, q.To.Y))
	})
	return out
}
