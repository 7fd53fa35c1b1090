package marking

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func pointer(x float64) *float64 { return &x }

func striped(change func(*Stripe)) *Stripe {
	f := newStripe()
	f.LengthM, f.WidthM, f.Colour = 5, 0.2, "green"
	change(f)
	return f
}

// What each end lacks or adds (identities): a point of length l lacks w·l/2, a
// round end of half the width has π·w²/8 of it, a notch lacks w·l/2, a slant
// w·l/2.
func TestEndsOfStripes(t *testing.T) {
	const w, l = 0.2, 5.0
	for shape, c := range map[string]struct{ area, edge, depth float64 }{
		"square": {w * l, 2*l + w, 0},
		"point":  {w*l - w*0.3/2, 2*(l-0.3) + 2*math.Hypot(0.3, w/2), 0.3},
		"notch":  {w*l - w*0.3/2, 2*l + 2*math.Hypot(0.3, w/2), 0.3},
		"slant":  {w*l - w*0.3/2, l + l - 0.3 + math.Hypot(0.3, w), 0.3},
		"round":  {w*(l-w/2) + math.Pi*w*w/8, 2*(l-w/2) + math.Pi*w/2, 0},
	} {
		for _, atEnd := range []bool{true, false} {
			f := striped(func(f *Stripe) {
				depth := pointer(c.depth)
				if c.depth == 0 {
					depth = nil
				}
				if atEnd {
					f.EndShape, f.EndLengthM = shape, depth
				} else {
					f.StartShape, f.StartLengthM = shape, depth
				}
			})
			m, err := Measure(f)
			require.NoError(t, err, shape)
			assert.InEpsilon(t, c.area, m.AreaM2, 1e-12, shape)
			assert.InEpsilon(t, c.edge+w, m.OutlineM, 1e-12, shape)
			assert.InEpsilon(t, l, m.WidthM, 1e-12, shape)
		}
	}
	both := striped(func(f *Stripe) { f.StartShape, f.EndShape, f.LengthM = "round", "round", 0.2 })
	m, err := Measure(both)
	require.NoError(t, err)
	assert.InEpsilon(t, math.Pi*0.01, m.AreaM2, 1e-9, "two round ends and nothing between are a disc")
}

// A curved stripe is a ring sector (identity): width times middle line, however
// it is given and far it turns.
func TestCurvedStripes(t *testing.T) {
	for _, angle := range []float64{10, 90, 200, 350} {
		f := striped(func(f *Stripe) { f.LengthM, f.RadiusM, f.AngleDeg = 0, pointer(2), pointer(angle) })
		m, err := Measure(f)
		require.NoError(t, err)
		line := 2 * angle * math.Pi / 180
		assert.InEpsilon(t, 0.2*line, m.AreaM2, 1e-9)
		assert.InEpsilon(t, 2*line+2*0.2, m.OutlineM, 1e-9)
		by := striped(func(f *Stripe) { f.LengthM, f.RadiusM = line, pointer(2) })
		n, err := Measure(by)
		require.NoError(t, err)
		assert.InEpsilon(t, m.AreaM2, n.AreaM2, 1e-9)
	}
}

func TestStripesAreChecked(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Stripe)
		want   map[string]string
	}{
		"no length":       {func(f *Stripe) { f.LengthM = 0 }, map[string]string{"/length_m": "required"}},
		"ends too long":   {func(f *Stripe) { f.LengthM, f.StartShape, f.EndShape = 0.3, "point", "notch" }, map[string]string{"/length_m": "inconsistent"}},
		"unknown end":     {func(f *Stripe) { f.EndShape = "fish" }, map[string]string{"/end_shape": "unknown_kind"}},
		"deep round":      {func(f *Stripe) { f.EndShape, f.EndLengthM = "round", pointer(0.3) }, map[string]string{"/end_length_m": "inconsistent"}},
		"depth of square": {func(f *Stripe) { f.EndLengthM = pointer(0.3) }, map[string]string{"/end_length_m": "not_applicable"}},
		"tapered point":   {func(f *Stripe) { f.EndShape, f.EndWidthM = "point", pointer(0.1) }, map[string]string{"/end_width_m": "not_applicable"}},
		"wide curve":      {func(f *Stripe) { f.LengthM, f.RadiusM = 0.1, pointer(0.05) }, map[string]string{"/width_m": "inconsistent"}},
		"curved twice":    {func(f *Stripe) { f.RadiusM, f.AngleDeg = pointer(2), pointer(30) }, map[string]string{"/length_m": "not_applicable"}},
		"whole turn":      {func(f *Stripe) { f.LengthM, f.RadiusM = 7, pointer(1) }, map[string]string{"/length_m": "inconsistent"}},
		"no angle":        {func(f *Stripe) { f.LengthM, f.RadiusM = 0, pointer(1) }, map[string]string{"/angle_deg": "required"}},
		"angle alone":     {func(f *Stripe) { f.AngleDeg = pointer(30) }, map[string]string{"/angle_deg": "not_applicable"}},
		"round, length":   {func(f *Stripe) { f.RoundDiameterM = pointer(1) }, map[string]string{"/length_m": "not_applicable"}},
		"height alone":    {func(f *Stripe) { f.BodyHeightM = pointer(0.1) }, map[string]string{"/body_height_m": "not_applicable"}},
		"above the body":  {func(f *Stripe) { f.BodyHeightM, f.SkinRadiusM = pointer(0.9), pointer(0.6) }, map[string]string{"/body_height_m": "inconsistent"}},
		"along a body":    {func(f *Stripe) { f.BodyHeightM, f.SkinRadiusM = pointer(0.3), pointer(0.6) }, map[string]string{}},
	} {
		assert.Equal(t, c.want, faultsOf(striped(c.change)), name)
	}
	f := striped(func(f *Stripe) { f.BodyHeightM, f.SkinRadiusM = pointer(0.3), pointer(0.6) })
	m, err := Measure(f)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.6*math.Pi/6, m.Working[0].Value, 1e-12, "30° round from the side")
}
