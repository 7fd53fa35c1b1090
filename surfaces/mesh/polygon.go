package mesh

import "math"

// The forms a facet of more than three corners may have.
const (
	formConvex   = iota // flat and convex, or a triangle
	formConcave         // flat, with an inward corner
	formWarped          // its corners do not lie in one plane
	formCrossing        // its outline crosses or repeats itself
)

// warpTolerance is the relative difference between the two ways of measuring a
// facet above which it counts as warped; it corresponds to corners about a
// thousandth of the facet's size out of plane, whose effect on the area is the
// square of that. Our own choice.
const warpTolerance = 1e-6

// polygon is the measure of one facet.
type polygon struct {
	vector Point // twice the area, along the normal: Newell's vector
	area   float64
	form   int
}

// measurePolygon returns the area of a facet of three corners or more.
//
//	triangle  ½·|(b−a)×(c−a)|
//	flat      ½·|Σ (pᵢ−p₀)×(pᵢ₊₁−p₀)|, Newell's vector: right for concave outlines too
//	warped    Σ ±½·|(pᵢ−p₀)×(pᵢ₊₁−p₀)|, each triangle's sign that against Newell's vector
//
// A warped facet has no area of its own, since its surface is not given: the
// triangles from its first corner are one surface that fits it. Newell's
// vector is the least any such surface can have. Of an outline that crosses
// itself, all triangles are added.
func measurePolygon(corners []Point) polygon {
	if len(corners) == 3 {
		n := corners[1].minus(corners[0]).cross(corners[2].minus(corners[0]))
		return polygon{vector: n, area: math.Sqrt(n.dot(n)) / 2}
	}
	var p polygon
	for i := 1; i+1 < len(corners); i++ {
		p.vector = p.vector.plus(fanTriangle(corners, i))
	}
	length := math.Sqrt(p.vector.dot(p.vector))
	p.area = length / 2
	fan := sum{}
	for i := 1; i+1 < len(corners); i++ {
		n := fanTriangle(corners, i)
		fan.add(math.Copysign(math.Sqrt(n.dot(n))/2, n.dot(p.vector)))
	}
	if f := fan.value(); math.Abs(f-p.area) > warpTolerance*math.Max(f, p.area) {
		p.area, p.form = math.Max(f, p.area), formWarped
	}
	if turns, inward := outlineTurns(corners, p.vector); turns != 1 || (inward && outlineCrosses(corners, p.vector)) {
		p.area, p.form = fanArea(corners), formCrossing
	} else if inward && p.form == formConvex {
		p.form = formConcave
	}
	return p
}

// fanArea adds the triangles from the first corner without regard to sign: of
// an outline that crosses itself, the most that can be meant.
func fanArea(corners []Point) float64 {
	fan := sum{}
	for i := 1; i+1 < len(corners); i++ {
		n := fanTriangle(corners, i)
		fan.add(math.Sqrt(n.dot(n)) / 2)
	}
	return fan.value()
}

func fanTriangle(corners []Point, i int) Point {
	return corners[i].minus(corners[0]).cross(corners[i+1].minus(corners[0]))
}

// outlineTurns walks round a facet, seen against its normal: how many whole
// turns that makes (1 for an outline that does not cross itself), and whether
// any corner turns inward. A facet without area makes one turn.
func outlineTurns(corners []Point, normal Point) (turns int, inward bool) {
	length := math.Sqrt(normal.dot(normal))
	edges := make([]Point, 0, 8)
	longest := 0.0
	for i, c := range corners {
		if e := corners[(i+1)%len(corners)].minus(c); e != (Point{}) {
			edges = append(edges, e)
			longest = max(longest, e.dot(e))
		}
	}
	if length <= 1e-12*longest {
		if collinear(edges, longest) {
			return 1, false
		}
		return 0, true
	}
	angle := 0.0
	for i, e := range edges {
		next := edges[(i+1)%len(edges)]
		across := e.cross(next).dot(normal) / length
		if across < -1e-9*longest {
			inward = true
		}
		angle += math.Atan2(across, e.dot(next))
	}
	return int(math.Round(angle / (2 * math.Pi))), inward
}

// collinear says whether all edges of a facet without area lie along one line:
// otherwise parts of it cancel, as in a figure of eight.
func collinear(edges []Point, longest float64) bool {
	for i := 1; i < len(edges); i++ {
		if n := edges[0].cross(edges[i]); math.Sqrt(n.dot(n)) > 1e-9*longest {
			return false
		}
	}
	return true
}
