package surfaces

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
)

// refined integrates a nose's area in many parts, from its profile alone:
// y(θ) and x = L·(1−cos θ)/2, the slope by differences.
func refined(l float64, y func(x float64) float64) float64 {
	at := func(theta float64) (float64, float64) {
		x := l * math.Pow(math.Sin(theta/2), 2)
		return x, y(x)
	}
	const parts = 4000
	sum := 0.0
	x0, y0 := at(0)
	for i := range parts {
		x1, y1 := at(math.Pi * float64(i+1) / parts)
		sum += math.Pi * (y0 + y1) * math.Hypot(x1-x0, y1-y0)
		x0, y0 = x1, y1
	}
	return sum
}

// Cone frustums along the profile come to the same areas (identity).
func TestNosesAgainstFrustums(t *testing.T) {
	for i, c := range []struct {
		nose *Nose
		y    func(x float64) float64
	}{
		{&Nose{Profile: "power", Exponent: pointer(0.2)}, func(x float64) float64 { return math.Pow(x/2, 0.2) }},
		{&Nose{Profile: "power", Exponent: pointer(0.75)}, func(x float64) float64 { return math.Pow(x/2, 0.75) }},
		{&Nose{Profile: "power", Exponent: pointer(1.0)}, func(x float64) float64 { return x / 2 }},
		{&Nose{Profile: "paraboloid"}, func(x float64) float64 { return math.Sqrt(x / 2) }},
		{&Nose{Profile: "elliptic"}, func(x float64) float64 { return math.Sqrt(1 - (1-x/2)*(1-x/2)) }},
		{&Nose{Profile: "tangent_ogive"}, func(x float64) float64 { return math.Sqrt(2.5*2.5-(2-x)*(2-x)) + 1 - 2.5 }},
		{&Nose{Profile: "haack", HaackC: pointer(0.5)}, func(x float64) float64 {
			theta := math.Acos(1 - x)
			return math.Sqrt(max(0, theta-math.Sin(2*theta)/2+0.5*math.Pow(math.Sin(theta), 3)) / math.Pi)
		}},
	} {
		c.nose.RadiusM, c.nose.LengthM = pointer(1.0), 2
		m := must(t, c.nose)
		assert.InEpsilon(t, refined(2, c.y), m.AreaM2(), 1e-5, "case %d", i)
		assert.InDelta(t, 2*math.Pi, m.FaceEdgeM(Open), 1e-12)
	}
}

// The limits agree with closed forms: n = 1 a cone, n = ½ the paraboloid, an
// ogive as long as its radius a hemisphere.
func TestNosesAtTheirLimits(t *testing.T) {
	for _, l := range []float64{0.1, 0.5, 1, 8, 100} {
		assert.InEpsilon(t, math.Pi*math.Hypot(1, l), powerArea(1, l, 1), 1e-12)
		assert.InEpsilon(t, paraboloidArea(1, l), powerArea(1, l, 0.5), 1e-9, "%g", l)
	}
	assert.InEpsilon(t, 2*math.Pi, ogiveArea(1, 1, 1), 1e-12)
	assert.InEpsilon(t, math.Pi*math.Sqrt2, ogiveArea(1, 1, 1e6), 1e-6, "a flat arc is a cone")
	assert.InEpsilon(t, 2*math.Pi, ellipsoidArea(1, 1, 1)/2, 1e-14)
}

// Halving every piece changes no area by 1e-9, from blunt to slender noses.
func TestNoseQuadratureHasConverged(t *testing.T) {
	for _, l := range []float64{0.1, 0.3, 1, 3, 30, 500} {
		for _, n := range []float64{0.2, 0.35, 0.5, 0.75, 0.9} {
			assert.InEpsilon(t, fineArea(func(w float64) float64 {
				// The same area in another parameter, y = w², in many parts.
				return w * w * math.Hypot(2*w, l*2/n*math.Pow(w, 2/n-1))
			}), powerArea(1, l, n), 1e-9, "power %g of length %g", n, l)
		}
		for _, c := range []float64{0, 0.3333, 0.6667} {
			assert.InEpsilon(t, fineArea(func(v float64) float64 {
				sin, cos := math.Sincos(math.Pi * v)
				square := (math.Pi*v - sin*cos + c*sin*sin*sin) / math.Pi
				slope := sin * sin * (2 + 3*c*cos) / (2 * math.Pi)
				return math.Pi * math.Sqrt(square*l*l*sin*sin/4+slope*slope)
			}), haackArea(1, l, c), 1e-9, "Haack %g of length %g", c, l)
		}
	}
}

