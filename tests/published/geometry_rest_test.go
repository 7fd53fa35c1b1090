package published

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
	"filmbuild/surfaces/mesh"
)

// Source: the project's list of geometry check values, whose "computed" values are
// mpmath's at 25 to 40 digits; published ones name their title beside the check.
//
// G1.24 parabolic series, K' = 1: no kind of nose of ours, so as a free profile.
// What straight lines leave out falls with the square of their number, so that
// two numbers of lines tell the rest (Richardson).
func TestGeometryG1ParabolicSeries(t *testing.T) {
	by := func(lines int) float64 {
		s := &surfaces.Revolved{}
		for i := range lines + 1 {
			x := float64(i) / float64(lines)
			s.Profile = append(s.Profile, [2]float64{2 * x, 0.5 * (2*x - x*x)})
		}
		return areaOf(t, s, "")
	}
	assert.InEpsilon(t, 4.2908824549510, (4*by(400)-by(200))/3, 1e-9, "G1.24, computed, A")
}

// facets writes an OBJ of triangles.
func facets(triangles [][3][3]float64) *bytes.Buffer {
	var text bytes.Buffer
	for i, f := range triangles {
		for _, p := range f {
			fmt.Fprintf(&text, "v %.17g %.17g %.17g\n", p[0], p[1], p[2])
		}
		fmt.Fprintf(&text, "f %d %d %d\n", 3*i+1, 3*i+2, 3*i+3)
	}
	return &text
}

func facetsArea(t *testing.T, triangles [][3][3]float64) float64 {
	o := mesh.DefaultOptions("m")
	o.Format, o.CheckFacets = mesh.FormatOBJ, 0
	r, err := mesh.Measure(context.Background(), facets(triangles), o)
	require.NoError(t, err)
	return r.AreaM2
}

// G1.37 a sphere of meridians and parallels, its points on the sphere.
func TestMeshG1InscribedSphere(t *testing.T) {
	for _, c := range []struct {
		meridians, parallels int
		want                 float64
	}{{16, 8, 12.166689438554}, {32, 16, 12.465694088651}, {64, 32, 12.541153640034}} {
		at := func(i, k int) [3]float64 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(c.meridians))
			down, level := math.Cos(math.Pi*float64(k)/float64(c.parallels)), math.Sin(math.Pi*float64(k)/float64(c.parallels))
			return [3]float64{level * cos, level * sin, down}
		}
		var list [][3][3]float64
		for i := range c.meridians {
			for k := range c.parallels {
				if k > 0 {
					list = append(list, [3][3]float64{at(i, k), at(i, k+1), at(i+1, k)})
				}
				if k+1 < c.parallels {
					list = append(list, [3][3]float64{at(i+1, k), at(i, k+1), at(i+1, k+1)})
				}
			}
		}
		assert.InEpsilon(t, c.want, facetsArea(t, list), exact, "computed, A")
	}
}

// G1.38 a lantern of Schwarz: more facets on the same cylinder, and an area that
// grows without bound. A mesh is measured as it is.
func TestMeshG1Lantern(t *testing.T) {
	for _, c := range []struct {
		sides, layers int
		want          float64
	}{{10, 10, 6.8808765210339}, {10, 1000, 302.55049550146}, {100, 10000, 31.628789161126}} {
		at := func(i float64, k int) [3]float64 {
			sin, cos := math.Sincos(2 * math.Pi * (i + 0.5*float64(k%2)) / float64(c.sides))
			return [3]float64{cos, sin, float64(k) / float64(c.layers)}
		}
		ring := 10 // every pair of layers is like the first
		var list [][3][3]float64
		for k := range ring {
			turn := float64(k % 2) // the upper layer lies half a side ahead, or behind
			for i := range c.sides {
				n := float64(i)
				list = append(list, [3][3]float64{at(n, k), at(n+1, k), at(n+turn, k+1)}, [3][3]float64{at(n+turn, k+1), at(n+1, k), at(n+turn+1, k+1)})
			}
		}
		total := facetsArea(t, list) * float64(c.layers) / float64(ring)
		assert.InEpsilon(t, c.want, total, exact, "%d sides, %d layers, computed, A", c.sides, c.layers)
	}
}

func TestGeometryG2And3Limits(t *testing.T) {
	// G2.06: an ellipse without height is a strip, seen on both sides; A.
	assert.InEpsilon(t, 4, prism(t, 1, 0, 2), exact)
	// G3.13: a hexagonal section with a third of flat, 4 % thick, is no section of
	// ours; its outline is that of a sheet. Computed, A.
	sheet := &surfaces.Panel{Sides: 1, Outline: [][2]float64{{0, 0}, {1.0 / 3, -0.02}, {2.0 / 3, -0.02}, {1, 0}, {2.0 / 3, 0.02}, {1.0 / 3, 0.02}}}
	assert.InEpsilon(t, 2.00239784388, measurePanel(t, sheet).EdgeM(), 1e-10)
}

