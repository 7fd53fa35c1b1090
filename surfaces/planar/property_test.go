package planar

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var palette = []string{"white", "red", "blue", Base}

// gridLayers draws layers whose corners, centres and radii are small whole
// numbers, so that shared edges, tangents and common vertices are the rule.
func gridLayers(t *rapid.T) []Layer {
	whole := rapid.IntRange(0, 6)
	number := func(name string) float64 { return float64(whole.Draw(t, name)) }
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Layer {
		l := Layer{Colour: rapid.SampledFrom(palette).Draw(t, "colour")}
		for range rapid.IntRange(1, 2).Draw(t, "outlines") {
			p, q := Point{number("x"), number("y")}, Point{number("x2"), number("y2")}
			var o Outline
			switch rapid.IntRange(0, 6).Draw(t, "shape") {
			case 0:
				o = Rectangle(p, q)
			case 1:
				o = Circle(p, number("radius")/2)
			case 2:
				o = RoundedRectangle(p, q, number("radius")/2)
			case 3:
				o = Polygon(p, q, Point{number("x3"), number("y3")})
			case 4:
				o = Outline{{At: p, Sweep: rapid.SampledFrom([]float64{-4, -math.Pi, -1, 0, 1, math.Pi / 2, 5}).Draw(t, "sweep")}, {At: q, Sweep: 1}}
			case 5: // a curve and its chord; the controls may make it loop or fold
				o = Outline{{At: p, Bend: &Bend{Point{number("bx"), number("by")}, Point{number("cx"), number("cy")}}}, {At: q}}
			case 6: // two quadratic curves, or one run there and back
				o = Outline{
					{At: p, Bend: Quadratic(p, Point{number("bx"), number("by")}, q)},
					{At: q, Bend: Quadratic(q, Point{number("cx"), number("cy")}, p)},
				}
			}
			if rapid.Bool().Draw(t, "reversed") {
				o = o.Reversed()
			}
			l.Outline = append(l.Outline, o)
		}
		return l
	}), 1, 6).Draw(t, "layers")
}

// bent reports whether any of the layers has a curve.
func bent(layers []Layer) bool {
	for _, l := range layers {
		for _, o := range l.Outline {
			for _, c := range o {
				if c.Bend != nil {
					return true
				}
			}
		}
	}
	return false
}

type summary struct {
	areas, lengths map[string]float64
	sum            float64
	box            Box
}

func summed(a *Arrangement) summary {
	s := summary{map[string]float64{}, map[string]float64{}, 0, a.Box()}
	for _, c := range a.Areas() {
		s.areas[c.Colour] = c.Area
		s.sum += c.Area
	}
	for _, l := range a.Lengths() {
		s.lengths[fmt.Sprint(min(l.Between[0], l.Between[1]), max(l.Between[0], l.Between[1]))] = l.Length
	}
	return s
}

func same(t assert.TestingT, want, got map[string]float64, within float64) {
	for _, pair := range []map[string]float64{want, got} {
		for key := range pair {
			assert.InDelta(t, want[key], got[key], within, key)
		}
	}
}

// ID-1 (identity): the colours fill the figure. The same layers in one colour,
// where no inner border survives, must give the same area.
func TestColoursFillTheirUnion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := gridLayers(t)
		plain := make([]Layer, len(layers))
		for i, l := range layers {
			plain[i] = l
			if l.Colour != Base {
				plain[i].Colour = "grey"
			}
		}
		many, one := summed(arranged(t, layers...)), summed(arranged(t, plain...))
		assert.InDelta(t, one.sum, many.sum, 1e-8)
		outline := 0.0
		for _, l := range arranged(t, layers...).Lengths() {
			if l.Between[1] == Base {
				outline += l.Length
			}
		}
		assert.InDelta(t, lengthOf(arranged(t, plain...), "grey", Base), outline, 1e-8)
	})
}

// Each colour's pieces of border close (identity): their vectors add to zero,
// and Green's theorem over the pieces in the caller's own frame gives the area.
func TestPiecesClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := arranged(t, gridLayers(t)...)
		ends := map[string]Point{}
		area := map[string]float64{}
		for _, p := range a.Pieces() {
			require.NotEqual(t, p.Left, p.Right)
			way, part := p.To.minus(p.From), p.From.cross(p.To)/2
			if p.Bend != nil {
				part += (&cubic{p.From, p.Bend.First, p.Bend.Second, p.To}).enclosed()
			}
			if p.Sweep != 0 {
				r := way.length() / (2 * math.Sin(math.Abs(p.Sweep)/2))
				part += r * r / 2 * (p.Sweep - math.Sin(p.Sweep))
			}
			ends[p.Left], ends[p.Right] = ends[p.Left].plus(way), ends[p.Right].minus(way)
			area[p.Left] += part
			area[p.Right] -= part
		}
		for colour, gap := range ends {
			assert.InDelta(t, 0, gap.length(), 1e-8, colour)
		}
		for _, c := range a.Areas() {
			assert.InDelta(t, area[c.Colour], c.Area, 1e-8, c.Colour)
		}
	})
}

