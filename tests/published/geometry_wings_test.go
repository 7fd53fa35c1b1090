package published

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces"
)

// wing builds a wing with an open tip over the defaults of its kind.
func wing(section string, root, tip, span, sweep, rootThickness, tipThickness float64) *surfaces.Wing {
	s, _ := surfaces.New("wing")
	w := s.(*surfaces.Wing)
	w.Section, w.Tip = section, "open"
	w.RootChordM, w.TipChordM, w.SpanM, w.SweepLEDeg = root, &tip, span, sweep
	w.RootThicknessRatio, w.TipThicknessRatio = &rootThickness, &tipThickness
	return w
}

// unit is an unswept wing of chord and span 1: its faces are the section's
// surfaces, per chord (identity).
func unit(section string, thickness, camber, position float64, edge string) *surfaces.Wing {
	w := wing(section, 1, 1, 1, 0, thickness, thickness)
	w.TrailingEdge, w.CamberRatio = edge, camber
	if camber > 0 {
		w.CamberPositionRatio = &position
	}
	return w
}

// The section is NASA TM-4741's; its perimeters are computed. The reference
// prints 12 significant digits. Its closed 2412 ends in ...884: mpmath's
// quadrature of the same outline gives 2.04167869843836, so that is a slip of
// one digit, and the recomputed value stands here.
func TestGeometryG3Sections(t *testing.T) {
	for _, c := range []struct {
		id                          string
		thickness, camber, position float64
		open, closed                float64
	}{
		{"G3.01 0006", 0.06, 0, 0, 2.01231517798, 2.01238487130},
		{"G3.02 0009", 0.09, 0, 0, 2.02438003828, 2.02453650076},
		{"G3.03 0012", 0.12, 0, 0, 2.03927163304, 2.03954893116},
		{"G3.04 0015", 0.15, 0, 0, 2.05657203549, 2.05700361093},
		{"G3.05 0018", 0.18, 0, 0, 2.0759846428, 2.07660315657},
		{"G3.06 0021", 0.21, 0, 0, 2.09728544091, 2.09812263304},
		{"G3.07 2412", 0.12, 0.02, 0.4, 2.04140175307, 2.04167869844},
		{"G3.08 4412", 0.12, 0.04, 0.4, 2.04776641446, 2.04804231147},
		{"G3.09 4415", 0.15, 0.04, 0.4, 2.06494763588, 2.06537705358},
		{"G3.10 2209", 0.09, 0.02, 0.2, 2.02749720197, 2.02765353537},
		{"G3.10 2213", 0.13, 0.02, 0.2, 2.04779239495, 2.04811717242},
	} {
		t.Run(c.id, func(t *testing.T) {
			open := unit("naca", c.thickness, c.camber, c.position, "open")
			assert.InDelta(t, c.open, areaOf(t, open, "upper")+areaOf(t, open, "lower"), 2e-11, "TM4741, computed, A")
			assert.InDelta(t, c.closed, areaOf(t, unit("naca", c.thickness, c.camber, c.position, "closed"), ""), 2e-11, "TM4741, computed, A")
		})
	}
}

func TestGeometryG3UpperAndLower(t *testing.T) {
	for _, c := range []struct {
		id                string
		thickness, camber float64
		upper, lower      float64
	}{
		{"G3.07 2412", 0.12, 0.02, 1.02803153755, 1.01337021552},
		{"G3.08 4412", 0.12, 0.04, 1.038457438, 1.00930897646},
		{"G3.09 4415", 0.15, 0.04, 1.0506219202, 1.01432571568},
	} {
		t.Run(c.id, func(t *testing.T) {
			w := unit("naca", c.thickness, c.camber, 0.4, "open")
			assert.InDelta(t, c.upper, areaOf(t, w, "upper"), 1e-10, "TM4741, computed, A")
			assert.InDelta(t, c.lower, areaOf(t, w, "lower"), 1e-10, "TM4741, computed, A")
		})
	}
}

func TestGeometryG3OtherSections(t *testing.T) {
	var cases []geometryCase
	add := func(id, section, source string, thickness []float64, want []float64) {
		for i, r := range thickness {
			cases = append(cases, geometryCase{id, unit(section, r, 0, 0, "closed"), "", want[i], 1e-11, source})
		}
	}
	add("G3.11 biconvex", "biconvex", "4R·asin(1/2R), computed, A", []float64{0.03, 0.04, 0.05, 0.06, 0.10},
		[]float64{2.00119978408, 2.00213265113, 2.00333166845, 2.00479654932, 2.01330678032})
	add("G3.12 double wedge", "double_wedge", "identity, A", []float64{0.03, 0.04, 0.05, 0.06},
		[]float64{2.00089979759, 2.00159936051, 2.00249843945, 2.00359676582})
	add("G3.14 elliptic", "elliptic", "computed, A", []float64{0.06, 0.12}, []float64{2.01333411673, 2.04348449465})
	runGeometry(t, cases)
}

