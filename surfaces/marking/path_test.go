package marking

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/surfaces/planar"
)

// pathMeasures reads a path and measures it by the nonzero rule.
func pathMeasures(t *testing.T, path string) (area, length float64) {
	t.Helper()
	region, err := ReadPath(path)
	require.NoError(t, err, path)
	a, err := planar.Arrange([]planar.Layer{{Colour: "red", Outline: region}})
	require.NoError(t, err, path)
	for _, c := range a.Areas() {
		area += c.Area
	}
	for _, l := range a.Lengths() {
		length += l.Length
	}
	return area, length
}

// Areas and lengths in closed form (identities), each command absolute and
// relative.
func TestPathsInClosedForm(t *testing.T) {
	quarter := math.Pi * 25 / 4
	parabola := 2*(math.Sqrt(1+4)/2+math.Asinh(2)/4)*5 + 10 // y = x(2−x) scaled by 5, and its chord
	for path, want := range map[string][2]float64{
		"M0 0H10V5H0Z":                     {50, 30},
		"m0 0h10v5h-10z":                   {50, 30},
		"M0,0 10,0 10,5 0,5":               {50, 30},
		"M0 0L10 0L10 5L0 5L0 0":           {50, 30},
		"m1 1 10 0 0 5-10 0z":              {50, 30},
		"M0 0h10v5h-10zm20 0h1v1h-1z":      {51, 34},
		"M0 0h10v10h-10zM2 2v6h6v-6z":      {64, 64},
		"M0 0H5A5 5 0 0 1 0 5Z":            {quarter, 10 + math.Pi*5/2},
		"M5 0A5 5 0 1 1-5 0A5 5 0 1 1 5 0": {math.Pi * 25, math.Pi * 10},
		"M5 0a5 5 0 11-10 0 5 5 0 1110 0":  {math.Pi * 25, math.Pi * 10},
		"M0 0A5 5 0 0 0 5 5H0Z":            {25 - quarter, 10 + math.Pi*5/2},   // the other sense: what is left of a square
		"M0 0A2 2 0 0 1 10 0Z":             {math.Pi * 25 / 2, 10 + math.Pi*5}, // radius scaled up
		"M0 0A0 5 0 0 1 10 0V5Z":           {25, 15 + math.Hypot(10, 5)},       // a radius of 0 is a line
		"M0 0Q5 10 10 0Z":                  {2.0 / 3 * 10 * 5, parabola},
		"M0 0q5 10 10 0z":                  {2.0 / 3 * 10 * 5, parabola},
		"M0 0C3.333333333333333 6.666666666666667 6.666666666666667 6.666666666666667 10 0Z": {2.0 / 3 * 10 * 5, parabola},
		"M0 0Q5 10 10 0T20 0":        {2 * 2.0 / 3 * 10 * 5, 2 * parabola},
		"M0 0q5 10 10 0t10 0":        {2 * 2.0 / 3 * 10 * 5, 2 * parabola},
		"M0 0c3 5 7 5 10 0s7-5 10 0": {2 * 3.0 / 20 * 170, 2 * pathLength(t, "M0 0c3 5 7 5 10 0z")},
		" M 1e1-1.5e0.5.5 -1,.5Z ":   {0.5 * math.Abs((0.5-10)*(0.5+1.5)-(-1-10)*(0.5+1.5)), math.Hypot(9.5, 2) + 1.5 + math.Hypot(11, 2)},
	} {
		area, length := pathMeasures(t, path)
		assert.InEpsilon(t, want[0], area, 1e-9, path)
		assert.InEpsilon(t, want[1], length, 1e-9, path)
	}
}

func pathLength(t *testing.T, path string) float64 {
	_, length := pathMeasures(t, path)
	return length
}