// ID-3 and ID-4 (identity): what one sees does not depend on where the figure
// lies, how it is turned, or whether it is mirrored; areas scale with the
// square. 1e3 is a thousand times the figure's size away.
func TestPlacementKeepsTheMeasures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := gridLayers(t)
		k := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		m := Placement{
			Mirror: rapid.Bool().Draw(t, "mirror"), Scale: k,
			Turn:  rapid.Float64Range(-4, 4).Draw(t, "turn"),
			Shift: Point{rapid.Float64Range(-1e3, 1e3).Draw(t, "dx") * k, rapid.Float64Range(-1e3, 1e3).Draw(t, "dy") * k},
		}
		here, there := summed(arranged(t, layers...)), summed(arranged(t, m.Layers(layers)...))
		for colour := range there.areas {
			there.areas[colour] /= k * k
		}
		for pair := range there.lengths {
			there.lengths[pair] /= k
		}
		same(t, here.areas, there.areas, 1e-9*49) // of the grid's own area
		// Of the longest borders it can hold. Where curves touch in the third order
		// or run into a cusp they are one for the cube root of the tolerance.
		within := 1e-9 * 49
		if bent(layers) {
			within = 10 * math.Cbrt(tolerance*8)
		}
		same(t, here.lengths, there.lengths, within)
	})
}

// Rectangles on whole coordinates against counting unit cells, each cell and
// each cell side asked on its own (an independent way to the same numbers).
func TestRectanglesAgreeWithCells(t *testing.T) {
	const n = 8
	rapid.Check(t, func(t *rapid.T) {
		var layers []Layer
		var cells [n + 2][n + 2]string // with a rim of ground
		for x := range cells {
			for y := range cells[x] {
				cells[x][y] = Base
			}
		}
		whole := rapid.IntRange(0, n)
		for i := range rapid.IntRange(1, 12).Draw(t, "layers") {
			colour := palette[i%len(palette)]
			x0, y0, x1, y1 := whole.Draw(t, "x0"), whole.Draw(t, "y0"), whole.Draw(t, "x1"), whole.Draw(t, "y1")
			layers = append(layers, Layer{colour, Region{Rectangle(Point{float64(x0), float64(y0)}, Point{float64(x1), float64(y1)})}})
			for x := min(x0, x1); x < max(x0, x1); x++ {
				for y := min(y0, y1); y < max(y0, y1); y++ {
					cells[x+1][y+1] = colour
				}
			}
		}
		areas, lengths := map[string]float64{}, map[string]float64{}
		side := func(p, q string) {
			if p != q {
				lengths[fmt.Sprint(min(p, q), max(p, q))]++
			}
		}
		for x := range n + 1 {
			for y := range n + 1 {
				if c := cells[x][y]; c != Base {
					areas[c]++
				}
				side(cells[x][y], cells[x+1][y])
				side(cells[x][y], cells[x][y+1])
			}
		}
		got := summed(arranged(t, layers...))
		same(t, areas, got.areas, 1e-12*n*n)
		same(t, lengths, got.lengths, 1e-12*n*n)
	})
}

// Areas are continuous (identity): shaking every corner by less than d moves no
// area by more than d times all the edges there are. Shakes around the
// tolerance turn shared edges and tangents into slivers and near misses.
func TestSmallShakesChangeLittle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := gridLayers(t)
		d := math.Pow(10, rapid.Float64Range(-15, -5).Draw(t, "exponent"))
		sway := rapid.Float64Range(-1, 1)
		shaken := make([]Layer, len(layers))
		for i, l := range layers {
			shaken[i].Colour = l.Colour
			for _, o := range l.Outline {
				moved := make(Outline, len(o))
				for k, c := range o {
					moved[k] = Corner{Point{c.At.X + d*sway.Draw(t, "dx"), c.At.Y + d*sway.Draw(t, "dy")}, c.Sweep, c.Bend.moved(func(p Point) Point {
						return Point{p.X + d*sway.Draw(t, "bx"), p.Y + d*sway.Draw(t, "by")}
					})}
				}
				shaken[i].Outline = append(shaken[i].Outline, moved)
			}
		}
		here, there := summed(arranged(t, layers...)), summed(arranged(t, shaken...))
		const edges = 1000 // a dozen outlines on a grid of 6, the greatest arcs counted several times
		same(t, here.areas, there.areas, edges*(d+tolerance*8))
	})
}
