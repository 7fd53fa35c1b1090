package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/floats"
)

// plainWing is an uncambered wing with an open tip.
func plainWing(family string, root, tip, span, sweep, rootThickness, tipThickness float64) *Wing {
	w := newWing()
	w.Section, w.Tip = family, "open"
	w.RootChordM, w.TipChordM, w.SpanM, w.SweepLEDeg = root, &tip, span, sweep
	if family != "flat" {
		w.RootThicknessRatio, w.TipThicknessRatio = &rootThickness, &tipThickness
	}
	return w
}

func TestFlatWingIsTwicePlanform(t *testing.T) {
	for _, sweep := range []float64{-30, 0, 45, 80} {
		m := must(t, plainWing("flat", 3, 1, 4, sweep, 0, 0))
		assert.InDelta(t, 16, m.AreaM2(), 1e-13)
		aft := 4 * math.Tan(sweep*math.Pi/180)
		assert.InDelta(t, math.Hypot(4, aft)+math.Hypot(4, aft-2)+1, m.Edges[0].LengthM, 1e-12, "both edges and the tip") // identity
		assert.InDelta(t, 2*3, m.FaceEdgeM(Open), 1e-12, "both faces end at the root")
	}
}

// The sum over thin facets, an independent way, comes to the same area.
func TestWingAgainstFacets(t *testing.T) {
	w := plainWing("naca", 2.4, 1.1, 3, 35, 0.15, 0.08)
	w.CamberRatio, w.CamberPositionRatio = 0.04, pointer(0.3)
	m := must(t, w)
	root, tip := w.sections()
	aft := 3 * math.Tan(35*math.Pi/180)
	facets := func(side float64, n int) float64 {
		corner := func(i, j int) vector {
			u, eta := float64(i)/float64(n), float64(j)/float64(n)
			p, _ := root.at(u, side)
			q, _ := tip.at(u, side)
			return vector{(1-eta)*2.4*p.x + eta*(aft+1.1*q.x), 3 * eta, (1-eta)*2.4*p.z + eta*1.1*q.z}
		}
		half := func(a, b, c vector) float64 {
			var u, v vector
			floats.SubTo(u[:], b[:], a[:])
			floats.SubTo(v[:], c[:], a[:])
			n := u.cross(v)
			return math.Sqrt(n.dot(n)) / 2
		}
		sum := 0.0
		for i := range n {
			for j := range n {
				a, b, c, d := corner(i, j), corner(i+1, j), corner(i+1, j+1), corner(i, j+1)
				sum += half(a, b, c) + half(a, c, d)
			}
		}
		return sum
	}
	for i, side := range []float64{1, -1} {
		coarse, fine := facets(side, 200), facets(side, 400)
		assert.InEpsilon(t, fine+(fine-coarse)/3, m.Faces[i].AreaM2, 2e-7, m.Faces[i].Name)
	}
}

func TestWingEdges(t *testing.T) {
	w := plainWing("double_wedge", 2, 1, 3, 0, 0.1, 0.1)
	m := must(t, w)
	// Identities: 3 and √10 for the edges, 2·√(½²+0.05²) per surface and chord.
	assert.InDelta(t, 3+math.Sqrt(10), m.Edges[0].LengthM, 1e-12)
	assert.Equal(t, [2]string{"upper", "lower"}, m.Edges[0].Between)
	surface := 2 * math.Hypot(0.5, 0.05)
	assert.InDelta(t, 2*3*surface, m.FaceEdgeM(Open), 1e-12)
	w.Tip = "capped"
	m = must(t, w)
	assert.InDelta(t, 2*2*surface, m.FaceEdgeM(Open), 1e-12)
	assert.InDelta(t, 2*surface, m.FaceEdgeM("tip"), 1e-12)
	assert.InDelta(t, 0.1/2, m.Faces[2].AreaM2, 1e-13) // identity: half of thickness times chord
}

