package marking

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"filmbuild/surfaces/planar"
	"filmbuild/surfaces/quantity"
)

// eachKind tries a property on drawn figures of every kind in turn.
func eachKind(t *testing.T, property func(t *rapid.T, f Figure)) {
	for _, k := range Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) { property(t, anyFigure(t, k.Name)) })
		})
	}
}

// anyFigure draws a figure of a kind with numbers of its own.
func anyFigure(t *rapid.T, kind string) Figure {
	f, _ := New(kind)
	unit := rapid.Float64Range(0, 1)
	next := func() float64 { return unit.Draw(t, "unit") }
	fill(f, next)
	if len(faultsOf(f)) > 0 {
		t.Skip("the draw is no figure")
	}
	return f
}

// fill sets every number, text and list of a figure from next, which gives
// numbers from 0 to 1.
func fill(f Figure, next func() float64) {
	fillStruct(reflect.ValueOf(f).Elem(), next)
	tidy(f, next)
}

// tidy leaves the fields that go together.
func tidy(f Figure, next func() float64) {
	switch f := f.(type) {
	case *Roundel:
		if f.Colours = f.Colours[:min(len(f.Colours), 4)]; next() < 0.5 {
			f.RatioSet, f.Rings = []string{"2-5", "1-2-3", "1-3-5-7"}[min(2, max(0, int(3*next())))], nil
			for set, _, _ := ratioSetNamed(f.RatioSet); len(f.Colours) != len(set.ratios); {
				f.Colours = append(f.Colours[:min(len(f.Colours), len(set.ratios)-1)], oneColour(next()))
			}
			return
		}
		f.Colours = nil
	case *Stripe:
		straight := *newStripe()
		straight.LengthM, straight.WidthM, straight.Colour, straight.Shared = f.LengthM, f.WidthM, f.Colour, f.Shared
		switch x := next(); {
		case x < 0.3:
			straight.EndWidthM = f.EndWidthM
		case x < 0.6:
			straight.StartShape, straight.EndShape = f.StartShape, f.EndShape
		case x < 0.8 && f.AngleDeg != nil:
			straight.LengthM, straight.RadiusM, straight.AngleDeg = 0, f.RadiusM, f.AngleDeg
		default:
			straight.LengthM, straight.RoundDiameterM = 0, f.RoundDiameterM
		}
		*f = straight
	case *Flag:
		if f.Design != "cross" {
			f.Arms, f.CrossXM, f.FieldColour = nil, nil, ""
		}
		if f.Design != "stripes" {
			f.Bands = nil
		}
		if f.Design != "cross" && f.Design != "stripes" {
			f.FlyM = nil
		}
		for i := range f.Arms {
			f.Arms[i].WidthM = f.HoistM / float64(i+2)
		}
	case *StencilText:
		f.BridgeWidthM = f.HeightM * (0.001 + 0.05*next())
		f.Repeat = min(f.Repeat, 5)
	case *Polygon: // in order round the middle, so that few cross themselves
		slices.SortFunc(f.Points, func(p, q [2]float64) int {
			return cmp.Compare(math.Atan2(p[1]-5, p[0]-5), math.Atan2(q[1]-5, q[0]-5))
		})
	case *Outline:
		if next() < 0.8 {
			f.Crossings = "resolve"
		}
	case *Cross:
		f.ArmWidthM = max(0.0005, f.SizeM*(0.05+0.4*next()))
		f.FlankWidthM = min(f.FlankWidthM, f.SizeM*0.2)
		if f.FlankWidthM == 0 {
			f.FlankColour = ""
		}
	case *Hazard: // no stripe so near a corner that it becomes a sliver below the tolerance
		f.AngleDeg, f.PhaseRatio = min(f.AngleDeg, 85), 0.11
		f.WidthM = f.period() * (math.Floor(20*next()) + 0.37)
		f.HeightM = f.period() * math.Tan(f.AngleDeg*degree) * (math.Floor(5*next()) + 0.21)
	case *Ring:
		f.InnerSizeM = max(0.0005, f.SizeM*(0.01+0.9*next()))
	case *Rectangle:
		f.CornerRadiusM = min(f.WidthM, f.HeightM) / 2 * next()
	case *ExitBand:
		f.CornerRadiusM = min(f.OpeningWidthM, f.OpeningHeightM) / 2 * next()
	case *RudderStripes:
		f.ChordM = max(f.ChordM, f.HeightM/5) // or an edge crosses another at so small an angle that a tolerance moves the place far
		if f.TipChordM != nil {
			*f.TipChordM = f.ChordM * next()
		}
		if f.BandRatio < 1e-3 {
			f.BandRatio = 0
		}
	case *StarAndBar:
		if f.BorderWidthM != nil {
			*f.BorderWidthM = max(0.0001, f.SizeM/2*0.9*next())
		}
		if !f.bordered() {
			f.BorderWidthM = nil
		}
	}
}

