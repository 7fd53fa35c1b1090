package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/planar"
)

// The flags of the reference are laid as plain layers here: they try the
// arrangement on figures whose areas were published or found by other ways.

func flagPoint(x, y float64) planar.Point { return planar.Point{X: x, Y: y} }

func flagLayer(colour string, outlines ...planar.Outline) planar.Layer {
	return planar.Layer{Colour: colour, Outline: outlines}
}

func checkFlag(t *testing.T, id string, layers []planar.Layer, areas map[string]float64, edges map[[2]string]float64, relative float64) {
	t.Helper()
	a, err := planar.Arrange(layers)
	require.NoError(t, err)
	found := map[string]float64{}
	for _, c := range a.Areas() {
		found[c.Colour] = c.Area
	}
	for colour, want := range areas {
		assert.InEpsilon(t, want, found[colour], relative, "%s %s", id, colour)
	}
	lengths := map[[2]string]float64{}
	for _, l := range a.Lengths() {
		lengths[l.Between] = l.Length
		lengths[[2]string{l.Between[1], l.Between[0]}] = l.Length
	}
	for pair, want := range edges {
		assert.InEpsilon(t, want, lengths[pair], relative, "%s %v", id, pair)
	}
}

// FL-FI (Finnish Act 380/1978 s.2) and FL-SE (Swedish Act 1982:269 s.2).
func TestMarkingsNordicCrosses(t *testing.T) {
	checkFlag(t, "FL-FI", []planar.Layer{
		flagLayer("white", planar.Rectangle(flagPoint(0, 0), flagPoint(18, 11))),
		flagLayer("blue", planar.Rectangle(flagPoint(0, 4), flagPoint(18, 7)), planar.Rectangle(flagPoint(5, 0), flagPoint(8, 11))),
	}, map[string]float64{"blue": 78, "white": 120}, map[[2]string]float64{{"blue", "white"}: 46}, 1e-13)
	checkFlag(t, "FL-SE", []planar.Layer{
		flagLayer("blue", planar.Rectangle(flagPoint(0, 0), flagPoint(16, 10))),
		flagLayer("yellow", planar.Rectangle(flagPoint(0, 4), flagPoint(16, 6)), planar.Rectangle(flagPoint(5, 0), flagPoint(7, 10))),
	}, map[string]float64{"yellow": 48, "blue": 112}, map[[2]string]float64{{"blue", "yellow"}: 44}, 1e-13)
}

// FL-US: Executive Order 10834: hoist 1, fly 1.9, union 7/13 by 0.76, fifty
// stars of diameter 0.0616 on a grid of tenths and twelfths of the union.
func TestMarkingsFiftyStars(t *testing.T) {
	layers := []planar.Layer{flagLayer("white", planar.Rectangle(flagPoint(0, 0), flagPoint(1.9, 1)))}
	for i := 0; i < 13; i += 2 {
		layers = append(layers, flagLayer("red", planar.Rectangle(flagPoint(0, float64(i)/13), flagPoint(1.9, float64(i+1)/13))))
	}
	layers = append(layers, flagLayer("blue", planar.Rectangle(flagPoint(0, 6.0/13), flagPoint(0.76, 1))))
	stars := planar.Layer{Colour: "white"}
	for row := 1; row <= 9; row++ {
		for column := 1; column <= 11; column++ {
			if (row+column)%2 != 0 {
				continue
			}
			centre, points := flagPoint(0.76*float64(column)/12, 6.0/13+7.0/13*float64(row)/10), make([]planar.Point, 10)
			for i := range points {
				r := 0.0308
				if i%2 == 1 {
					r *= math.Sin(math.Pi/10) / math.Sin(3*math.Pi/10)
				}
				points[i] = planar.Polar(centre, r, math.Pi/2+float64(i)*math.Pi/5)
			}
			stars.Outline = append(stars.Outline, planar.Polygon(points...))
		}
	}
	require.Len(t, stars.Outline, 50)
	checkFlag(t, "FL-US", append(layers, stars),
		map[string]float64{"red": 0.7892307692, "white": 0.7547841990, "blue": 0.3559850318},
		map[[2]string]float64{{"red", "white"}: 17.48, {"blue", "white"}: 12.1795241621, {"blue", "red"}: 0.3076923077}, 1e-9)
}

// FL-UK35: Flag Institute specification at 3:5 in units of 30 by 50: diagonals
// of 6 = 3 + 2 + 1 on the corner-to-corner lines, red cross 6 with 2 of white
// on each side. What reaches past the flag is covered by the base again.
func TestMarkingsDiagonals(t *testing.T) {
	const w, h = 25.0, 15.0
	arm := func(cornerX, cornerY, from, to float64) planar.Outline {
		length := math.Hypot(cornerX, cornerY)
		ux, uy := cornerX/length, cornerY/length
		place := func(along, left float64) planar.Point { return flagPoint(along*ux-left*uy, along*uy+left*ux) }
		return planar.Polygon(place(0, from), place(length+10, from), place(length+10, to), place(0, to))
	}
	white, red := planar.Layer{Colour: "white"}, planar.Layer{Colour: "red"}
	for _, c := range [][2]float64{{w, h}, {-w, h}, {-w, -h}, {w, -h}} {
		white.Outline = append(white.Outline, arm(c[0], c[1], 3, -3).Reversed())
		red.Outline = append(red.Outline, arm(c[0], c[1], 0, 2))
	}
	layers := []planar.Layer{
		flagLayer("blue", planar.Rectangle(flagPoint(-w, -h), flagPoint(w, h))), white, red,
		flagLayer("white", planar.Rectangle(flagPoint(-w, -5), flagPoint(w, 5)), planar.Rectangle(flagPoint(-5, -h), flagPoint(5, h))),
		flagLayer("red", planar.Rectangle(flagPoint(-w, -3), flagPoint(w, 3)), planar.Rectangle(flagPoint(-3, -h), flagPoint(3, h))),
		flagLayer("base", planar.Rectangle(flagPoint(-99, -99), flagPoint(99, 99)), planar.Rectangle(flagPoint(-w, -h), flagPoint(w, h)).Reversed()),
	}
	checkFlag(t, "FL-UK35", layers,
		map[string]float64{"red": 590.2412555821, "white": 527.9491778309, "blue": 381.8095665869},
		map[[2]string]float64{
			{"blue", "white"}: 193.9898301218, {"red", "white"}: 296.2393504313,
			{"blue", "base"}: 82.681907873, {"red", "base"}: 36.4393640423, {"white", "base"}: 40.8787280847,
		}, 1e-11)
}
