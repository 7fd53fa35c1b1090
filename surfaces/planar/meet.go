package planar

import "math"

// meet appends to out the points where two edges cross inside both or touch as
// tangents. Shared ends and overlaps are not its business: the ends are
// vertices already, and every vertex cuts every edge that it lies on.
func meet(e, f *edge, out []Point) []Point {
	switch {
	case e.course != nil || f.course != nil:
		return meetCurves(e, f, out)
	case e.radius == 0 && f.radius == 0:
		return meetLines(e, f, out)
	case e.radius == 0:
		return meetLineArc(e, f, out)
	case f.radius == 0:
		return meetLineArc(f, e, out)
	}
	return meetArcs(e, f, out)
}

func meetLines(e, f *edge, out []Point) []Point {
	along, across := e.to.minus(e.from), f.to.minus(f.from)
	a, b := along.cross(f.from.minus(e.from)), along.cross(f.to.minus(e.from))
	c, d := across.cross(e.from.minus(f.from)), across.cross(e.to.minus(f.from))
	if !apart(a, b, along) || !apart(c, d, across) {
		return out
	}
	return append(out, e.from.plus(along.times(c/(c-d))))
}

// apart reports whether two points lie on opposite sides of a line, given their
// distances times the length of along. Points that both lie on the line to the
// tolerance do not count: where one line runs along another, rounding would
// put the crossing anywhere.
func apart(a, b float64, along Point) bool {
	if a > 0 == (b > 0) || a == 0 || b == 0 {
		return false
	}
	return max(math.Abs(a), math.Abs(b)) > tolerance*along.length()
}

func meetLineArc(line, arc *edge, out []Point) []Point {
	along := line.to.minus(line.from)
	length := along.length()
	if length <= tolerance {
		return out // too short for a direction; its ends are vertices
	}
	along = along.times(1 / length)
	foot := line.from.plus(along.times(along.dot(arc.centre.minus(line.from))))
	distance := foot.minus(arc.centre).length()
	if math.Abs(distance-arc.radius) <= tolerance {
		return keep(line, arc, foot, out)
	}
	if distance > arc.radius {
		return out
	}
	half := along.times(math.Sqrt((arc.radius - distance) * (arc.radius + distance)))
	out = keep(line, arc, foot.minus(half), out)
	return keep(line, arc, foot.plus(half), out)
}

func meetArcs(e, f *edge, out []Point) []Point {
	between := f.centre.minus(e.centre)
	distance := between.length()
	if distance <= tolerance {
		return out // one circle, or two that never meet
	}
	between = between.times(1 / distance)
	// The common chord crosses the line of centres at reach from e's centre.
	reach := (distance + (e.radius-f.radius)*(e.radius+f.radius)/distance) / 2
	outer, inner := distance-(e.radius+f.radius), math.Abs(e.radius-f.radius)-distance
	if math.Abs(outer) <= tolerance || math.Abs(inner) <= tolerance {
		return keep(e, f, e.centre.plus(between.times(math.Copysign(e.radius, reach))), out)
	}
	if outer > 0 || inner > 0 {
		return out
	}
	middle := e.centre.plus(between.times(reach))
	half := between.left().times(math.Sqrt(max(0, (e.radius-reach)*(e.radius+reach))))
	out = keep(e, f, middle.minus(half), out)
	return keep(e, f, middle.plus(half), out)
}

// keep appends a point of both curves if it lies on both edges. An arc fills
// no more than a quadrant, so its box tells.
func keep(e, f *edge, p Point, out []Point) []Point {
	if e.box.holds(p, tolerance) && f.box.holds(p, tolerance) {
		return append(out, p)
	}
	return out
}
