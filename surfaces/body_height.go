package surfaces

import (
	"math"
	"slices"
)

// overSpans integrates f over neighbouring spans, in order.
func overSpans(f func(float64) float64, at []float64) (value, bound float64) {
	slices.Sort(at)
	for i := 1; i < len(at); i++ {
		v, off := adaptive(f, at[i-1], at[i])
		value, bound = value+v, bound+off
	}
	return value, bound
}

// heightLine is the length of the line at a height on the quarter of a bay,
// between two shares of the bay.
func (b panelBay) heightLine(z, from, to float64) float64 {
	if math.IsInf(z, 0) {
		return 0
	}
	at := []float64{from, to}
	grazes := map[float64]bool{} // where the line ends on the crown or the keel
	for _, line := range [][2]float64{{b.ridge(0), b.ridge(1)}, {b.middle(0), b.middle(1)}} {
		if t := (z - line[0]) / (line[1] - line[0]); t > from && t < to {
			at = append(at, t)
			grazes[t] = line[0] == b.ridge(0) && line[1] == b.ridge(1)
		}
	}
	slices.Sort(at)
	sum := 0.0
	for i := 1; i < len(at); i++ {
		middle := (at[i-1] + at[i]) / 2
		if !b.holds(z, middle) {
			continue // above the crown, or in the other quarter
		}
		sum += b.heightPiece(z, at[i-1], middle, grazes[at[i-1]]) + b.heightPiece(z, at[i], middle, grazes[at[i]])
	}
	return sum
}

// holds says whether a height lies in this quarter at a share of the bay; the
// widest line belongs to the upper one.
func (b panelBay) holds(z, t float64) bool {
	if b.side > 0 {
		return z >= b.middle(t) && z < b.ridge(t)
	}
	return z < b.middle(t) && z > b.ridge(t)
}

// heightPiece is the length from an end of the line to a share within it. Near
// an end on the crown the line runs across the body, and u is the better
// parameter; elsewhere the share is.
func (b panelBay) heightPiece(z, end, inner float64, grazes bool) float64 {
	turn := end
	across := 0.0
	if slope := b.ridge(1) - b.ridge(0); grazes && slope != 0 {
		turn = inner
		for range 60 {
			p0, p1, _, _ := b.at(b.atHeight(z, turn))
			if (p1.z-p0.z)/slope >= 0.5 {
				break
			}
			turn = end + (turn-end)/2
		}
		across, _ = adaptive(func(u float64) float64 {
			p0, p1, d0, d1 := b.at(u)
			rise := p1.z - p0.z
			t := (z - p0.z) / rise
			d := between(d0, d1, t)
			byU := -d.z / rise // dt/du
			return math.Hypot(b.gap*byU, d.x+(p1.x-p0.x)*byU)
		}, b.atHeight(z, turn), skinReach)
	}
	along, _ := adaptive(func(t float64) float64 {
		p0, p1, d0, d1 := b.at(b.atHeight(z, t))
		d := between(d0, d1, t)
		out := p1.x - p0.x
		if d.z != 0 {
			out -= d.x * (p1.z - p0.z) / d.z
		}
		return math.Hypot(b.gap, out)
	}, min(turn, inner), max(turn, inner))
	return across + along
}