// An ellipse drawn by two arcs has π·a·b, to the 1e-9 that is promised, turned
// or not; its circumference that of the complete elliptic integral, here by the
// midpoint rule, which is exact to rounding for a closed smooth curve.
func TestPathEllipse(t *testing.T) {
	const a, b = 5.0, 2.0
	around := 0.0
	const steps = 400
	for i := range steps {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / steps)
		around += math.Hypot(a*sin, b*cos) * 2 * math.Pi / steps
	}
	for _, turn := range []float64{0, 30, 90, -200} {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		x, y := a*cos, a*sin
		path := fmt.Sprintf("M%.17g %.17gA5 2 %g 0 1 %.17g %.17gA5 2 %g 1 1 %.17g %.17g", x, y, turn, -x, -y, turn, x, y)
		area, length := pathMeasures(t, path)
		assert.InEpsilon(t, math.Pi*a*b, area, 2e-9, "turned by %g", turn)
		assert.InEpsilon(t, around, length, 2e-9, "turned by %g", turn)
	}
}

// y runs down in a path and up in a figure.
func TestPathIsTurnedUp(t *testing.T) {
	region, err := ReadPath("M0 0H10L5 8Z")
	require.NoError(t, err)
	assert.Equal(t, planar.Point{X: 5, Y: -8}, region[0][2].At)
	assert.Less(t, region[0].SignedArea(), 0.0, "clockwise on the drawing stays clockwise to the eye")
}

func TestPathFaults(t *testing.T) {
	for path, at := range map[string]int{
		"L0 0": 1, "M": 1, "M0": 2, "M0 0L": 5, "M0 0X": 4, "M0 0 L1,,2": 8, "M0 0A5 5 0 2 1 1 1": 12, "M0 0H1e99": 5, "M0 0L1 .": 7, "M0 0;": 4, "M0 0H": 5, "10 10": 0,
	} {
		_, err := ReadPath(path)
		var fault *PathError
		require.ErrorAs(t, err, &fault, path)
		assert.InDelta(t, at, fault.At, 2, path)
		assert.NotEmpty(t, fault.Detail)
	}
	_, err := ReadPath("M0 0" + strings.Repeat("h1", 5001))
	assert.ErrorContains(t, err, "more than 5000 edges")
	region, err := ReadPath("  ")
	require.NoError(t, err)
	assert.Empty(t, region)
}

func TestOutlinesAreChecked(t *testing.T) {
	for name, c := range map[string]struct {
		path, rule, crossings string
		want                  map[string]string
	}{
		"bow tie":           {"M0 0L100 100V0L0 100Z", "nonzero", "refuse", map[string]string{"/path": "self_crossing"}},
		"two that cross":    {"M0 0H100V100H0ZM50 50H150V150H50Z", "nonzero", "refuse", map[string]string{"/path": "self_crossing"}},
		"two that touch":    {"M0 0H100V100H0ZM100 50H150V150H100Z", "evenodd", "refuse", map[string]string{"/path": "self_crossing"}},
		"curve on itself":   {"M0 0C300 100-200 100 100 0Z", "nonzero", "refuse", map[string]string{"/path": "self_crossing"}},
		"bow tie resolved":  {"M0 0L100 100V0L0 100Z", "nonzero", "resolve", map[string]string{}},
		"hole":              {"M0 0H100V100H0ZM20 20H80V80H20Z", "evenodd", "refuse", map[string]string{}},
		"empty":             {"", "nonzero", "refuse", map[string]string{"/path": "required"}},
		"nonsense":          {"hello", "nonzero", "refuse", map[string]string{"/path": "wrong_type"}},
		"line":              {"M0 0H100", "nonzero", "resolve", map[string]string{"/path": "inconsistent"}},
		"point":             {"M5 5z", "nonzero", "refuse", map[string]string{"/path": "inconsistent"}},
		"too small":         {"M0 0h.5v.5z", "nonzero", "refuse", map[string]string{"/path": "out_of_range"}},
		"unknown rule":      {"M0 0H100V100Z", "half", "maybe", map[string]string{"/fill_rule": "unknown_kind", "/crossings": "unknown_kind"}},
		"too many to cross": {"M0 0" + strings.Repeat("h1v1", 80), "nonzero", "resolve", map[string]string{"/path": "too_many"}},
		"too long":          {"M0 0" + strings.Repeat(" ", 100_000), "nonzero", "refuse", map[string]string{"/path": "too_many"}},
		"rounded rectangle": {"M10 0H90A10 10 0 0 1 100 10V40A10 10 0 0 1 90 50H10A10 10 0 0 1 0 40V10A10 10 0 0 1 10 0Z", "nonzero", "refuse", map[string]string{}},
	} {
		f := newOutline()
		f.Path, f.FillRule, f.Crossings, f.Colour = c.path, c.rule, c.crossings, "red"
		assert.Equal(t, c.want, faultsOf(f), name)
	}
}

