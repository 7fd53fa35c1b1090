package mesh

import "math"

// smoothDeg is the angle between two facets up to which they are taken for
// pieces of one curved surface, and above which their edge for a true corner.
// It is that of 12 facets a turn with room for rounding; common practice.
const smoothDeg = 31

// curveNeighbours bounds how many facets about a vertex are looked at; no
// ordinary mesh has more than a few dozen.
const curveNeighbours = 64

// curve estimates by how much the area of the curved surface that a mesh
// stands for exceeds that of its facets. It takes the surface's normal at a
// corner to be the mean of the normals of the facets there that are smooth
// with the present one, weighted by their angles.
type curve struct {
	store   *store
	normals [][3]float32 // of facets, length 1, or 0
	angles  []float32    // of corners
	starts  []uint32     // of each vertex, in around
	around  []uint32     // corners, by vertex
	owner   []uint32     // facet of each corner
}

func newCurve(s *store) *curve {
	c := &curve{
		store: s, normals: make([][3]float32, s.facets()), angles: make([]float32, len(s.corners)),
		starts: make([]uint32, len(s.points)+1), around: make([]uint32, len(s.corners)), owner: make([]uint32, len(s.corners)),
	}
	var corners []Point
	k := 0
	for i := range s.facets() {
		corners = s.places(i, corners)
		n := unit3(measurePolygon(corners).vector)
		c.normals[i] = [3]float32{float32(n[0]), float32(n[1]), float32(n[2])}
		for j, p := range corners {
			u := corners[(j+1)%len(corners)].minus(p)
			v := corners[(j+len(corners)-1)%len(corners)].minus(p)
			x := u.cross(v)
			c.angles[k] = float32(math.Atan2(math.Sqrt(x.dot(x)), u.dot(v)))
			c.owner[k] = uint32(i)
			c.starts[s.corners[k]+1]++
			k++
		}
	}
	for v := range s.points {
		c.starts[v+1] += c.starts[v]
	}
	next := append([]uint32(nil), c.starts...)
	for k, v := range s.corners {
		c.around[next[v]] = uint32(k)
		next[v]++
	}
	return c
}

func unit3(p Point) Point {
	if length := math.Sqrt(p.dot(p)); length > 0 {
		return p.times(1 / length)
	}
	return Point{}
}

func (c *curve) normal(facet uint32) Point {
	n := c.normals[facet]
	return Point{float64(n[0]), float64(n[1]), float64(n[2])}
}

// slope is how the curved surface stands off a facet at one of its vertices:
// the part of its normal that lies in the facet.
func (c *curve) slope(n Point, vertex uint32) Point {
	least := math.Cos(smoothDeg * math.Pi / 180)
	var mean Point
	around := c.around[c.starts[vertex]:c.starts[vertex+1]]
	for _, k := range around[:min(len(around), curveNeighbours)] {
		if m := c.normal(c.owner[k]); m.dot(n) >= least {
			mean = mean.plus(m.times(float64(c.angles[k])))
		}
	}
	mean = unit3(mean)
	return mean.minus(n.times(mean.dot(n)))
}

// deficitPercent adds what each facet lacks, with v the slopes at its corners:
//
//	½·mean(v²)·A            the surface is tilted against the facet
//	Σ L·s·(v·m) over edges  and reaches past the facet's edges, which lie
//	                        s = (v₂−v₁)·e·L/12 under it on the average
//
// (e along and m across an edge of the length L). Of a tube this is (2π/N)²/24,
// the first term of 1 − (N/π)·sin(π/N). Derived here, to second order; tests
// hold it against tubes, spheres and tori.
func (c *curve) deficitPercent() float64 {
	var area, lacks sum
	var corners, slopes []Point
	for i := range c.store.facets() {
		corners, slopes = c.store.places(i, corners), slopes[:0]
		n := c.normal(uint32(i))
		for _, v := range c.store.facet(i) {
			slopes = append(slopes, c.slope(n, v))
		}
		area.add(measurePolygon(corners).area)
		for k := 1; k+1 < len(corners); k++ {
			t := fanTriangle(corners, k)
			a, b, d := slopes[0], slopes[k], slopes[k+1]
			squares := (a.dot(a) + b.dot(b) + d.dot(d) + a.dot(b) + b.dot(d) + d.dot(a)) / 6
			lacks.add(math.Copysign(math.Sqrt(t.dot(t))/2, t.dot(n)) * squares / 2)
		}
		for k, p := range corners {
			along := corners[(k+1)%len(corners)].minus(p)
			a, b := slopes[k], slopes[(k+1)%len(corners)]
			sag := b.minus(a).dot(along) / 12 // times the length, over the length
			lacks.add(sag * along.cross(n).dot(a.plus(b)) / 2)
		}
	}
	if area.value() == 0 {
		return 0
	}
	return 100 * math.Max(lacks.value(), 0) / area.value()
}
