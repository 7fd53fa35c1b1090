package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func tubeOf(exponent, width, height float64, x ...float64) *Body {
	b := newBody()
	for _, at := range x {
		b.Stations = append(b.Stations, Station{XM: at, WidthM: width, HeightM: height, Exponent: &exponent})
	}
	return b
}

// Identity: a tube of one section unrolls to a rectangle.
func TestStripsOnATube(t *testing.T) {
	for _, c := range []struct{ exponent, width, height, strip float64 }{
		{1, 0.7, 1.9, 0.4}, {2, 1, 1, 0.5}, {2, 0.5, 2, 0.02}, {3.3, 1.35, 0.94, 0.7}, {8, 2, 0.6, 0.31},
	} {
		b, a := tubeOf(c.exponent, c.width, c.height, 0, 1.5, 4), c.strip
		for _, along := range []string{"top", "bottom"} {
			m := part(t, b, strip(along, a))
			near(t, 4*a, m.areaOf("left"), along)
			near(t, 4, edgeLength(m, "left", "right"), along)
			near(t, 2*4, cuts(m), along)
			near(t, 2*a, edgeLength(m, "right", Open), along)
			between := Part{Along: along, WidthM: a, FromM: pointer(1.0), ToM: pointer(2.25)}
			m = part(t, b, between)
			near(t, 1.25*a, m.areaOf("right"), along)
			near(t, 2*(1.25+2*a), cuts(m), along)
		}
		girth := must(t, b).areaOf("left") / 4
		for _, end := range []string{"nose", "tail"} {
			m := part(t, b, strip(end, a*3))
			near(t, 3*a*girth, m.areaOf("left"), end)
			near(t, 2*girth, cuts(m), end)
			near(t, 6*a, edgeLength(m, "left", "right"), end)
		}
	}
}

// Of full width, a strip along any line is the skin.
func TestStripsOfFullWidthAreTheBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawnBody(t)
		whole, err := Measure(b)
		require.NoError(t, err)
		for _, along := range []string{rapid.SampledFrom([]string{"top", "bottom", "nose", "tail"}).Draw(t, "line")} {
			m := part(t, b, strip(along, 100))
			// To 1e-6 on bays as steep as are drawn here; 1e-9 on a tube, above.
			assert.InEpsilon(t, whole.areaOf("left"), m.areaOf("left"), 1e-6, along)
			assert.Zero(t, cuts(m), along)
			assert.InEpsilon(t, edgeLength(whole, "left", "right"), edgeLength(m, "left", "right"), 1e-8, along)
		}
	})
}

// Identity: on a round cone, a strip along the base is a frustum, one along the
// top lies between two lines, and near the point it goes right round.
func TestStripAtTheEndOfACone(t *testing.T) {
	cone := newBody()
	cone.Stations = []Station{{XM: 0}, {XM: 1, WidthM: 1, HeightM: 1}, {XM: 4, WidthM: 4, HeightM: 4}}
	slant := math.Hypot(4, 2)
	m := part(t, cone, strip("tail", 1.3))
	full := math.Pi * 2 * slant
	k := (slant - 1.3) / slant
	assert.InDelta(t, full*(1-k*k), m.AreaM2(), 1e-9)
	assert.InDelta(t, 2*math.Pi*2*k, cuts(m), 1e-9)
	m = part(t, cone, strip("nose", 2.1))
	k = 2.1 / slant
	assert.InDelta(t, full*k*k, m.AreaM2(), 1e-9)
	top := part(t, cone, strip("top", math.Pi/4))
	assert.InDelta(t, 2*math.Pi*2*k, cuts(m), 1e-9)
	// Where the half outline is shorter than the strip, the skin is taken whole.
	whole := math.Pi / 4 / (math.Pi / 2 * 1) * 1 // x at which π·x/2 = π/4
	assert.InDelta(t, full*whole*whole/16+2*(math.Pi/4)*slant*(1-whole/4), top.AreaM2(), 1e-8)
}

func TestStripsThatABodyCannotHave(t *testing.T) {
	step := tubeOf(2, 1, 1, 0, 2, 2, 4)
	for i := range step.Stations[:2] {
		step.Stations[i].WidthM = 0.6
		step.Stations[i].HeightM = 0.6
	}
	for p, want := range map[*Part]string{
		{Along: "top", WidthM: 0.1}:  "step at 2 m; give the strip from one step to the next",
		{Along: "nose", WidthM: 2.1}: "reaches the step at",
		{Along: "tail", WidthM: 2.1}: "reaches the step at",
	} {
		_, err := MeasurePart(step, *p)
		assert.ErrorContains(t, err, want)
	}
	assert.InDelta(t, 2*0.1*2, part(t, step, Part{Along: "top", WidthM: 0.1, FromM: pointer(2.0)}).AreaM2(), 1e-9)
	assert.InDelta(t, 1.9*math.Pi, part(t, step, strip("tail", 1.9)).AreaM2(), 1e-9)
	long := newBody()
	for i := range 150 {
		long.Stations = append(long.Stations, Station{XM: float64(i), WidthM: 1, HeightM: 1})
	}
	_, err := MeasurePart(long, strip("top", 0.1))
	assert.ErrorContains(t, err, "more than 100 stations")
}
