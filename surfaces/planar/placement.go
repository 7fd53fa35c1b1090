package planar

import "math"

// Placement moves figures without changing their proportions. The steps apply
// in the order of the fields. The zero value shrinks everything to a point:
// start from Unmoved.
type Placement struct {
	Mirror bool    // swap left and right, about the y axis
	Scale  float64 // above 0
	Turn   float64 // counter-clockwise, radians
	Shift  Point
}

// Unmoved leaves figures where they are.
var Unmoved = Placement{Scale: 1}

// Point returns where p goes.
func (m Placement) Point(p Point) Point {
	if m.Mirror {
		p.X = -p.X
	}
	sin, cos := math.Sincos(m.Turn)
	p = p.times(m.Scale)
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}.plus(m.Shift)
}

// Outline returns the moved outline, in the same sense of rotation also when
// mirrored, so that regions keep their holes.
func (m Placement) Outline(o Outline) Outline {
	moved := make(Outline, len(o))
	for i, c := range o {
		moved[i] = Corner{m.Point(c.At), c.Sweep, c.Bend.moved(m.Point)}
		if m.Mirror {
			moved[i].Sweep = -c.Sweep
		}
	}
	if m.Mirror {
		return moved.Reversed()
	}
	return moved
}

// Region returns the moved region.
func (m Placement) Region(r Region) Region {
	moved := make(Region, len(r))
	for i, o := range r {
		moved[i] = m.Outline(o)
	}
	return moved
}

// Layers returns the moved layers.
func (m Placement) Layers(layers []Layer) []Layer {
	moved := make([]Layer, len(layers))
	for i, l := range layers {
		moved[i] = Layer{l.Colour, m.Region(l.Outline)}
	}
	return moved
}