// oneColour picks a colour; next may be no number when fuzzing.
func oneColour(x float64) string {
	switch {
	case x < 0.3:
		return "white"
	case x < 0.6:
		return "red"
	case x < 0.8:
		return "blue"
	}
	return "yellow"
}

func fillStruct(v reflect.Value, next func() float64) {
	for i := range v.NumField() {
		field, value := v.Type().Field(i), v.Field(i)
		switch {
		case value.Kind() == reflect.Struct:
			fillStruct(value, next)
		case value.Kind() == reflect.Bool:
			value.SetBool(next() < 0.5)
		case field.Name == "SkinRadiusM": // tried by tests of its own
		case field.Name == "RatioSet" || field.Name == "UnderColour" && next() < 0.5:
		case field.Name == "Font" && next() < 0.5:
			value.SetString("sans")
		case field.Name == "Design":
			value.SetString([]string{"us", "uk_3_5", "fi", "se_three_tongued", "ch", "jp", "no", "red_cross", "stripes", "cross"}[min(9, max(0, int(10*next())))])
		case field.Name == "Path":
			value.SetString(randomPath(next))
		case field.Name == "StartShape" || field.Name == "EndShape":
			value.SetString([]string{"square", "square", "point", "round", "slant", "notch"}[min(5, max(0, int(6*next())))])
		case field.Name == "Crossings" || field.Name == "FillRule":
			if next() < 0.5 {
				value.SetString(map[string]string{"Crossings": "resolve", "FillRule": "evenodd"}[field.Name])
			}
		case field.Name == "Text":
			for text := ""; next() < 0.9 && len(text) < 20; value.SetString(text) {
				text += string("ABKMQRVWXYZ01248-? "[min(18, max(0, int(19*next())))])
			}
		case value.Kind() == reflect.String && value.String() == "":
			value.SetString(oneColour(next()))
		case value.Kind() == reflect.Int:
			value.SetInt(int64(numberFor(field, next())))
		case value.Kind() == reflect.Float64:
			value.SetFloat(numberFor(field, next()))
		case value.Type() == reflect.TypeFor[*float64]() && next() < 0.7:
			x := numberFor(field, next())
			value.Set(reflect.ValueOf(&x))
		case value.Kind() == reflect.Slice:
			fillList(value, next)
		}
	}
}

// randomPath is SVG path data of lines, arcs and curves. Its numbers are even
// ones, so that no line runs along another and no curve into a cusp: there a
// length is as uncertain as the cube root of the tolerance.
func randomPath(first func() float64) string {
	even := rand.New(rand.NewPCG(math.Float64bits(first()), 1))
	next := even.Float64
	number := func() string { return fmt.Sprintf("%.3f ", 100*next()) }
	path := "M" + number() + number()
	for range 6 {
		switch x := next(); {
		case x < 0.3:
			path += "L" + number() + number()
		case x < 0.5:
			path += "A" + number() + number() + number() + "0 1 " + number() + number()
		case x < 0.75:
			path += "Q" + number() + number() + number() + number()
		default:
			path += "c" + number() + number() + number() + number() + number() + number()
		}
	}
	return path + "z"
}

func fillList(list reflect.Value, next func() float64) {
	n := 1
	for n < 8 && next() < 0.8 {
		n++
	}
	list.Set(reflect.MakeSlice(list.Type(), n, n))
	ratio := 0.0
	for i := range n {
		switch item := list.Index(i).Addr().Interface().(type) {
		case *RoundelRing:
			ratio += 0.01 + next()
			*item = RoundelRing{ratio, oneColour(next())}
		case *Band:
			*item = Band{0.01 + next(), oneColour(next())}
		case *FlagArm:
			*item = FlagArm{0.01 + next(), oneColour(next())}
		case *string:
			*item = oneColour(next())
		case *[2]float64:
			item[0], item[1] = 10*next(), 10*next()
		}
	}
}

// numberFor maps x from 0 to 1 into the field's limits, mostly to sizes that
// occur.
func numberFor(field reflect.StructField, x float64) float64 {
	limits, err := quantity.ParseLimits(field.Tag.Get("limit"))
	if err != nil {
		return x
	}
	low, high := limits.Low, min(limits.High, 100)
	if x == 0 {
		return low
	}
	return low + (high-low)*x*x*x
}

