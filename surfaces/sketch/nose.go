package sketch

import (
	"math"
	"strings"

	"filmbuild/surfaces"
)

// drawNose shows a nose from the side, its tip at the left.
func drawNose(d *drawing, s *surfaces.Nose) {
	r, l := radiusOf(s.Round), s.LengthM
	form := strings.ReplaceAll(s.Profile, "_", " ")
	d.views = "Round nose from the side, profile " + form
	d.note("Profile: " + form + noseDetail(s) + ".")
	d.upTo(max(l, greatestRound(s.Round), or(s.ArcRadiusM, 0)))
	const steps = 48
	widest := 1.0 // as a share of the base; a secant ogive may be wider than its base
	for i := range steps {
		widest = max(widest, noseRadius(s, float64(i)/steps))
	}
	fr, fl := d.stretch(2*r*widest), d.stretch(l)
	L, R := l*d.k*fl, r*d.k*fr
	var upper, lower []point
	for i := range steps + 1 {
		u := float64(i) / steps
		x := u * u // close together where the tip is round
		y := noseRadius(s, x) * R
		upper, lower = append(upper, point{x * L, -y}), append(lower, point{x * L, y})
	}
	way := d.path().polygon(upper)
	for i := len(lower) - 1; i > 0; i-- {
		way.line(lower[i])
	}
	d.drawMain(outline, way.close())
	d.axis(point{0, 0}, point{L, 0})
	axis, right := point{L, 0}, L+firstDimension
	d.round(s.Round, axis, L, R, right, "base", fr != 1)
	d.level(point{0, 0}, point{L, R}, R*widest+firstDimension, plain("length", l).unless(fl != 1))
	if s.ArcRadiusM != nil {
		tip := upper[steps*3/5]
		l := d.letters(radius("radius of the arc", *s.ArcRadiusM).unless(fr != 1 || fl != 1))
		from := tip.plus(-9, -9)
		d.leader(from, tip, false)
		d.sideways(l, from.plus(0, capital/2), -1)
	}
	d.within(bounds{point{L * 0.45, -R * 0.75}, point{L, 0}}, -R*widest-4, d.face("outside"))
}

func noseDetail(s *surfaces.Nose) string {
	switch s.Profile {
	case "haack":
		return ", C = " + decimal(or(s.HaackC, 0), 4)
	case "power":
		return ", exponent " + decimal(or(s.Exponent, 1), 4)
	}
	return ""
}

// noseRadius returns the radius of a nose at x, both as a share: of the base's
// radius and of the length from the tip.
//
// Source: Crowell 1996, as in the areas.
func noseRadius(s *surfaces.Nose, x float64) float64 {
	x = min(x, 1)
	switch s.Profile {
	case "tangent_ogive":
		r := radiusOf(s.Round)
		return ogiveRadius(r, s.LengthM, (r*r+s.LengthM*s.LengthM)/(2*r), x)
	case "secant_ogive":
		return ogiveRadius(radiusOf(s.Round), s.LengthM, or(s.ArcRadiusM, s.LengthM), x)
	case "haack":
		theta := math.Acos(1 - 2*x)
		sin, cos := math.Sincos(theta)
		return math.Sqrt(max(0, theta-sin*cos+or(s.HaackC, 0)*sin*sin*sin) / math.Pi)
	case "paraboloid":
		return math.Sqrt(x)
	case "power":
		return math.Pow(x, or(s.Exponent, 1))
	}
	return math.Sqrt(max(0, 1-(1-x)*(1-x)))
}

// ogiveRadius follows the arc of radius rho through tip and base: the chord
// between them, and the arc's rise over it square to the axis, solved without
// the difference of two large numbers.
//
// Source: identity.
func ogiveRadius(r, l, rho, x float64) float64 {
	chord := math.Hypot(r, l)
	half := chord / 2
	deep := math.Sqrt(max(0, rho*rho-half*half)) // centre to chord
	// From the middle of the chord, cx along the axis and cy across it, the
	// centre lies deep below. With X and Y from the middle of the chord:
	// (X − deep·sin)² + (Y + deep·cos)² = rho².
	sin, cos := r/chord, l/chord
	X := (x - 0.5) * l
	b := 2 * deep * cos
	c := X*X - 2*X*deep*sin - half*half
	root := math.Sqrt(max(0, b*b/4-c))
	y := -c / (b/2 + root)
	if b/2+root == 0 {
		y = 0
	}
	return max(0, (y+r/2)/r)
}
