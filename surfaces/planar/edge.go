package planar

import (
	"errors"
	"fmt"
	"math"
)

// tolerance is the distance, as a part of the figure's size, under which two
// points are one: far above the rounding of float64 and far below what a brush
// or a knife can follow.
const tolerance = 1e-10

// edge is a straight line, an arc inside one quadrant of its circle or a part of
// a Bézier curve cut the same way, so that both coordinates only rise or only
// fall along it and its box is that of its ends.
type edge struct {
	from, to Point
	box      Box
	centre   Point
	radius   float64 // 0 for a straight line
	turn     float64 // +1 for an arc to the left, -1 to the right, 0 straight
	course   *cubic  // of a curve, nil for lines and arcs
	begin    float64 // parameters of the curve at its ends, in either order
	end      float64
	cutFrom  bool // the end is no corner of the outline but a cut at an extreme
	cutTo    bool
	layer    int
	outline  int // outline and corner it came from
	corner   int
}

// flattest is the greatest radius of an arc, in figure sizes: beyond it the
// rounding of the far centre comes near to the tolerance.
const flattest = 1e5

// ErrFlatArc is returned for an arc whose radius is more than 100,000 times
// the size of the figure: draw it as a straight line.
var ErrFlatArc = errors.New("an arc is flatter than a radius of 100,000 times the figure's size")

// edgesOf appends the edges of the outline, seen in the frame, to out: arcs cut
// at the four extremes of their circles, curves where they turn back. Corners that coincide make none, and
// an arc whose rise is below the tolerance is a straight line.
func edgesOf(o Outline, in frame, layer, number int, out []edge) ([]edge, error) {
	for i, c := range o {
		e := edge{from: in.point(c.At), to: in.point(o[(i+1)%len(o)].At), layer: layer, outline: number, corner: i}
		if c.Bend != nil {
			out = bends(e, &cubic{e.from, in.point(c.Bend.First), in.point(c.Bend.Second), e.to}, out)
			continue
		}
		chord := e.to.minus(e.from).length()
		if chord == 0 {
			continue
		}
		if rise := chord / 2 * math.Abs(math.Tan(c.Sweep/4)); rise < tolerance {
			out = append(out, e.boxed())
			continue
		}
		if chord > 2*flattest*math.Abs(math.Sin(c.Sweep/2)) && math.Abs(c.Sweep) < math.Pi {
			return nil, fmt.Errorf("corner %d: %w", i, ErrFlatArc)
		}
		out = quadrants(e, c.Sweep, out)
	}
	return out, nil
}

func (e edge) boxed() edge {
	e.box = boxOf(e.from, e.to)
	return e
}

// quadrants cuts an arc at the extremes of its circle.
//
//	r = chord / (2·sin(|sweep|/2)),  centre = middle of chord + left normal · chord / (2·tan(sweep/2))
func quadrants(e edge, sweep float64, out []edge) []edge {
	chord := e.to.minus(e.from)
	half := sweep / 2
	e.centre = e.from.plus(e.to).times(0.5).plus(chord.left().times(0.5 / math.Tan(half)))
	e.radius = chord.length() / (2 * math.Abs(math.Sin(half)))
	e.turn = math.Copysign(1, sweep)

	const quarter = math.Pi / 2
	start := e.from.minus(e.centre)
	angle := math.Atan2(start.Y, start.X)
	least := tolerance // an extreme this near to an end is that end
	end := e.to
	// k counts the extremes in the order in which the arc meets them.
	k := math.Ceil(angle / quarter)
	if e.turn < 0 {
		k = math.Floor(angle / quarter)
	}
	for ; ; k += e.turn {
		gone := (k*quarter - angle) * e.turn
		if gone >= math.Abs(sweep)-least {
			break
		}
		if gone <= least {
			continue
		}
		e.to, e.cutTo = e.extreme(int(k)), true
		out = append(out, e.boxed())
		e.from, e.cutFrom = e.to, true
	}
	e.to, e.cutTo = end, false
	return append(out, e.boxed())
}

// extreme is the point of the circle at k quarter turns.
func (e edge) extreme(k int) Point {
	switch ((k % 4) + 4) % 4 {
	case 0:
		return Point{e.centre.X + e.radius, e.centre.Y}
	case 1:
		return Point{e.centre.X, e.centre.Y + e.radius}
	case 2:
		return Point{e.centre.X - e.radius, e.centre.Y}
	}
	return Point{e.centre.X, e.centre.Y - e.radius}
}

// near reports whether p lies within d of the edge.
func (e *edge) near(p Point, d float64) bool {
	return e.box.holds(p, d) && e.off(p) <= d
}

// off is the distance of a point beside the edge from its line, circle or curve.
func (e *edge) off(p Point) float64 {
	if e.course != nil {
		return e.course.at(e.parameter(p)).minus(p).length()
	}
	if e.radius > 0 {
		return math.Abs(p.minus(e.centre).length() - e.radius)
	}
	along, out := e.to.minus(e.from), p.minus(e.from)
	if length := along.length(); length > tolerance {
		return math.Abs(along.cross(out)) / length
	}
	return out.length()
}

// middle is the point of the edge halfway between two of its points.
func (e *edge) middle(p, q Point) Point {
	half := p.plus(q).times(0.5)
	if e.course != nil {
		along := q.minus(p)
		return e.course.at(e.course.level(along, along.dot(half), e.begin, e.end))
	}
	if e.radius == 0 {
		return half
	}
	out := half.minus(e.centre) // never zero: the edge spans a quadrant at most
	return e.centre.plus(out.times(e.radius / out.length()))
}

// between is the edge from p to q along e, both at most some tolerances off it.
// The circle of an arc is found anew, and a curve is bent, so that p and q lie
// on it.
func (e *edge) between(p, q Point) edge {
	part := *e
	part.from, part.to = p, q
	if e.course != nil {
		part.course, part.begin, part.end = e.course.part(e.parameter(p), e.parameter(q), p, q), 0, 1
		return part.boxed()
	}
	if chord := q.minus(p); e.radius > 0 && (p != e.from || q != e.to) {
		half := math.Asin(min(1, chord.length()/(2*e.radius)))
		part.centre = p.plus(q).times(0.5).plus(chord.left().times(e.turn * 0.5 / math.Tan(half)))
		part.radius = p.minus(part.centre).length()
	}
	return part.boxed()
}

// reversed is the edge run the other way.
func (e edge) reversed() edge {
	e.from, e.to = e.to, e.from
	e.cutFrom, e.cutTo = e.cutTo, e.cutFrom
	e.turn = -e.turn
	e.begin, e.end = e.end, e.begin
	return e
}