// The same lines by both fill rules (identity): two squares of 100 that share 50
// by 50 cover 17,500 mm² by nonzero and 15,000 by evenodd; the hole of a square
// run the same way round is there by evenodd alone.
func TestFillRules(t *testing.T) {
	area := func(path, rule string) float64 {
		f := newOutline()
		f.Path, f.FillRule, f.Crossings, f.Colour = path, rule, "resolve", "red"
		m, err := Measure(f)
		require.NoError(t, err)
		return m.AreaM2 * 1e6
	}
	const two, hole = "M0 0H100V100H0ZM50 50H150V150H50Z", "M0 0H100V100H0ZM20 20H80V80H20Z"
	assert.InEpsilon(t, 17500, area(two, "nonzero"), 1e-9)
	assert.InEpsilon(t, 15000, area(two, "evenodd"), 1e-9)
	assert.InEpsilon(t, 10000, area(hole, "nonzero"), 1e-9)
	assert.InEpsilon(t, 6400, area(hole, "evenodd"), 1e-9)
	assert.InEpsilon(t, 5000, area("M0 0L100 100V0L0 100Z", "evenodd"), 1e-9, "a bow tie")

	f := newOutline()
	width := 3.0
	f.Path, f.WidthM, f.Colour = "M7 7H107V57H7Z", &width, "red"
	m, err := Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 3*1.5, m.AreaM2, 1e-12, "scaled to its width")
	assert.InEpsilon(t, 3, m.WidthM, 1e-12)
}

// FuzzReadPath: whatever is read can be measured or is refused with a reason,
// without a panic.
func FuzzReadPath(f *testing.F) {
	for _, path := range []string{
		"M0 0H10V5H0Z", "M5 0a5 5 0 11-10 0 5 5 0 1110 0", "m0 0c3 5 7 5 10 0s7-5 10 0q1 2 3 4t5,6z", "M0 0A5 2 30 1 0 4 4",
		"M1e-5.5-3e2,7z", "M0 0L1 1L0 0Z", "M0 0A1e9 1 45 1 1 1e-9 0z", "M0,0C1,1,0,1,1,0z", "MM", "M 0 0 A 1 1 0 00 1",
	} {
		f.Add(path)
	}
	f.Fuzz(func(t *testing.T, path string) {
		_, err := ReadPath(path)
		if err != nil {
			var fault *PathError
			require.True(t, errors.As(err, &fault))
			require.LessOrEqual(t, fault.At, len(path))
			return
		}
		if edges := len(path); edges > 400 {
			return // the work of measuring is tried by a benchmark
		}
		o := newOutline()
		o.Path, o.Colour, o.Crossings = path, "red", "resolve"
		if len(faultsOf(o)) > 0 {
			return
		}
		m, err := Measure(o)
		require.NoError(t, err)
		require.Positive(t, m.AreaM2)
		require.False(t, math.IsInf(m.OutlineM, 0) || math.IsNaN(m.OutlineM))
	})
}

// The longest path that a document may hold is the longest that Check takes.
func TestLongestPath(t *testing.T) {
	field, found := reflect.TypeFor[Outline]().FieldByName("Path")
	require.True(t, found)
	assert.Equal(t, strconv.Itoa(mostPath), field.Tag.Get("most"))
}
