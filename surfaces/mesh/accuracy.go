package mesh

import (
	"fmt"
	"math"

	"filmbuild/surfaces/quantity"
)

// TessellationDeficit returns by how much of itself the area of a curved part
// exceeds that of the facets inscribed in it, as a share of the true area.
//
//	deficit = 1 − (N/π)·sin(π/N)
//
// N is the number of facets round a full turn, from 3 up; outside that range
// the error is a *quantity.RangeError. A surface curved both ways loses about
// twice as much.
//
// Source: identity, the perimeter of a regular polygon inscribed in a circle.
func TessellationDeficit(facetsPerTurn float64) (float64, error) {
	if err := quantity.Within("facets_per_turn", facetsPerTurn, "", quantity.Limits{Low: 3, High: 1e9}); err != nil {
		return 0, err
	}
	return deficit(2 * math.Pi / facetsPerTurn), nil
}

// deficit is the same by the angle between neighbouring facets, in radians.
func deficit(bend float64) float64 {
	if bend == 0 {
		return 0
	}
	return 1 - math.Sin(bend/2)/(bend/2)
}

// smoothDeg is the angle between two facets up to which they are taken for
// pieces of one curved surface, and above which their edge for a true corner.
// It is that of 12 facets a turn with room for rounding; common practice.
const smoothDeg = 31

// curve finds how coarsely the curved parts of a stored mesh are drawn: for
// each facet the largest bend to a neighbour on the same curve.
type curve struct {
	store *store
	bends []float32
	a, b  []Point
}

func newCurve(s *store) *curve { return &curve{store: s, bends: make([]float32, s.facets())} }

func (c *curve) bend(i, j uint32) {
	c.a, c.b = c.store.places(int(i), c.a), c.store.places(int(j), c.b)
	m, n := measurePolygon(c.a).vector, measurePolygon(c.b).vector
	x := m.cross(n)
	angle := math.Atan2(math.Sqrt(x.dot(x)), m.dot(n))
	if angle > smoothDeg*math.Pi/180 {
		return
	}
	for _, f := range []uint32{i, j} {
		c.bends[f] = max(c.bends[f], float32(angle))
	}
}

// deficitPercent is the mean over the area of what each facet lacks, taken
// twice, as if every curved part were curved both ways: an upper estimate.
func (c *curve) deficitPercent() float64 {
	var area, lacks sum
	for i := range c.store.facets() {
		c.a = c.store.places(i, c.a)
		piece := measurePolygon(c.a).area
		area.add(piece)
		lacks.add(piece * 2 * deficit(float64(c.bends[i])))
	}
	if area.value() == 0 {
		return 0
	}
	return 100 * lacks.value() / area.value()
}

// modelPercent is how far a mesh may be from the real part by its scale, scan
// or drawing; common practice, as no published figure was found.
const modelPercent = 2.0

// unknownFacetsPerTurn is taken where the mesh could not be looked at and the
// user gave no number: the coarsest curve in everyday exports; common practice.
const unknownFacetsPerTurn = 12

// Accuracy is how far the area may be from that of the real part.
type Accuracy struct {
	Percent        float64 `json:"accuracy_percent"`             // half width of the likely error
	DeficitPercent float64 `json:"tessellation_deficit_percent"` // part of it: the true area is larger by up to this
	Basis          string  `json:"basis"`
}

// accuracy adds what the model may be wrong by to what its facets cut off.
func accuracy(o Options, checks *Checks) Accuracy {
	var lacks float64
	var basis string
	switch {
	case o.FacetsPerTurn > 0:
		lacks = 100 * deficit(2*math.Pi/o.FacetsPerTurn)
		basis = fmt.Sprintf("curved parts drawn with %g facets a turn, as stated", o.FacetsPerTurn)
	case checks != nil:
		lacks = checks.Tessellation
		basis = "the angles between neighbouring facets, as if all were curved both ways"
	default:
		lacks = 100 * 2 * deficit(2*math.Pi/unknownFacetsPerTurn)
		basis = fmt.Sprintf("curved parts taken to have %d facets a turn, as the mesh was too large to look", unknownFacetsPerTurn)
	}
	return Accuracy{
		Percent: modelPercent + lacks, DeficitPercent: lacks,
		Basis: fmt.Sprintf("%g %% for scale and scan or drawing, common practice; %.2g %% that facets cut off curves, from %s", modelPercent, lacks, basis),
	}
}
