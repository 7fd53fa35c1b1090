package placing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces/planar"
)

func faultsOf(p *Place) map[string]string {
	found := map[string]string{}
	p.Check(func(pointer, code, _ string) { found[pointer] = code })
	return found
}

func taped(tapes ...Tape) *Place {
	p := NewPlace()
	p.Tapes = tapes
	return p
}

func tape(x, y, distance float64) Tape { return Tape{XM: x, YM: y, DistanceM: distance} }

func located(t require.TestingT, p *Place) Fix {
	f, err := p.Locate()
	require.NoError(t, err)
	return f
}

// Tapes measured to a known point lead back to it, two or three, on either side
// (identity).
func TestTapesLeadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-10, 10)
		goal := planar.Point{X: at.Draw(t, "x"), Y: at.Draw(t, "y")}
		p := NewPlace()
		for range rapid.IntRange(2, 3).Draw(t, "tapes") {
			tape := Tape{XM: at.Draw(t, "tx"), YM: at.Draw(t, "ty")}
			tape.DistanceM = tape.from(goal)
			if tape.DistanceM == 0 {
				t.Skip("a tape of no length")
			}
			p.Tapes = append(p.Tapes, tape)
		}
		if !p.leftOf(goal) {
			p.Side = "right"
		}
		if len(faultsOf(p)) > 0 {
			t.Skip("the tapes lie in one line")
		}
		f := located(t, p)
		assert.InDelta(t, 0, math.Hypot(f.XM-goal.X, f.YM-goal.Y), 1e-5*f.ErrorRatio)
		assert.InDelta(t, 0, f.ResidualM, 1e-6)
	})
}

// The error that is said is the one that comes of small errors of the tapes,
// moved one by one (an independent way: differences).
func TestErrorIsThatOfMovedTapes(t *testing.T) {
	for name, p := range map[string]*Place{
		"two":   taped(tape(0, 0, 0.8), tape(1, 0, 0.7)),
		"three": taped(tape(0, 0, 5), tape(8, 0, 5), tape(4, 9, 6)),
	} {
		whole, sum := located(t, p), 0.0
		const step = 1e-6
		for i := range p.Tapes {
			moved := *p
			moved.Tapes = append([]Tape{}, p.Tapes...)
			moved.Tapes[i].DistanceM += step
			f := located(t, &moved)
			sum += (math.Pow(f.XM-whole.XM, 2) + math.Pow(f.YM-whole.YM, 2)) / step / step
		}
		assert.InEpsilon(t, math.Sqrt(sum), whole.ErrorRatio, 1e-4, name)
		assert.InEpsilon(t, whole.ErrorRatio*0.003, whole.ErrorM, 1e-12, name)
	}
	o := NewPlace()
	o.Offsets = &Offsets{FromAM: 0.3, FromBM: 0.5, AngleDeg: 80}
	whole, sum := located(t, o), 0.0
	for _, d := range []Offsets{{FromAM: 1e-6}, {FromBM: 1e-6}} {
		moved := NewPlace()
		moved.Offsets = &Offsets{FromAM: 0.3 + d.FromAM, FromBM: 0.5 + d.FromBM, AngleDeg: 80}
		f := located(t, moved)
		sum += (math.Pow(f.XM-whole.XM, 2) + math.Pow(f.YM-whole.YM, 2)) / 1e-12
	}
	assert.InEpsilon(t, math.Sqrt(sum), whole.ErrorRatio, 1e-6, "offsets")
}

// Three tapes, one of them a little long: least squares shares the error out,
// and no point near by fits better (identity of a minimum).
func TestLeastSquares(t *testing.T) {
	p := taped(tape(0, 0, 5.004), tape(8, 0, 5), tape(4, 9, 6))
	f := located(t, p)
	assert.Greater(t, f.ResidualM, 1e-4)
	require.Len(t, f.ResidualsM, 3)
	at := planar.Point{X: f.XM, Y: f.YM}
	for k := range 12 {
		assert.Less(t, p.residual(at), p.residual(planar.Polar(at, 1e-4, float64(k))))
	}
	p.Tapes[0].DistanceM = 5.1
	assert.Equal(t, map[string]string{"/tapes": "inconsistent"}, faultsOf(p), "a tape read wrong")
	p.TapeErrorMM = 100
	assert.Empty(t, faultsOf(p), "unless tapes are that bad")
}

