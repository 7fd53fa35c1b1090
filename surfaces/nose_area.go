package surfaces

import "math"

// ogiveArea returns the area of an arc of radius rho from the tip to the base,
// turned about the axis. With the chord at the angle α to the axis and half the
// arc's angle β, the distance from the axis is, without cancellation,
//
//	y = 2ρ·sin((β+t)/2)·sin(α + (β−t)/2),  t from −β to β,  S = 2π·∫ y·ρ dt
//
// Source: identity; the profile is Crowell's (1996).
func ogiveArea(r, l, rho float64) float64 {
	alpha := math.Atan2(r, l)
	beta := math.Asin(min(1, math.Hypot(r, l)/(2*rho)))
	return 2 * math.Pi * rho * integrate(func(t float64) float64 {
		return 2 * rho * math.Sin((beta+t)/2) * math.Sin(alpha+(beta-t)/2)
	}, -beta, beta)
}

// haackArea returns the area of a nose of Haack's series.
//
//	S = 2π·∫ √(y²·x'² + (y·y')²) dθ,  y² = R²/π·(θ − ½·sin 2θ + C·sin³θ)
//
// The form with y·y' has no singularity at the tip.
//
// Source: identity; the profile is Crowell's (1996).
func haackArea(r, l, c float64) float64 {
	f := func(theta float64) float64 {
		sin, cos := math.Sincos(theta)
		square := r * r / math.Pi * (theta - sin*cos + c*sin*sin*sin)
		slope := r * r / (2 * math.Pi) * sin * sin * (2 + 3*c*cos) // y·y'
		return math.Sqrt(square*l*l*sin*sin/4 + slope*slope)
	}
	return 2 * math.Pi * (integrate(f, 0, math.Pi/2) + integrate(f, math.Pi/2, 0.95*math.Pi) + integrate(f, 0.95*math.Pi, math.Pi))
}

// paraboloidArea returns the area of y = R·√(x/L) turned about the axis.
//
//	S = π·R/(6L²)·[(R²+4L²)^1.5 − R³] = π·R⁴/(6L²)·[(1+q)^1.5 − 1],  q = 4L²/R²
//
// Source: identity.
func paraboloidArea(r, l float64) float64 {
	q := 4 * l * l / (r * r)
	return math.Pi * r * r * 4 / (6 * q) * math.Expm1(1.5*math.Log1p(q))
}

// powerArea returns the area of y = R·(x/L)ⁿ turned about the axis. With
// y = R·w⁴ and x = L·w^(4/n) the integrand is smooth enough at the tip.
//
//	S = 2π·∫ y·√(x'² + y'²) dw
//
// Source: identity; the profile is Crowell's (1996).
func powerArea(r, l, n float64) float64 {
	const q = 4
	f := func(w float64) float64 {
		y, dy := r*math.Pow(w, q), r*q*math.Pow(w, q-1)
		dx := l * q / n * math.Pow(w, q/n-1)
		return y * math.Hypot(dx, dy)
	}
	return 2 * math.Pi * (integrate(f, 0, 0.5) + integrate(f, 0.5, 0.9) + integrate(f, 0.9, 1))
}