// ID-1 and ID-2 (identities): the colours fill the outline, and the perimeters
// of the colours are the outline and twice the inner edges.
func TestFigureIdentities(t *testing.T) {
	eachKind(t, func(t *rapid.T, f Figure) {
		m, err := Measure(f)
		require.NoError(t, err)
		sum, perimeters, outline := 0.0, 0.0, 0.0
		for _, c := range m.Colours {
			require.GreaterOrEqual(t, c.AreaM2, 0.0)
			sum += c.AreaM2
		}
		for _, e := range m.Edges {
			require.Positive(t, e.LengthM)
			perimeters += e.LengthM
			if e.Between[1] == planar.Base {
				outline += e.LengthM
			} else {
				perimeters += e.LengthM
			}
		}
		assert.InEpsilon(t, m.AreaM2, sum, 1e-12)
		assert.InEpsilon(t, m.EdgeTwoSidedM, perimeters, 1e-12, "ID-2")
		assert.InEpsilon(t, m.OutlineM, outline, 1e-12)
		assert.InDelta(t, m.OutlineM+m.EdgeTwoSidedM, 2*m.EdgeOnceM, 1e-12*m.EdgeOnceM)

		// ID-1: the same figure in one colour, where only the outline is left.
		plain := f.Layers()
		for i := range plain {
			if plain[i].Colour != planar.Base {
				plain[i].Colour = "grey"
			}
		}
		one, err := planar.Arrange(plain)
		require.NoError(t, err)
		assert.InEpsilon(t, m.AreaM2, one.Areas()[0].Area, 1e-9, "ID-1")
		laid := one.Lengths()[0].Length
		if band, ok := f.(*Stripe); ok && band.RoundDiameterM != nil {
			laid -= 2 * band.WidthM // the seam, where the ends meet
		}
		assert.InDelta(t, m.OutlineM, laid, 1e-9*one.Lengths()[0].Length)
	})
}

// ID-3 and ID-4 (identities) at the rounding of float64, for the figure with
// the most borders of the usual ones.
func TestStarAndBarScaledAndTurned(t *testing.T) {
	f := newStarAndBar()
	f.SizeM = 0.635
	here, err := planar.Arrange(f.Layers())
	require.NoError(t, err)
	for step := range 60 {
		k := 0.01 * float64(1+step)
		placed := planar.Placement{Scale: k, Turn: float64(step) * math.Pi / 30, Mirror: step%2 == 1}
		there, err := planar.Arrange(placed.Layers(f.Layers()))
		require.NoError(t, err)
		for i, a := range here.Areas() {
			require.InEpsilon(t, a.Area*k*k, there.Areas()[i].Area, 1e-12, "%s at %d", a.Colour, step)
		}
		for i, l := range here.Lengths() {
			require.InEpsilon(t, l.Length*k, there.Lengths()[i].Length, 1e-12, "%v at %d", l.Between, step)
		}
	}
}

// ID-3 and ID-4 (identities) for every kind. A radius or width below the
// tolerance of planar may vanish when moved, hence 1e-9 there: areas go with the square of the scale and lengths
// with the scale; turning, mirroring and shifting far away change neither.
func TestFiguresKeepTheirMeasuresWhenPlaced(t *testing.T) {
	eachKind(t, func(t *rapid.T, f Figure) {
		here, err := planar.Arrange(f.Layers())
		require.NoError(t, err)
		k := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		near := planar.Placement{Scale: k, Turn: rapid.Float64Range(-7, 7).Draw(t, "turn"), Mirror: rapid.Bool().Draw(t, "mirror")}
		far := near
		var all planar.Region // also lines that enclose nothing: the tolerance goes by them
		for _, l := range f.Layers() {
			all = append(all, l.Outline...)
		}
		size := math.Hypot(all.Box().Width(), all.Box().Height())
		far.Shift = planar.Point{X: 1e3 * k * size, Y: -1e3 * k * size}
		within := 1e-9
		if f.Kind() == "outline" {
			within = 2e-10 * 30 // the tolerance of planar, along the edges of a random path: some 30 sizes
		}
		for _, placement := range []planar.Placement{{Scale: k}, near, far} {
			there, err := planar.Arrange(placement.Layers(f.Layers()))
			require.NoError(t, err)
			total := 0.0
			for _, a := range here.Areas() {
				total += a.Area
			}
			require.Len(t, there.Areas(), len(here.Areas()))
			for i, a := range here.Areas() {
				assert.InDelta(t, a.Area, there.Areas()[i].Area/(k*k), within*size*size, a.Colour)
			}
			require.Len(t, there.Lengths(), len(here.Lengths()))
			for i, l := range here.Lengths() {
				assert.Equal(t, l.Between, there.Lengths()[i].Between)
				assert.InDelta(t, l.Length, there.Lengths()[i].Length/k, within*size*10, l.Between)
			}
		}
	})
}
