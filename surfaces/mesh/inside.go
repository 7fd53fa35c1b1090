package mesh

import (
	"context"
	"math"
)

// numberOfSights is how many lines of sight are drawn through each spot, in
// directions drawn at random once. All have to agree that a face has material
// on both sides or on neither; two of three are enough for an ordinary skin.
const numberOfSights = 3

// sightWork bounds the corners held against lines of sight; a sample that would
// need more is cut short, which its number of points shows.
const sightWork = 400_000_000

// firstBatch is how many spots are looked at in the first passes over the mesh;
// each further batch is four times the one before, while sightWork lasts.
const firstBatch = 50

// Inside is a sample of the area for faces with material on both sides, which
// the triangles alone do not show: the faces between two touching solids, and
// what is buried where solids overlap.
type Inside struct {
	Samples     int     `json:"samples"`      // points looked at
	BothSides   int     `json:"both_sides"`   // of these, with material on both sides
	NeitherSide int     `json:"neither_side"` // with none on either: open sheets
	Unsure      int     `json:"unsure"`       // where the lines of sight disagree
	ShareRatio  float64 `json:"share_ratio"`  // of the area that has material on both sides
	LowRatio    float64 `json:"low_ratio"`    // 95 % confidence, unsure ones taken as no
	HighRatio   float64 `json:"high_ratio"`   // and as yes
	Seed        uint64  `json:"seed"`
	Method      string  `json:"method"`
}

// lookInside draws spots over the area and counts, along lines of sight
// through each, how often the surface is passed outward and inward before and
// after the spot: a point is in material when the difference (its winding
// number) is not 0. Where neighbouring facets face opposite ways, the parity
// of the passes is taken instead, which cannot see overlapping solids.
//
// Source: ray crossing tests for points in polyhedra, as in J. O'Rourke,
// "Computational Geometry in C", 2nd ed., 7.5 (chapter from memory).
func lookInside(ctx context.Context, s *store, o Options, signed bool) (*Inside, error) {
	random := newRandom(o.Seed)
	spots := pickSpots(s, o.Samples, random)
	if len(spots) == 0 {
		return nil, nil
	}
	box := emptyBox()
	for _, p := range s.points {
		box.add(p)
	}
	// Single-precision coordinates are good to 6e-8 of their size (IEEE 754):
	// nearer than some of these, two surfaces are one.
	touch := 1e-6 * max(box.farthest(), box.Largest())
	var sights [numberOfSights][3]Point
	for k := range sights {
		sights[k][0], sights[k][1], sights[k][2] = randomSight(random)
	}
	looked, work := 0, 0
	for size := firstBatch; looked < len(spots) && work < sightWork; size *= 4 {
		batch := spots[looked:min(looked+size, len(spots))]
		for k, sight := range sights {
			work += look(s, batch, sight, touch)
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			for i := range batch {
				batch[i].verdict[k] = batch[i].judge(signed)
			}
		}
		looked += len(batch)
	}
	return tally(spots[:looked], o.Seed, signed), nil
}

func (p *spot) judge(signed bool) verdict {
	ahead, behind := p.above != 0, p.below != 0
	if !signed {
		ahead, behind = p.twice[0]%2 == 1, p.twice[1]%2 == 1
	}
	switch {
	case ahead && behind:
		return verdictInside
	case ahead || behind:
		return verdictSkin
	}
	return verdictSheet
}

func tally(spots []spot, seed uint64, signed bool) *Inside {
	in := &Inside{Samples: len(spots), Seed: seed, Method: "winding number along three lines of sight"}
	if !signed {
		in.Method = "parity of passes along three lines of sight, as neighbouring facets face opposite ways; overlapping solids are not seen"
	}
	for _, p := range spots {
		var votes [3]int
		for _, v := range p.verdict {
			votes[v]++
		}
		switch {
		case votes[verdictInside] == numberOfSights:
			in.BothSides++
		case votes[verdictSheet] == numberOfSights:
			in.NeitherSide++
		case votes[verdictSkin] < 2:
			in.Unsure++
		}
	}
	in.ShareRatio = float64(in.BothSides) / float64(in.Samples)
	in.LowRatio, _ = shareBounds(in.BothSides, in.Samples)
	_, in.HighRatio = shareBounds(in.BothSides+in.Unsure, in.Samples)
	in.LowRatio, in.HighRatio = math.Min(in.LowRatio, in.ShareRatio), math.Max(in.HighRatio, in.ShareRatio)
	return in
}
