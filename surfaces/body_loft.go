package surfaces

import "math"

// arcPoint is a point of a section's upper right quarter, from its centre,
// with its element of outline there. The other quarters are its mirror images.
type arcPoint struct{ y, z, dy, dz float64 }

// arcNodes returns the nodes that suit all of the stations. At the ends of the
// rule the elements of a section die away as
//
//	e^(−|g|·min(p, 2)),  p = 2/n
//
// so that what lies beyond 1e-17 of the largest is left out: always an even
// number of nodes at each end, for every other node is a rule of its own.
func arcNodes(stations ...Station) []arcNode {
	const nothing = 40 // e⁻⁴⁰ is 4e-18
	nodes, least := quarterEllipse(), 2.0
	for _, s := range stations {
		p := s.power()
		if p != 1 {
			nodes = quarterAny()
		}
		least = min(least, p)
	}
	first := 0
	for first+2 < len(nodes)/2 && least*(nodes[first+2].logCos-nodes[first+2].logSin) > nothing {
		first += 2
	}
	return nodes[first : len(nodes)-first]
}

// newSectionArc evaluates a quarter of a section at the nodes given:
//
//	y = w/2·cosᵖθ,  z = h/2·sinᵖθ,  p = 2/n,  tan θ = e^g
//	dy = −w/2·p·cosᵖθ·sin²θ dg,  dz = h/2·p·sinᵖθ·cos²θ dg
//
// Source: identity.
func newSectionArc(s Station, nodes []arcNode) []arcPoint {
	return sectionArc(make([]arcPoint, len(nodes)), s, nodes)
}

// sectionArc is newSectionArc into a slice of the nodes' length, which it
// returns.
func sectionArc(arc []arcPoint, s Station, nodes []arcNode) []arcPoint {
	p, a, b := s.power(), s.WidthM/2, s.HeightM/2
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

func loftBody(stations []Station) bodyLoft {
	var b bodyLoft
	nodes := arcNodes(stations...)
	arc, spare := newSectionArc(stations[0], nodes), make([]arcPoint, len(nodes))
	b.noseLine = halfOutline(arc)
	for i := 1; i < len(stations); i++ {
		s0, s1 := stations[i-1], stations[i]
		next := sectionArc(spare, s1, nodes)
		gap, lift := s1.XM-s0.XM, s1.ZM-s0.ZM
		rise := (s1.HeightM - s0.HeightM) / 2
		b.crown += math.Hypot(gap, lift+rise)
		b.keel += math.Hypot(gap, lift-rise)
		if gap == 0 {
			ring := math.Abs(s1.area()-s0.area()) / 2
			b.steps = append(b.steps, ring)
			b.half += ring
		} else {
			b.half += bayArea(s0, s1, arc, next)
		}
		arc, spare = next, arc
	}
	b.tailLine = halfOutline(arc)
	return b
}

// bayArea returns the area of one side of the surface between two sections. The
// rule's error is about the square of what half of its nodes miss; on a skin so
// steep or twisted that they miss much, or may agree by chance, the integral is
// halved until it settles.
func bayArea(s0, s1 Station, arc0, arc1 []arcPoint) float64 {
	all, coarse := bay(arc0, arc1, s1.XM-s0.XM, s1.ZM-s0.ZM)
	change := math.Abs(s1.WidthM-s0.WidthM) + math.Abs(s1.HeightM-s0.HeightM) + math.Abs(s1.ZM-s0.ZM)
	plain := change <= 3*(s1.XM-s0.XM) || (s1.ZM == s0.ZM && s0.WidthM*s1.HeightM == s1.WidthM*s0.HeightM)
	if plain && math.Abs(coarse-all) <= 3e-7*all {
		return all
	}
	sum := 0.0
	for _, b := range quarters(s0, s1) {
		area, _ := b.area(0, 1, math.Inf(-1), math.Inf(1))
		sum += area
	}
	return sum
}

// bay returns the area of one side of the surface between two sections a
// distance gap apart, the second lifted by lift, by all nodes and by every
// other one.
func bay(arc0, arc1 []arcPoint, gap, lift float64) (all, coarse float64) {
	for i, q0 := range arc0 {
		q1 := arc1[i]
		part := ruledStrip(inPlane{q0.y, q0.z}, inPlane{q0.dy, q0.dz}, inPlane{q1.y, q1.z + lift}, inPlane{q1.dy, q1.dz}, gap)
		if lift == 0 { // the lower quarter is the upper one's mirror image
			part *= 2
		} else {
			part += ruledStrip(inPlane{q0.y, -q0.z}, inPlane{q0.dy, -q0.dz}, inPlane{q1.y, lift - q1.z}, inPlane{q1.dy, -q1.dz}, gap)
		}
		all += part
		if i%2 == 0 {
			coarse += 2 * part
		}
	}
	return all, coarse
}

// halfOutline returns the length of a section's right half.
func halfOutline(arc []arcPoint) float64 {
	sum := 0.0
	for _, q := range arc {
		sum += 2 * math.Hypot(q.dy, q.dz)
	}
	return sum
}
