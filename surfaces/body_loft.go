package surfaces

import "math"

// arcPoint is a point of a section's upper right quarter, from its centre,
// with its element of outline there. The other quarters are its mirror images.
type arcPoint struct{ y, z, dy, dz float64 }

// arcNodes returns the nodes that suit all of the stations.
func arcNodes(stations ...Station) []arcNode {
	for _, s := range stations {
		if s.power() != 1 {
			return quarterAny()
		}
	}
	return quarterEllipse()
}

// newSectionArc evaluates a quarter of a section at the nodes given:
//
//	y = w/2·cosᵖθ,  z = h/2·sinᵖθ,  p = 2/n,  tan θ = e^g
//	dy = −w/2·p·cosᵖθ·sin²θ dg,  dz = h/2·p·sinᵖθ·cos²θ dg
//
// Source: identity.
func newSectionArc(s Station, nodes []arcNode) []arcPoint {
	p, a, b := s.power(), s.WidthM/2, s.HeightM/2
	arc := make([]arcPoint, len(nodes))
	for i, n := range nodes {
		cos, sin := n.cos, n.sin
		if p != 1 {
			cos, sin = math.Exp(p*n.logCos), math.Exp(p*n.logSin)
		}
		arc[i] = arcPoint{a * cos, b * sin, -a * p * cos * n.sin * n.sin * n.weight, b * p * sin * n.cos * n.cos * n.weight}
	}
	return arc
}

// bodyLoft is what the straight lines between sections come to. By symmetry
// the left half is the right half's mirror image.
type bodyLoft struct {
	half        float64   // area of one side, steps included
	steps       []float64 // area of one side of each step's ring
	crown, keel float64   // lengths of the top and bottom lines
	noseLine    float64   // half the first section's outline
	tailLine    float64
}

func loftBody(stations []Station) bodyLoft { return loftWith(stations, arcNodes(stations...)) }

func loftWith(stations []Station, nodes []arcNode) bodyLoft {
	var b bodyLoft
	arc := newSectionArc(stations[0], nodes)
	b.noseLine = halfOutline(arc)
	for i := 1; i < len(stations); i++ {
		s0, s1 := stations[i-1], stations[i]
		next := newSectionArc(s1, nodes)
		gap, lift := s1.XM-s0.XM, s1.ZM-s0.ZM
		rise := (s1.HeightM - s0.HeightM) / 2
		b.crown += math.Hypot(gap, lift+rise)
		b.keel += math.Hypot(gap, lift-rise)
		if gap == 0 {
			ring := math.Abs(s1.area()-s0.area()) / 2
			b.steps = append(b.steps, ring)
			b.half += ring
		} else {
			b.half += bay(arc, next, gap, lift)
		}
		arc = next
	}
	b.tailLine = halfOutline(arc)
	return b
}

// bay returns the area of one side of the surface between two sections a
// distance gap apart, the second lifted by lift.
func bay(arc0, arc1 []arcPoint, gap, lift float64) float64 {
	sum := 0.0
	for i, q0 := range arc0 {
		q1 := arc1[i]
		upper := ruledStrip(inPlane{q0.y, q0.z}, inPlane{q0.dy, q0.dz}, inPlane{q1.y, q1.z + lift}, inPlane{q1.dy, q1.dz}, gap)
		if lift == 0 { // the lower quarter is the upper one's mirror image
			sum += 2 * upper
			continue
		}
		sum += upper + ruledStrip(inPlane{q0.y, -q0.z}, inPlane{q0.dy, -q0.dz}, inPlane{q1.y, lift - q1.z}, inPlane{q1.dy, -q1.dz}, gap)
	}
	return sum
}

// halfOutline returns the length of a section's right half.
func halfOutline(arc []arcPoint) float64 {
	sum := 0.0
	for _, q := range arc {
		sum += 2 * math.Hypot(q.dy, q.dz)
	}
	return sum
}
