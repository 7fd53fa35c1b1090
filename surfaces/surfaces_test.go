package surfaces

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// must measures a shape that has no fault.
func must(t testing.TB, s Shape) Measurement {
	t.Helper()
	m, err := Measure(s)
	require.NoError(t, err)
	return m
}

// codes measures a shape and returns the code of the first fault of each pointer.
func codes(s Shape) map[string]string {
	found := map[string]string{}
	_, err := Measure(s)
	if faults, ok := err.(Faults); ok {
		for _, f := range faults {
			if found[f.Pointer] == "" {
				found[f.Pointer] = f.Code
			}
		}
	}
	return found
}

// read decodes a shape from JSON over the defaults of its kind.
func read(t testing.TB, kind, text string) Shape {
	t.Helper()
	s, ok := New(kind)
	require.True(t, ok)
	require.NoError(t, json.Unmarshal([]byte(text), s))
	return s
}

func TestNewKnowsOnlyTheKindsListed(t *testing.T) {
	_, ok := New("banana")
	assert.False(t, ok)
	for _, k := range Kinds() {
		s, ok := New(k.Name)
		require.True(t, ok)
		assert.Equal(t, k.Name, s.Kind())
	}
}

func TestEveryKindIsDescribed(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			assert.False(t, seen[k.Name], "the name is used twice")
			seen[k.Name] = true
			assert.NotEmpty(t, k.Doc)
			require.NotEmpty(t, k.Fields)
			for _, f := range k.Fields {
				assert.NotEmpty(t, f.Doc, f.Name)
				if f.Unit == "m" && f.Name != "outline" && f.Name != "profile" {
					assert.NotEmpty(t, f.Limits, "%s is a length without limits", f.Name)
				}
			}
			m := must(t, k.Example)
			assert.Equal(t, k.Name, k.Example.Kind())
			for _, f := range m.Faces {
				assert.Contains(t, k.Faces, f.Name)
			}
		})
	}
}

// Every measurement says how it was found, in terms that are numbers, and
// bounds its faces by faces that it has.
func TestEveryExampleIsExplained(t *testing.T) {
	for _, k := range Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			m := must(t, k.Example)
			assert.NotEmpty(t, m.Method)
			assert.InDelta(t, 5, m.AccuracyPercent, 15)
			assert.Greater(t, m.AccuracyPercent, 0.0)
			names := map[string]bool{Open: true}
			for _, f := range m.Faces {
				assert.Greater(t, f.AreaM2, 0.0)
				names[f.Name] = true
			}
			for _, e := range m.Edges {
				assert.True(t, names[e.Between[0]] && names[e.Between[1]], "%v", e.Between)
				assert.Greater(t, e.LengthM, 0.0)
			}
			require.GreaterOrEqual(t, len(m.Working), len(m.Faces))
			for _, w := range m.Working {
				assert.NotEmpty(t, w.Formula)
				assert.NotEmpty(t, w.Source)
			}
			_, err := json.Marshal(m)
			assert.NoError(t, err, "a term is not a number")
		})
	}
}

func TestEveryWayIsKnown(t *testing.T) {
	known := map[string]float64{}
	for _, w := range Ways() {
		assert.NotEmpty(t, w.Basis)
		known[w.Name] = w.AccuracyPercent
	}
	for _, way := range []string{wayGiven, wayTaped, waySection, wayStations, wayPressed, wayCatalogue, waySharp} {
		assert.Contains(t, known, way)
		assert.Equal(t, known[way], accuracy(way))
	}
}

func TestMeasureListsAllFaults(t *testing.T) {
	_, err := Measure(&Cylinder{Round: Round{RadiusM: pointer(-1.0), DiameterM: pointer(2.0)}, Ends: 3})
	require.Error(t, err)
	assert.Equal(t, map[string]string{
		"/radius_m": "out_of_range", "/length_m": "out_of_range", "/ends": "out_of_range", "/diameter_m": "inconsistent",
	}, codes(&Cylinder{Round: Round{RadiusM: pointer(-1.0), DiameterM: pointer(2.0)}, Ends: 3}))
	assert.Contains(t, err.Error(), "/ends: ends is 3; it must be at least 0 and at most 2 (out_of_range)")
}

func TestMeasurementCountsEachLineOnce(t *testing.T) {
	m := must(t, &Box{LengthM: 3, WidthM: 2, HeightM: 1})
	assert.InDelta(t, 22, m.AreaM2(), 1e-12)         // identity 2(lw+lh+wh)
	assert.InDelta(t, 24, m.EdgeM(), 1e-12)          // identity 4(l+w+h)
	assert.InDelta(t, 10, m.FaceEdgeM("top"), 1e-12) // identity 2(l+w)
	assert.InDelta(t, 6, m.FaceEdgeM("front"), 1e-12)
	assert.Zero(t, m.FaceEdgeM("inside"))
	around := 0.0
	for _, f := range m.Faces {
		around += m.FaceEdgeM(f.Name)
	}
	assert.InDelta(t, 2*m.EdgeM(), around, 1e-12, "every line of a closed box has two faces")
}