// fineArea is 2π·∫f over [0, 1], graded towards both ends.
func fineArea(f func(float64) float64) float64 {
	sum := 0.0
	for _, side := range []float64{1, -1} {
		reach := 0.5
		for range 40 {
			from, to := reach/2, reach
			if side < 0 {
				from, to = 1-reach, 1-reach/2
			}
			sum += quad.Fixed(f, from, to, 64, nil, 0)
			reach /= 2
		}
	}
	return 2 * math.Pi * sum
}

func TestNoseChecks(t *testing.T) {
	for i, c := range []struct {
		text string
		want map[string]string
	}{
		{`{"radius_m": 1, "length_m": 2}`, map[string]string{"/profile": "unknown_kind"}},
		{`{"radius_m": 1, "length_m": 0.05, "profile": "elliptic"}`, map[string]string{"/length_m": "inconsistent"}},
		{`{"radius_m": 1, "length_m": 0.9, "profile": "tangent_ogive"}`, map[string]string{"/length_m": "inconsistent"}},
		{`{"radius_m": 1, "length_m": 2, "profile": "secant_ogive"}`, map[string]string{"/arc_radius_m": "required"}},
		{`{"radius_m": 1, "length_m": 2, "profile": "secant_ogive", "arc_radius_m": 1.2}`, map[string]string{"/arc_radius_m": "inconsistent"}},
		{`{"radius_m": 1, "length_m": 2, "profile": "power", "haack_c": 0.9}`, map[string]string{"/exponent": "required", "/haack_c": "out_of_range"}},
		{`{"radius_m": 1, "length_m": 2, "profile": "haack", "exponent": 0.5, "arc_radius_m": 3}`, map[string]string{"/exponent": "not_applicable", "/arc_radius_m": "not_applicable"}},
		{`{"radius_m": 1, "length_m": 2, "profile": "haack"}`, map[string]string{}},
	} {
		assert.Equal(t, c.want, codes(read(t, "nose", c.text)), "case %d", i)
	}
}

func TestRevolvedProfile(t *testing.T) {
	// A cylinder with one flat end and a cone at the other (identities).
	m := must(t, &Revolved{Profile: [][2]float64{{0, 0}, {0, 1}, {3, 1}, {7, 0}}})
	assert.InEpsilon(t, math.Pi+6*math.Pi+math.Pi*math.Sqrt(17), m.AreaM2(), 1e-14)
	assert.Zero(t, m.EdgeM())
	open := must(t, &Revolved{Profile: [][2]float64{{0, 0.5}, {2, 0.25}}})
	assert.InEpsilon(t, 1.5*math.Pi, open.EdgeM(), 1e-14)
	back := must(t, &Revolved{Profile: [][2]float64{{0, 1}, {2, 1}, {1, 0.5}}})
	assert.Equal(t, accuracy(wayStations), back.AccuracyPercent, "a profile that turns back has no smooth body to compare with")
	for name, c := range map[string]struct {
		profile [][2]float64
		want    map[string]string
	}{
		"one point":   {[][2]float64{{0, 1}}, map[string]string{"/profile": "required"}},
		"negative":    {[][2]float64{{0, 1}, {1, -1}}, map[string]string{"/profile/1/1": "out_of_range"}},
		"not finite":  {[][2]float64{{0, 1}, {math.Inf(1), 1}}, map[string]string{"/profile/1/0": "out_of_range"}},
		"on the axis": {[][2]float64{{0, 0}, {1, 0}}, map[string]string{"/profile": "inconsistent"}},
		"crossing":    {[][2]float64{{0, 0}, {2, 2}, {2, 0}, {0, 2}}, map[string]string{"/profile": "self_crossing"}},
		"repeated":    {[][2]float64{{0, 1}, {0, 1}, {2, 0}}, map[string]string{"/profile": "self_crossing"}},
		"fold back":   {[][2]float64{{1, 1}, {2, 1}, {0, 1}}, map[string]string{"/profile": "self_crossing"}},
		"too many":    {make([][2]float64, 501), map[string]string{"/profile": "too_many"}},
	} {
		assert.Equal(t, c.want, codes(&Revolved{Profile: c.profile}), name)
	}
}

