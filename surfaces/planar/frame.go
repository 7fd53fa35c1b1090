package planar

import "math"

// frame is the place and size of a figure. Inside it the figure lies about the
// origin and reaches no farther than 1, so that one tolerance fits all sizes
// and areas do not suffer from a far origin.
type frame struct {
	origin Point
	size   float64 // a power of two, so that scaling rounds nothing
}

// frameOf returns the frame about all corners and control points. An arc may reach beyond it.
func frameOf(layers []Layer) frame {
	box := nowhere()
	for _, l := range layers {
		for _, o := range l.Outline {
			for _, c := range o {
				box = box.with(Box{c.At, c.At})
				if c.Bend != nil {
					box = box.with(boxOf(c.Bend.First, c.Bend.Second))
				}
			}
		}
	}
	reach := max(box.Width(), box.Height()) / 2
	if !(reach > 0) {
		return frame{size: 1}
	}
	_, exponent := math.Frexp(reach)
	return frame{box.Min.plus(box.Max).times(0.5), math.Ldexp(1, exponent)}
}

func (f frame) point(p Point) Point { return p.minus(f.origin).times(1 / f.size) }
func (f frame) back(p Point) Point  { return p.times(f.size).plus(f.origin) }
