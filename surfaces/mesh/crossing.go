package mesh

import "math"

// crossingCorners is the number of corners up to which every pair of edges of
// a concave facet is compared; the work grows with the square. Larger ones are
// judged by their number of turns alone.
const crossingCorners = 100

// outlineCrosses says whether two edges of a facet cross each other, seen
// against its normal. Edges that only touch do not cross.
func outlineCrosses(corners []Point, normal Point) bool {
	n := len(corners)
	if n > crossingCorners {
		return false
	}
	x, y := flatAxes(normal)
	flat := make([][2]float64, n)
	for i, c := range corners {
		d := c.minus(corners[0])
		flat[i] = [2]float64{d[x], d[y]}
	}
	for i := range n {
		for j := i + 2; j < n; j++ {
			if properCrossing(flat[i], flat[(i+1)%n], flat[j], flat[(j+1)%n]) {
				return true
			}
		}
	}
	return false
}

// flatAxes returns the two axes that remain when the one nearest to the normal
// is left out.
func flatAxes(normal Point) (x, y int) {
	leave := 0
	for k := range normal {
		if math.Abs(normal[k]) > math.Abs(normal[leave]) {
			leave = k
		}
	}
	return (leave + 1) % 3, (leave + 2) % 3
}

func properCrossing(a, b, c, d [2]float64) bool {
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// side returns 1, -1 or 0 for a point left of, right of or on a line.
func side(a, b, p [2]float64) float64 {
	v := (b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0])
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}