func TestImpossibleFixes(t *testing.T) {
	for name, c := range map[string]struct {
		place *Place
		said  string
	}{
		"too short":      {taped(tape(0, 0, 0.3), tape(1, 0, 0.6)), "too short to meet"},
		"inside":         {taped(tape(0, 0, 2), tape(1, 0, 0.6)), "inside the other"},
		"one point":      {taped(tape(1, 1, 2), tape(1, 1, 2)), "the two points are one"},
		"in one line":    {taped(tape(0, 0, 0.5), tape(1, 0, 0.5)), "nearly in one line"},
		"three short":    {taped(tape(0, 0, 1), tape(10, 0, 1), tape(5, 9, 1)), "do not meet"},
		"three in line":  {taped(tape(0, 0, 1), tape(2, 0, 1), tape(5, 0, 4)), "nearly in one line"},
		"edges parallel": {&Place{Side: "left", Anchor: "centre", Offsets: &Offsets{AngleDeg: 0.5}}, "nearly in one line"},
	} {
		_, err := c.place.Locate()
		require.ErrorContains(t, err, c.said, name)
	}
}

func TestFaultsOfPlaces(t *testing.T) {
	assert.Equal(t, map[string]string{"": "required"}, faultsOf(NewPlace()))
	p := taped(tape(0, 0, 1))
	assert.Equal(t, map[string]string{"/tapes": "out_of_range"}, faultsOf(p))
	p.Tapes = []Tape{tape(0, 0, 0), tape(math.NaN(), 0, 1)}
	p.Side, p.Anchor, p.TapeErrorMM, p.RotationDeg = "up", "middle", -1, 400
	assert.Equal(t, map[string]string{
		"/tapes/0/distance_m": "out_of_range", "/tapes/1/x_m": "out_of_range", "/side": "unknown_kind", "/anchor": "unknown_kind",
		"/tape_error_mm": "out_of_range", "/rotation_deg": "out_of_range",
	}, faultsOf(p))
	q := NewPlace()
	q.Offsets, q.Station = &Offsets{AngleDeg: 90}, &Station{Face: "front"}
	assert.Equal(t, map[string]string{"": "inconsistent", "/station/face": "unknown_kind", "/station/datum": "required"}, faultsOf(q))
}

func TestWeakFixesAreSaid(t *testing.T) {
	f := located(t, taped(tape(0, 0, 1.01), tape(2, 0, 1.01)))
	require.Len(t, f.Warnings, 1)
	assert.Contains(t, f.Warnings[0], "5.1 times")
	assert.Empty(t, located(t, taped(tape(0, 0, 0.6), tape(1, 0, 0.8))).Warnings)
	three := located(t, taped(tape(0, 0, 5), tape(3, 0, 4), tape(6, 0, 5)))
	assert.Contains(t, three.Warnings[0], "one line")
	assert.InDelta(t, 4, three.YM, 1e-9)
	mirrored := taped(tape(0, 0, 5), tape(3, 0, 4), tape(6, 0, 5))
	mirrored.Side = "right"
	assert.InDelta(t, -4, located(t, mirrored).YM, 1e-9)
}

// Points in one line of which two are one, to a fraction of a nanometre: the side
// is that of the line, whose way goes with that from the first to the second. A
// case that a random draw found.
func TestPointsInOneLineOfWhichTwoAreOne(t *testing.T) {
	goal := planar.Point{X: 2.86, Y: -0.61}
	for _, first := range []planar.Point{{X: -3.7e-10}, {}, {X: 3.7e-10}} {
		for side, x := range map[string]float64{"right": goal.X, "left": -goal.X} {
			p := NewPlace()
			p.Side = side
			for _, at := range []planar.Point{first, {}, {Y: 7.14}} {
				known := Tape{XM: at.X, YM: at.Y}
				known.DistanceM = known.from(planar.Point{X: x, Y: goal.Y})
				p.Tapes = append(p.Tapes, known)
			}
			f := located(t, p)
			assert.InDelta(t, x, f.XM, 1e-6, side)
			assert.InDelta(t, goal.Y, f.YM, 1e-6, side)
		}
	}
}

// Three points all but in one line: tapes good to 3 mm cannot tell the sides
// apart, so that the side that is said is taken, though the other fits better by a
// hair.
func TestPointsAllButInOneLine(t *testing.T) {
	p := taped(tape(0, 0, 5), tape(3, 1e-4, 4-1e-4), tape(6, 0, 5))
	assert.InDelta(t, 4, located(t, p).YM, 1e-3)
	p.Side = "right"
	f := located(t, p)
	assert.InDelta(t, -4, f.YM, 1e-3)
	assert.Positive(t, f.ResidualM)
	assert.Less(t, f.ResidualM, 0.003)
}