func TestGeometryG3TrailingEdgeAndTip(t *testing.T) {
	capped := func(section string, thickness float64, edge string) *surfaces.Wing {
		w := unit(section, thickness, 0, 0, edge)
		w.Tip = "capped"
		return w
	}
	runGeometry(t, []geometryCase{
		{"G3.15 base of an open 0012", unit("naca", 0.12, 0, 0, "open"), "trailing_edge", 0.00252, exact, "TM4741, computed, A"},
		{"G3.16 section area, open", capped("naca", 0.12, "open"), "tip", 0.12 * 0.685083333333, 1e-11, "TM4741, computed, A"},
		{"G3.16 section area, closed", capped("naca", 0.15, "closed"), "tip", 0.15 * 0.680883333333, 1e-11, "TM4741, computed, A"},
		{"G3.16 section area, biconvex", capped("biconvex", 0.04, "closed"), "tip", 0.04 * 0.6668799513, 1e-10, "computed, A"},
		{"G3.16 section area, double wedge", capped("double_wedge", 0.06, "closed"), "tip", 0.06 / 2, exact, "identity, A"},
		{"G3.16 section area, elliptic", capped("elliptic", 0.12, "closed"), "tip", 0.12 * math.Pi / 4, exact, "identity, A"},
	})
	// Published for the footprint of a wing on a body: 0.673·t·c² (AVI, B). A
	// NACA section has 1.2 % more than that.
	assert.InEpsilon(t, 0.673, areaOf(t, capped("naca", 0.12, "closed"), "tip")/0.12, 0.013)
}

func TestGeometryG3Panels(t *testing.T) {
	const source = "ruled panel with streamwise sections, computed, A"
	d := 1.0 // AGARD-B: every length is a multiple of the body's diameter
	root := 2 * math.Sqrt(3) * d
	atBody := root * (2 - 0.5) / 2
	runGeometry(t, []geometryCase{
		{"G3.20", wing("naca", 2, 2, 5, 0, 0.12, 0.12), "", 20.39548931156, 1e-9, source},
		{"G3.21 swept 30", wing("naca", 2, 2, 5, 30, 0.12, 0.12), "", 20.50082752795, 1e-9, source},
		{"G3.21 swept 45", wing("naca", 2, 2, 5, 45, 0.12, 0.12), "", 20.69651107360, 1e-9, source},
		{"G3.21 swept 60", wing("naca", 2, 2, 5, 60, 0.12, 0.12), "", 21.21384464382, 1e-9, source},
		{"G3.22 sweep acts like thickness", wing("naca", 2, 2, 5, 60, 0.06, 0.06), "", 20.39548931156, 1e-9, source},
		{"G3.23", wing("naca", 4, 1.5, 5, 40, 0.10, 0.10), "", 28.098965110427, 1e-9, source},
		{"G3.24", wing("naca", 2.5, 1.25, 5.5, 5, 0.15, 0.15), "", 21.219537530061, 1e-9, source},
		{"G3.25 15 to 9 %", wing("naca", 2.6, 1.3, 5.5, 3, 0.15, 0.09), "", 21.9454200296, 1e-9, source},
		{"G3.27 16 to 10 %", wing("naca", 3, 1.2, 6, 25, 0.16, 0.10), "", 25.9713707042, 1e-9, source},
		{"G3.28 delta", wing("biconvex", root, 0, 2*d, 60, 0.04, 0.04), "", 6.9488458531881, 1e-9, source},
		{"G3.29 delta beyond the body", wing("biconvex", atBody, 0, 1.5*d, 60, 0.04, 0.04), "", 3.9087257924183, 1e-9, source},
	})
	// Published AGARD-B planform: S = 0.1841 ft² at D = 0.163 ft (A); twice our
	// half wing's planform, to the digits printed.
	assert.InDelta(t, 0.1841/(0.163*0.163), 2*root*2*d/2, 0.002)
}

// Handbook rules leave out the sweep. At 60° and 12 % they are 3.9 % low
// (reference 3b, computed); the rule used for comparison is 2·(1+0.2·t/c), B.
func TestGeometryG3HandbookRulesMissTheSweep(t *testing.T) {
	exactArea := areaOf(t, wing("naca", 2, 2, 5, 60, 0.12, 0.12), "")
	assert.InDelta(t, 0.961, 10*2.039548931/exactArea, 0.001)
	unswept := areaOf(t, wing("naca", 2, 2, 5, 0, 0.12, 0.12), "")
	assert.InEpsilon(t, 1.0041, 10*2*(1+0.2*0.12)/unswept, 1e-4, "reference 3c: +0.41 %")
}

// G4.12, an airliner class data set with published component areas (AVI, B):
// S 1220 ft², b 118.7505 ft, taper 0.26519, t/c 0.12233, fuselage 12.3 ft wide.
// Its sweep is not given; the published values come from a rule, so this is a
// plausibility case of 8 %.
func TestGeometryG4AirlinerWing(t *testing.T) {
	const foot, s, b, taper, thickness, body = 0.3048, 1220.0, 118.7505, 0.26519, 0.12233, 12.3
	centre := 2 * s / (b * (1 + taper))
	root := centre * (1 - (1-taper)*body/b)
	w := wing("naca", root*foot, centre*taper*foot, (b-body)/2*foot, 0, thickness, thickness)
	m, err := surfaces.Measure(w)
	require.NoError(t, err)
	assert.InEpsilon(t, 2210.280, 2*m.AreaM2()/(foot*foot), 0.08)
}
