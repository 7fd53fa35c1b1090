package surfaces

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func strip(along string, width float64) Part { return Part{Along: along, WidthM: width} }

// On a flat wing the strip along an edge is a parallelogram, and one along root
// or tip a trapezoid. Identity.
func TestStripOnAFlatWing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := plainWing("flat", number(t, 1, 4, "root"), number(t, 1, 4, "tip"), number(t, 1, 9, "span"), number(t, -40, 40, "sweep"), 0.1, 0.1)
		width := number(t, 0.02, 0.3, "width")
		aft := math.Tan(w.SweepLEDeg*math.Pi/180) * w.SpanM
		leading, trailing := math.Hypot(w.SpanM, aft), math.Hypot(w.SpanM, aft+*w.TipChordM-w.RootChordM)
		for along, length := range map[string]float64{"leading_edge": leading, "trailing_edge": trailing} {
			m := part(t, w, strip(along, width))
			near(t, width*length, m.areaOf("upper"), along)
			near(t, width*length, m.areaOf("lower"), along)
			near(t, 2*length, cuts(m), along)
			near(t, length, edgeLength(m, "upper", "lower")-tipEnd(w, along, width), along)
		}
		atWidth := w.RootChordM + (*w.TipChordM-w.RootChordM)*width/w.SpanM
		near(t, (w.RootChordM+atWidth)/2*width, part(t, w, strip("root", width)).areaOf("lower"), "root")
	})
}

// tipEnd is how much of the tip chord a strip on a flat wing takes: the edge
// leans by an angle, and the strip is as wide as that makes it.
func tipEnd(w *Wing, along string, width float64) float64 {
	aft := math.Tan(w.SweepLEDeg*math.Pi/180) * w.SpanM
	if along == "trailing_edge" {
		aft += *w.TipChordM - w.RootChordM
	}
	return width * math.Hypot(w.SpanM, aft) / w.SpanM
}

// A wing of one section throughout unrolls to a plane, sheared by its sweep: a
// strip is as long as the edge and as wide as given. Identity.
func TestStripOnAWingOfOneSection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawnWing(t)
		w.TipChordM, w.TipThicknessRatio, w.RootChordM = pointer(2.0), w.RootThicknessRatio, 2
		length := w.SpanM / math.Cos(w.SweepLEDeg*math.Pi/180)
		width := number(t, 0.02, 0.5, "width")
		for _, along := range []string{"leading_edge", "trailing_edge"} {
			m := part(t, w, strip(along, width))
			near(t, width*length, m.areaOf("upper"), along)
			near(t, width*length, m.areaOf("lower"), along)
			assert.InDelta(t, 2*length, cuts(m), 1e-7*length, along)
		}
	})
}

func TestStripOfFullWidthIsTheFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawnWing(t)
		*w.TipChordM = w.RootChordM * number(t, 0.6, 1.2, "taper")
		w.SpanM = w.RootChordM * number(t, 1, 4, "aspect")
		whole, err := Measure(w)
		require.NoError(t, err)
		for _, along := range []string{"leading_edge", "trailing_edge", "root", "tip"} {
			m := part(t, w, strip(along, 3*w.RootChordM+w.SpanM))
			near(t, whole.areaOf("upper"), m.areaOf("upper"), along)
			near(t, whole.areaOf("lower"), m.areaOf("lower"), along)
			assert.Zero(t, cuts(m), along)
		}
	})
}

// Strips along one edge between stations add up, and those along both edges
// that meet in the middle make the face.
func TestStripsBetweenStationsAddUp(t *testing.T) {
	w := plainWing("naca", 2.4, 1.3, 5, 22, 0.14, 0.09)
	whole := part(t, w, strip("leading_edge", 0.2))
	inner, outer := strip("leading_edge", 0.2), strip("leading_edge", 0.2)
	inner.ToM, outer.FromM = pointer(1.7), pointer(1.7)
	a, b := part(t, w, inner), part(t, w, outer)
	for _, name := range []string{"upper", "lower"} {
		assert.InDelta(t, whole.areaOf(name), a.areaOf(name)+b.areaOf(name), 1e-10, name)
	}
	assert.Greater(t, cuts(a)+cuts(b), cuts(whole))
}

// A tapered wing's strip against a triangulated skin whose distances are found
// by marching in the plane square to the edge: an independent, coarse count.
func TestStripOnATaperedWingByCounting(t *testing.T) {
	w := plainWing("naca", 2.4, 1.3, 3, 22, 0.14, 0.14)
	const width, n = 0.3, 600
	exact := part(t, w, strip("leading_edge", width)).areaOf("upper")
	e := vector{math.Sin(22 * math.Pi / 180), math.Cos(22 * math.Pi / 180), 0}
	root, _ := w.sections()
	point := func(u, y float64) vector {
		p, _ := root.at(u, 1)
		chord := 2.4 + (1.3-2.4)*y/3
		return vector{p.x*chord + y*math.Tan(22*math.Pi/180), y, p.z * chord}
	}
	within := func(u, y float64) bool {
		t := e.dot(point(u, y))
		sum, last := 0.0, vector{e[0] * t, e[1] * t, 0}
		for i := 1; i <= 200; i++ {
			v := u * float64(i) / 200
			low, high := -5.0, 8.0
			for range 50 { // the place on the line at v that lies in the plane
				if middle := (low + high) / 2; e.dot(point(v, middle)) < t {
					low = middle
				} else {
					high = middle
				}
			}
			next := point(v, low)
			d := vector{next[0] - last[0], next[1] - last[1], next[2] - last[2]}
			sum, last = sum+math.Sqrt(d.dot(d)), next
		}
		return sum <= width
	}
	area := 0.0
	for j := range 40 {
		y := (float64(j) + 0.5) * 3 / 40
		low, high := 0.0, 1.0
		for range 30 {
			if middle := (low + high) / 2; within(middle, y) {
				low = middle
			} else {
				high = middle
			}
		}
		for i := range n {
			u := (float64(i) + 0.5) / n * low
			a, b, c, d := point(u, y-3.0/80), point(u, y+3.0/80), point(u-low/(2*n), y), point(u+low/(2*n), y)
			v := vector{b[0] - a[0], b[1] - a[1], b[2] - a[2]}.cross(vector{d[0] - c[0], d[1] - c[1], d[2] - c[2]})
			area += math.Sqrt(v.dot(v))
		}
	}
	assert.InEpsilon(t, area, exact, 2e-5)
}

func TestStripThatFoldsIsRefused(t *testing.T) {
	w := plainWing("flat", 6, 0.5, 1, 70, 0.1, 0.1)
	_, err := MeasurePart(w, strip("leading_edge", 3))
	assert.ErrorContains(t, err, "planes square to the edge meet")
	start := time.Now()
	part(t, plainWing("naca", 3, 1, 8, 30, 0.15, 0.08), strip("leading_edge", 0.4))
	assert.Less(t, time.Since(start), 5*time.Second)
	t.Log(time.Since(start))
}
