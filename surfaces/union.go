package surfaces

import (
	"math"
	"slices"

	"filmbuild/surfaces/planar"
)

// together sorts figures into groups that overlap or touch, directly or
// through others; each group lists its figures by number.
func together(figures []planar.Outline) ([][]int, error) {
	group := make([]int, len(figures))
	boxes := make([]planar.Box, len(figures))
	for i, f := range figures {
		group[i] = i
		boxes[i] = boxAbout(f)
	}
	for i := range figures {
		for j := range i {
			if group[i] == group[j] || !overlap(boxes[i], boxes[j]) {
				continue
			}
			t, err := compare(figures[j], figures[i])
			if err != nil {
				return nil, err
			}
			if t.meets {
				from, to := group[i], group[j]
				for k := range group {
					if group[k] == from {
						group[k] = to
					}
				}
			}
		}
	}
	var groups [][]int
	at := map[int]int{}
	for i, g := range group {
		k, known := at[g]
		if !known {
			k = len(groups)
			at[g] = k
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	return groups, nil
}

// boxAbout is a box that a figure cannot reach beyond; arcs may not fill it.
func boxAbout(o planar.Outline) planar.Box {
	low, high := o[0].At, o[0].At
	for i, c := range o {
		next := o[(i+1)%len(o)].At
		reach := math.Hypot(next.X-c.At.X, next.Y-c.At.Y)
		if c.Sweep == 0 {
			reach = 0
		}
		low = planar.Point{X: min(low.X, c.At.X-reach), Y: min(low.Y, c.At.Y-reach)}
		high = planar.Point{X: max(high.X, c.At.X+reach), Y: max(high.Y, c.At.Y+reach)}
	}
	return planar.Box{Min: low, Max: high}
}

func overlap(a, b planar.Box) bool {
	return a.Min.X <= b.Max.X+touch && b.Min.X <= a.Max.X+touch && a.Min.Y <= b.Max.Y+touch && b.Min.Y <= a.Max.Y+touch
}

// cutsFree says whether figures united enclose a piece of what they are cut
// from, which then falls out: one of the lines around them runs clockwise.
func cutsFree(figures planar.Region) (bool, error) {
	seen, err := layout(planar.Layer{Colour: cutout, Outline: figures})
	if err != nil {
		return false, err
	}
	leaving := map[planar.Point][]planar.Piece{}
	for _, p := range seen.Pieces() {
		if p.Left != cutout { // all run with the figures on their left
			p.From, p.To, p.Sweep = p.To, p.From, -p.Sweep
		}
		leaving[p.From] = append(leaving[p.From], p)
	}
	for start := range leaving {
		for len(leaving[start]) > 0 {
			if loopFrom(start, leaving).SignedArea() < 0 {
				return true, nil
			}
		}
	}
	return false, nil
}

// loopFrom takes one closed line out of the pieces that leave each point.
// Where several leave, it keeps the figures' own side without crossing them.
func loopFrom(start planar.Point, leaving map[planar.Point][]planar.Piece) planar.Outline {
	var loop planar.Outline
	at, k := start, 0
	for {
		p := leaving[at][k]
		leaving[at] = slices.Delete(leaving[at], k, k+1)
		loop = append(loop, planar.Corner{At: p.From, Sweep: p.Sweep})
		at = p.To
		if at == start || len(leaving[at]) == 0 {
			return loop
		}
		k = nextLeft(p, leaving[at])
	}
}

// nextLeft is the number of the piece met first on turning clockwise from the
// way back along the last one.
func nextLeft(last planar.Piece, ways []planar.Piece) int {
	back := direction(last) + last.Sweep/2 + math.Pi
	best, least := 0, math.Inf(1)
	for i, w := range ways {
		turn := math.Mod(back-(direction(w)-w.Sweep/2)+4*math.Pi, 2*math.Pi)
		if turn < least {
			best, least = i, turn
		}
	}
	return best
}

// direction is that of a piece's chord.
func direction(p planar.Piece) float64 { return math.Atan2(p.To.Y-p.From.Y, p.To.X-p.From.X) }