// G4.16 and G4.17: a published airliner file whose wetted areas are 2.000 times
// the exposed planform exactly. As flat sheets ours are that; as sections of the
// published thickness the wing has 2 to 3 % more (the reference finds 2.2 % by a
// handbook rule). FAST, A.
func TestGeometryG4FlatWings(t *testing.T) {
	panel := func(section string, from, to [3]float64) *surfaces.Wing { // y, chord, thickness ratio
		w := wing(section, from[1], to[1], to[0]-from[0], 25, from[2], to[2])
		if section == "flat" {
			w.RootThicknessRatio, w.TipThicknessRatio = nil, nil
		}
		return w
	}
	root, kink, tip := [3]float64{1.95994, 6.169265337, 0.1592}, [3]float64{6.994186934, 3.595573225, 0.1207}, [3]float64{17.485467335, 1.710117830, 0.1104}
	both := func(section string) float64 {
		return 2 * (areaOf(t, panel(section, root, kink), "") + areaOf(t, panel(section, kink, tip), ""))
	}
	assert.InEpsilon(t, 209.6442023425152, both("flat"), 1e-9)
	assert.InDelta(t, 2.5, 100*(both("naca")/209.6442023425152-1), 1)
	// The tailplane: 2.0 times its planform, whatever its sweep and taper.
	for _, taper := range []float64{0.3, 1} {
		span := 34.924220417 / (3 * (1 + taper) / 2)
		tail := panel("flat", [3]float64{0, 3}, [3]float64{span, 3 * taper})
		assert.InEpsilon(t, 69.848440835, areaOf(t, tail, ""), 1e-9)
	}
}

// G4.18 and G4.19: fuselages of two public vehicle files, of which only length and
// diameter are known (SUAVEv, B). A nose of 1.7 and a tail cone of 3 diameters, as
// reference section 4a has them; the band in which handbook rules lie against such
// a body is −12 to +17 %.
func TestGeometryG4VehicleFiles(t *testing.T) {
	for _, c := range []struct{ length, diameter, published float64 }{{38.02, 3.74, 385.51}, {36.24, 3.18, 327.01}} {
		d := c.diameter
		nose := areaOf(t, &surfaces.Nose{Round: surfaces.Round{DiameterM: &d}, LengthM: 1.7 * d, Profile: "tangent_ogive"}, "")
		cone := areaOf(t, &surfaces.Frustum{Radius1M: d / 2, Radius2M: num(0), LengthM: 3 * d}, "")
		body := nose + cone + areaOf(t, &surfaces.Cylinder{Round: surfaces.Round{DiameterM: &d}, LengthM: c.length - 4.7*d}, "")
		off := 100 * (c.published/body - 1)
		assert.True(t, off > -12 && off < 17, "published %g m², ours %g m²", c.published, body)
	}
	// The same body of 4a at one diameter; computed, A.
	one := num(1)
	for length, want := range map[float64]float64{6: 12.6030722942, 8: 18.8862576014, 10: 25.1694429086, 12: 31.4526282157} {
		nose := areaOf(t, &surfaces.Nose{Round: surfaces.Round{DiameterM: one}, LengthM: 1.7, Profile: "tangent_ogive"}, "")
		cone := areaOf(t, &surfaces.Frustum{Radius1M: 0.5, Radius2M: num(0), LengthM: 3}, "")
		assert.InEpsilon(t, want, nose+cone+areaOf(t, &surfaces.Cylinder{Round: surfaces.Round{DiameterM: one}, LengthM: length - 4.7}, ""), 1e-11, "length %g", length)
	}
}

// G5.16, G5.18 and G5.19: wide-flange sections and angles of a table in inches.
// Their printed perimeters are to three digits (AISC, A); the dimensions are from
// memory and give the reference's own six digits. With the top hidden, PA = PB − bf.
// The table's angles leave radii out.
func TestGeometryG5Inches(t *testing.T) {
	const inch = 25.4
	for name, c := range map[string]struct{ depth, flange, web, fillet, printed, within, formula float64 }{
		"W8X31":   {8.00, 8.00, 0.285, 0.394, 46.8, 0.05, 46.754},
		"W14X90":  {14.0, 14.5, 0.440, 0.600, 84.1, 0.05, 84.090},
		"W24X55":  {23.6, 7.01, 0.395, 0.505, 73.6, 0.05, 73.583},
		"W36X150": {35.9, 12.0, 0.625, 0.750, 117, 0.5, 117.262},
		"W44X335": {44.0, 15.9, 1.03, 0.790, 148, 0.5, 148.184},
	} {
		bar := rolled(c.depth*inch, c.flange*inch, c.web*inch, c.fillet*inch)
		around := areaOf(t, bar, "") * 1000 / inch
		assert.InDelta(t, c.printed, around, c.within, name)
		assert.InDelta(t, c.formula, around, 0.0006, name)
		bar.HiddenFaces = []string{"top"}
		assert.InDelta(t, c.flange, around-areaOf(t, bar, "")*1000/inch, 1e-9, name)
	}
	angle := func(root, toe *float64) *surfaces.Bar {
		return &surfaces.Bar{LengthM: 1, Profile: surfaces.Profile{Kind: "angle", HeightMM: num(100), WidthMM: num(100), WallMM: num(10), RadiusMM: root, ToeRadiusMM: toe}}
	}
	sharp := areaOf(t, angle(nil, nil), "")
	assert.InEpsilon(t, 2*(0.1+0.1), sharp, exact, "PB = 2(b+d)")
	assert.InDelta(t, 2.6, 100*(1-areaOf(t, angle(num(12), num(6)), "")/sharp), 0.05, "with the radii of EN 10056")
}

// G7.08: a sheet of 0.01 m a side, a thousand kilometres from the origin, where
// coordinates are good to 1e-10 m. Ours are limited to 500 m; there it is as good.
func TestGeometryG7FarOff(t *testing.T) {
	far := &surfaces.Panel{Sides: 1, Outline: [][2]float64{{499.9, 499.9}, {499.91, 499.9}, {499.91, 499.91}, {499.9, 499.91}}}
	assert.InDelta(t, 1e-4, areaOf(t, far, "front"), 1e-14, "to the rounding of its own coordinates")
}
