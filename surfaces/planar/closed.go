package planar

import "math"

// closed is one closed line that provably does not cross itself.
type closed struct {
	edges  []edge
	box    Box
	layer  int
	sense  float64 // +1 counter-clockwise, -1 clockwise
	convex bool
}

// What a line must keep, in figure sizes and radians, for the proofs below to
// hold in spite of rounding and of the distances at which vertices are joined,
// all of which are far smaller.
const (
	leastEdge   = 1e-4
	leastAngle  = 0.01
	leastApart  = 1e-6
	mostRadius  = 10
	mostSkipped = 1e-12 // of a turn the wrong way, by rounding
)

// closedOf proves that the edges of an outline make a line that does not cross
// itself. Two kinds of line are known not to:
//
//   - one that turns one way only, once round in all (convex);
//   - one of straight edges that goes once round a point inside, each edge the
//     same way (such as a star).
func closedOf(edges []edge) (closed, bool) {
	c := closed{edges: edges, box: edges[0].box, layer: edges[0].layer}
	total := 0.0
	for i := range edges {
		e, next := &edges[i], &edges[(i+1)%len(edges)]
		c.box = c.box.with(e.box)
		if e.course != nil || e.radius > mostRadius || e.to != next.from || e.to.within(e.from, leastEdge) {
			return c, false
		}
		turn := bendBetween(e.ending(), next.beginning())
		if math.Abs(turn) > math.Pi-leastAngle {
			return c, false
		}
		total += turn + e.turns()
	}
	c.sense = math.Copysign(1, total)
	if math.Abs(math.Abs(total)-2*math.Pi) > 1e-6 {
		return c, false
	}
	c.convex = c.turnsOneWay()
	return c, c.convex || c.goesRound(c.box.Min.plus(c.box.Max).times(0.5)) || c.goesRound(c.mean())
}

func (c *closed) turnsOneWay() bool {
	for i := range c.edges {
		e, next := &c.edges[i], &c.edges[(i+1)%len(c.edges)]
		if e.turn*c.sense < 0 || bendBetween(e.ending(), next.beginning())*c.sense < -mostSkipped {
			return false
		}
	}
	return true
}

// goesRound says whether every edge is straight and goes round a point the same
// way, by more than a thousandth of a turn and not too near.
func (c *closed) goesRound(p Point) bool {
	const least = 1e-3
	total := 0.0
	for i := range c.edges {
		e := &c.edges[i]
		from, to := e.from.minus(p), e.to.minus(p)
		area := from.cross(to) * c.sense
		angle := math.Atan2(area, from.dot(to))
		if e.radius > 0 || angle < least || angle > math.Pi-least || area < least*e.to.minus(e.from).length() {
			return false
		}
		total += angle
	}
	return math.Abs(total-2*math.Pi) < 1e-6
}

// mean is the mean of the corners.
func (c *closed) mean() Point {
	var sum Point
	for i := range c.edges {
		sum = sum.plus(c.edges[i].from)
	}
	return sum.times(1 / float64(len(c.edges)))
}

// apart says whether two lines lie apart by their boxes.
func (c *closed) apart(d *closed) bool { return !c.box.meets(d.box, leastApart) }

// holds says whether all of another line provably lies inside. A convex line
// holds what, for each of its edges, is on the inner side of the edge's chord or
// in the edge's circle; both are convex, so that they hold an edge when they
// hold the corners of its box.
func (c *closed) holds(d *closed) bool {
	if !c.convex || d.box.Min.X < c.box.Min.X || d.box.Min.Y < c.box.Min.Y || d.box.Max.X > c.box.Max.X || d.box.Max.Y > c.box.Max.Y {
		return false
	}
	for i := range c.edges {
		for k := range d.edges {
			if !c.edges[i].keeps(&d.edges[k], c.sense) {
				return false
			}
		}
	}
	return true
}

// keeps says whether f lies on the inner side of an edge of a convex line.
func (e *edge) keeps(f *edge, sense float64) bool {
	points := [4]Point{f.from, f.to, {f.box.Min.X, f.box.Max.Y}, {f.box.Max.X, f.box.Min.Y}}
	corners := points[:2]
	if f.radius > 0 {
		points[0], points[1] = f.box.Min, f.box.Max
		corners = points[:]
	}
	along := e.to.minus(e.from)
	far := leastApart * along.length()
	beside := true
	for _, p := range corners {
		beside = beside && along.cross(p.minus(e.from))*sense > far
	}
	if beside {
		return true
	}
	if e.radius == 0 {
		return f.radius > 0 && along.cross(f.centre.minus(e.from))*sense > (f.radius+leastApart)*along.length()
	}
	if f.radius > 0 && f.centre.minus(e.centre).length()+f.radius < e.radius-leastApart {
		return true
	}
	for _, p := range corners {
		if !p.within(e.centre, e.radius-leastApart) {
			return false
		}
	}
	return true
}

// beginning and ending are the directions of an edge at its ends, of any length.
func (e *edge) beginning() Point {
	if e.radius > 0 {
		return e.from.minus(e.centre).left().times(e.turn)
	}
	return e.to.minus(e.from)
}

func (e *edge) ending() Point {
	if e.radius > 0 {
		return e.to.minus(e.centre).left().times(e.turn)
	}
	return e.to.minus(e.from)
}

// turns is the angle through which an edge turns.
func (e *edge) turns() float64 {
	if e.radius == 0 {
		return 0
	}
	return bendBetween(e.beginning(), e.ending())
}

// bendBetween is the angle from one direction to another, from −π to π.
func bendBetween(a, b Point) float64 { return math.Atan2(a.cross(b), a.dot(b)) }