// A straight-sided profile of few points says how much a smooth one would have.
func TestRevolvedSaysWhatItMisses(t *testing.T) {
	var profile [][2]float64
	for i := range 9 {
		s := float64(i) / 8
		profile = append(profile, [2]float64{4 * s, 0.5 * 4 * s * (1 - s)})
	}
	m := must(t, &Revolved{Profile: profile})
	body := newBody()
	for _, p := range profile {
		body.Stations = append(body.Stations, Station{XM: p[0], WidthM: 2 * p[1], HeightM: 2 * p[1]})
	}
	b := must(t, body)
	assert.InEpsilon(t, b.AreaM2(), m.AreaM2(), 1e-12, "the same body by sections")
	assert.Equal(t, b.AccuracyPercent, m.AccuracyPercent)
	assert.Greater(t, m.AccuracyPercent, accuracy(wayStations))
}

func TestVessel(t *testing.T) {
	joined := must(t, &Vessel{Round: Round{RadiusM: pointer(1.0)}, Head: "hemisphere"})
	assert.InEpsilon(t, 4*math.Pi, joined.AreaM2(), 1e-14) // identity: a sphere
	assert.InDelta(t, 2*math.Pi, joined.FaceEdgeM("head_1"), 1e-12)
	assert.Len(t, joined.Faces, 2)
	// Identities: no knuckle and a crown of the vessel's radius is a hemisphere;
	// so is a knuckle of that radius; a huge crown without knuckle is a disc.
	assert.InEpsilon(t, 2*math.Pi, torispherical(1, 1, 0), 1e-12)
	assert.InEpsilon(t, 2*math.Pi, torispherical(1, 1, 1), 1e-12)
	assert.InEpsilon(t, 2*math.Pi, torispherical(1, 5, 1), 1e-12)
	assert.InEpsilon(t, math.Pi, torispherical(1, 1e5, 0), 1e-9)
	assert.Equal(t, map[string]string{"/head": "unknown_kind"}, codes(read(t, "vessel", `{"radius_m": 1, "length_m": 2}`)))
	assert.Equal(t, map[string]string{"/head_depth_m": "required", "/crown_radius_m": "not_applicable", "/knuckle_radius_m": "not_applicable"},
		codes(read(t, "vessel", `{"radius_m": 1, "length_m": 2, "head": "ellipsoidal", "crown_radius_m": 2, "knuckle_radius_m": 0.1}`)))
	assert.Equal(t, map[string]string{"/crown_radius_m": "inconsistent", "/knuckle_radius_m": "inconsistent", "/head_depth_m": "not_applicable"},
		codes(read(t, "vessel", `{"radius_m": 1, "length_m": 2, "head": "torispherical", "crown_radius_m": 0.5, "knuckle_radius_m": 1.1, "head_depth_m": 0.2}`)))
	assert.Equal(t, map[string]string{"/crown_radius_m": "required", "/knuckle_radius_m": "required"},
		codes(read(t, "vessel", `{"radius_m": 1, "length_m": 2, "head": "torispherical"}`)))
}

func TestTorus(t *testing.T) {
	m := must(t, &Torus{RingRadiusM: 2, TubeRadiusM: 2})
	assert.InEpsilon(t, 4*math.Pi*math.Pi*4, m.AreaM2(), 1e-14) // identity (Pappus)
	assert.Equal(t, map[string]string{"/tube_radius_m": "inconsistent"}, codes(&Torus{RingRadiusM: 1, TubeRadiusM: 1.1}))
}
