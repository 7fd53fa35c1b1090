package surfaces

import (
	"fmt"
	"math"
)

// Bounds of an outline: what a person would tape, and what can be checked for
// crossings in a moment.
const (
	maxCorners    = 500
	maxHoles      = 500
	maxCoordinate = 500 // m
)

// corners drops a last corner that repeats the first: an outline may be closed
// by hand.
func corners(outline [][2]float64) line {
	last := len(outline) - 1
	if last > 2 && math.Hypot(outline[0][0]-outline[last][0], outline[0][1]-outline[last][1]) <= touch {
		outline = outline[:last]
	}
	return outline
}

// checkOutline reports what is wrong with a straight-sided outline and says
// whether it encloses one area.
func checkOutline(at string, outline [][2]float64, report reporter) bool {
	if len(outline) > maxCorners+1 {
		report(at, "too_many", fmt.Sprintf("the outline has %d corners; at most %d are taken", len(outline), maxCorners))
		return false
	}
	if !checkCoordinates(at, outline, [2]string{"x", "y"}, report) {
		return false
	}
	p := corners(outline)
	if len(p) < 3 {
		report(at, "required", fmt.Sprintf("the outline has %d corners; give three or more", len(p)))
		return false
	}
	if i, j, found := p.crossing(true); found {
		report(at, "self_crossing", crossingDetail(i, j))
		return false
	}
	return true
}

// checkCoordinates reports coordinates that are no numbers or out of reach.
func checkCoordinates(at string, points [][2]float64, axes [2]string, report reporter) bool {
	clean := true
	for i, p := range points {
		for k, axis := range axes {
			if !(math.Abs(p[k]) <= maxCoordinate) { // NaN fails too
				clean = false
				report(fmt.Sprintf("%s/%d/%d", at, i, k), "out_of_range", fmt.Sprintf(
					"%s is %s; it must be at least %d m and at most %d m", axis, metres(p[k]), -maxCoordinate, maxCoordinate))
			}
		}
	}
	return clean
}

// crossingDetail says what is wrong with the sides that crossing found.
func crossingDetail(i, j int) string {
	if i == j {
		return fmt.Sprintf("point %d is given twice in a row; leave one out", i)
	}
	return fmt.Sprintf("the sides from point %d and from point %d cross or touch; list the points in order along the line", i, j)
}
