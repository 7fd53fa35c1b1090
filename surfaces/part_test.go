package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// divisible lists the generators of the kinds that can be divided.
func divisible() map[string]func(*rapid.T) Divisible {
	list := map[string]func(*rapid.T) Divisible{}
	for _, k := range Kinds() {
		if _, ok := k.Example.(Divisible); ok {
			draw := drawn()[k.Name]
			list[k.Name] = func(t *rapid.T) Divisible {
				s := draw(t)
				if v, ok := s.(*Vessel); ok && v.LengthM < 1e-3 {
					v.LengthM = 1 // two flat heads without anything between are no body
				}
				return s.(Divisible)
			}
		}
	}
	return list
}

func part(t require.TestingT, s Shape, p Part) Measurement {
	m, err := MeasurePart(s, p)
	require.NoError(t, err)
	return m
}

func edgeLength(m Measurement, a, b string) float64 {
	for _, e := range m.Edges {
		if e.Between == [2]string{a, b} || e.Between == [2]string{b, a} {
			return e.LengthM
		}
	}
	return 0
}

// alike asserts that parts together are the whole, face by face and line by
// line, but for the cuts between them; to 1e-8 of the whole's size.
func alike(t *rapid.T, whole Measurement, parts ...Measurement) {
	area := 1e-8 * whole.AreaM2()
	for _, f := range whole.Faces {
		sum := 0.0
		for _, p := range parts {
			sum += p.areaOf(f.Name)
		}
		assert.InDelta(t, f.AreaM2, sum, area, f.Name)
	}
	length := 1e-7 * math.Max(whole.EdgeM(), math.Sqrt(whole.AreaM2()))
	for _, p := range parts {
		for _, f := range p.Faces {
			assert.NotZero(t, whole.areaOf(f.Name), f.Name)
		}
		for _, e := range p.Edges {
			if e.Between[1] != Cut {
				assert.NotZero(t, edgeLength(whole, e.Between[0], e.Between[1]), "%v", e)
			}
		}
	}
	for _, e := range whole.Edges {
		if e.Between[1] == Cut {
			continue // each part has its own
		}
		sum := 0.0
		for _, p := range parts {
			sum += edgeLength(p, e.Between[0], e.Between[1])
		}
		assert.InDelta(t, e.LengthM, sum, length, "%v", e)
	}
}

// cuts is the length of the lines where a part ends within a face.
func cuts(m Measurement) float64 { return m.FaceEdgeM(Cut) }

func TestTheWholeIsAPart(t *testing.T) {
	for kind, draw := range divisible() {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := draw(t)
				e := s.Extent()
				m := part(t, s, Part{FromM: &e.From, ToM: &e.To})
				whole, err := Measure(s)
				require.NoError(t, err)
				alike(t, whole, m)
				assert.Zero(t, cuts(m))
				assert.Equal(t, whole.AccuracyPercent, m.AccuracyPercent)
			})
		})
	}
}

// Cutting at a station or at a height changes nothing but the cut, which both
// parts have.
func TestBaysAddUpToTheWhole(t *testing.T) {
	for kind, draw := range divisible() {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := draw(t)
				e := s.Extent()
				at := e.From + (e.To-e.From)*number(t, 0.02, 0.98, "station")
				whole, err := Measure(s)
				require.NoError(t, err)
				fore, aft := part(t, s, Part{ToM: &at}), part(t, s, Part{FromM: &at})
				alike(t, whole, fore, aft)
				assert.InDelta(t, cuts(fore), cuts(aft), 1e-7*cuts(fore))
				if e.Height == "" {
					return
				}
				z := e.Low + (e.High-e.Low)*float64(rapid.IntRange(1, 99).Draw(t, "height"))/100
				low, high := part(t, s, Part{ToZM: &z}), part(t, s, Part{FromZM: &z})
				alike(t, whole, low, high)
				assert.InDelta(t, cuts(low), cuts(high), 1e-6*cuts(low))
				alike(t, fore, part(t, s, Part{ToM: &at, ToZM: &z}), part(t, s, Part{ToM: &at, FromZM: &z}))
			})
		})
	}
}

func TestPartsScale(t *testing.T) {
	for kind, draw := range divisible() {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s, k := draw(t), number(t, 0.3, 3, "k")
				large := scaled(s, k).(Divisible)
				// In whole percents: a line at a height that hardly grazes a round shape is ill-conditioned.
				a, b := float64(rapid.IntRange(0, 45).Draw(t, "from"))/100, float64(rapid.IntRange(55, 100).Draw(t, "to"))/100
				window := func(s Divisible) Part {
					e := s.Extent()
					p := Part{FromM: pointer(e.From + a*(e.To-e.From)), ToM: pointer(e.From + b*(e.To-e.From))}
					if e.Height != "" {
						p.FromZM, p.ToZM = pointer(e.Low+a*(e.High-e.Low)), pointer(e.Low+b*(e.High-e.Low))
					}
					return p
				}
				one, more := part(t, s, window(s)), part(t, large, window(large))
				assert.InDelta(t, k*k*one.AreaM2(), more.AreaM2(), 1e-8*more.AreaM2())
				assert.InDelta(t, k*one.EdgeM(), more.EdgeM(), 1e-7*more.EdgeM())
			})
		})
	}
}
