package surfaces

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Identities: the strip inside a rectangle is a frame, inside a disc a ring;
// each corner that juts in adds a quarter disc.
func TestStripAlongAnOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := number(t, 1, 5, "width"), number(t, 1, 5, "height")
		a := number(t, 0.01, 0.49, "strip")
		m := part(t, &Panel{WidthM: &w, HeightM: &h, Sides: 2}, strip("outline", a))
		near(t, w*h-(w-2*a)*(h-2*a), m.areaOf("front"), "frame")
		near(t, w*h-(w-2*a)*(h-2*a), m.areaOf("back"), "frame behind")
		near(t, 2*(w+h), edgeLength(m, "front", "back"), "outline")
		near(t, 4*(w-2*a+h-2*a), cuts(m), "inner lines, front and back")

		disc := &Panel{WidthM: &w, HeightM: &w, CornerRadiusM: pointer(w / 2), Sides: 1}
		m = part(t, disc, strip("outline", a))
		near(t, math.Pi*(w*w/4-(w/2-a)*(w/2-a)), m.areaOf("front"), "ring")
		near(t, 2*math.Pi*(w/2-a), cuts(m), "inner circle")

		l := &Panel{Sides: 1, Outline: [][2]float64{{0, 0}, {3, 0}, {3, 1}, {1, 1}, {1, 3}, {0, 3}}}
		m = part(t, l, strip("outline", a))
		near(t, 12*a-5*a*a+math.Pi/4*a*a, m.areaOf("front"), "L")
	})
}

func TestStripWiderThanThePanelIsThePanel(t *testing.T) {
	p := drilled()
	whole := must(t, p)
	m := part(t, p, strip("outline", 1))
	assert.InDelta(t, whole.AreaM2(), m.AreaM2(), 1e-9)
	assert.InDelta(t, whole.EdgeM(), m.EdgeM(), 1e-9)
}

func drilled() *Panel {
	p := &Panel{WidthM: pointer(1.6), HeightM: pointer(1.0), CornerRadiusM: pointer(0.1), Sides: 2, ThicknessMM: pointer(3.0)}
	p.Holes = []Hole{roundHole(0.2, 0.4, 0.5), slot(0.3, 0.2, 0.05, 1, 0.5)}
	return p
}

// Identity: a band round a convex hole is its rim times the width and one disc.
func TestStripAlongHoles(t *testing.T) {
	m := part(t, drilled(), strip("holes", 0.05))
	round := math.Pi*0.2*0.05 + math.Pi*0.05*0.05
	rounded := (1.0-(8-2*math.Pi)*0.05)*0.05 + math.Pi*0.05*0.05
	assert.InDelta(t, round+rounded, m.areaOf("front"), 1e-12)
	assert.InDelta(t, (math.Pi*0.2+1.0-(8-2*math.Pi)*0.05)*0.003, m.areaOf("edges"), 1e-12, "the rims' own narrow face")
	plain := drilled()
	plain.Holes = nil
	_, err := MeasurePart(plain, strip("holes", 0.05))
	assert.ErrorContains(t, err, "no line")
}

// A band across a hole: closed form of a circle's segment.
func TestPanelBandAcrossAHole(t *testing.T) {
	p := square(2)
	p.ThicknessMM = pointer(10.0)
	p.Holes = []Hole{roundHole(1, 1, 1)}
	m := part(t, p, Part{FromM: pointer(1.0), ToM: pointer(1.25)})
	segment := 0.25*math.Sqrt(0.25-0.0625) + 0.25*math.Asin(0.5) // half the band's part of the hole, r = 0.5
	assert.InDelta(t, 0.5-segment, m.areaOf("front"), 1e-12)
	rim := 2 * 0.5 * math.Asin(0.5)
	assert.InDelta(t, (0.5+rim)*0.01, m.areaOf("edges"), 1e-12)
	assert.InDelta(t, 8*0.01, edgeLength(m, "edges", Cut), 1e-12, "each line cuts the narrow face four times")
	assert.InDelta(t, 1+2-2*math.Sqrt(0.1875), edgeLength(m, "front", Cut), 1e-12)
}

func TestStripOnTheLargestOutline(t *testing.T) {
	p := &Panel{Sides: 1}
	for i := range maxCorners {
		r, angle := 3+0.2*math.Cos(9*2*math.Pi*float64(i)/maxCorners), 2*math.Pi*float64(i)/maxCorners
		p.Outline = append(p.Outline, [2]float64{r * math.Cos(angle), r * math.Sin(angle)})
	}
	_, err := MeasurePart(p, strip("outline", 2))
	assert.ErrorContains(t, err, "overlaps itself at too many corners")
	start := time.Now()
	m := part(t, p, strip("outline", 0.1))
	assert.InEpsilon(t, 0.1*must(t, p).EdgeM(), m.AreaM2(), 0.02)
	assert.Less(t, time.Since(start), 20*time.Second)
	t.Log(time.Since(start))
}
