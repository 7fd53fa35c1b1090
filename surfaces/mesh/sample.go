package mesh

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// spot is one point on a mesh at which both sides are looked at.
type spot struct {
	at      Point
	flat    [2]float64 // across the present line of sight
	along   float64    // down it
	above   int        // crossings ahead, each with the sign of the way it is passed
	below   int
	twice   [2]int // crossings ahead and behind, without sign
	verdict [numberOfSights]verdict
}

// verdict is what one line of sight says about a spot.
type verdict int

const (
	verdictSkin   verdict = iota // material on one side: a face of the part
	verdictInside                // on both: nobody can paint it
	verdictSheet                 // on neither: an open sheet
	verdictUnsure
)

// pickSpots draws points evenly over the area of a stored mesh, in an order
// that does not depend on where they lie. Facets with more than three corners
// are drawn from by the triangles from their first corner.
func pickSpots(s *store, number int, random *rand.Rand) []spot {
	sums := make([]float64, s.facets())
	var corners []Point
	var total sum
	for i := range sums {
		corners = s.places(i, corners)
		for k := 1; k+1 < len(corners); k++ {
			n := fanTriangle(corners, k)
			total.add(math.Sqrt(n.dot(n)))
		}
		sums[i] = total.value()
	}
	if total.value() == 0 {
		return nil
	}
	spots := make([]spot, number)
	for j := range spots {
		want := random.Float64() * total.value()
		i, _ := slices.BinarySearchFunc(sums, want, func(sum, want float64) int { return cmp.Compare(sum, want) })
		i = min(i, len(sums)-1)
		corners = s.places(i, corners)
		spots[j].at = pointOn(corners, random)
	}
	return spots
}

// pointOn draws a point evenly over the triangles from a facet's first corner.
func pointOn(corners []Point, random *rand.Rand) Point {
	areas := make([]float64, 0, 1)
	total := 0.0
	for k := 1; k+1 < len(corners); k++ {
		n := fanTriangle(corners, k)
		total += math.Sqrt(n.dot(n))
		areas = append(areas, total)
	}
	want, k := random.Float64()*total, 0
	for k+1 < len(areas) && areas[k] < want {
		k++
	}
	u, v := random.Float64(), random.Float64()
	if u+v > 1 {
		u, v = 1-u, 1-v // folded back into the triangle
	}
	a := corners[0]
	return a.plus(corners[k+1].minus(a).times(u)).plus(corners[k+2].minus(a).times(v))
}

// newRandom returns the generator of a seed: the same everywhere.
func newRandom(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 0x6d657368)) }

// randomSight draws a direction evenly over the sphere, with two directions
// across it.
func randomSight(random *rand.Rand) (along, right, up Point) {
	z := 2*random.Float64() - 1
	turn := 2 * math.Pi * random.Float64()
	r := math.Sqrt(1 - z*z)
	along = Point{r * math.Cos(turn), r * math.Sin(turn), z}
	least := 0
	for k := range along {
		if math.Abs(along[k]) < math.Abs(along[least]) {
			least = k
		}
	}
	var axis Point
	axis[least] = 1
	right = along.cross(axis)
	right = right.times(1 / math.Sqrt(right.dot(right)))
	return along, right, along.cross(right)
}
