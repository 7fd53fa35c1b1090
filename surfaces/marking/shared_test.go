package marking

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces"
	"filmbuild/surfaces/planar"
)

// Under another colour the whole figure is painted once more (identity).
func TestUnderColour(t *testing.T) {
	f := newRoundel()
	f.SizeM, f.Rings = 1, []RoundelRing{{1, "red"}, {2, "white"}, {3, "blue"}}
	bare, err := Measure(f)
	require.NoError(t, err)
	assert.Equal(t, bare.Colours, bare.Painted, "on the bare base each colour covers what it shows")
	f.UnderColour = "white"
	m, err := Measure(f)
	require.NoError(t, err)
	require.Len(t, m.Painted, 3)
	assert.Equal(t, "white", m.Painted[0].Colour)
	assert.InEpsilon(t, m.AreaM2, m.Painted[0].AreaM2, 1e-12)
	assert.InDelta(t, 0, m.Painted[0].CentroidXM, 1e-12)
	assert.Equal(t, bare.Colours, m.Colours, "what is seen stays")
	f.UnderColour = "grey"
	m, err = Measure(f)
	require.NoError(t, err)
	assert.Len(t, m.Painted, 4)
	f.UnderColour = "Base!"
	assert.Equal(t, map[string]string{"/under_colour": "wrong_type"}, faultsOf(f))
}

// The centroid goes with the figure (identity), and that of the whole is the
// mean of the colours' by area.
func TestCentroids(t *testing.T) {
	eachKind(t, func(t *rapid.T, f Figure) {
		m, err := Measure(f)
		require.NoError(t, err)
		x, y := 0.0, 0.0
		for _, c := range m.Colours {
			x, y = x+c.AreaM2*c.CentroidXM, y+c.AreaM2*c.CentroidYM
			size := m.WidthM + m.HeightM
			if c.AreaM2 > 1e-6*size*size {
				assert.True(t, c.CentroidXM > m.LeftM-1e-6*size && c.CentroidXM < m.LeftM+m.WidthM+1e-6*size, "%s lies in the box", c.Colour)
				assert.True(t, c.CentroidYM > m.BottomM-1e-6*size && c.CentroidYM < m.BottomM+m.HeightM+1e-6*size, "%s lies in the box", c.Colour)
			}
			assert.GreaterOrEqual(t, c.Parts, 1)
		}
		assert.InDelta(t, x/m.AreaM2, m.CentroidXM, 1e-9*(m.WidthM+math.Abs(m.LeftM)))
		assert.InDelta(t, y/m.AreaM2, m.CentroidYM, 1e-9*(m.HeightM+math.Abs(m.BottomM)))
	})
}

// A half disc has its centroid at 4·r/(3·π) (identity).
func TestCentroidOfHalfDisc(t *testing.T) {
	f := newOutline()
	f.Path, f.Colour = "M-300 0A300 300 0 0 1 300 0Z", "red"
	m, err := Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 4*0.3/(3*math.Pi), m.CentroidYM, 1e-9)
	assert.InDelta(t, 0, m.CentroidXM, 1e-12)
}

// A disc seen from the side on a cylinder, against Simpson's rule in the angle,
// an independent way: area ∫ 2·√(r² − ρ²·sin²a)·ρ da.
func TestProjectedDisc(t *testing.T) {
	for _, axis := range []string{"level", "upright"} {
		f := newDisc()
		f.SizeM, f.Colour, f.SkinRadiusM, f.Sizes, f.SkinAxis = 0.8, "red", pointer(0.6), "projected", axis
		m, err := Measure(f)
		require.NoError(t, err)
		const steps = 200_000
		most, want := math.Asin(0.4/0.6), 0.0
		for i := range steps {
			a := most * (2*(float64(i)+0.5)/steps - 1)
			s := 0.6 * math.Sin(a)
			want += 2 * math.Sqrt(max(0, 0.16-s*s)) * 0.6 * 2 * most / steps
		}
		assert.InEpsilon(t, want, m.AreaM2, 1e-6, axis)
		round, along := m.HeightM, m.WidthM
		if axis == "upright" {
			round, along = along, round
		}
		assert.InEpsilon(t, 2*0.6*most, round, 1e-12, axis)
		assert.InEpsilon(t, 0.8, along, 1e-9, axis)
		assert.InDelta(t, 0, m.CentroidXM, 1e-9, axis)
		assert.InDelta(t, 0, m.CentroidYM, 1e-9, axis)
	}
}

// On a cylinder of great radius the skin is flat (identity), for every kind.
func TestGreatRadiusIsFlat(t *testing.T) {
	for _, k := range Kinds() {
		flat, err := Measure(k.Example)
		require.NoError(t, err)
		s := k.Example.shared()
		s.SkinRadiusM, s.Sizes = pointer(1000), "projected"
		laid, err := Measure(k.Example)
		require.NoError(t, err, k.Name)
		assert.InEpsilon(t, flat.AreaM2, laid.AreaM2, 1e-4, k.Name)
		assert.InEpsilon(t, flat.EdgeOnceM, laid.EdgeOnceM, 1e-4, k.Name)
		assert.Equal(t, flat.Islands, laid.Islands, k.Name)
		for i, c := range laid.Colours {
			assert.InEpsilon(t, flat.Colours[i].AreaM2, c.AreaM2, 1e-4, "%s %s", k.Name, c.Colour)
		}
	}
}

func TestFiguresTooGreatForTheirBody(t *testing.T) {
	f := newDisc()
	f.SizeM, f.Colour, f.SkinRadiusM = 1, "red", pointer(0.5)
	f.Sizes = "projected"
	_, err := Measure(f)
	var faults surfaces.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "/skin_radius_m", faults[0].Pointer)
	f.Sizes, f.SkinRadiusM = "skin", pointer(0.15)
	_, err = Measure(f)
	require.ErrorAs(t, err, &faults)
	f.SkinRadiusM = pointer(0.2)
	m, err := Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.4, m.Skin.ProjectedHeightM, 1e-12, "what lies beyond the horizon is not seen")
	f.Sizes, f.SkinRadiusM, f.SkinAxis = "projected", nil, "askew"
	assert.Equal(t, map[string]string{"/skin_radius_m": "required", "/skin_axis": "unknown_kind"}, faultsOf(f))
	_, err = SkinLength(3, 1)
	assert.Error(t, err)
	_, err = SkinLength(1, 0)
	assert.Error(t, err)
}

// Blocks arranged one by one are the figure arranged at once (identity).
func TestBlocksAreTheWhole(t *testing.T) {
	for _, kind := range []string{"lettering", "stencil"} {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				f := anyFigure(t, kind)
				apart, err := Arrange(f)
				require.NoError(t, err)
				once, err := planar.Arrange(f.Layers())
				require.NoError(t, err)
				assert.InEpsilon(t, once.Areas()[0].Area, apart.Areas()[0].Area, 1e-9)
				assert.InEpsilon(t, once.Lengths()[0].Length, apart.Lengths()[0].Length, 1e-8)
				assert.Equal(t, once.Holes(), apart.Holes())
				assert.InDelta(t, once.Box().Width(), apart.Box().Width(), 1e-9*once.Box().Width())
			})
		})
	}
}