func TestPointedWingHasNoTip(t *testing.T) {
	w := plainWing("naca", 3, 0, 2, 50, 0.06, 0.06)
	w.Tip = "capped"
	m := must(t, w)
	assert.Len(t, m.Faces, 2)
	assert.Zero(t, m.FaceEdgeM("tip"))
}

func TestOpenTrailingEdgeIsAFace(t *testing.T) {
	w := plainWing("naca", 2, 2, 5, 0, 0.12, 0.12)
	w.TrailingEdge, w.Tip = "open", "capped"
	m := must(t, w)
	assert.Equal(t, "trailing_edge", m.Faces[2].Name)
	assert.InEpsilon(t, 0.00252*2*5, m.Faces[2].AreaM2, 1e-12)                                   // reference G3.15, computed
	assert.InEpsilon(t, 10*2.03927163304, m.AreaM2()-m.Faces[2].AreaM2-m.Faces[3].AreaM2, 1e-10) // G3.03, open
	assert.InEpsilon(t, 0.685083333333*0.12*4, m.Faces[3].AreaM2, 1e-11)                         // G3.16, open
	assert.InDelta(t, 2*5+2*0.00252*2, m.FaceEdgeM("trailing_edge"), 1e-12)
	swept := plainWing("naca", 2, 2, 5, 60, 0.12, 0.12)
	swept.TrailingEdge = "open"
	assert.InEpsilon(t, 2*0.00252*2*5, must(t, swept).Faces[2].AreaM2, 1e-12, "the base follows the swept edge")
}

func TestTipThicknessIsThatOfTheRootUnlessGiven(t *testing.T) {
	given := plainWing("naca", 2, 1, 3, 10, 0.12, 0.12)
	absent := plainWing("naca", 2, 1, 3, 10, 0.12, 0.12)
	absent.TipThicknessRatio = nil
	assert.Equal(t, must(t, given), must(t, absent))
}

func TestWingChecks(t *testing.T) {
	for i, c := range []struct {
		text string
		want map[string]string
	}{
		{`{}`, map[string]string{"/root_chord_m": "out_of_range", "/tip_chord_m": "required", "/span_m": "out_of_range", "/root_thickness_ratio": "required"}},
		{`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "root_thickness_ratio": 0.6, "sweep_le_deg": 90}`,
			map[string]string{"/root_thickness_ratio": "out_of_range", "/sweep_le_deg": "out_of_range"}},
		{`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "section": "flat", "root_thickness_ratio": 0.1, "tip": "round", "trailing_edge": "blunt"}`,
			map[string]string{"/root_thickness_ratio": "not_applicable", "/tip": "unknown_kind", "/trailing_edge": "unknown_kind"}},
		{`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "section": "nurbs", "root_thickness_ratio": 0.1}`, map[string]string{"/section": "unknown_kind"}},
		{`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "root_thickness_ratio": 0.1, "camber_ratio": 0.02}`, map[string]string{"/camber_position_ratio": "required"}},
		{`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "section": "biconvex", "root_thickness_ratio": 0.1, "camber_ratio": 0.02, "camber_position_ratio": 0.4, "trailing_edge": "open"}`,
			map[string]string{"/camber_ratio": "not_applicable", "/camber_position_ratio": "not_applicable", "/trailing_edge": "not_applicable"}},
		{`{"root_chord_m": 2, "tip_chord_m": 1, "span_m": 3, "section": "flat"}`, map[string]string{}},
	} {
		assert.Equal(t, c.want, codes(read(t, "wing", c.text)), "case %d", i)
	}
}

func BenchmarkWing(b *testing.B) {
	plain := plainWing("naca", 3, 1.2, 6, 25, 0.16, 0.10)
	cambered := plainWing("naca", 3, 1.2, 6, 25, 0.16, 0.10)
	cambered.CamberRatio, cambered.CamberPositionRatio = 0.02, pointer(0.4)
	b.Run("symmetric", func(b *testing.B) {
		for b.Loop() {
			plain.Measure()
		}
	})
	b.Run("cambered", func(b *testing.B) {
		for b.Loop() {
			cambered.Measure()
		}
	})
}
