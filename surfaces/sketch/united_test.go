package sketch

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
)

// shoelace is the area within closed lines, in mm² on paper, without sign.
func shoelace(line []point) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += line[i-1].x*line[i].y - line[i].x*line[i-1].y
	}
	return math.Abs(sum) / 2
}

// Holes that overlap are drawn as the one hole that they are: as many lines as
// there are holes, of the area and the rim that are measured.
func TestOverlappingHolesAreDrawnAsOne(t *testing.T) {
	round := func(d, x, y float64) surfaces.Hole { return surfaces.Hole{DiameterM: &d, XM: &x, YM: &y} }
	slot := surfaces.Hole{WidthM: pointer(0.3), HeightM: pointer(0.1), CornerRadiusM: pointer(0.04), XM: pointer(0.5), YM: pointer(0.4)}
	ragged := surfaces.Hole{Outline: [][2]float64{{0.6, 0.3}, {0.6, 0.5}, {0.75, 0.45}}}
	s := &surfaces.Panel{WidthM: pointer(1.2), HeightM: pointer(0.8), Sides: 1, Holes: []surfaces.Hole{
		round(0.2, 0.4, 0.4), slot, ragged, round(0.1, 1, 0.6), round(0.1, 1.1, 0.6), round(0.15, 0.2, 0.2),
	}}
	p := wellMade(t, sketched(t, s, SI))
	k := p.perMetre(t)
	area, rims, lines := 0.0, 0.0, 0
	for _, e := range p.paths() {
		if e.Class != "sketch-outline" || e.ID != "" {
			continue
		}
		for _, line := range trace(t, e.D) {
			lines++
			area += shoelace(line) / k / k
			rims += lengthOf([][]point{line}) / k
		}
	}
	m, err := surfaces.Measure(s)
	require.NoError(t, err)
	assert.Equal(t, 3, lines, "three that overlap, two that touch in a point, and one alone")
	assert.InEpsilon(t, 1.2*0.8-m.AreaM2(), area, 2e-3)
	assert.InEpsilon(t, m.EdgeM()-2*(1.2+0.8), rims, 2e-3)
	assert.True(t, p.says("overlap or touch are drawn as one"))
	for _, text := range []string{"A Ø0.2", "B 0.3×0.1 R0.04", "0.4", "0.2"} {
		assert.True(t, p.says(text), text)
	}
}

// offLines checks that no line, arrow or outline runs through a dimension.
func offLines(t require.TestingT, p picture) {
	for _, e := range p.texts() {
		if e.Class != "sketch-dimension" {
			continue
		}
		b := e.box()
		inner := bounds{b.low.plus(0.3, 0.3), b.high.plus(-0.3, -0.3-descent)} // figures stand on the base line
		if strings.HasPrefix(e.Transform, "rotate") {
			inner = bounds{b.low.plus(0.3, 0.3), b.high.plus(-0.3-descent, -0.3)}
		}
		for _, way := range p.paths() {
			for _, line := range trace(t, way.D) {
				for i := 1; i < len(line); i++ {
					require.False(t, crosses(inner, line[i-1], line[i]), "a %s runs through %q: %s", way.Class, e.Text, p.Desc)
				}
			}
		}
	}
}

// crosses says whether a straight line passes through a box (Liang and Barsky's
// clipping, from memory).
func crosses(b bounds, p, q point) bool {
	low, high := 0.0, 1.0
	for _, c := range [][2]float64{{p.x - q.x, p.x - b.low.x}, {q.x - p.x, b.high.x - p.x}, {p.y - q.y, p.y - b.low.y}, {q.y - p.y, b.high.y - p.y}} {
		switch {
		case c[0] == 0 && c[1] < 0:
			return false
		case c[0] < 0:
			low = max(low, c[1]/c[0])
		case c[0] > 0:
			high = min(high, c[1]/c[0])
		}
	}
	return low < high
}

// Texts keep clear of each other on boxes and panels as thin as they may be in
// any direction.
func TestThinBoxesAndPanelsAreWellMade(t *testing.T) {
	sizes := []float64{0.001, 0.004, 0.02, 0.13, 1, 7.5, 60, 500}
	for _, system := range []System{SI, US} {
		for _, a := range sizes {
			for _, b := range sizes {
				for _, c := range sizes {
					offLines(t, wellMade(t, sketched(t, &surfaces.Box{LengthM: a, WidthM: b, HeightM: c}, system)))
				}
				for sides := 1; sides <= 2; sides++ {
					for _, thickness := range []*float64{nil, pointer(0.001), pointer(1.6), pointer(1000.0)} {
						offLines(t, wellMade(t, sketched(t, &surfaces.Panel{WidthM: &a, HeightM: &b, Sides: sides, ThicknessMM: thickness}, system)))
					}
				}
				if d := min(a, b) / 3; d >= 0.001 {
					x, y := a*0.4, b*0.5
					wellMade(t, sketched(t, &surfaces.Panel{WidthM: &a, HeightM: &b, Sides: 1, Holes: []surfaces.Hole{
						{DiameterM: &d, XM: &x, YM: &y}, {DiameterM: &d, XM: pointer(x + d/2), YM: &y},
					}}, system))
				}
			}
		}
	}
}
