package surfaces

import "math"

// figure is a flat shape with straight sides and round arcs, exactly: all
// points within radius of a polygon. A circle is a point with a radius, a
// rectangle with rounded corners is a smaller rectangle with a radius, and a
// polygon has the radius 0. Only points and rectangles have a radius.
type figure struct {
	core   polygon
	radius float64
}

func circle(x, y, radius float64) figure {
	return figure{polygon{{x, y}}, radius}
}

// roundedRectangle is centred on x, y; the corner radius is at most half of
// the smaller side.
func roundedRectangle(x, y, width, height, corner float64) figure {
	w, h := width/2-corner, height/2-corner
	return figure{polygon{{x - w, y - h}, {x + w, y - h}, {x + w, y + h}, {x - w, y + h}}, corner}
}

// area of the core, of a strip along its sides, and of the corners' arcs,
// which make one whole circle.
func (f figure) area() float64 {
	return math.Abs(f.core.signedArea()) + f.core.perimeter()*f.radius + math.Pi*f.radius*f.radius
}

func (f figure) perimeter() float64 {
	return f.core.perimeter() + 2*math.Pi*f.radius
}

// bounds returns the corners of the box around the figure.
func (f figure) bounds() (low, high [2]float64) {
	low, high = f.core[0], f.core[0]
	for _, q := range f.core {
		for k := range q {
			low[k], high[k] = min(low[k], q[k]), max(high[k], q[k])
		}
	}
	for k := range low {
		low[k], high[k] = low[k]-f.radius, high[k]+f.radius
	}
	return low, high
}

// meets says whether two figures overlap or touch.
func (f figure) meets(g figure) bool {
	lowF, highF := f.bounds()
	lowG, highG := g.bounds()
	for k := range lowF {
		if lowF[k] > highG[k]+touch || lowG[k] > highF[k]+touch {
			return false
		}
	}
	return f.core.gap(g.core) <= f.radius+g.radius+touch ||
		f.core.contains(g.core[0]) || g.core.contains(f.core[0])
}

// within says whether a figure lies inside another and does not touch its
// outline.
func (f figure) within(outer figure) bool {
	if outer.radius > 0 || outer.isRectangle() {
		low, high := outer.core.box()
		for _, q := range f.core {
			if beyondBox(q, low, high) >= outer.radius-f.radius-touch {
				return false
			}
		}
		return true
	}
	return outer.core.contains(f.core[0]) && outer.core.gap(f.core) > f.radius+touch
}

// isRectangle says whether the core is a rectangle with level sides, drawn
// from its lower left corner as roundedRectangle does.
func (f figure) isRectangle() bool {
	c := f.core
	return len(c) == 4 && c[0][1] == c[1][1] && c[1][0] == c[2][0] && c[2][1] == c[3][1] && c[3][0] == c[0][0]
}

func (p polygon) box() (low, high [2]float64) { return figure{core: p}.bounds() }

// beyondBox returns the distance of q from a box, negative inside it. A convex
// figure lies within a box grown by r exactly when all its corners do, and the
// level lines of this distance are the outlines of that box grown or shrunk.
func beyondBox(q, low, high [2]float64) float64 {
	dx := max(low[0]-q[0], q[0]-high[0])
	dy := max(low[1]-q[1], q[1]-high[1])
	return math.Hypot(max(dx, 0), max(dy, 0)) + min(max(dx, dy), 0)
}
