package published

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
)

func measurePanel(t *testing.T, p *surfaces.Panel) surfaces.Measurement {
	t.Helper()
	m, err := surfaces.Measure(p)
	require.NoError(t, err)
	return m
}

// TestGeometryG7 checks reference section 7, planar panels.
func TestGeometryG7(t *testing.T) {
	t.Run("G7.01 five corners", func(t *testing.T) {
		// The worked example of the shoelace formula (encyclopaedia article, from memory), A.
		m := measurePanel(t, &surfaces.Panel{Outline: [][2]float64{{1, 6}, {3, 1}, {7, 2}, {4, 4}, {8, 5}}, Sides: 1})
		assert.InEpsilon(t, 16.5, m.AreaM2(), exact)
		assert.InEpsilon(t, 24.30799514569929, m.EdgeM(), exact)
	})
	t.Run("G7.02 rectangle with a square hole", func(t *testing.T) {
		m := measurePanel(t, &surfaces.Panel{WidthM: num(4), HeightM: num(3), Sides: 1, Holes: []surfaces.Hole{
			{WidthM: num(1), HeightM: num(1), XM: num(2), YM: num(1.5)},
		}})
		assert.InEpsilon(t, 11, m.AreaM2(), exact, "identity, A")
		assert.InEpsilon(t, 18, m.EdgeM(), exact, "identity, A")
	})
	t.Run("G7.04 drilled panel with a slot", func(t *testing.T) {
		m := measurePanel(t, drilledPanel())
		assert.InEpsilon(t, 0.88510221587065, m.Faces[0].AreaM2, exact, "one face, computed, A")
		assert.InEpsilon(t, 6.4449555921539, m.FaceEdgeM("front"), exact, "outline and rims, computed, A")
		assert.InEpsilon(t, 1.7805163606888, m.AreaM2(), exact, "both faces and 1.6 mm edges, computed, A")
	})
	t.Run("G7.06 concave outline", func(t *testing.T) {
		m := measurePanel(t, &surfaces.Panel{Outline: [][2]float64{{0, 0}, {5, 0}, {11, 8}, {3, 2}, {0, 2}}, Sides: 1})
		assert.InEpsilon(t, 30, m.EdgeM(), exact, "published test value of a section-properties library, A")
	})
	t.Run("G7.07 bow tie", func(t *testing.T) {
		_, err := surfaces.Measure(&surfaces.Panel{Outline: [][2]float64{{0, 0}, {2, 2}, {2, 0}, {0, 2}}, Sides: 1})
		assert.ErrorContains(t, err, "self_crossing", "must be rejected, A")
	})
	t.Run("G7.05 flanged hole", func(t *testing.T) {
		runGeometry(t, []geometryCase{{"frustum", &surfaces.Frustum{Radius1M: 0.05, Radius2M: num(0.058), LengthM: 0.008}, "side", 0.00383865085857, exact, "computed, A"}})
	})
}

// drilledPanel is G7.04: 1.2 × 0.8 m, 1.6 mm thick, six holes of 90 mm and a
// slot of 250 × 150 mm with corners of 30 mm. Where they are does not matter.
func drilledPanel() *surfaces.Panel {
	p := &surfaces.Panel{WidthM: num(1.2), HeightM: num(0.8), Sides: 2, ThicknessMM: num(1.6)}
	for i := range 6 {
		p.Holes = append(p.Holes, surfaces.Hole{DiameterM: num(0.09), XM: num(0.15 + 0.18*float64(i)), YM: num(0.15)})
	}
	p.Holes = append(p.Holes, surfaces.Hole{WidthM: num(0.25), HeightM: num(0.15), CornerRadiusM: num(0.03), XM: num(0.6), YM: num(0.5)})
	return p
}
