package surfaces

import "math"

// The profiles of the round kinds, each from one end to the other. Stations
// count along the axis.

func (s *Cylinder) profile() revolution {
	r := s.radius()
	return tube(r, r, s.LengthM, s.Ends)
}

func (s *Frustum) profile() revolution {
	return tube(s.Radius1M, or(s.Radius2M, 0), s.LengthM, s.Ends)
}

func tube(r1, r2, length float64, ends int) revolution {
	var v revolution
	if ends >= 1 {
		v.profile = append(v.profile, straightMeridian("end_1", 0, 0, 0, r1)...)
	}
	v.profile = append(v.profile, straightMeridian("side", 0, r1, length, r2)...)
	if ends >= 2 && r2 > 0 {
		v.profile = append(v.profile, straightMeridian("end_2", length, r2, length, 0)...)
	}
	return v
}

func (s *Sphere) profile() revolution {
	r := s.radius()
	return revolution{profile: ovalMeridian("outside", r, 0, r, r, math.Pi, 0)}
}

func (s *Cap) profile() revolution {
	r := s.radius()
	rim := 2 * math.Asin(math.Sqrt(min(1, s.HeightM/(2*r)))) // 1 − cos = h/R, good for flat caps
	return revolution{profile: ovalMeridian("outside", r, 0, r, r, math.Pi, math.Pi-rim)}
}

func (s *Torus) profile() revolution {
	R, r, quarter := s.RingRadiusM, s.TubeRadiusM, math.Pi/2
	return revolution{closed: true, profile: append(
		ovalMeridian("outer", r, R, r, r, math.Pi, 0),
		ovalMeridian("inner", r, R, r, r, 4*quarter, 2*quarter)...)}
}

func (s *Nose) profile() revolution {
	r, l := s.radius(), s.LengthM
	var list []meridian
	switch s.Profile {
	case "tangent_ogive":
		list = ogiveMeridian("outside", r, l, (r*r+l*l)/(2*r))
	case "secant_ogive":
		list = ogiveMeridian("outside", r, l, or(s.ArcRadiusM, l))
	case "haack":
		list = haackMeridian("outside", r, l, or(s.HaackC, 0))
	case "paraboloid":
		list = powerMeridian("outside", r, l, 0.5)
	case "power":
		list = powerMeridian("outside", r, l, or(s.Exponent, 1))
	default:
		list = ovalMeridian("outside", l, 0, l, r, math.Pi, math.Pi/2)
	}
	return revolution{profile: list}
}

func (s *Vessel) profile() revolution {
	r := s.radius()
	var head []meridian
	depth := 0.0
	switch s.Head {
	case "hemisphere":
		depth = r
		head = ovalMeridian("head_1", r, 0, r, r, math.Pi, math.Pi/2)
	case "ellipsoidal":
		depth = or(s.HeadDepthM, r)
		head = ovalMeridian("head_1", depth, 0, depth, r, math.Pi, math.Pi/2)
	case "torispherical":
		head, depth = dishedMeridian("head_1", r, or(s.CrownRadiusM, r), or(s.KnuckleRadiusM, 0))
	default:
		head = straightMeridian("head_1", 0, 0, 0, r)
	}
	total := 2*depth + s.LengthM
	list := append(head[:len(head):len(head)], straightMeridian("side", depth, r, depth+s.LengthM, r)...)
	return revolution{profile: append(list, mirrored("head_2", head, total)...)}
}

// dishedMeridian is a torispherical head from its top; see torispherical.
func dishedMeridian(face string, r, crown, knuckle float64) (list []meridian, depth float64) {
	angle := 0.0
	if crown > knuckle {
		angle = math.Asin(min(1, (r-knuckle)/(crown-knuckle)))
	}
	half := math.Sin(angle / 2)
	depth = knuckle*math.Cos(angle) + 2*crown*half*half // R − (R−k)·cos φ
	if angle > 0 {
		list = ovalMeridian(face, crown, 0, crown, crown, math.Pi, math.Pi-angle)
	}
	if angle < math.Pi/2 {
		list = append(list, ovalMeridian(face, depth, r-knuckle, knuckle, knuckle, math.Pi-angle, math.Pi/2)...)
	}
	return list, depth
}

func (s *Revolved) profile() revolution {
	var v revolution
	for i := 1; i < len(s.Profile); i++ {
		a, b := s.Profile[i-1], s.Profile[i]
		v.profile = append(v.profile, straightMeridian("outside", a[0], a[1], b[0], b[1])...)
	}
	return v
}

// Extent implements Divisible.
func (s *Cylinder) Extent() Extent { return s.profile().extent("from the first end") }

// Extent implements Divisible.
func (s *Frustum) Extent() Extent { return s.profile().extent("from the first end") }

// Extent implements Divisible.
func (s *Sphere) Extent() Extent { return s.profile().extent("from the top of the ball") }

// Extent implements Divisible.
func (s *Cap) Extent() Extent { return s.profile().extent("from its top") }

// Extent implements Divisible.
func (s *Torus) Extent() Extent { return s.profile().extent("across the ring, from its side") }

// Extent implements Divisible.
func (s *Nose) Extent() Extent { return s.profile().extent("from the tip") }

// Extent implements Divisible.
func (s *Vessel) Extent() Extent { return s.profile().extent("from the top of the first head") }

// Extent implements Divisible.
func (s *Revolved) Extent() Extent { return s.profile().extent("as x in the profile") }

// Between implements Divisible.
func (s *Cylinder) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Frustum) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Sphere) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Cap) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Torus) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Nose) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Vessel) Between(w Window) Measurement { return s.profile().between(s, w) }

// Between implements Divisible.
func (s *Revolved) Between(w Window) Measurement { return s.profile().between(s, w) }