// The other side of the other side is this side (identity); left goes to right,
// and the butt line changes its sign alone.
func TestOtherSide(t *testing.T) {
	p := NewPlace()
	p.Station = &Station{StationM: 3, ButtLineM: 0.7, WaterLineM: 1.2, Face: "right", Datum: "nose"}
	p.RotationDeg, p.Anchor = 12, "lower_left"
	f := located(t, p)
	require.NotNil(t, f.OtherSide)
	o := *f.OtherSide
	assert.Equal(t, Station{StationM: 3, ButtLineM: -0.7, WaterLineM: 1.2, Face: "left", Datum: "nose"}, *o.Station)
	assert.Equal(t, "lower_right", o.Anchor)
	assert.InDelta(t, -12, o.RotationDeg, 0)
	assert.InDelta(t, -f.XM, o.XM, 0)
	assert.InDelta(t, f.YM, o.YM, 0)
	back := o.Other()
	assert.Equal(t, *f.Station, *back.Station)
	assert.Equal(t, f.Anchor, back.Anchor)
	assert.InDelta(t, f.RotationDeg, back.RotationDeg, 0)

	// The mirrored place of the figure's box is the box mirrored (identity), while
	// the figure itself reads as before.
	box := planar.Box{Min: planar.Point{X: 1, Y: 2}, Max: planar.Point{X: 4, Y: 3}}
	here, there := f.Placement(box), o.Placement(box)
	assert.False(t, there.Mirror)
	for _, pair := range [][2]planar.Point{
		{box.Min, {X: box.Max.X, Y: box.Min.Y}}, {box.Max, {X: box.Min.X, Y: box.Max.Y}},
	} {
		a, b := here.Point(pair[0]), there.Point(pair[1])
		assert.InDelta(t, -a.X, b.X, 1e-12)
		assert.InDelta(t, a.Y, b.Y, 1e-12)
	}
}

// A figure that is mirrored too: every point of it comes to the mirror image of
// where it is here (identity).
func TestMirroredFigure(t *testing.T) {
	p := NewPlace()
	p.Offsets = &Offsets{FromAM: 1, FromBM: 2, AngleDeg: 90}
	p.RotationDeg, p.MirrorFigure = 20, true
	box := planar.Box{Min: planar.Point{X: 1, Y: 2}, Max: planar.Point{X: 4, Y: 3}}
	for _, anchor := range Anchors() {
		p.Anchor = anchor
		f := located(t, p)
		for _, at := range []planar.Point{box.Min, box.Max, {X: 2, Y: 2.25}} {
			here, there := f.Placement(box).Point(at), f.OtherSide.Placement(box).Point(at)
			assert.InDelta(t, -here.X, there.X, 1e-12, anchor)
			assert.InDelta(t, here.Y, there.Y, 1e-12, anchor)
		}
	}
}

// Faces seen from outside: a point that lies farther aft is farther right on the
// left side and farther left on the right side; seen from above with the nose
// up, the pilot's right is to the right.
func TestFacesSeenFromOutside(t *testing.T) {
	at := func(face string, fs, bl, wl float64) planar.Point {
		p := NewPlace()
		p.Station = &Station{fs, bl, wl, face, "nose"}
		f := located(t, p)
		return planar.Point{X: f.XM, Y: f.YM}
	}
	assert.Equal(t, planar.Point{X: 2, Y: 1}, at("left", 2, -0.5, 1))
	assert.Equal(t, planar.Point{X: -2, Y: 1}, at("right", 2, 0.5, 1))
	assert.Equal(t, planar.Point{X: 0.5, Y: -2}, at("upper", 2, 0.5, 1))
	assert.Equal(t, planar.Point{X: -0.5, Y: -2}, at("lower", 2, 0.5, 1))
}

// Each anchor comes to the fix (identity).
func TestAnchors(t *testing.T) {
	box := planar.Box{Min: planar.Point{X: 1, Y: 2}, Max: planar.Point{X: 5, Y: 3}}
	for anchor, at := range map[string]planar.Point{
		"centre": {X: 3, Y: 2.5}, "lower_left": {X: 1, Y: 2}, "lower_right": {X: 5, Y: 2},
		"upper_left": {X: 1, Y: 3}, "upper_right": {X: 5, Y: 3}, "origin": {},
	} {
		p := NewPlace()
		p.Offsets = &Offsets{FromAM: 7, FromBM: 4, AngleDeg: 90}
		p.Anchor, p.RotationDeg = anchor, 33
		f := located(t, p)
		gone := f.Placement(box).Point(at)
		assert.InDelta(t, 4, gone.X, 1e-12, anchor)
		assert.InDelta(t, 7, gone.Y, 1e-12, anchor)
	}
}

func FuzzLocate(f *testing.F) {
	f.Add(0.0, 0.0, 0.8, 1.0, 0.0, 0.7, 0.0, 0.0, 0.0)
	f.Add(0.0, 0.0, 5.0, 8.0, 0.0, 5.0, 4.0, 9.0, 6.0)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g, h, i, j float64) {
		p := taped(tape(a, b, c), tape(d, e, g))
		if j != 0 {
			p.Tapes = append(p.Tapes, tape(h, i, j))
		}
		fix, err := p.Locate()
		if err != nil {
			return
		}
		for _, x := range []float64{fix.XM, fix.YM, fix.ErrorM, fix.ErrorRatio, fix.ResidualM} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%+v", fix)
		}
	})
}
