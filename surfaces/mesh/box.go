package mesh

import "math"

// Box is the smallest box, parallel to the axes, around a mesh.
type Box struct {
	Low  Point `json:"low_m"`
	High Point `json:"high_m"`
}

// emptyBox is the start of a box to which points are added.
func emptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf, inf}, Point{-inf, -inf, -inf}}
}

func (b *Box) add(p Point) {
	for k, v := range p {
		b.Low[k], b.High[k] = min(b.Low[k], v), max(b.High[k], v)
	}
}

func (b *Box) join(c Box) {
	for k := range b.Low {
		b.Low[k], b.High[k] = min(b.Low[k], c.Low[k]), max(b.High[k], c.High[k])
	}
}

// Size returns length along x, y and z.
func (b Box) Size() Point { return b.High.minus(b.Low) }

// Largest returns the largest of the three sizes.
func (b Box) Largest() float64 {
	s := b.Size()
	return max(s[0], s[1], s[2])
}

// farthest returns the largest coordinate, without its sign.
func (b Box) farthest() float64 {
	far := 0.0
	for k := range b.Low {
		far = max(far, math.Abs(b.Low[k]), math.Abs(b.High[k]))
	}
	return far
}

func (b Box) scaled(f float64) Box { return Box{b.Low.times(f), b.High.times(f)} }
