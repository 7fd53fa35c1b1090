package placing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces/planar"
)

// shifts moves every measure of a place by a little, one by one, and says how
// far the place goes for each unit of it (differences: an independent way).
func shifts(t require.TestingT, p *Place) []planar.Point {
	const step = 1e-6
	whole := located(t, p)
	var out []planar.Point
	gone := func(moved Place) {
		f := located(t, &moved)
		out = append(out, planar.Point{X: (f.XM - whole.XM) / step, Y: (f.YM - whole.YM) / step})
	}
	for i := range p.Tapes {
		moved := *p
		moved.Tapes = append([]Tape{}, p.Tapes...)
		moved.Tapes[i].DistanceM += step
		gone(moved)
	}
	if p.Offsets != nil {
		for _, d := range []Offsets{{FromAM: step}, {FromBM: step}} {
			moved, o := *p, *p.Offsets
			o.FromAM, o.FromBM = o.FromAM+d.FromAM, o.FromBM+d.FromBM
			moved.Offsets = &o
			gone(moved)
		}
	}
	return out
}

// The ellipse and the worst shift are those of places found anew from measures
// that are off: the variance along any direction is that of the ellipse, and no
// choice of signs goes farther than the worst.
func TestErrorByDirection(t *testing.T) {
	offsets := NewPlace()
	offsets.Offsets = &Offsets{FromAM: 0.3, FromBM: 0.5, AngleDeg: 55}
	for name, p := range map[string]*Place{
		"two":     taped(tape(0, 0, 0.8), tape(1, 0, 0.7)),
		"weak":    taped(tape(0, 0, 1.01), tape(2, 0, 1.01)),
		"three":   taped(tape(0, 0, 5), tape(8, 0, 5), tape(4, 9, 6)),
		"offsets": offsets,
	} {
		f, moved := located(t, p), shifts(t, p)
		s := p.TapeErrorMM / 1000
		for turn := 0.0; turn < 180; turn += 15 {
			sin, cos := math.Sincos(turn * math.Pi / 180)
			variance := 0.0
			for _, d := range moved {
				variance += math.Pow(s*(d.X*cos+d.Y*sin), 2)
			}
			sin, cos = math.Sincos((turn - f.Ellipse.DirectionDeg) * math.Pi / 180)
			said := math.Pow(f.Ellipse.MajorM*cos, 2) + math.Pow(f.Ellipse.MinorM*sin, 2)
			assert.InEpsilon(t, variance, said, 2e-3, "%s along %g°", name, turn)
		}
		most := 0.0
		for signs := range 1 << len(moved) {
			var gone planar.Point
			for i, d := range moved {
				sign := float64(1 - 2*(signs>>i&1))
				gone.X, gone.Y = gone.X+sign*d.X, gone.Y+sign*d.Y
			}
			most = max(most, math.Hypot(gone.X, gone.Y))
		}
		assert.InEpsilon(t, s*most, f.WorstShiftM, 1e-3, name)
		assert.InEpsilon(t, f.ErrorM, math.Hypot(f.Ellipse.MajorM, f.Ellipse.MinorM), 1e-9, name)
		assert.GreaterOrEqual(t, f.Ellipse.MajorM, f.Ellipse.MinorM, name)
	}
}

// Two tapes that meet squarely: every direction is as uncertain as a tape, and
// the worst is both off together (identity).
func TestSquareTapes(t *testing.T) {
	f := located(t, taped(tape(0, 0, 0.6), tape(1, 0, 0.8)))
	assert.InDelta(t, 0.003, f.Ellipse.MajorM, 1e-12)
	assert.InDelta(t, 0.003, f.Ellipse.MinorM, 1e-12)
	assert.InDelta(t, 0.003*math.Sqrt2, f.WorstShiftM, 1e-12)
}

// The measures lead back to the place, on both sides: each is the distance to
// the anchor, tapes as they were read, and edges square to themselves.
func TestMeasuresLeadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64Range(0.1, 5)
		p := NewPlace()
		p.Offsets = &Offsets{FromAM: number.Draw(t, "a"), FromBM: number.Draw(t, "b"), AngleDeg: rapid.Float64Range(20, 160).Draw(t, "angle"), EdgeA: "sill"}
		f := located(t, p)
		require.Len(t, f.Measures, 2)
		assert.InEpsilon(t, p.Offsets.FromAM, f.Measures[0].DistanceM, 1e-9)
		assert.InEpsilon(t, p.Offsets.FromBM, f.Measures[1].DistanceM, 1e-9)
		assert.Equal(t, "sill", f.Measures[0].From)
		assert.Equal(t, "edge B", f.Measures[1].From)
		for _, side := range []Fix{f, *f.OtherSide} {
			for _, m := range side.Measures {
				assert.InDelta(t, m.DistanceM, math.Hypot(side.XM-m.FromXM, side.YM-m.FromYM), 1e-12)
			}
		}
	})
	f := located(t, taped(tape(0, 0, 0.8), Tape{XM: 1, DistanceM: 0.7, Name: "hatch corner"}))
	assert.Equal(t, "point 1", f.Measures[0].From)
	assert.Equal(t, "hatch corner", f.Measures[1].From)
	assert.InDelta(t, 0.7, f.Measures[1].DistanceM, 1e-12)
	assert.InDelta(t, -1, f.OtherSide.Measures[1].FromXM, 0)
}
