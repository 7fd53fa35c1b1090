package surfaces

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// near says whether two numbers agree to 1e-9 of their size.
func near(t assert.TestingT, want, got float64, what string) bool {
	return assert.InDelta(t, want, got, 1e-9*math.Max(1e-3, math.Abs(want)), what)
}

func TestEveryKindHasAGenerator(t *testing.T) {
	for _, k := range Kinds() {
		if k.Name == "mesh" {
			continue // drawn, moved and scaled in its own package
		}
		assert.Contains(t, drawn(), k.Name)
	}
}

func TestAreasScaleWithTheSquare(t *testing.T) {
	for kind, draw := range drawn() {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s, k := draw(t), number(t, 0.3, 3, "k")
				small, err := Measure(s)
				require.NoError(t, err)
				large, err := Measure(scaled(s, k))
				require.NoError(t, err)
				require.Len(t, large.Faces, len(small.Faces))
				for i, f := range small.Faces {
					near(t, k*k*f.AreaM2, large.Faces[i].AreaM2, f.Name)
				}
				require.Len(t, large.Edges, len(small.Edges))
				for i, e := range small.Edges {
					near(t, k*e.LengthM, large.Edges[i].LengthM, e.Between[0]+"–"+e.Between[1])
				}
			})
		})
	}
}

// Each line lies between two sides, so going round every face and round the
// opening passes it twice.
func TestEveryLineHasTwoSides(t *testing.T) {
	for kind, draw := range drawn() {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				m, err := Measure(draw(t))
				require.NoError(t, err)
				area, around := 0.0, m.FaceEdgeM(Open)
				for _, f := range m.Faces {
					area += f.AreaM2
					around += m.FaceEdgeM(f.Name)
				}
				near(t, m.AreaM2(), area, "area")
				near(t, 2*m.EdgeM(), around, "edges")
			})
		})
	}
}

func TestPanelMayBeTurnedAndMoved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outline := make([][2]float64, rapid.IntRange(3, 9).Draw(t, "corners"))
		for i := range outline { // star-shaped about the origin, so it cannot cross itself
			sin, cos := math.Sincos(2 * math.Pi * (float64(i) + number(t, 0, 0.4, "angle")) / float64(len(outline)))
			r := number(t, 0.5, 3, "radius")
			outline[i] = [2]float64{r * cos, r * sin}
		}
		hole := [][2]float64{{0.1, 0}, {0, 0.1}, {-0.1, 0}, {0, -0.1}}
		sin, cos := math.Sincos(number(t, 0, 7, "turn"))
		dx, dy := number(t, -50, 50, "dx"), number(t, -50, 50, "dy")
		turned := func(p [][2]float64) [][2]float64 {
			q := make([][2]float64, len(p))
			for i, c := range p {
				q[i] = [2]float64{cos*c[0] - sin*c[1] + dx, sin*c[0] + cos*c[1] + dy}
			}
			return q
		}
		here, err := Measure(&Panel{Outline: outline, Holes: []Hole{{Outline: hole}}, Sides: 2})
		if err != nil {
			t.Skip("the hole does not fit")
		}
		there, err := Measure(&Panel{Outline: turned(outline), Holes: []Hole{{Outline: turned(hole)}}, Sides: 2})
		require.NoError(t, err)
		near(t, here.AreaM2(), there.AreaM2(), "area")
		near(t, here.EdgeM(), there.EdgeM(), "edge")
	})
}

func TestHoleTakesItsAreaAndAddsItsRim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnPanel(t)
		p.ThicknessMM = nil
		plain := *p
		plain.Holes = nil
		with, err := Measure(p)
		require.NoError(t, err)
		without, err := Measure(&plain)
		require.NoError(t, err)
		area, rim := 0.0, 0.0
		for _, h := range p.Holes {
			if h.DiameterM != nil {
				area += math.Pi * *h.DiameterM * *h.DiameterM / 4
				rim += math.Pi * *h.DiameterM
				continue
			}
			w, hh, r := *h.WidthM, *h.HeightM, *h.CornerRadiusM
			area += w*hh - (4-math.Pi)*r*r
			rim += 2*(w+hh) - (8-2*math.Pi)*r
		}
		near(t, without.Faces[0].AreaM2-area, with.Faces[0].AreaM2, "area")
		near(t, without.EdgeM()+rim, with.EdgeM(), "edge")
	})
}

func TestAxesMayBeExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := number(t, 0.01, 9, "a"), number(t, 0.01, 9, "b"), number(t, 0.01, 9, "c")
		box, err := Measure(&Box{a, b, c})
		require.NoError(t, err)
		turned, err := Measure(&Box{c, a, b})
		require.NoError(t, err)
		near(t, box.AreaM2(), turned.AreaM2(), "box")
		egg, err := Measure(&Ellipsoid{a, b, c, "whole"})
		require.NoError(t, err)
		turned, err = Measure(&Ellipsoid{c, a, b, "whole"})
		require.NoError(t, err)
		near(t, egg.AreaM2(), turned.AreaM2(), "ellipsoid")
		assert.Less(t, egg.AreaM2(), box.AreaM2()*4, "the box around it is larger")
	})
}

func TestBodyMayBeMovedAndReversed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawnBody(t)
		here, err := Measure(b)
		require.NoError(t, err)
		moved := copied(b).(*Body)
		for i := range moved.Stations {
			moved.Stations[i].XM = 100 - moved.Stations[i].XM
			moved.Stations[i].ZM = 7 - moved.Stations[i].ZM
		}
		slices.Reverse(moved.Stations)
		moved.Nose, moved.Tail = b.Tail, b.Nose
		there, err := Measure(moved)
		require.NoError(t, err)
		near(t, here.AreaM2(), there.AreaM2(), "area")
		near(t, here.EdgeM(), there.EdgeM(), "edge")
	})
}

func TestStationOnTheSkinChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawnBody(t)
		i, at := rapid.IntRange(1, len(b.Stations)-1).Draw(t, "bay"), number(t, 0.1, 0.9, "at")
		s0, s1 := b.Stations[i-1], b.Stations[i]
		mix := func(a, b float64) float64 { return a + at*(b-a) }
		split := copied(b).(*Body)
		split.Stations = slices.Insert(split.Stations, i, Station{
			XM: mix(s0.XM, s1.XM), WidthM: mix(s0.WidthM, s1.WidthM), HeightM: mix(s0.HeightM, s1.HeightM), ZM: mix(s0.ZM, s1.ZM), Exponent: s0.Exponent,
		})
		whole, err := Measure(b)
		require.NoError(t, err)
		parts, err := Measure(split)
		require.NoError(t, err)
		near(t, whole.AreaM2(), parts.AreaM2(), "area")
		near(t, whole.EdgeM(), parts.EdgeM(), "edge")
	})
}

func TestWingMayBeCutInTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawnWing(t)
		w.CamberRatio, w.Tip = 0, "open"
		if w.Section == "biconvex" { // its arcs do not grow in proportion to the thickness
			w.Section = "elliptic"
		}
		at := number(t, 0.1, 0.9, "at")
		chord := *w.TipChordM*at + w.RootChordM*(1-at)
		inner, outer := copied(w).(*Wing), copied(w).(*Wing)
		inner.TipChordM, inner.SpanM, outer.RootChordM, outer.SpanM = &chord, at*w.SpanM, chord, (1-at)*w.SpanM
		if w.Section != "flat" {
			thickness := (*w.TipChordM**w.TipThicknessRatio*at + w.RootChordM**w.RootThicknessRatio*(1-at)) / chord
			inner.TipThicknessRatio, outer.RootThicknessRatio = &thickness, &thickness
		}
		whole, err := Measure(w)
		require.NoError(t, err)
		a, err := Measure(inner)
		require.NoError(t, err)
		b, err := Measure(outer)
		require.NoError(t, err)
		near(t, whole.AreaM2(), a.AreaM2()+b.AreaM2(), "area")
	})
}

// Every face lies over the planform, so it is never smaller; and on a wing of
// one section throughout more sweep never means less area.
func TestWingIsNeverLessThanTwicePlanform(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawnWing(t)
		w.Tip = "open"
		planform := (w.RootChordM + *w.TipChordM) / 2 * w.SpanM
		m, err := Measure(w)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, m.AreaM2(), 2*planform*(1-1e-12))

		w.TipChordM, w.TipThicknessRatio = &w.RootChordM, nil
		w.SweepLEDeg = number(t, 0, 70, "from")
		less, err := Measure(w)
		require.NoError(t, err)
		w.SweepLEDeg += number(t, 0, 14, "more")
		more, err := Measure(w)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, more.AreaM2(), less.AreaM2()*(1-1e-12))
		w.SweepLEDeg = -w.SweepLEDeg
		forward, err := Measure(w)
		require.NoError(t, err)
		near(t, more.AreaM2(), forward.AreaM2(), "swept forward")
	})
}
