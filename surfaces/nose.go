package surfaces

import (
	"fmt"
	"math"
)

// Nose is a round nose or tail cone with one of the profiles in use, open at
// its base.
type Nose struct {
	Round
	Profile    string   `json:"profile" doc:"tangent_ogive, secant_ogive (arc_radius_m), haack (haack_c), paraboloid, power (exponent) or elliptic"`
	LengthM    float64  `json:"length_m" limit:"[0.001,500]" doc:"tip to base; at least a tenth of the radius"`
	ArcRadiusM *float64 `json:"arc_radius_m,omitempty" limit:"[0.0005,1000000]" doc:"of a secant ogive: of the arc that is turned about the axis"`
	HaackC     *float64 `json:"haack_c,omitempty" limit:"[0,0.6667]" unit:"" doc:"of a Haack nose: 0 (the default) least drag for length and diameter, 0.3333 for length and volume"`
	Exponent   *float64 `json:"exponent,omitempty" limit:"[0.2,1]" doc:"of a power nose, r = R·(x/L)ⁿ: 1 is a cone, 0.5 a paraboloid"`
}

// Kind implements Shape.
func (*Nose) Kind() string { return "nose" }

// Check implements Shape.
func (s *Nose) Check(report func(pointer, code, detail string)) {
	clean := inRange(s, report)
	clean = s.checkRound(report) && clean
	if !oneOf("/profile", s.Profile, report, "tangent_ogive", "secant_ogive", "haack", "paraboloid", "power", "elliptic") {
		return
	}
	if s.Profile != "haack" {
		notApplicable("/haack_c", s.HaackC, "only a Haack nose has it", report)
	}
	if s.Profile == "power" {
		given("/exponent", s.Exponent, report)
	} else {
		notApplicable("/exponent", s.Exponent, "only a power nose has it", report)
	}
	if s.Profile == "secant_ogive" {
		clean = given("/arc_radius_m", s.ArcRadiusM, report) && clean
	} else {
		notApplicable("/arc_radius_m", s.ArcRadiusM, "only a secant ogive has it", report)
	}
	if clean {
		s.checkProportions(report)
	}
}

// checkProportions reports a nose too blunt for its profile.
func (s *Nose) checkProportions(report reporter) {
	r, l := s.radius(), s.LengthM
	switch {
	case l < r/10:
		report("/length_m", "inconsistent", fmt.Sprintf("length_m is %s, less than a tenth of the radius of %s; give a cap instead", metres(l), metres(r)))
	case s.Profile == "tangent_ogive" && l < r:
		report("/length_m", "inconsistent", fmt.Sprintf("length_m is %s; a tangent ogive is at least as long as its radius of %s", metres(l), metres(r)))
	case s.Profile == "secant_ogive":
		// Below the tangent ogive's the arc bulges beyond the base, or starts out
		// backwards from the tip.
		least := (r*r + l*l) / (2 * min(r, l))
		if *s.ArcRadiusM < least*(1-1e-12) {
			report("/arc_radius_m", "inconsistent", fmt.Sprintf("arc_radius_m is %s; it must be at least that of the tangent ogive of this radius and length, %s", metres(*s.ArcRadiusM), metres(least)))
		}
	}
}

// Measure implements Shape. The face, outside, ends at the base.
func (s *Nose) Measure() Measurement {
	r, l := s.radius(), s.LengthM
	m := Measurement{Method: "body of revolution, profile " + s.Profile, AccuracyPercent: accuracy(wayTaped)}
	terms := map[string]float64{"R": r, "L": l}
	add := func(area float64, formula, source string) { m.face("outside", area, formula, terms, source) }
	switch s.Profile {
	case "tangent_ogive":
		terms["ρ"] = (r*r + l*l) / (2 * r)
		add(ogiveArea(r, l, terms["ρ"]), "by 2π·∫ y ds along the arc of radius ρ = (R²+L²)/2R", "profile: Crowell 1996; area: identity")
	case "secant_ogive":
		terms["ρ"] = or(s.ArcRadiusM, l)
		add(ogiveArea(r, l, terms["ρ"]), "by 2π·∫ y ds along the arc of radius ρ", "profile: Crowell 1996; area: identity")
	case "haack":
		terms["C"] = or(s.HaackC, 0)
		add(haackArea(r, l, terms["C"]), "by 2π·∫ y ds, y = R·√((θ − ½·sin 2θ + C·sin³θ)/π), x = L·(1−cos θ)/2", "profile: Crowell 1996; area: identity")
	case "paraboloid":
		add(paraboloidArea(r, l), "π·R/(6L²)·((R²+4L²)^1.5 − R³)", "identity")
	case "power":
		terms["n"] = or(s.Exponent, 1)
		add(powerArea(r, l, terms["n"]), "by 2π·∫ y ds, y = R·(x/L)ⁿ", "profile: Crowell 1996; area: identity")
	default:
		add(ellipsoidArea(r, r, l)/2, "by 2π·R_G(R⁴, R²L², R²L²)", "DLMF 19.33.1 (section number from memory)")
	}
	m.edge("outside", Open, 2*math.Pi*r)
	return m
}
