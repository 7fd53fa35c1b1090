// Package planar measures figures drawn with straight lines, circular arcs and
// Bézier curves: the area of every colour one sees and the length of every border between two
// colours, exactly, where figures overlap, touch and hide each other.
//
// Nothing is drawn on a raster, and no arc and no curve is replaced by a polygon:
// areas and centroids have closed forms, lengths of curves are integrated to
// 1e-13 of themselves, and crossings are found to the tolerance below. Every edge
// is cut at every crossing, each piece is classed by the colour on its left
// and on its right, areas follow by Green's theorem and lengths by adding.
//
// Standing assumptions. The plane has x to the right and y up; angles are in
// radians, counter-clockwise positive; lengths are in one unit of the caller's
// choice, areas in its square. A region holds the points with a winding number
// other than zero (the nonzero rule), so outlines of the same sense unite and
// an outline of the opposite sense cuts a hole. Points nearer to each other
// than 2e-10 of half the figure's size count as one, and edges half as near as
// that as one edge; coordinates must therefore be good to that, which float64
// gives up to some 10,000 figure sizes away from the origin.
package planar

import "math"

// Point is a place in the plane, or the way between two.
type Point struct{ X, Y float64 }

func (p Point) plus(q Point) Point    { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point   { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point { return Point{p.X * k, p.Y * k} }
func (p Point) dot(q Point) float64   { return p.X*q.X + p.Y*q.Y }
func (p Point) cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }
func (p Point) left() Point           { return Point{-p.Y, p.X} } // a quarter turn counter-clockwise
func (p Point) length() float64       { return math.Hypot(p.X, p.Y) }
func (p Point) within(q Point, d float64) bool {
	dx, dy := p.X-q.X, p.Y-q.Y
	return dx*dx+dy*dy <= d*d
}

// Polar returns the point at radius and angle about centre.
func Polar(centre Point, radius, angle float64) Point {
	sin, cos := math.Sincos(angle)
	return Point{centre.X + radius*cos, centre.Y + radius*sin}
}

// Box is an upright rectangle.
type Box struct{ Min, Max Point }

// Width is the extent along x.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height is the extent along y.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// boxOf returns the box of two opposite corners in any order.
func boxOf(p, q Point) Box {
	return Box{Point{min(p.X, q.X), min(p.Y, q.Y)}, Point{max(p.X, q.X), max(p.Y, q.Y)}}
}

func (b Box) with(c Box) Box {
	return Box{
		Point{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)},
		Point{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)},
	}
}

// holds reports whether p lies in the box or within d of it.
func (b Box) holds(p Point, d float64) bool {
	return p.X >= b.Min.X-d && p.X <= b.Max.X+d && p.Y >= b.Min.Y-d && p.Y <= b.Max.Y+d
}

// meets reports whether two boxes come within d of each other.
func (b Box) meets(c Box, d float64) bool {
	return b.Min.X <= c.Max.X+d && c.Min.X <= b.Max.X+d && b.Min.Y <= c.Max.Y+d && c.Min.Y <= b.Max.Y+d
}
