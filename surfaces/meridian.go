package surfaces

import "math"

// meridian is a stretch of the profile of a round shape: turned about the x
// axis it makes a face or part of one. Along t from 0 to 1 both x and r only
// rise or only fall; at returns them with their derivatives.
type meridian struct {
	face string
	at   func(t float64) (x, r, dx, dr float64)
}

func (m meridian) x(t float64) float64 { x, _, _, _ := m.at(t); return x }
func (m meridian) r(t float64) float64 { _, r, _, _ := m.at(t); return r }

// element is the length of the profile per t.
func (m meridian) element(t float64) float64 {
	_, _, dx, dr := m.at(t)
	return math.Hypot(dx, dr)
}

// straightMeridian makes a cone frustum, a cylinder or a ring.
func straightMeridian(face string, x0, r0, x1, r1 float64) []meridian {
	if x0 == x1 && r0 == r1 {
		return nil
	}
	return []meridian{{face, func(t float64) (x, r, dx, dr float64) {
		return x0 + t*(x1-x0), r0 + t*(r1-r0), x1 - x0, r1 - r0
	}}}
}

// ovalMeridian is a stretch of an ellipse with semi-axes a along x and b, from
// one angle to another, cut at its extremes.
func ovalMeridian(face string, cx, cr, a, b, from, to float64) []meridian {
	if a == 0 && b == 0 {
		return nil
	}
	var list []meridian
	const quarter = math.Pi / 2
	step := math.Copysign(1, to-from)
	for start := from; start != to; {
		k := math.Floor(start/quarter*step+1e-9) + 1 // the next extreme on the way
		end := k * quarter * step
		if (end-to)*step > -1e-9 {
			end = to
		}
		s, span := start, end-start
		list = append(list, meridian{face, func(t float64) (x, r, dx, dr float64) {
			sin, cos := math.Sincos(s + t*span)
			return cx + a*cos, max(0, cr+b*sin), -a * sin * span, b * cos * span
		}})
		start = end
	}
	return list
}

// ogiveMeridian is an arc of radius rho from the tip at the origin to the base,
// by the chord from the tip, which does not cancel for flat arcs; cut where it
// is farthest from the axis.
func ogiveMeridian(face string, r, l, rho float64) []meridian {
	alpha := math.Atan2(r, l)
	beta := math.Asin(min(1, math.Hypot(r, l)/(2*rho)))
	piece := func(from, to float64) meridian {
		return meridian{face, func(t float64) (x, y, dx, dy float64) {
			s := from + t*(to-from)
			chord := 2 * rho * math.Sin(s/2)
			sin, cos := math.Sincos(alpha + beta - s/2)
			slope, along := math.Sincos(alpha + beta - s)
			return chord * cos, chord * sin, rho * along * (to - from), rho * slope * (to - from)
		}}
	}
	if top := alpha + beta; top < 2*beta*(1-1e-12) {
		return []meridian{piece(0, top), piece(top, 2*beta)}
	}
	return []meridian{piece(0, 2*beta)}
}

// haackMeridian is a nose of Haack's series; see haackArea.
func haackMeridian(face string, r, l, c float64) []meridian {
	return []meridian{{face, func(t float64) (x, y, dx, dy float64) {
		sin, cos := math.Sincos(math.Pi * t)
		y = r * math.Sqrt(max(0, math.Pi*t-sin*cos+c*sin*sin*sin)/math.Pi)
		if y > 0 {
			dy = r * r / 2 * sin * sin * (2 + 3*c*cos) / y
		}
		return l * (1 - cos) / 2, y, l / 2 * math.Pi * sin, dy
	}}}
}

// powerMeridian is y = R·(x/L)ⁿ; see powerArea.
func powerMeridian(face string, r, l, n float64) []meridian {
	const q = 4
	return []meridian{{face, func(t float64) (x, y, dx, dy float64) {
		return l * math.Pow(t, q/n), r * math.Pow(t, q), l * q / n * math.Pow(t, q/n-1), r * q * math.Pow(t, q-1)
	}}}
}

// mirrored runs a profile backwards from a plane of reflection, so that it
// follows on the first one.
func mirrored(face string, list []meridian, total float64) []meridian {
	back := make([]meridian, len(list))
	for i, m := range list {
		back[len(list)-1-i] = meridian{face, func(t float64) (x, r, dx, dr float64) {
			x, r, dx, dr = m.at(1 - t)
			return total - x, r, dx, -dr
		}}
	}
	return back
}
