package published

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"filmbuild/surfaces/marking"
)

// US-42 and US-19: earlier forms, diameter of the disc 1 m.
func TestMarkingsEarlierStars(t *testing.T) {
	type pairs = map[[2]string]float64
	star := figureOf[*marking.DiscStar](t, "disc_star")
	star.SizeM = 1
	markingCase{id: "US-42", source: "star inside its circumscribed circle, in use in 1942 and 1943", mark: "H", figure: star,
		areas: map[string]float64{"white": 0.280642485362, "blue": 0.504755678035},
		edges: pairs{{"blue", "white"}: 3.63271264003, {"blue", "base"}: 3.14159265359}}.run(t, 1e-11)

	old := figureOf[*marking.Star1919](t, "star_1919")
	old.SizeM = 1
	markingCase{id: "US-19", source: "1947 article by an army captain: red centre tangent to the inner projection of the points; read as inscribed in the inner pentagon", mark: "M", figure: old,
		areas: map[string]float64{"red": 0.074998850929, "white": 0.205643634433, "blue": 0.504755678035},
		edges: pairs{{"red", "white"}: 0.970805519363}}.run(t, 1e-10)
	for _, w := range old.Layers() {
		if w.Colour == "red" {
			assert.InEpsilon(t, 0.309016994, 2*w.Outline[0][0].At.X, 1e-8, "US-19 red diameter")
		}
	}
}

// CR-1 and CR-2: straight cross, bar a quarter of the length (the only ratio
// that an encyclopaedia confirms); the flank of CR-2 is a number of ours.
func TestMarkingsCrosses(t *testing.T) {
	cross := func(flank float64) *marking.Cross {
		f := figureOf[*marking.Cross](t, "cross")
		f.SizeM, f.ArmWidthM, f.FlankWidthM, f.Colour = 1, 0.25, flank, "black"
		if flank > 0 {
			f.FlankColour = "white"
		}
		return f
	}
	markingCase{id: "CR-1", source: "identity: two bars, 2wL − w²", mark: "H", figure: cross(0),
		areas: map[string]float64{"black": 0.4375}, sums: map[string]float64{"outline_m": 4}}.run(t, 1e-12)
	const a, f = (1 - 0.25) / 2, 0.125
	markingCase{id: "CR-2", source: "identity: flanks of width f along arms of length a, 4(2af − f²)", mark: "H", figure: cross(f),
		areas: map[string]float64{"black": 0.4375, "white": 4 * (2*a*f - f*f)},
		edges: map[[2]string]float64{{"black", "white"}: 3, {"black", "base"}: 1, {"white", "base"}: 3}}.run(t, 1e-12)
}

// FF-1: three equal vertical bands in a square of 24 in.
func TestMarkingsFinFlash(t *testing.T) {
	f := figureOf[*marking.FinFlash](t, "fin_flash")
	f.WidthM, f.HeightM = 0.6096, 0.6096
	f.Bands = []marking.Band{{Ratio: 1, Colour: "red"}, {Ratio: 1, Colour: "white"}, {Ratio: 1, Colour: "blue"}}
	markingCase{id: "FF-1", source: "equal stripes by two history pages; the size of 24 in is from memory", mark: "M", figure: f,
		areas: map[string]float64{"red": 0.12387072, "white": 0.12387072, "blue": 0.12387072},
		edges: map[[2]string]float64{{"red", "white"}: 0.6096, {"white", "blue"}: 0.6096},
		sums:  map[string]float64{"outline_m": 2.4384}}.run(t, 1e-12)
}

// FF-2: US Army rudder after 1926, a rectangle of chord 1 and height 1.3: an
// upright blue band of a third and 13 level stripes, red first.
func TestMarkingsRudderStripes(t *testing.T) {
	f := figureOf[*marking.RudderStripes](t, "rudder_stripes")
	f.ChordM, f.HeightM = 1, 1.3
	markingCase{id: "FF-2", source: "an aircraft history page: blue a third of the greatest chord, 13 red and white stripes", mark: "H", figure: f,
		areas: map[string]float64{"blue": 0.4333333333, "red": 0.4666666667, "white": 0.4},
		edges: map[[2]string]float64{{"red", "white"}: 8, {"blue", "red"}: 0.7, {"blue", "white"}: 0.6}}.run(t, 1e-9)
}
