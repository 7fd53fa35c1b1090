package surfaces

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Identities: a strip on a tube is a band, on a flat end a ring, on a cone a
// frustum, on a sphere the zone between two angles.
func TestStripsOnRoundShapes(t *testing.T) {
	tube := &Cylinder{Round: Round{RadiusM: pointer(0.5)}, LengthM: 3, Ends: 2}
	m := part(t, tube, strip("end_1", 0.2))
	assert.InDelta(t, math.Pi*0.2, m.areaOf("side"), 1e-12)
	assert.InDelta(t, math.Pi*(0.25-0.09), m.areaOf("end_1"), 1e-12)
	assert.Zero(t, m.areaOf("end_2"))
	assert.InDelta(t, math.Pi, edgeLength(m, "side", "end_1"), 1e-12)
	assert.InDelta(t, math.Pi, edgeLength(m, "side", Cut), 1e-12)
	assert.InDelta(t, 0.6*math.Pi, edgeLength(m, "end_1", Cut), 1e-12)

	cone := &Frustum{Radius1M: 0.3, Radius2M: pointer(0.6), LengthM: 0.4}
	m = part(t, cone, strip("end_2", 0.25)) // half of the slant of 0.5
	assert.InDelta(t, math.Pi*(0.45+0.6)*0.25, m.areaOf("side"), 1e-12)
	assert.InDelta(t, 1.2*math.Pi, edgeLength(m, "side", Open), 1e-12)

	half := &Cap{Round: Round{RadiusM: pointer(1.0)}, HeightM: 1}
	m = part(t, half, strip("rim", math.Pi/6))
	assert.InDelta(t, 2*math.Pi*0.5, m.areaOf("outside"), 1e-12)
	assert.InDelta(t, 2*math.Pi*math.Cos(math.Pi/6), cuts(m), 1e-12)

	nose := &Nose{Round: Round{RadiusM: pointer(0.3)}, Profile: "power", Exponent: pointer(1.0), LengthM: 0.4}
	assert.InDelta(t, math.Pi*(0.15+0.3)*0.25, part(t, nose, strip("base", 0.25)).AreaM2(), 1e-12)

	tank := &Vessel{Round: Round{RadiusM: pointer(1.0)}, LengthM: 2, Head: "hemisphere"}
	m = part(t, tank, strip("head_2", math.Pi/6))
	assert.InDelta(t, 2*math.Pi*math.Pi/6, m.areaOf("side"), 1e-12)
	assert.InDelta(t, 2*math.Pi*0.5, m.areaOf("head_2"), 1e-12)

	turned := &Revolved{Profile: [][2]float64{{0, 0}, {0, 1}, {3, 1}}}
	assert.InDelta(t, 2*math.Pi*2.5, part(t, turned, strip("end_2", 2.5)).AreaM2(), 1e-12)
	assert.InDelta(t, 2*math.Pi*3+math.Pi*(1-0.25), part(t, turned, strip("end_2", 3.5)).AreaM2(), 1e-12, "round the corner onto the end")
}

// Identity: on a box the strip round a face is a frame on it and a band beside it.
func TestStripsOnFlatSheetsAndBoxes(t *testing.T) {
	box := &Box{LengthM: 3, WidthM: 2, HeightM: 1}
	m := part(t, box, strip("left", 0.1))
	assert.InDelta(t, 3-2.8*0.8, m.areaOf("left"), 1e-12)
	assert.InDelta(t, 0.3, m.areaOf("top"), 1e-12)
	assert.InDelta(t, 0.1, m.areaOf("front"), 1e-12)
	assert.InDelta(t, 3, edgeLength(m, "left", "top"), 1e-12)
	assert.InDelta(t, 0.1, edgeLength(m, "top", "front"), 1e-12)

	sheet := &Corrugated{WidthM: 2, LengthM: 3, PitchMM: 100, DepthMM: 50, Form: "arc", Sides: 2}
	across := math.Pi / 2 * 2 // half circles
	m = part(t, sheet, strip("outline", 0.1))
	assert.InDelta(t, 3*across-2.8*(across-0.2), m.areaOf("back"), 1e-12)
	assert.InDelta(t, 2*(3+across), edgeLength(m, "front", "back"), 1e-12)
}

// A strip of more than full width is all that joins the line: the whole shape.
func TestWideStripsOnRoundShapesAreTheWhole(t *testing.T) {
	for kind, draw := range divisible() {
		if k, _ := New(kind); k == nil {
			continue
		}
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := draw(t)
				striped, ok := s.(Striped)
				if !ok || kind == "wing" || kind == "body" || kind == "box" {
					return // those have tests of their own; a box has no line that all faces touch
				}
				whole, err := Measure(s)
				require.NoError(t, err)
				for _, line := range striped.Lines() {
					if line.Name == "holes" {
						continue
					}
					m := part(t, s, strip(line.Name, 400))
					near(t, whole.AreaM2(), m.AreaM2(), line.Name)
					assert.InDelta(t, 0, cuts(m), 1e-7*whole.EdgeM(), line.Name)
				}
			})
		})
	}
}

// Whatever part is asked of whatever shape, the answer is finite or a fault that
// says where.
func TestAnyPartOfAnyShape(t *testing.T) {
	for kind, draw := range drawn() {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				s := draw(t)
				var p Part
				for _, bound := range []**float64{&p.FromM, &p.ToM, &p.FromZM, &p.ToZM} {
					if rapid.Bool().Draw(t, "bounded") {
						*bound = pointer(float64(rapid.IntRange(-40, 120).Draw(t, "bound")) / 20)
					}
				}
				if rapid.IntRange(0, 3).Draw(t, "strip") == 0 {
					p.Along, p.WidthM = rapid.SampledFrom([]string{"end_1", "end_2", "rim", "base", "head_1", "outline", "holes", "top", "front", "root", "tip", "sky"}).Draw(t, "along"), number(t, 0.01, 3, "width")
				}
				m, err := MeasurePart(s, p)
				if err != nil {
					var faults Faults
					require.True(t, errors.As(err, &faults))
					for _, f := range faults {
						assert.Contains(t, []string{"/from_m", "/to_m", "/from_z_m", "/to_z_m", "/strip", "/strip/along", "/strip/width_m"}, f.Pointer)
						assert.NotEmpty(t, f.Detail)
					}
					return
				}
				whole, err := Measure(s)
				require.NoError(t, err)
				for _, f := range m.Faces {
					assert.LessOrEqual(t, f.AreaM2, whole.areaOf(f.Name)*(1+1e-8)+1e-12, f.Name)
				}
				assert.False(t, math.IsNaN(m.EdgeM()) || math.IsInf(m.EdgeM(), 0))
			})
		})
	}
}
