package planar

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Corner is a point of an outline with the way on from there: Sweep is the
// angle through which the edge to the next corner turns, 0 for a straight
// line, positive for an arc that turns left and negative for one that turns
// right, above -2π and below 2π. With a Bend the edge is a Bézier curve and
// Sweep is 0.
type Corner struct {
	At    Point
	Sweep float64
	Bend  *Bend
}

// Outline is one closed curve; the last corner's edge leads back to the first.
type Outline []Corner

// Region is the set of points about which its outlines wind other than zero
// times.
type Region []Outline

// maxCoordinate keeps squares of coordinates far from the end of float64.
const maxCoordinate = 1e12

// ErrNotFinite is returned for coordinates that are no number or beyond 1e12.
var ErrNotFinite = errors.New("a coordinate is not a number or lies beyond 1e12")

// ErrTwoWays is returned for an edge that is an arc and a Bézier curve at once.
var ErrTwoWays = errors.New("an edge has both a sweep and a bend")

// valid says why an outline cannot be measured; nil if it can.
func (o Outline) valid() error {
	for i, c := range o {
		if !inReach(c.At) || !c.Bend.finite() {
			return fmt.Errorf("corner %d: %w", i, ErrNotFinite)
		}
		if !(math.Abs(c.Sweep) < 2*math.Pi) {
			return fmt.Errorf("corner %d: the edge sweeps %g rad; an edge sweeps less than a full turn, 2π", i, c.Sweep)
		}
		if c.Bend != nil && c.Sweep != 0 {
			return fmt.Errorf("corner %d: %w", i, ErrTwoWays)
		}
	}
	return nil
}

// Polygon is the outline with straight edges through the points.
func Polygon(points ...Point) Outline {
	o := make(Outline, len(points))
	for i, p := range points {
		o[i].At = p
	}
	return o
}

// Rectangle is the upright rectangle between two opposite corners,
// counter-clockwise.
func Rectangle(p, q Point) Outline {
	b := boxOf(p, q)
	return Polygon(b.Min, Point{b.Max.X, b.Min.Y}, b.Max, Point{b.Min.X, b.Max.Y})
}

// RoundedRectangle is Rectangle with corners of the given radius, from 0 to
// half the shorter side; a greater radius is taken as that half.
func RoundedRectangle(p, q Point, radius float64) Outline {
	b := boxOf(p, q)
	r := min(radius, b.Width()/2, b.Height()/2)
	if !(r > 0) {
		return Rectangle(p, q)
	}
	quarter := math.Pi / 2
	return Outline{
		{At: Point{b.Min.X + r, b.Min.Y}, Sweep: 0}, {At: Point{b.Max.X - r, b.Min.Y}, Sweep: quarter},
		{At: Point{b.Max.X, b.Min.Y + r}, Sweep: 0}, {At: Point{b.Max.X, b.Max.Y - r}, Sweep: quarter},
		{At: Point{b.Max.X - r, b.Max.Y}, Sweep: 0}, {At: Point{b.Min.X + r, b.Max.Y}, Sweep: quarter},
		{At: Point{b.Min.X, b.Max.Y - r}, Sweep: 0}, {At: Point{b.Min.X, b.Min.Y + r}, Sweep: quarter},
	}
}

// Circle is the full circle, counter-clockwise.
func Circle(centre Point, radius float64) Outline {
	return Outline{
		{At: Point{centre.X + radius, centre.Y}, Sweep: math.Pi},
		{At: Point{centre.X - radius, centre.Y}, Sweep: math.Pi},
	}
}

// Reversed is the same curve run the other way round: what cuts a hole.
func (o Outline) Reversed() Outline {
	n := len(o)
	back := make(Outline, n)
	for i := range o {
		back[i] = Corner{o[n-1-i].At, -o[(2*n-2-i)%n].Sweep, o[(2*n-2-i)%n].Bend.reversed()}
	}
	return back
}

// Join is the region of all the outlines of several regions.
func Join(regions ...Region) Region { return slices.Concat(regions...) }

// SignedArea is the area of an outline that does not cross itself, positive
// when it runs counter-clockwise.
//
//	½ Σ cross product of neighbouring corners + ½ Σ r²·(sweep − sin sweep)
//	  + Σ what the curves enclose with their chords
func (o Outline) SignedArea() float64 {
	sum := 0.0
	for i, c := range o {
		a, b := c.At.minus(o[0].At), o[(i+1)%len(o)].At.minus(o[0].At)
		sum += a.cross(b) / 2
		if c.Bend != nil {
			sum += (&cubic{c.At, c.Bend.First, c.Bend.Second, o[(i+1)%len(o)].At}).enclosed()
		}
		if half := c.Sweep / 2; half != 0 {
			r := b.minus(a).length() / (2 * math.Sin(half))
			sum += r * r / 2 * math.Copysign(lessSine(math.Abs(c.Sweep)), c.Sweep)
		}
	}
	return sum
}
